import { useState } from 'react'
import { api } from '../server/api.ts'
import { useInHand } from '../shell/in-hand.ts'
import type { Revision } from './revisions-page.tsx'

/** A variant begins as a copy of a revision under a name of its own, and goes its own way from there. */
export function Variant({ revisions }: { readonly revisions: readonly Revision[] }) {
  const { opened } = useInHand(),
    [named, setNamed] = useState(''),
    [from, setFrom] = useState(0),
    [made, setMade] = useState<{ readonly id: string; readonly named: string }>(),
    [wrong, setWrong] = useState<string>()
  const make = async (): Promise<void> => {
    const name = named.trim()
    if (name === '') return setWrong('a name for the variant is wanted, such as smaller pack')
    try {
      const { id } = await api.create({ variantOf: opened.id, named: name, revision: from || opened.revision })
      setMade({ id, named: name })
      setNamed('')
      setWrong(undefined)
    } catch (e) {
      setWrong((e as Error).message)
    }
  }
  return (
    <form
      className="add"
      onSubmit={e => {
        e.preventDefault()
        void make()
      }}
    >
      <label>
        Name <input value={named} onChange={e => setNamed(e.target.value)} aria-invalid={wrong ? true : undefined} />
      </label>
      <label>
        from{' '}
        <select value={from} onChange={e => setFrom(Number(e.target.value))}>
          <option value={0}>the car as it stands</option>
          {revisions.map(r => (
            <option key={r.revision} value={r.revision}>
              revision {r.revision}
            </option>
          ))}
        </select>
      </label>
      <button type="submit">Name it</button>
      {made ? (
        <span role="status">
          There is a variant now: <a href={`/c/${made.id}/brief`}>{made.named}</a>
        </span>
      ) : null}
      {wrong ? (
        <span className="failing" role="alert">
          ▲ {wrong}
        </span>
      ) : null}
    </form>
  )
}
