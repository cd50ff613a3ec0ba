import { type FindingView, MARKS } from '@ampwright/workbench'
import { useEffect, useState } from 'react'
import { Link } from 'wouter'
import { useInHand } from '../shell/in-hand.ts'
import { PAGES } from '../stages/pages.ts'
import { DEMO_CAR, isDemo, NOTES, type Note, nextPage, stands } from './notes.ts'
import { isPutAway, putAway } from './put-away.ts'

/** The notes on the demo that belong to a page; nothing on any other conversion, or when they are put away. */
export function TourNotes({ id, page }: { readonly id: string; readonly page: string }) {
  const { conversion, opened } = useInHand(),
    { told, revision } = opened,
    [demo, setDemo] = useState(false),
    [away, setAway] = useState(isPutAway)
  const named = told?.name === DEMO_CAR
  // The text says whether it is the demo: asked anew with every revision, and of no other car.
  useEffect(() => {
    if (!named) return setDemo(false)
    let wanted = true
    void conversion.text().then(text => wanted && setDemo(isDemo(text)))
    return () => {
      wanted = false
    }
  }, [conversion, named, revision])
  const here = NOTES.filter(n => n.page === page)
  if (!demo || away || !told || here.length === 0) return null
  const open = (n: Note): boolean => stands(n, told.findings) === 'open'
  return (
    <aside className="tour" aria-label="Notes on the demo">
      <p className="small quiet">
        The Lapwing is wrong on purpose. {NOTES.filter(n => !open(n)).length} of {NOTES.length} notes are done.
      </p>
      <ol>
        {here.map(n => (
          <NoteView key={n.title} note={n} open={open(n)} first={n === here.find(open)} findings={told.findings} />
        ))}
      </ol>
      <p className="ways">
        <Next id={id} to={nextPage(page, open)} left={here.some(open)} />
        <button
          type="button"
          onClick={() => {
            putAway(true)
            setAway(true)
          }}
        >
          Put the notes away
        </button>
      </p>
    </aside>
  )
}

type Shown = { readonly note: Note; readonly open: boolean; readonly first: boolean; readonly findings: readonly FindingView[] }

/** A done note is a line; of the open ones the first is laid open, so that the page itself stays near. */
function NoteView({ note: n, open, first, findings }: Shown) {
  const number = NOTES.indexOf(n) + 1
  if (!open)
    return (
      <li value={number} className="done">
        <span className="sound">● done</span> <span className="quiet">{n.title}</span>
      </li>
    )
  const outcome = findings.some(f => n.findings.includes(f.id) && f.outcome === 'failing') ? 'failing' : 'unanswered'
  return (
    <li value={number}>
      <details open={first}>
        <summary>
          <h2>
            {n.title}{' '}
            <span className={`small ${outcome}`}>
              {MARKS[outcome]} {outcome}
            </span>
          </h2>
        </summary>
        <p>{n.wrong}</p>
        <p>
          <b>Why it matters.</b> {n.matters}
        </p>
        <p>
          <b>To put it right.</b> {n.press}
        </p>
      </details>
    </li>
  )
}

function Next({ id, to, left }: { readonly id: string; readonly to: string | undefined; readonly left: boolean }) {
  if (to === undefined)
    return (
      <span>{left ? 'No other page has a note left.' : 'All notes are done: begin a conversion of your own, or go on with this one.'}</span>
    )
  return (
    <Link className="button main" href={`/c/${id}/${to}`}>
      Next note: {PAGES[to]?.title ?? 'All findings'}
    </Link>
  )
}
