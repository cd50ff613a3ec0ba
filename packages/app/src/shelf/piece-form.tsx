import { useEffect, useId, useRef, useState } from 'react'
import type { Unread } from '../server/api.ts'
import { startAlone } from '../worker/engine.ts'
import { FIELDS, type Filled, followed, type PieceField, settled, type Typed } from './fields.ts'

type Chosen = { readonly id: string; readonly label: string }

/** The values of a piece to fill in; what cannot be read stays there with what was found and what is accepted. */
export function PieceForm({
  title,
  typed,
  submit,
  leave,
  issues,
  clashing,
  act,
}: {
  readonly title: string
  readonly typed: Typed
  readonly submit: (filled: Filled) => void
  readonly leave: () => void
  readonly issues: readonly Unread[]
  /** Values somebody else changed meanwhile, both of which were shown: what is typed here goes in their place now. */
  readonly clashing?: readonly string[]
  /** What the button says. */
  readonly act: string
}) {
  const [filled, setFilled] = useState<Filled>({ seen: typed, values: typed }),
    form = useRef<HTMLFormElement>(null),
    records = useRecords(),
    id = useId()
  useEffect(() => form.current?.querySelector('input')?.focus(), [])
  useEffect(() => setFilled(f => followed(f, typed)), [typed])
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each clash
  useEffect(() => setFilled(f => settled(f, typed, clashing ?? [])), [clashing])
  const issueOf = (f: PieceField): Unread | undefined => issues.find(i => i.path.split('.').at(-1) === f.key),
    others = issues.filter(i => !FIELDS.some(f => issueOf(f) === i))
  return (
    <form
      className="piece-form"
      aria-label={title}
      ref={form}
      onSubmit={e => {
        e.preventDefault()
        submit(filled)
      }}
    >
      <h3>{title}</h3>
      <div className="piece-fields">
        {FIELDS.map(f => (
          <Field
            key={f.key}
            field={f}
            id={`${id}${f.key}`}
            list={f.key === 'part' ? `${id}records` : undefined}
            value={filled.values[f.key] ?? ''}
            set={value => setFilled(x => ({ ...x, values: { ...x.values, [f.key]: value } }))}
            issue={issueOf(f)}
          />
        ))}
      </div>
      <datalist id={`${id}records`}>
        {records.map(r => (
          <option key={r.id} value={r.id}>
            {r.label}
          </option>
        ))}
      </datalist>
      {others.map(i => (
        <p key={`${i.path} ${i.what}`} className="failing" role="alert">
          ▲ {said(i)}
        </p>
      ))}
      <div className="add">
        <button type="submit" className="main">
          {act}
        </button>
        <button type="button" onClick={leave}>
          Leave it
        </button>
      </div>
    </form>
  )
}

function Field({
  field: f,
  id,
  list,
  value,
  set,
  issue,
}: {
  readonly field: PieceField
  readonly id: string
  readonly list: string | undefined
  readonly value: string
  readonly set: (value: string) => void
  readonly issue: Unread | undefined
}) {
  const shared = { id, value, 'aria-invalid': issue !== undefined, ...(issue ? { 'aria-describedby': `${id}wrong` } : {}) }
  return (
    <p className={issue ? 'field wrong' : 'field'}>
      <label htmlFor={id}>{f.label}</label>
      {f.oneOf ? (
        <select {...shared} onChange={e => set(e.target.value)}>
          <option value="">not said</option>
          {f.oneOf.map(w => (
            <option key={w}>{w}</option>
          ))}
        </select>
      ) : (
        <input {...shared} list={list} placeholder={f.hint} autoComplete="off" onChange={e => set(e.target.value)} />
      )}
      {issue ? (
        <span className="error" id={`${id}wrong`} role="alert">
          {said(issue)}
        </span>
      ) : null}
    </p>
  )
}

const said = (i: Unread): string =>
  [i.what, i.found && `found ${i.found}`, i.accepted && `accepted ${i.accepted}`, i.nearest && `did you mean ${i.nearest}?`]
    .filter(Boolean)
    .join('; ')

/** Every record of the catalogue, to choose from while typing. */
function useRecords(): readonly Chosen[] {
  const [records, setRecords] = useState<readonly Chosen[]>([])
  useEffect(() => {
    const { engine, stop } = startAlone()
    void engine.partTable(undefined, {}).then(({ table }) => setRecords(table.rows.map(({ id, label }) => ({ id, label }))))
    return stop
  }, [])
  return records
}
