import type { CardView, FormulaWorked, TakeView } from '@ampwright/workbench'
import { useCallback, useEffect, useId, useRef, useState } from 'react'
import type { BookAt } from './book.tsx'
import type { Texts } from './handbook.ts'
import { Symbol } from './math.tsx'

/** A pause in typing after which it is worked [ms], and one after which a half-typed text counts as wrong [ms]. */
const PAUSE = 120
const REST = 1000

/** The formula worked with what is typed: a field for each input, and what comes of it. */
export function WorkForm({ card: c, book }: { readonly card: CardView; readonly book: BookAt }) {
  const [texts, setTexts] = useState<Texts>({}),
    [rested, setRested] = useState(true),
    worked = useWorked(c.id, texts, book)
  const rest = useRef<ReturnType<typeof setTimeout>>(undefined)
  useEffect(() => () => clearTimeout(rest.current), [])
  const type = (name: string, text: string): void => {
    setTexts({ ...texts, [name]: text })
    setRested(false)
    clearTimeout(rest.current)
    rest.current = setTimeout(() => setRested(true), REST)
  }
  const fill = useCallback((to: Texts) => {
    setTexts(to)
    setRested(true)
  }, [])
  const figure = useFigure(c, book, fill)
  if (c.plan) return <Plan card={c} />
  const wrong = rested && worked?.is === 'open' ? worked.wrong : []
  return (
    <>
      <h3>Work it</h3>
      <div className="add">
        {c.examples.map((e, i) => (
          <button type="button" key={`${i} ${e.source}`} onClick={() => fill(e.texts)}>
            {c.examples.length > 1 ? `Fill in example ${i + 1}` : 'Fill in the example'}
          </button>
        ))}
        {figure ? (
          <button type="button" onClick={() => fill(figure.texts)}>
            Fill in {figure.label.toLowerCase()} of this car
          </button>
        ) : null}
        <button type="button" onClick={() => fill({})} disabled={Object.values(texts).every(t => t === '')}>
          Empty
        </button>
      </div>
      <form className="inputs" onSubmit={e => e.preventDefault()}>
        {c.takes.map(t => (
          <Input
            key={t.name}
            take={t}
            text={texts[t.name] ?? ''}
            wrong={wrong.find(w => w.at === t.name || w.at.startsWith(`${t.name} `))}
            type={text => type(t.name, text)}
            leave={() => setRested(true)}
          />
        ))}
      </form>
      <Result worked={worked} card={c} typed={Object.values(texts).some(t => t.trim() !== '')} rested={rested} />
    </>
  )
}

/** Worked anew after each pause; an answer that is overtaken is dropped. */
function useWorked(id: string, texts: Texts, { handbook, system }: BookAt): FormulaWorked | undefined {
  const [worked, setWorked] = useState<FormulaWorked>()
  useEffect(() => {
    let overtaken = false
    const soon = setTimeout(() => void handbook.work(id, texts, system).then(w => overtaken || setWorked(w)), PAUSE)
    return () => {
      overtaken = true
      clearTimeout(soon)
    }
  }, [handbook, id, texts, system])
  return worked
}

/** Opened from a figure of the conversion, the card begins with what went into it. */
function useFigure(
  c: CardView,
  { handbook, figure, system, ready }: BookAt,
  fill: (texts: Texts) => void,
): { readonly label: string; readonly texts: Texts } | undefined {
  const [from, setFrom] = useState<{ readonly label: string; readonly texts: Texts }>(),
    filled = useRef(false)
  useEffect(() => {
    if (figure === undefined || !ready || c.plan) return
    void handbook.figure(figure, c.id, system).then(f => {
      setFrom(f)
      if (f && !filled.current) {
        filled.current = true
        fill(f.texts)
      }
    })
  }, [handbook, figure, system, ready, c, fill])
  return from
}

/** A list grows with what is in it; a curve or a map shows its first rows. */
const rowsFor = ({ is }: TakeView, text: string): number =>
  is === 'list' ? Math.min(5, 1 + Math.floor(text.length / 38)) : Math.min(8, Math.max(3, text.split('\n').length))

type Wrong = (FormulaWorked & { is: 'open' })['wrong'][number]
function Input({
  take: t,
  text,
  wrong,
  type,
  leave,
}: {
  readonly take: TakeView
  readonly text: string
  readonly wrong: Wrong | undefined
  readonly type: (text: string) => void
  readonly leave: () => void
}) {
  const id = useId(),
    shared = {
      id,
      value: text,
      'aria-invalid': wrong ? true : undefined,
      'aria-describedby': `${id}-help${wrong ? ` ${id}-wrong` : ''}`,
      onChange: (e: { readonly target: { readonly value: string } }) => type(e.target.value),
      onBlur: leave,
    }
  return (
    <div className="row">
      <label htmlFor={id}>
        <Symbol of={t.symbol} /> {t.label}
        <span className="help" id={`${id}-help`}>
          {t.accepts}
          {t.holds ? ` · holds for ${t.holds}` : ''}
        </span>
      </label>
      <span className={`field ${wrong ? 'wrong' : ''}`}>
        {t.is === 'choice' ? (
          <select {...shared}>
            <option value="">–</option>
            {t.oneOf?.map(o => (
              <option key={o}>{o}</option>
            ))}
          </select>
        ) : t.is !== 'number' ? (
          <textarea {...shared} rows={rowsFor(t, text)} spellCheck={false} />
        ) : (
          <input {...shared} autoComplete="off" spellCheck={false} />
        )}
        {wrong ? (
          <span className="error" id={`${id}-wrong`} role="alert">
            {wrong.at === t.name ? '' : `${wrong.at.replace(t.name, 'value')}: `}found {wrong.found}
            {wrong.why ? `, ${wrong.why}` : ''}; accepted {wrong.accepted}
          </span>
        ) : null}
      </span>
    </div>
  )
}

function Result({
  worked,
  card: c,
  typed,
  rested,
}: {
  readonly worked: FormulaWorked | undefined
  readonly card: CardView
  readonly typed: boolean
  readonly rested: boolean
}) {
  if (worked === undefined) return null
  return (
    <div className="result" role="status" aria-label="Result">
      {worked.is === 'open' ? (
        typed && rested && worked.missing.length ? (
          <p className="quiet small">
            Still wanted: {worked.missing.map(m => c.takes.find(t => t.name === m)?.label.toLowerCase() ?? m).join('; ')}.
          </p>
        ) : null
      ) : worked.is === 'no result' ? (
        <p className="failing">▲ No result: {worked.why}.</p>
      ) : (
        <>
          {worked.results.map(r => (
            <p key={r.symbol} className="one">
              <Symbol of={r.symbol} /> = <b>{r.text}</b> <span className="quiet small">{r.label}</span>
              <span className="quiet small si">in SI {r.si}</span>
            </p>
          ))}
          {worked.numbers ? <p className="num quiet numbers">{worked.numbers}</p> : null}
          {worked.beyond.map(b => (
            <p key={b.name} className="marginal">
              ◐ {b.label}: {b.found} lies outside the range in which this formula holds, {b.holds}.
            </p>
          ))}
        </>
      )}
    </div>
  )
}

function Plan({ card: c }: { readonly card: CardView }) {
  return (
    <>
      <p>
        It takes a whole plan of {c.takes.length} inputs, which nobody types by hand: the pages of a conversion run it, and the working of a
        figure shows what went in.
      </p>
      <details className="small">
        <summary>What it takes</summary>
        <ul className="taken">
          {c.takes.map(t => (
            <li key={t.name}>
              <Symbol of={t.symbol} /> {t.label}
              {t.unit ? <span className="quiet"> in {t.unit}</span> : null}
            </li>
          ))}
        </ul>
      </details>
    </>
  )
}
