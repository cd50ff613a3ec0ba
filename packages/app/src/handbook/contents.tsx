import { cardsFound, type HandbookEntry } from '@ampwright/workbench'
import { useEffect, useId, useRef, useState } from 'react'
import { Link } from 'wouter'

/** Most found cards that are listed: beyond that a further word helps more than a longer list. */
const MOST = 60

/** The list of the handbook: chapters that fold, or what a search finds. */
export function Contents({
  entries = [],
  at,
  formula,
}: {
  readonly entries: readonly HandbookEntry[] | undefined
  readonly at: string
  readonly formula?: string
}) {
  const [typed, setTyped] = useState(''),
    id = useId(),
    list = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const here = list.current?.querySelector<HTMLElement>('[aria-current]')
    // The list alone moves to what is open in it, never the page.
    if (here && list.current) list.current.scrollTop = here.offsetTop - list.current.clientHeight / 2
  }, [entries, formula])
  const found = cardsFound(entries, typed),
    searching = typed.trim() !== ''
  return (
    <nav className="contents" aria-label="Formulas">
      <label htmlFor={id} className="small">
        Search by name, symbol, source
      </label>
      <input id={id} type="search" value={typed} onChange={e => setTyped(e.target.value)} autoComplete="off" spellCheck={false} />
      <p role="status" className="small quiet">
        {searching
          ? `${found.length === 0 ? 'None' : found.length} found${found.length > MOST ? `; the first ${MOST} are listed` : ''}`
          : ''}
      </p>
      <div className="list" ref={list}>
        {searching ? (
          <List entries={found.slice(0, MOST)} at={at} formula={formula} />
        ) : (
          [...new Set(entries.map(e => e.chapter))].map(chapter => {
            const of = entries.filter(e => e.chapter === chapter)
            return (
              <details className="group" key={`${chapter} ${of.some(e => e.id === formula)}`} open={of.some(e => e.id === formula)}>
                <summary>
                  {chapter.replace(/^./, c => c.toUpperCase())} <span className="quiet small">{of.length}</span>
                </summary>
                <List entries={of} at={at} formula={formula} />
              </details>
            )
          })
        )}
      </div>
    </nav>
  )
}

function List({
  entries,
  at,
  formula,
}: {
  readonly entries: readonly HandbookEntry[]
  readonly at: string
  readonly formula: string | undefined
}) {
  return (
    <ul>
      {entries.map(e => (
        <li key={e.id}>
          <Link href={`${at}/${e.id}`} aria-current={e.id === formula ? 'page' : undefined}>
            {e.label}
          </Link>
        </li>
      ))}
    </ul>
  )
}
