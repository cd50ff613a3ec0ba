import type { Letter, LetterLine, LetterPart, Piece, Pieces, Written } from '@ampwright/workbench'
import { Fragment, type ReactElement } from 'react'
import { Link } from 'wouter'
import { useHand, useInHand } from '../shell/in-hand.ts'
import { pageOf } from '../stages/pages.ts'

type Line<K extends LetterLine['is']> = Extract<LetterLine, { is: K }>

/** The letter as a sheet of paper: numbers open their working on screen, and print as plain words. */
export function Paper({ letter, written }: { readonly letter: Letter; readonly written: Written }) {
  return (
    <article className="letter" aria-label="The letter">
      <dl className="head">
        <Typed label="To" text={written.recipient} />
        <Typed label="From" text={written.by} />
        <Typed label="Date" text={written.date} />
        {written.about ? <Typed label="About" text={written.about} /> : null}
      </dl>
      <h2 className="subject">
        <Words pieces={letter.subject} />
      </h2>
      {letter.parts.map(p => (
        <Part key={p.heading} part={p} />
      ))}
      <dl className="head">
        <Typed label="Signed" text={written.by} />
        <Typed label="Agreed as described, or on these conditions" text="" />
        <Typed label="Day and signature" text="" />
      </dl>
    </article>
  )
}

function Typed({ label, text }: { readonly label: string; readonly text: string }) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>{text || <span className="blank" role="img" aria-label="a line to write on" />}</dd>
    </div>
  )
}

function Part({ part: { heading, columns, lines } }: { readonly part: LetterPart }) {
  const rows = lines.filter((l): l is Line<'row'> => l.is === 'row'),
    of = <K extends LetterLine['is']>(is: K): readonly Line<K>[] => lines.filter((l): l is Line<K> => l.is === is)
  return (
    <section>
      <h3>{heading}</h3>
      {of('text')
        .filter(() => rows.length === 0)
        .map((l, i) => (
          <Paragraph key={i} pieces={l.pieces} />
        ))}
      {of('caution').map((l, i) => (
        <p className="caution" key={i}>
          <Words pieces={l.pieces} />
        </p>
      ))}
      {rows.length ? <Rows rows={rows} columns={columns ?? []} /> : null}
      <List>
        {of('item').map(l => (
          <Words key={key(l.pieces)} pieces={l.pieces} />
        ))}
      </List>
      <List>
        {of('rule').map(l => (
          <Rule key={l.asks.quoted} line={l} />
        ))}
      </List>
      {of('question').length ? (
        <ol>
          {of('question').map(l => (
            <li key={key(l.pieces)}>
              <Words pieces={l.pieces} />
            </li>
          ))}
        </ol>
      ) : null}
      <List>
        {of('open').map(l => (
          <NotKnown key={l.open} line={l} />
        ))}
      </List>
      {of('text')
        .filter(() => rows.length > 0)
        .map((l, i) => (
          <Paragraph key={i} pieces={l.pieces} />
        ))}
    </section>
  )
}
const key = (pieces: Pieces): string => pieces.map(p => (typeof p === 'string' ? p : 'quoted' in p ? p.quoted : p.name)).join('')

function Paragraph({ pieces }: { readonly pieces: Pieces }) {
  return (
    <p>
      <Words pieces={pieces} />
    </p>
  )
}

function List({ children }: { readonly children: readonly ReactElement[] }) {
  return children.length === 0 ? null : (
    <ul>
      {children.map(c => (
        <li key={c.key}>{c}</li>
      ))}
    </ul>
  )
}

function Rows({ rows, columns }: { readonly rows: readonly Line<'row'>[]; readonly columns: readonly string[] }) {
  return (
    <div className="scroll">
      <table className="many">
        <thead className={columns.length > 1 ? '' : 'hidden'}>
          <tr>
            <th scope="col">what</th>
            {columns.map(c => (
              <th scope="col" key={c}>
                {c}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(r => (
            <tr key={key(r.label)}>
              <th scope="row">
                <Words pieces={r.label} />
              </th>
              {columns.map((c, i) => (
                <td key={c}>{r.cells[i] === undefined ? null : <Word piece={r.cells[i]} />}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function Rule({ line: l }: { readonly line: Line<'rule'> }) {
  return (
    <>
      <b>{l.asks.quoted}</b>: {l.says.quoted}
      {l.stands.map((s, i) => (
        <span className="stands" key={i}>
          as planned: <Words pieces={s} />
        </span>
      ))}
      <span className="source">{l.source.quoted}</span>
    </>
  )
}

/** What nobody has said yet; on screen it leads to where it is filled in. */
function NotKnown({ line: l }: { readonly line: Line<'open'> }) {
  const { opened } = useInHand(),
    page = l.path === undefined ? undefined : pageOf(l.path)
  return (
    <>
      not known yet: {l.open}
      {page ? (
        <Link className="on-screen" href={`/c/${opened.id}/${page.slug}`} aria-label={`Fill in on the page ${page.title}: ${l.open}`}>
          {' '}
          → {page.title}
        </Link>
      ) : null}
    </>
  )
}

function Words({ pieces }: { readonly pieces: Pieces }) {
  return (
    <>
      {pieces.map((p, i) => (
        <Fragment key={i}>
          <Word piece={p} />
        </Fragment>
      ))}
    </>
  )
}

function Word({ piece: p }: { readonly piece: Piece }) {
  const { openWorking } = useHand()
  if (typeof p === 'string') return p
  if ('quoted' in p) return p.quoted
  return (
    <button type="button" className="num" onClick={() => openWorking(p.name)} aria-label={`${p.text}, where it comes from`}>
      {p.text}
    </button>
  )
}
