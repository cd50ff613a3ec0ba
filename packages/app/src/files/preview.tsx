import type { Edit } from '@ampwright/conversion'
import { useEffect, useState } from 'react'
import { useInHand } from '../shell/in-hand.ts'
import type { Preview } from '../worker/service.ts'

/** What edits would do to the car: the headline before and after, what they cure and what they bring to light. */
export function PreviewOf({ edits }: { readonly edits: readonly Edit[] }) {
  const { conversion, opened } = useInHand(),
    ready = opened.told !== undefined,
    [preview, setPreview] = useState<Preview>()
  useEffect(() => {
    let gone = false
    setPreview(undefined)
    if (!ready) return undefined
    void conversion.preview(edits).then(p => {
      if (!gone) setPreview(p)
    })
    return () => {
      gone = true
    }
  }, [conversion, edits, ready])
  if (!preview) return <p role="status">Working out what it would do …</p>
  const { headline, cures, worsens, refused } = preview
  if (refused !== undefined && headline.length + cures.length + worsens.length === 0) return <p role="status">{refused}</p>
  return (
    <div role="status">
      {headline.length === 0 ? <p>No figure of the headline moves.</p> : null}
      {headline.length ? (
        <table className="figures">
          <thead>
            <tr>
              <th>Headline</th>
              <th>before</th>
              <th>after</th>
            </tr>
          </thead>
          <tbody>
            {headline.map(h => (
              <tr key={h.label}>
                <td>{h.label}</td>
                <td className="num">{h.before}</td>
                <td className="num">{h.after}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
      {cures.map(c => (
        <p key={c} className="small">
          <span className="sound">●</span> no longer failing: {c}
        </p>
      ))}
      {worsens.map(w => (
        <p key={w} className="small">
          <span className="failing">▲</span> would be failing: {w}
        </p>
      ))}
    </div>
  )
}
