import { useState } from 'react'
import { api } from '../server/api.ts'
import { useInHand } from '../shell/in-hand.ts'
import { saveAs } from '../save-as.ts'
import type { Revision } from './revisions-page.tsx'
import { fileName } from './sides.ts'

/** Revisions shown before the earlier ones are asked for. */
const FIRST = 20

/** Revisions, newest first, each with what can be done with it. */
export function RevisionTable({
  list,
  tell,
  compare,
}: {
  readonly list: readonly Revision[]
  readonly tell: (e: unknown) => void
  readonly compare: (revision: number) => void
}) {
  const { opened } = useInHand(),
    [all, setAll] = useState(false),
    [looked, setLooked] = useState<{ readonly revision: number; readonly text: string }>()
  const look = (n: number): void => {
    if (looked?.revision === n) setLooked(undefined)
    else void api.revision(opened.id, n).then(setLooked, tell)
  }
  return (
    <>
      <ol className="revisions">
        {(all ? list : list.slice(0, FIRST)).map(r => (
          <li key={r.revision}>
            <Row revision={r} looked={looked?.revision === r.revision} look={() => look(r.revision)} compare={compare} tell={tell} />
            {looked?.revision === r.revision ? (
              <pre className="text" tabIndex={0} aria-label={`Text of revision ${r.revision}`}>
                {looked?.text}
              </pre>
            ) : null}
          </li>
        ))}
      </ol>
      {!all && list.length > FIRST ? (
        <button type="button" onClick={() => setAll(true)}>
          Show {list.length - FIRST} earlier ones
        </button>
      ) : null}
    </>
  )
}

function Row({
  revision: { revision: n, at, by, what },
  looked,
  look,
  compare,
  tell,
}: {
  readonly revision: Revision
  readonly looked: boolean
  readonly look: () => void
  readonly compare: (revision: number) => void
  readonly tell: (e: unknown) => void
}) {
  const { conversion, opened } = useInHand(),
    now = n === opened.revision
  return (
    <div className="revision">
      <div>
        <b>Revision {n}</b>
        {now ? <span className="sound"> ● as it stands</span> : null}
        <div className="what">{what || (n === 1 ? 'the beginning' : 'no word about it')}</div>
        <div className="quiet small">
          {at ? new Date(at).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' }) : ''}
          {by ? ` · ${by}` : ''}
        </div>
      </div>
      <div className="does">
        <button type="button" aria-expanded={looked} onClick={look} aria-label={`Look at revision ${n}`}>
          {looked ? 'Fold' : 'Look'}
        </button>
        <button
          type="button"
          aria-label={`Export revision ${n} as YAML`}
          onClick={() => void api.revision(opened.id, n).then(r => saveAs(r.text, 'application/yaml', fileName(opened.name, n)), tell)}
        >
          Export
        </button>
        {now ? null : (
          <>
            <button type="button" aria-label={`Compare revision ${n} with now`} onClick={() => compare(n)}>
              Compare
            </button>
            <button
              type="button"
              aria-label={`Bring revision ${n} back`}
              disabled={opened.saving === 'server away'}
              onClick={() => conversion.restore(n)}
            >
              Bring back
            </button>
          </>
        )}
      </div>
    </div>
  )
}
