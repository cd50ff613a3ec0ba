import type { Choose } from '../parts/side-by-side.tsx'
import { Price } from './price.tsx'
import type { Piece } from './shelf-api.ts'

/** The pieces of a record that lie on the shelf: free ones and those kept for this car can be chosen, others say whose they are. */
export function OnShelf({
  pieces,
  isHere,
  choose,
}: {
  readonly pieces: readonly Piece[]
  readonly isHere: (p: Piece) => boolean
  readonly choose: Choose | undefined
}) {
  if (pieces.length === 0) return null
  return (
    <ul className="pieces">
      {pieces.map(p => {
        const here = isHere(p),
          taken = p.reserved !== undefined && !here
        return (
          <li key={p.key}>
            On the shelf{p.pieces === 1 ? '' : ` × ${p.pieces}`}: {p.serial === undefined ? p.key : `serial ${p.serial}`}{' '}
            <Price piece={p} />
            {taken ? <small className="marginal">◐ reserved for {p.reserved?.car}</small> : null}
            {here ? <small className="sound">● kept for this car</small> : null}
            {choose && p.part && !taken ? (
              <button type="button" onClick={() => choose(p.part as string, p)}>
                Choose this piece<span className="hidden">: {p.key}</span>
              </button>
            ) : null}
          </li>
        )
      })}
    </ul>
  )
}
