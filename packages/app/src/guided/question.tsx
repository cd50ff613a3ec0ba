import type { QuestionField, QuestionView } from '@ampwright/workbench'
import { useId, useRef } from 'react'
import { wrongText } from '../field/field.tsx'
import { LayoutDrawing } from './layout-drawing.tsx'

type Answer = (path: string, text: string) => void

/** One question with its fields; the layout is chosen from drawings. */
export function Question({
  question: q,
  given,
  answer,
}: {
  readonly question: QuestionView
  readonly given: Readonly<Record<string, string>>
  readonly answer: Answer
}) {
  return (
    <fieldset className="question">
      <legend>{q.asks}</legend>
      {q.fields.some(f => f.oneOf?.length === 0) ? <p className="quiet small">First say where the engine sits.</p> : null}
      {q.help ? <p className="quiet small">{q.help}</p> : null}
      {q.chapter === 'layout' ? (
        q.fields.map(f => <Drawn key={f.path} field={f} given={given} answer={answer} />)
      ) : (
        <div className="answers">
          {q.fields.map(f => (
            <One key={f.path} field={f} alone={q.fields.length === 1} answer={answer} />
          ))}
        </div>
      )}
      {q.open && q.fields.every(f => f.text.trim() === '') ? <p className="quiet small">{q.open}</p> : null}
    </fieldset>
  )
}

function One({ field: f, alone, answer }: { readonly field: QuestionField; readonly alone: boolean; readonly answer: Answer }) {
  const id = useId(),
    input = useRef<HTMLInputElement>(null)
  /** Writes what is offered into the field, as if it had been typed. */
  const take = (offer: string): void => {
    if (input.current) {
      input.current.value = offer
      // The button goes away with the offer: whoever works by keyboard goes on from the field.
      input.current.focus()
    }
    answer(f.path, offer)
  }
  return (
    <span className={`field ${f.problem ? 'wrong' : ''}`}>
      <label htmlFor={id} className={alone ? 'hidden' : 'small'}>
        {f.label}
      </label>
      {f.oneOf ? (
        <select id={id} data-path={f.path} value={f.text} onChange={e => answer(f.path, e.target.value)}>
          <option value="">not known yet</option>
          {f.oneOf.map(o => (
            <option key={o.word} value={o.word}>
              {o.label}
            </option>
          ))}
        </select>
      ) : (
        <input
          id={id}
          ref={input}
          data-path={f.path}
          defaultValue={f.text}
          autoComplete="off"
          spellCheck={false}
          aria-invalid={f.problem ? true : undefined}
          placeholder={f.hint === undefined ? undefined : `such as ${f.hint}`}
          aria-describedby={[f.hint && `${id}-hint`, f.problem && `${id}-wrong`].filter(Boolean).join(' ') || undefined}
          onBlur={e => answer(f.path, e.target.value)}
          onKeyDown={e => e.key === 'Enter' && answer(f.path, e.currentTarget.value)}
        />
      )}
      {f.hint === undefined ? null : (
        <span className="hidden" id={`${id}-hint`}>
          such as {f.hint}
        </span>
      )}
      {f.offer !== undefined && f.text.trim() === '' ? (
        <button type="button" className="bare" aria-label={`${f.label}: take ${f.offer}`} onClick={() => take(f.offer ?? '')}>
          take {f.offer}
        </button>
      ) : null}
      {f.problem ? (
        <span className="error" role="alert" id={`${id}-wrong`}>
          {wrongText(f.problem)}
        </span>
      ) : null}
    </span>
  )
}

function Drawn({
  field: f,
  given,
  answer,
}: {
  readonly field: QuestionField
  readonly given: Readonly<Record<string, string>>
  readonly answer: Answer
}) {
  const engine = given['donor.engine-position'] ?? ''
  const isEngine = f.path === 'donor.engine-position'
  return (
    <div className="layouts" role="radiogroup" aria-label={f.label}>
      {f.oneOf?.map(o => (
        <label key={o.word} className={f.text === o.word ? 'chosen' : ''}>
          <input type="radio" name={f.path} value={o.word} checked={f.text === o.word} onChange={() => answer(f.path, o.word)} />
          <LayoutDrawing engine={isEngine ? o.word : engine} driven={isEngine ? '' : o.word} />
          {o.label}
        </label>
      ))}
    </div>
  )
}
