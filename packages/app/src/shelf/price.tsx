import type { Piece } from './shelf-api.ts'

/** Price of one piece, paid or quoted, when, by whom, and whether the quote still holds. */
export function Price({ piece: p }: { readonly piece: Piece }) {
  if (p.price === undefined)
    return (
      <>
        <span className="unanswered">◌ not known</span>
        <Until piece={p} />
      </>
    )
  return (
    <>
      <span>
        <span className="num">{p.price}</span>
        {p.pieces === 1 ? null : ' each'}
      </span>
      <small>
        {[[p.priceIs, p.pricedOn].filter(Boolean).join(' ') || 'paid or quoted is not said', p.from].filter(Boolean).join(', ')}
      </small>
      <Until piece={p} />
    </>
  )
}

function Until({ piece: p }: { readonly piece: Piece }) {
  if (p.quoteUntil === undefined) return null
  return p.lapsed ? (
    <small className="marginal">◐ the quote ended {p.quoteUntil}: ask again</small>
  ) : (
    <small>holds until {p.quoteUntil}</small>
  )
}
