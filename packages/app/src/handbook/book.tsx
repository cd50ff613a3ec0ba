import type { System } from '@ampwright/conversion'
import type { CardView, HandbookEntry } from '@ampwright/workbench'
import { useEffect, useState } from 'react'
import { Link } from 'wouter'
import { Card } from './card.tsx'
import { Contents } from './contents.tsx'
import type { Handbook } from './handbook.ts'

export type BookAt = {
  readonly handbook: Handbook
  /** Where the handbook stands; a formula is one step below. */
  readonly at: string
  readonly system: System
  readonly formula?: string
  /** The figure of the conversion it was opened from. */
  readonly figure?: string
  /** The conversion behind it is worked out, or there is none. */
  readonly ready: boolean
}

/** Every formula with its fields, alone: the list at the side, one card open. */
export function Book(book: BookAt) {
  const { handbook, at, formula, system } = book,
    [entries, setEntries] = useState<readonly HandbookEntry[]>(),
    [card, setCard] = useState<CardView | null>()
  useEffect(() => void handbook.entries().then(setEntries), [handbook])
  useEffect(() => {
    let gone = false
    if (formula === undefined) setCard(undefined)
    else void handbook.card(formula, system).then(c => gone || setCard(c ?? null))
    return () => {
      gone = true
    }
  }, [handbook, formula, system])
  useEffect(() => {
    if (card?.id === formula) document.getElementById('card')?.focus({ preventScroll: true })
  }, [card?.id, formula])
  return (
    <>
      <p className="lede">
        Each formula alone, with its source, the range in which it holds and what it leaves out. Quantities are typed in any unit.
      </p>
      <div className={`book${formula === undefined ? '' : ' opened'}`}>
        <Contents entries={entries} at={at} {...(formula === undefined ? {} : { formula })} />
        <section id="card" tabIndex={-1} aria-label={card ? card.label : 'No formula open'}>
          {formula === undefined ? (
            <p className="quiet">{entries ? `${entries.length} formulas: choose one, or search by name, symbol or source.` : ''}</p>
          ) : card === null ? (
            <p>There is no formula of the name {formula}.</p>
          ) : card === undefined || card.id !== formula ? (
            <p className="quiet">Opening …</p>
          ) : (
            <>
              <p className="back">
                <Link href={at}>All formulas</Link>
              </p>
              <Card key={card.id} card={card} book={book} />
            </>
          )}
        </section>
      </div>
    </>
  )
}
