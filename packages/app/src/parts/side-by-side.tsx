import type { PartFigure, PartRow, PartTable, Standing } from '@ampwright/workbench'
import { OnShelf } from '../shelf/on-shelf.tsx'
import type { Piece } from '../shelf/shelf-api.ts'

/** Looks at a record, or at a piece of it. */
export type Choose = (id: string, piece?: Piece) => void

/** Records side by side, a row each: what differs in columns, what is the same in all of them once below. */
export function SideBySide({
  table: t,
  standing,
  now,
  choose,
  candidate,
  pieces = [],
  isHere = () => false,
}: {
  readonly table: PartTable
  /** What stands at the place now, whatever it came from. */
  readonly standing?: Standing | undefined
  readonly now: string | undefined
  readonly choose: Choose | undefined
  readonly candidate?: string | undefined
  /** What lies on the shelf, and which of it is kept for this car. */
  readonly pieces?: readonly Piece[]
  readonly isHere?: (p: Piece) => boolean
}) {
  if (t.rows.length === 0) return null
  const remarks = [...new Set(t.rows.flatMap(r => r.remark ?? []))]
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled by keyboard too */}
      <div className="scroll" tabIndex={0} role="group" aria-label="Records side by side">
        <table className="many records">
          <thead>
            <tr>
              <th scope="col">Record</th>
              <th scope="col">Price</th>
              {t.differing.map(d => (
                <th scope="col" key={d.key}>
                  {d.label}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {standing && Object.keys(standing).length ? <Now standing={standing} table={t} /> : null}
            {t.rows.map(r => (
              <Row key={r.id} row={r} table={t} now={now} choose={choose} candidate={candidate} pieces={pieces} isHere={isHere} />
            ))}
          </tbody>
        </table>
      </div>
      {t.rows.length > 1 && t.same.length ? (
        <p className="small">
          <span className="quiet">The same in all of them: </span>
          {t.same.map((s, i) => (
            <span key={s.label}>
              {i ? '; ' : ''}
              {s.label.toLowerCase()} <b className="num">{s.text}</b>
              <Known figure={s} usual={t.mark} />
              {standing?.[s.key] && standing[s.key]?.text !== s.text ? (
                <span className="marginal"> (now {standing[s.key]?.text})</span>
              ) : null}
            </span>
          ))}
          .
        </p>
      ) : null}
      <p className="quiet small">
        Figures {t.mark === 'published' ? 'as published' : t.mark}, where nothing else stands beside them; prices are bands by common
        practice.
        {remarks.map(r => ` ${r}`)}
      </p>
    </>
  )
}

/** What stands at the place, in the columns of the records. */
function Now({ standing, table: t }: { readonly standing: Standing; readonly table: PartTable }) {
  return (
    <tr className="here">
      <th scope="row">Stands there now</th>
      <td>
        <Held value={standing['price']} />
      </td>
      {t.differing.map(({ key }) => (
        <td key={key}>
          <Held value={standing[key]} />
        </td>
      ))}
    </tr>
  )
}
function Held({ value }: { readonly value: Standing[string] | undefined }) {
  if (value === undefined) return <span className="quiet">–</span>
  return (
    <>
      <span className="num">{value.text}</span>
      <small> {value.how}</small>
    </>
  )
}

function Row({
  row: r,
  table: t,
  now,
  choose,
  candidate,
  pieces,
  isHere,
}: {
  readonly row: PartRow
  readonly table: PartTable
  readonly now: string | undefined
  readonly choose: Choose | undefined
  readonly candidate: string | undefined
  readonly pieces: readonly Piece[]
  readonly isHere: (p: Piece) => boolean
}) {
  const here = r.id === now
  return (
    <tr className={here ? 'here' : r.id === candidate ? 'candidate' : ''}>
      <th scope="row">
        {r.label}
        <code>{r.id}</code>
        {here ? (
          <span className="small sound">● chosen now</span>
        ) : choose ? (
          <button type="button" onClick={() => choose(r.id)} aria-pressed={r.id === candidate}>
            See what it fills<span className="hidden">: {r.id}</span>
          </button>
        ) : null}
        <OnShelf pieces={pieces.filter(p => p.part === r.id)} isHere={isHere} choose={choose} />
      </th>
      <td>{r.price ?? <span className="quiet">none known</span>}</td>
      {t.differing.map(({ key }) => {
        const f = r.figures[key]
        return <td key={key}>{f === undefined ? <span className="quiet">–</span> : <Figure figure={f} usual={t.mark} />}</td>
      })}
    </tr>
  )
}

function Figure({ figure: f, usual }: { readonly figure: PartFigure; readonly usual: PartTable['mark'] }) {
  return (
    <>
      <span className="num">{f.text}</span>
      <Known figure={f} usual={usual} />
    </>
  )
}

/** How a figure is known, where it is not as most of them are. */
function Known({ figure: f, usual }: { readonly figure: PartFigure; readonly usual: PartTable['mark'] }) {
  return f.source ? <small> {f.source}</small> : f.mark === usual ? null : <small> {f.mark}</small>
}
