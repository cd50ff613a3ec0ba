import type { FieldView, Letter, Recipient, Written } from '@ampwright/workbench'
import { useEffect, useState } from 'react'
import { Field } from '../field/field.tsx'
import { useInHand } from '../shell/in-hand.ts'
import { CopyText } from './copy-text.tsx'
import { Paper } from './paper.tsx'

const TO: Readonly<Record<Recipient, string>> = { inspector: 'whoever inspects and signs', insurer: 'the insurer' }
const NOTHING: Written = { date: '', by: '', recipient: '', about: '' }

/** The enquiry that goes out before the first part is bought: read here, printed or copied; the answer's day is filled in on the same page. */
export function LetterPage() {
  const { conversion, opened } = useInHand(),
    [to, setTo] = useState<Recipient>('inspector'),
    [letter, setLetter] = useState<Letter>(),
    [answered, setAnswered] = useState<FieldView>(),
    [written, setWritten] = useState<Readonly<Record<Recipient, Written>>>({ inspector: NOTHING, insurer: NOTHING })
  useEffect(() => {
    if (!opened.told) return
    let current = true
    void Promise.all([conversion.letter(to), conversion.field(`brief.asked.${to}`)]).then(([l, f]) => {
      if (!current) return
      setLetter(l)
      setAnswered(f)
    })
    return () => {
      current = false
    }
  }, [conversion, opened.told, to])
  return (
    <>
      <div className="on-screen">
        <h1>Enquiry letter</h1>
        <p className="lede">
          The first hold point: inspector and insurer answer in writing before the first part is bought. Every number in the letter is one
          of the car’s figures or facts and opens its working; what is not known yet says so. It asks; it approves nothing.
        </p>
        <fieldset className="to">
          <legend>To</legend>
          {(Object.keys(TO) as Recipient[]).map(r => (
            <label key={r}>
              <input type="radio" name="to" checked={to === r} onChange={() => setTo(r)} /> {TO[r]}
            </label>
          ))}
        </fieldset>
        <Head key={to} to={to} written={written[to]} write={w => setWritten({ ...written, [to]: w })} />
        {answered ? (
          <div className="row answered">
            <span className="label">
              {answered.label}
              <span className="help">Filled in once the answer is there.</span>
            </span>
            <Field key={answered.path} field={answered} />
          </div>
        ) : null}
        <div className="bar">
          <button type="button" className="main" disabled={letter === undefined} onClick={() => print()}>
            Print
          </button>
          <CopyText text={() => conversion.letterText(to, written[to])} disabled={letter === undefined} />
        </div>
      </div>
      {letter === undefined ? <p>Being worked out …</p> : <Paper letter={letter} written={written[to]} />}
    </>
  )
}

const today = (): string => {
  const d = new Date()
  return [d.getFullYear(), d.getMonth() + 1, d.getDate()].map(n => String(n).padStart(2, '0')).join('-')
}

/** Day and names. They go into the letter when the person says so: today is offered, never taken by itself. */
function Head({ to, written, write }: { readonly to: Recipient; readonly written: Written; readonly write: (w: Written) => void }) {
  return (
    <form
      className="add head"
      onSubmit={e => {
        e.preventDefault()
        const data = new FormData(e.currentTarget),
          word = (k: keyof Written): string => String(data.get(k) ?? '').trim()
        write({ date: word('date'), by: word('by'), recipient: word('recipient'), about: word('about') })
      }}
    >
      <label>
        {to === 'inspector' ? 'Name and office' : 'Name of the insurer'}
        <input name="recipient" defaultValue={written.recipient} autoComplete="off" />
      </label>
      <label>
        Registration or file number
        <input name="about" defaultValue={written.about} autoComplete="off" />
      </label>
      <label>
        Your name
        <input name="by" defaultValue={written.by} autoComplete="name" />
      </label>
      <label>
        Day
        <input name="date" type="date" defaultValue={written.date || today()} />
      </label>
      <button type="submit">Write into the letter</button>
      <span className="quiet small" role="status">
        {written === NOTHING ? 'Until then the letter has lines to write on.' : 'Written into the letter below.'}
      </span>
    </form>
  )
}
