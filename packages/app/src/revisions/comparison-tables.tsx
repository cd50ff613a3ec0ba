import { type ComparisonView, type FigureRow, type FindingRow, MARKS } from '@ampwright/workbench'
import type { ReactNode } from 'react'
import { useState } from 'react'

type Names = readonly [string, string]

/** Headline, findings, what was written and figures of two conversions: what differs first, what is the same folded below. */
export function ComparisonTables({ view: v, names }: { readonly view: ComparisonView; readonly names: Names }) {
  const none = v.findings.differ.length + v.figures.differ.length + v.stated.length + v.headline.filter(r => r.differs).length === 0
  return (
    <section className="comparison" aria-label={`${names[0]} against ${names[1]}`}>
      {none ? <p>No difference.</p> : null}
      {v.headline.length ? <Figures rows={v.headline} names={names} caption="Headline" /> : null}
      {v.findings.differ.length ? (
        <Findings rows={v.findings.differ} names={names} caption={`${counted(v.findings.differ.length, 'finding')} otherwise`} />
      ) : null}
      {v.stated.length ? (
        <Many open={v.stated.length <= 12} summary={`${counted(v.stated.length, 'value')} stated otherwise in the file`}>
          <div className="scroll">
            <table className="many">
              <Head names={names} first="where" />
              <tbody>
                {v.stated.map(s => (
                  <tr key={s.path}>
                    <th scope="row">{s.path}</th>
                    <td className="num">{s.before ?? '–'}</td>
                    <td className="num">{s.after ?? '–'}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </Many>
      ) : null}
      {v.figures.differ.length ? (
        <Many open={v.figures.differ.length <= 30} summary={`${counted(v.figures.differ.length, 'other figure')} otherwise`}>
          <Figures rows={v.figures.differ} names={names} caption="Figures that differ" />
        </Many>
      ) : null}
      {v.findings.same.length ? (
        <Many summary={`${counted(v.findings.same.length, 'finding')} the same`}>
          <Findings rows={v.findings.same} names={names} caption="Findings that are the same" />
        </Many>
      ) : null}
      {v.figures.same.length ? (
        <Many summary={`${counted(v.figures.same.length, 'figure')} the same`}>
          <Figures rows={v.figures.same} names={names} caption="Figures that are the same" />
        </Many>
      ) : null}
    </section>
  )
}
const counted = (n: number, word: string): string => `${n} ${word}${n === 1 ? '' : 's'}`

/** Long lists are laid out only once they are opened. */
function Many({ summary, open = false, children }: { readonly summary: string; readonly open?: boolean; readonly children: ReactNode }) {
  const [met, setMet] = useState(open)
  return (
    <details className="group" open={open} onToggle={e => e.currentTarget.open && setMet(true)}>
      <summary>{summary}</summary>
      {met ? children : null}
    </details>
  )
}

function Head({ names, first, change = false }: { readonly names: Names; readonly first: string; readonly change?: boolean }) {
  return (
    <thead>
      <tr>
        <th scope="col">{first}</th>
        <th scope="col">{names[0]}</th>
        <th scope="col">{names[1]}</th>
        {change ? <th scope="col">change</th> : null}
      </tr>
    </thead>
  )
}

function Figures({ rows, names, caption }: { readonly rows: readonly FigureRow[]; readonly names: Names; readonly caption: string }) {
  return (
    <div className="scroll">
      <table className="many numbers">
        <caption>{caption}</caption>
        <Head names={names} first="figure" change />
        <tbody>
          {rows.map(r => (
            <tr key={r.id} className={r.differs ? '' : 'same'}>
              <th scope="row">{r.label}</th>
              <td className="num">{r.before}</td>
              <td className="num">{r.after}</td>
              <td className="num">{r.differs ? r.change : 'same'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function Findings({ rows, names, caption }: { readonly rows: readonly FindingRow[]; readonly names: Names; readonly caption: string }) {
  return (
    <div className="scroll">
      <table className="many">
        <caption>{caption}</caption>
        <Head names={names} first="what must hold" />
        <tbody>
          {rows.map(r => (
            <tr key={r.id}>
              <th scope="row">
                {r.title} <span className="quiet">{r.harm}</span>
              </th>
              <td>
                <Outcome of={r.before} />
              </td>
              <td>
                <Outcome of={r.after} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function Outcome({ of }: { readonly of: FindingRow['before'] }) {
  return of === undefined ? (
    <span className="quiet">not asked</span>
  ) : (
    <span className={`outcome ${of.replaceAll(' ', '-')}`}>{`${MARKS[of]} ${of}`}</span>
  )
}
