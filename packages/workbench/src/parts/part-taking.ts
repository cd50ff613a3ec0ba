import { filling, part } from '@ampwright/catalogue'
import type { Conversion, Edit } from '@ampwright/conversion'
import type { Fact } from '@ampwright/engine'
import type { Desk } from '../desk/desk.ts'
import { type PricePlace, pricePlace } from '../shelf/price-place.ts'
import { headed, shown } from '../shown.ts'
import { namedFills } from './standing.ts'

/** One value of the file that choosing a part moves. */
export type PartFill = {
  readonly path: string
  readonly label: string
  /** What stands before, and after; absent where nothing does. */
  readonly before?: string
  readonly after?: string
  readonly how: string
}
/** What choosing a part does to the file, before it is done. */
export type PartTaking = {
  readonly edits: readonly Edit[]
  /** What the part fills, with how that is known. */
  readonly fills: readonly PartFill[]
  /** Typed in the file, so that it stays although the record says something: as typed, and what the record says. */
  readonly stays: readonly PartFill[]
  /** Typed there too, and the record says nothing of it: it stays. */
  readonly others: readonly PartFill[]
  /** The same with what was typed taken out, so that the figures of the part stand. */
  readonly freeing: readonly Edit[]
  /** Where the price of this part stands, with what is typed there now; absent where the file has no place for it. */
  readonly price?: PricePlace & { readonly typed: string | null }
}

/** What choosing a part at a place of the file fills and leaves, by reading the file with it; why it cannot be chosen, where it cannot. */
export function partTaking(desk: Desk, path: string, id: string): PartTaking | { readonly refused: string } {
  const record = part(id)
  if (record === undefined) return { refused: `«${id}» is not in the catalogue` }
  const edits: readonly Edit[] = [{ path, now: id }],
    tried = desk.tried(edits)
  if (!tried.ok) return { refused: tried.issues.map(i => `${i.path}: ${i.what}; found ${i.found}; accepted ${i.accepted}`).join('; ') }
  const note = `part ${id}`,
    here = factsOf(desk.current()),
    then = factsOf(tried.conversion)
  const out = (p: string): Edit => ({ path: p, now: null })
  const typed = keysFilled(path, Object.keys(filling(record)), then).filter(p => desk.at(p) !== null),
    freed = desk.tried([...edits, ...typed.map(out)]),
    free = freed.ok ? factsOf(freed.conversion) : then,
    staying = typed.filter(p => free.get(p)?.origin?.note === note)
  const fill = (p: string, of: ReadonlyMap<string, Fact>): PartFill => ({
    path: p,
    label: headed(of.get(p)?.label ?? p),
    ...told('before', here.get(p), desk),
    ...told('after', of.get(p), desk),
    how: of.get(p)?.origin?.how ?? '',
  })
  return {
    edits,
    fills: [...filledAnew(here, then, note), ...lost(here, then, note, path)].map(p => fill(p, then)),
    stays: staying.map(p => fill(p, free)),
    others: typedBelow(desk, here, path)
      .filter(p => !typed.includes(p))
      .map(p => fill(p, here)),
    freeing: [...edits, ...staying.map(out)],
    ...priced(desk, path),
  }
}

function priced(desk: Desk, path: string): Pick<PartTaking, 'price'> {
  const at = pricePlace(path),
    typed = at && desk.at(at.path)
  return at ? { price: { ...at, typed: typeof typed === 'string' ? typed : null } } : {}
}
const filledAnew = (here: Facts, then: Facts, note: string): readonly string[] =>
  [...then.values()].filter(f => f.origin?.note === note && here.get(f.path)?.origin?.note !== note).map(f => f.path)
/** What the part before filled at this place and the new one does not. The same part may stand at another place, where nothing moves. */
const lost = (here: Facts, then: Facts, note: string, path: string): readonly string[] => {
  const before = `part ${here.get(path)?.value}`,
    group = path.slice(0, path.lastIndexOf('.') + 1)
  if (before === note) return []
  return [...here.values()]
    .filter(f => f.path.startsWith(group) && f.origin?.note === before && then.get(f.path)?.origin?.note !== note)
    .map(f => f.path)
}
const told = <K extends 'before' | 'after'>(key: K, f: Fact | undefined, desk: Desk): { readonly [k in K]?: string } =>
  (f === undefined ? {} : { [key]: shown(f, desk.system, f.half) }) as { readonly [k in K]?: string }
type Facts = ReadonlyMap<string, Fact>
const factsOf = (c: Conversion): Facts => new Map((c.facts as readonly Fact[]).map(f => [f.path, f]))

/** What is typed in the group of the place, and no deeper. A part among others of its group fills only what it is named for: the rest is not its own. */
const typedBelow = (desk: Desk, facts: Facts, path: string): readonly string[] => {
  const group = path.slice(0, path.lastIndexOf('.') + 1)
  if (namedFills(path)) return []
  return [...facts.keys()].filter(p => p.startsWith(group) && p !== path && !/[.#]/.test(p.slice(group.length)) && desk.at(p) !== null)
}

/** Values below the place whose keys the record knows: where typed, they stand in the way of its figures. */
function keysFilled(path: string, known: readonly string[], facts: Facts): readonly string[] {
  const group = path.slice(0, path.lastIndexOf('.') + 1),
    named = namedFills(path),
    keys = named ? Object.keys(named) : known
  return [...facts.keys()].filter(p => p.startsWith(group) && p !== path && keys.includes(p.slice(p.lastIndexOf('.') + 1)))
}
