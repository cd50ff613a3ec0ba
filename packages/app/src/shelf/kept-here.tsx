import { useState } from 'react'
import { Link } from 'wouter'
import { Price } from './price.tsx'
import { type Piece, shelfApi } from './shelf-api.ts'
import { isKeptFor, type ShelfInHand } from './use-shelf.ts'

/** What of the shelf is kept for this car, and the way to the shelf. */
export function KeptHere({ shelf: { shelf, cars, renew }, id }: { readonly shelf: ShelfInHand; readonly id: string }) {
  const kept = shelf?.pieces.filter(p => isKeptFor(p, id, cars)) ?? [],
    free = shelf?.pieces.filter(p => p.reserved === undefined).length ?? 0,
    [wrong, setWrong] = useState<string>()
  const letGo = async (p: Piece): Promise<void> => {
    const answer = await shelfApi.free(p)
    setWrong(answer.is === 'refused' ? answer.says : undefined)
    await renew()
  }
  return (
    <section aria-label="On the shelf of the workshop">
      <p>
        <Link href={`/shelf?car=${id}`}>Shelf of parts</Link>{' '}
        <span className="quiet">
          {shelf === undefined
            ? 'Looking …'
            : `${free} ${free === 1 ? 'entry is' : 'entries are'} free, ${kept.length === 0 ? 'none' : kept.length} kept for this car.`}
        </span>
      </p>
      {kept.length ? (
        <ul className="pieces">
          {kept.map(p => (
            <li key={p.key}>
              {p.label}
              {p.pieces === 1 ? '' : ` × ${p.pieces}`}
              {p.serial === undefined ? '' : `, serial ${p.serial}`} <Price piece={p} />
              <button type="button" className="bare" onClick={() => void letGo(p)}>
                Free it<span className="hidden">: {p.key}</span>
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      {wrong ? (
        <p className="failing" role="alert">
          ▲ {wrong}
        </p>
      ) : null}
    </section>
  )
}
