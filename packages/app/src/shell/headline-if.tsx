import { type ReactNode, useEffect, useState } from 'react'
import { useHand, useOf } from './in-hand.ts'

type Edit = { readonly path: string; readonly now: string }
type Row = { readonly id?: string; readonly label: string; readonly value?: string }

/** What edits that are not made would do to the headline: each figure that changes, before and after. */
export function HeadlineIf({ edits, same }: { readonly edits: readonly Edit[]; readonly same?: ReactNode }) {
  const { conversion } = useHand(),
    told = useOf(o => o.told),
    [rows, setRows] = useState<readonly Row[]>([]),
    key = edits.map(e => `${e.path} ${e.now}`).join()
  useEffect(() => {
    let newer = false
    // One question at a time: while a drag goes on, only the last place is asked for.
    const wait = setTimeout(() => void conversion.tryout(edits).then(r => newer || setRows(r)), 30)
    return () => {
      newer = true
      clearTimeout(wait)
    }
    // The list is made anew at every step; what it says is what counts.
  }, [conversion, key])
  const before = new Map(told?.headline.map(h => [h.id, h.value])),
    changed = rows.filter(r => r.id && r.value !== undefined && before.get(r.id) !== r.value)
  if (changed.length === 0) return same
  return (
    <table className="figures">
      <tbody>
        {changed.map(r => (
          <tr key={r.id}>
            <td>{r.label}</td>
            <td className="num">
              {before.get(r.id) ?? '–'} → {r.value}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
