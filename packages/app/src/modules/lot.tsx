import type { LotView } from '@ampwright/workbench'
import { FigureTable } from '../working/figure-table.tsx'

/** Which module goes into which string and which place, or what is still asked before that can be said. */
export function Sorting({ lot }: { readonly lot: LotView }) {
  const by = [...new Set(lot.sorting.map(s => s.label))]
  return (
    <section aria-label="Sorting">
      <h2>Sorted so that the weakest holds the most</h2>
      {lot.places === undefined ? null : (
        <p>
          {lot.recorded} recorded as in the pack, {lot.places} places.
        </p>
      )}
      {lot.wanted.length ? (
        <p className="unanswered">◌ unanswered: before the lot can be sorted it takes {lot.wanted.join('; ')}.</p>
      ) : null}
      {lot.sorting.length === 1 ? <p>One string: the order changes nothing, only which modules are in it.</p> : null}
      {by.map(label => (
        <div key={label}>
          <h3>{label.replace(/^\p{Ll}/u, c => c.toUpperCase())}</h3>
          <table className="figures">
            <tbody>
              {lot.sorting
                .filter(s => s.label === label)
                .map(s => (
                  <tr key={s.name}>
                    <th scope="row">{s.name}</th>
                    <td className="num wrap">{s.modules}</td>
                  </tr>
                ))}
            </tbody>
          </table>
        </div>
      ))}
    </section>
  )
}

/** What the lot and the pack come to; each figure opens its working. */
export function LotFigures({ lot }: { readonly lot: LotView }) {
  return (
    <section aria-label="What the lot comes to">
      <h2>What it comes to: the weakest decides</h2>
      <FigureTable figures={lot.figures} />
    </section>
  )
}
