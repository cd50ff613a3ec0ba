import type { ApiConversionLine } from '@ampwright/server'
import { type ReactNode, useState } from 'react'
import { Price } from './price.tsx'
import type { Piece } from './shelf-api.ts'
import { carName } from './use-shelf.ts'

/** What can be done with a piece. */
export type PieceActs = {
  readonly change: (p: Piece) => void
  readonly takeAway: (p: Piece) => void
  readonly free: (p: Piece) => void
  readonly reserve: (p: Piece, car: ApiConversionLine) => void
}

/** What lies on the shelf, a row each; on a narrow screen a card each. */
export function ShelfTable({
  pieces,
  cars,
  acts,
  open,
}: {
  readonly pieces: readonly Piece[]
  readonly cars: readonly ApiConversionLine[]
  readonly acts: PieceActs
  /** The piece that is being changed, and the form for it. */
  readonly open: { readonly key: string; readonly form: ReactNode } | undefined
}) {
  return (
    <table className="many shelf">
      <thead>
        <tr>
          <th scope="col">Piece</th>
          <th scope="col">Serial number</th>
          <th scope="col">Price</th>
          <th scope="col">Lies</th>
          <th scope="col">Kept for</th>
          <th scope="col">
            <span className="hidden">What can be done</span>
          </th>
        </tr>
      </thead>
      {pieces.map(p => (
        <tbody key={p.key}>
          <tr data-piece={p.key}>
            <th scope="row">
              <Named piece={p} />
            </th>
            <td data-is="Serial number">{p.serial ?? <None />}</td>
            <td data-is="Price">
              <Price piece={p} />
            </td>
            <td data-is="Lies">
              {p.place ?? <None />}
              {p.condition ? <small>{p.condition}</small> : null}
              {p.note ? <small>{p.note}</small> : null}
            </td>
            <td data-is="Kept for">
              <KeptFor piece={p} cars={cars} acts={acts} />
            </td>
            <td className="acts">
              <button type="button" aria-expanded={open?.key === p.key} onClick={() => acts.change(p)}>
                Change<span className="hidden"> {p.key}</span>
              </button>{' '}
              <button type="button" onClick={() => acts.takeAway(p)}>
                Take away<span className="hidden"> {p.key}</span>
              </button>
            </td>
          </tr>
          {open?.key === p.key ? (
            <tr className="opened">
              <td colSpan={6}>{open.form}</td>
            </tr>
          ) : null}
        </tbody>
      ))}
    </table>
  )
}

const None = () => <span className="quiet">–</span>

function Named({ piece: p }: { readonly piece: Piece }) {
  return (
    <>
      {p.label}
      {p.pieces === 1 ? null : <span className="num"> × {p.pieces}</span>}
      <code>{p.key}</code>
      {p.part ? <code>{p.part}</code> : null}
      {p.unknown ? <span className="small failing">▲ not in the catalogue</span> : null}
    </>
  )
}

function KeptFor({
  piece: p,
  cars,
  acts,
}: {
  readonly piece: Piece
  readonly cars: readonly ApiConversionLine[]
  readonly acts: PieceActs
}) {
  const [chosen, setChosen] = useState('')
  if (p.reserved) {
    const there = cars.find(c => c.id === p.reserved?.id)
    return (
      <>
        {there ? <a href={`/c/${there.id}/parts`}>{p.reserved.car}</a> : p.reserved.car}
        {p.reserved.missing ? (
          <small className="marginal">◐ No such car is here any more, or several are called so: free it, or bring the car back.</small>
        ) : null}{' '}
        <button type="button" className="bare" onClick={() => acts.free(p)}>
          Free it<span className="hidden">: {p.key}</span>
        </button>
      </>
    )
  }
  if (cars.length === 0) return <span className="quiet">free</span>
  const car = cars.find(c => c.id === chosen)
  return (
    <span className="keep">
      <select aria-label={`Car to keep ${p.key} for`} value={chosen} onChange={e => setChosen(e.target.value)}>
        <option value="">free</option>
        {cars.map(c => (
          <option key={c.id} value={c.id}>
            {carName(c)}
          </option>
        ))}
      </select>
      {car ? (
        <button
          type="button"
          className="main"
          onClick={() => {
            setChosen('')
            acts.reserve(p, car)
          }}
        >
          Reserve<span className="hidden"> {p.key}</span>
        </button>
      ) : null}
    </span>
  )
}
