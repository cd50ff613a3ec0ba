import { type PartTaking, type PricePlace, priceText } from '@ampwright/workbench'
import { useId } from 'react'
import type { Piece } from './shelf-api.ts'

/** The price of a piece, and where in the conversion it would go. */
export type PriceOffered = {
  readonly at: PricePlace
  readonly text: string
  readonly typed: string | null
  readonly piece: Piece
}

/** What a piece cost as an edit of the conversion; undefined where the file has no place for it, or it stands there already. */
export function priced({ price }: PartTaking, piece: Piece): PriceOffered | undefined {
  const text = priceText(piece)
  return price === undefined || text === undefined || price.typed === text ? undefined : { at: price, text, typed: price.typed, piece }
}

/** Offers to put the price of the piece where the file keeps it, beside what stands there. */
export function PriceTaken({
  price: { at, typed, piece },
  on,
  turn,
}: {
  readonly price: PriceOffered
  readonly on: boolean
  readonly turn: (on: boolean) => void
}) {
  const id = useId()
  return (
    <p>
      <input type="checkbox" id={id} checked={on} onChange={e => turn(e.target.checked)} />{' '}
      <label htmlFor={id}>
        Put its price, <b className="num">{piece.price}</b>
        {piece.pieces === 1 ? '' : ' each'}
        {piece.priceIs ? ` ${piece.priceIs}` : ''}
        {piece.pricedOn ? ` ${piece.pricedOn}` : ''}, in the place of <span className="num">{typed ?? 'nothing'}</span>:{' '}
        {at.label.toLowerCase()}
      </label>
      {piece.lapsed ? <span className="small marginal"> ◐ The quote ended {piece.quoteUntil}: ask again.</span> : null}
      {at.says ? <span className="small quiet"> {at.says}</span> : null}
    </p>
  )
}
