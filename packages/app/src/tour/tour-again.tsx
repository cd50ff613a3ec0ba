import { useState } from 'react'
import { isPutAway, putAway } from './put-away.ts'

/** Brings the notes of the demo back; nothing where they were never put away. */
export function TourAgain() {
  const [was] = useState(isPutAway),
    [away, setAway] = useState(was)
  if (!was) return null
  return (
    <div className="add">
      {away ? (
        <button
          type="button"
          onClick={() => {
            putAway(false)
            setAway(false)
          }}
        >
          Bring back the notes on the demo
        </button>
      ) : (
        <span role="status">The notes are back on the pages of the Lapwing.</span>
      )}
    </div>
  )
}
