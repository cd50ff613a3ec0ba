import type { ShelfSearch } from '@ampwright/workbench'
import type { Shelf } from './shelf-api.ts'

/** What is asked of the shelf: words, a class, and free (`free`), all (empty) or those of a car by its name (`for NAME`). */
export type Asked = { readonly words: string; readonly class: string; readonly kept: string }

export const searchOf = ({ words, class: only, kept }: Asked): ShelfSearch => ({
  words,
  ...(only === '' ? {} : { class: only }),
  ...(kept === '' ? {} : { kept: kept === 'free' ? ('free' as const) : { car: kept.slice('for '.length) } }),
})

export function ShelfSearchBar({
  shelf,
  asked,
  ask,
  found,
}: {
  readonly shelf: Shelf
  readonly asked: Asked
  readonly ask: (asked: Asked) => void
  readonly found: number
}) {
  const kept = [...new Set(shelf.pieces.flatMap(p => p.reserved?.car ?? []))],
    all = shelf.pieces.length
  return (
    <div className="add">
      <input
        type="search"
        aria-label="Search the shelf"
        placeholder="search: serial, place, words"
        value={asked.words}
        onChange={e => ask({ ...asked, words: e.target.value })}
        autoComplete="off"
      />
      <select aria-label="Class of parts" value={asked.class} onChange={e => ask({ ...asked, class: e.target.value })}>
        <option value="">every class</option>
        {shelf.classes.map(c => (
          <option key={c.class} value={c.class}>
            {c.label} ({c.count})
          </option>
        ))}
      </select>
      <select aria-label="Free or kept" value={asked.kept} onChange={e => ask({ ...asked, kept: e.target.value })}>
        <option value="">free or kept</option>
        <option value="free">free</option>
        {kept.map(car => (
          <option key={car} value={`for ${car}`}>
            kept for {car}
          </option>
        ))}
      </select>
      <span role="status" className="small quiet">
        {all === 0
          ? 'Nothing lies here yet.'
          : found === all
            ? `${all} ${all === 1 ? 'entry' : 'entries'}`
            : found === 0
              ? 'Nothing here answers to that.'
              : `${found} of ${all} entries`}
      </span>
    </div>
  )
}
