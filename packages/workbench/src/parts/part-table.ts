import { fieldKinds, findParts, type Mark, type Part } from '@ampwright/catalogue'
import { readQuantity, type System, writeQuantity } from '@ampwright/conversion'
import { headed } from '../shown.ts'
import { partsFor } from './fitting.ts'
import { classLabel } from './places.ts'

/** One figure of a record in the reader's units, and how it is known. */
export type PartFigure = { readonly text: string; readonly mark: Mark; readonly source?: string }
export type PartRow = {
  readonly id: string
  readonly label: string
  readonly class: string
  readonly price?: string
  readonly remark?: string
  readonly figures: Readonly<Record<string, PartFigure>>
}
/** Records side by side: the columns in which they differ, and what is the same in all of them. */
export type PartTable = {
  readonly classes: readonly { readonly class: string; readonly label: string; readonly count: number }[]
  /** How many fit, and those that are laid side by side. */
  readonly found: number
  readonly rows: readonly PartRow[]
  readonly differing: readonly { readonly key: string; readonly label: string }[]
  readonly same: readonly ({ readonly key: string; readonly label: string } & PartFigure)[]
  /** The mark most figures carry: the others say theirs. */
  readonly mark: Mark
}
export type PartSearch = {
  /** Classes of the place; none for the whole catalogue. */
  readonly classes: readonly string[]
  readonly words?: string
  /** One class of those. */
  readonly class?: string
  /** Most records to lay side by side. */
  readonly most?: number
}

/** The records that fit a place and a search, side by side, differences first. */
export function partTable({ classes, words = '', class: only, most = Number.POSITIVE_INFINITY }: PartSearch, system: System): PartTable {
  const fitting = partsFor(classes),
    said = words.trim() === '' ? undefined : new Set(findParts(words)),
    found = fitting.filter(p => said === undefined || said.has(p)),
    listed = found.filter(p => only === undefined || p.class === only)
  const rows = listed.slice(0, most).map(p => rowOf(p, system)),
    keys = [...new Set(rows.flatMap(r => Object.keys(r.figures)))],
    differs = (key: string): boolean => rows.length === 1 || new Set(rows.map(r => r.figures[key]?.text)).size > 1
  return {
    classes: counted(found),
    found: listed.length,
    rows,
    differing: keys.filter(differs).map(key => ({ key, label: columnLabel(key) })),
    same: keys.flatMap(key => (differs(key) ? [] : [{ key, label: columnLabel(key), ...(rows[0]?.figures[key] as PartFigure) }])),
    mark: commonest(rows.flatMap(r => Object.values(r.figures).map(f => f.mark))),
  }
}

const columnLabel = (key: string): string => headed(key.replaceAll('-', ' '))
const counted = (found: readonly Part[]): PartTable['classes'] =>
  [...new Set(found.map(p => p.class))].map(c => ({
    class: c,
    label: headed(classLabel(c)),
    count: found.filter(p => p.class === c).length,
  }))
function commonest(marks: readonly Mark[]): Mark {
  const count = (m: Mark): number => marks.filter(x => x === m).length
  return (['from memory', 'common practice', 'published'] as const).reduce((a, b) => (count(b) > count(a) ? b : a))
}

function rowOf(p: Part, system: System): PartRow {
  const figures = Object.entries(p.fields).map(
    ([key, f]) =>
      [key, { text: inUnits(key, f.text, system), mark: f.mark, ...(f.source === undefined ? {} : { source: f.source }) }] as const,
  )
  return {
    id: p.id,
    label: headed(p.label),
    class: p.class,
    figures: Object.fromEntries(figures),
    ...(p.price === undefined ? {} : { price: priceText(p.price) }),
    ...(p.remark === undefined ? {} : { remark: p.remark }),
  }
}

/** The text of a record in the reader's units, spread and all. */
function inUnits(key: string, text: string, system: System): string {
  const kind = fieldKinds[key]
  if (kind === undefined || kind === 'word') return text
  const read = readQuantity(text, kind)
  if (!read.ok) return text
  const { value, half } = read.quantity
  return writeQuantity(value, kind, { system, ...(half === undefined ? {} : { half }) })
}

/** A price band as printed: a band is common practice, never an offer. */
export const priceText = (p: NonNullable<Part['price']>): string =>
  `${p.low === p.high ? p.low : `${p.low} to ${p.high}`}\u00a0€${p.per ? ` for ${p.per}` : ''}, ${p.when}`
