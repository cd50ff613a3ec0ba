import type { CardView, ExampleView } from '@ampwright/workbench'
import type { BookAt } from './book.tsx'
import { MathText, Symbol } from './math.tsx'
import { WorkForm } from './work-form.tsx'

/** One card: the formula, what it is worked with, where it comes from, what it leaves out. */
export function Card({ card: c, book }: { readonly card: CardView; readonly book: BookAt }) {
  return (
    <article className="card">
      <h2>
        {c.label} <code className="small quiet">{c.id}</code>
      </h2>
      {c.math ? <MathText lines={c.math} text={c.text} /> : <p className="words">{c.text}</p>}
      {c.words ? <p className="quiet small">Said in words: {c.words}.</p> : null}
      <p className="gives">
        {c.gives.map(g => (
          <span key={g.symbol}>
            <Symbol of={g.symbol} /> {g.label}
            {g.unit ? <span className="quiet"> in {g.unit}</span> : null}
          </span>
        ))}
      </p>
      {c.uses.length ? (
        <p className="small quiet">
          Taken as given:{' '}
          {c.uses.map((u, i) => (
            <span key={u.symbol}>
              {i ? '; ' : ''}
              <Symbol of={u.symbol} /> = {u.text}, {u.label}
            </span>
          ))}
        </p>
      ) : null}
      <WorkForm card={c} book={book} />
      <h3>Source</h3>
      <p>{c.source}</p>
      {c.leavesOut ? (
        <>
          <h3>What it leaves out</h3>
          <p>{c.leavesOut}</p>
        </>
      ) : null}
      <h3>{c.examples.length > 1 ? 'Examples' : 'Example'}</h3>
      {c.noExample ? <p>None is published: {c.noExample}.</p> : null}
      {c.examples.map((e, i) => (
        <Example key={`${i} ${e.source}`} card={c} example={e} />
      ))}
      {c.math ? (
        <details className="small">
          <summary>The formula as plain text</summary>
          <pre className="words">{c.text}</pre>
        </details>
      ) : null}
    </article>
  )
}

/** A long curve is not printed again: the fields hold it. */
const LONGEST = 60
const brief = (text: string): string =>
  text.length <= LONGEST && !text.includes('\n')
    ? text
    : text.includes('\n')
      ? `${text.split('\n').length} rows`
      : `${text.slice(0, LONGEST)} …`

function Example({ card: c, example: e }: { readonly card: CardView; readonly example: ExampleView }) {
  return (
    <div className="example">
      <p>
        {c.plan
          ? null
          : c.takes.map((t, i) => (
              <span key={t.name}>
                {i ? ', ' : ''}
                <Symbol of={t.symbol} /> = {brief(e.texts[t.name] ?? '')}
              </span>
            ))}
        {c.plan ? 'A whole plan' : ''} {e.gives.length > 1 ? 'give' : 'gives'}{' '}
        {e.gives.map((g, i) => (
          <span key={g.symbol}>
            {i ? ', ' : ''}
            <Symbol of={g.symbol} /> = <b>{g.text}</b>
          </span>
        ))}
      </p>
      <p className="small quiet">
        {e.source}
        {e.because ? ` · ${e.because}` : ''}
      </p>
    </div>
  )
}
