import { nearest } from './nearest.ts'
import { readQuantity } from './quantities/read.ts'
import type { Edit } from './text/edit.ts'
import { pathText } from './text/path.ts'

/** A table a module tester wrote, as columns: words as they stand, numbers with the unit of their heading; NaN where a cell is empty. */
export type TesterTable = {
  readonly words: readonly { readonly name: string; readonly values: readonly string[] }[]
  readonly columns: readonly { readonly name: string; readonly unit?: string; readonly values: ArrayLike<number> }[]
  readonly rows: number
}
export type TableProblem = {
  readonly column: string
  readonly row?: number
  readonly what: string
  readonly found: string
  readonly accepted: string
  readonly nearest?: string
}
export type SalvageEdits = { readonly edits: readonly Edit[]; readonly problems: readonly TableProblem[] }

const WORDS = {
  serial: ['serial', 'serial number', 'module', 'id'],
  source: ['source', 'origin', 'car'],
  history: ['history'],
  place: ['place', 'position'],
} as const
const NUMBERS = {
  capacity: { kind: 'charge', names: ['capacity', 'charge', 'q'] },
  resistance: { kind: 'resistance', names: ['resistance', 'r10', 'r10s', 'dcir'] },
  'rest-voltage': { kind: 'voltage', names: ['rest voltage', 'rest voltage 1', 'u1', 'ocv'] },
  'rest-voltage-later': { kind: 'voltage', names: ['rest voltage later', 'rest voltage 2', 'u2', 'ocv later'] },
  'days-apart': { kind: 'duration', names: ['days apart', 'days', 'time apart'] },
  insulation: { kind: 'resistance', names: ['insulation', 'insulation resistance', 'iso'] },
} as const
type NumberKey = keyof typeof NUMBERS
type WordKey = keyof typeof WORDS

const plain = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[-_.\s]+/g, ' ')
    .trim()
const keyOf = <K extends string>(table: Readonly<Record<K, readonly string[]>>, name: string): K | undefined =>
  (Object.keys(table) as K[]).find(key => table[key].includes(plain(name)))
const NAMES: Readonly<Record<NumberKey, readonly string[]>> = {
  capacity: NUMBERS.capacity.names,
  resistance: NUMBERS.resistance.names,
  'rest-voltage': NUMBERS['rest-voltage'].names,
  'rest-voltage-later': NUMBERS['rest-voltage-later'].names,
  'days-apart': NUMBERS['days-apart'].names,
  insulation: NUMBERS.insulation.names,
}

/** Headings a tester's table may have, for the message that one is not known. */
export const TESTER_HEADINGS: readonly string[] = [...Object.values(WORDS).flat(), ...Object.values(NAMES).flat()]
/** Headings whose cells are words: what a reader of such a table must be told. */
export const isTesterWord = (heading: string): boolean => keyOf(WORDS, heading) !== undefined
/** Headings whose cells are numbers. */
export const isTesterNumber = (heading: string): boolean => keyOf(NAMES, heading) !== undefined

/**
 * Turns a module tester's table into edits of `pack.salvage`: one record for each row, found again by its serial number, else under a new short name.
 *
 * `known` are the records the file has already: their names with their serial numbers. An empty cell makes no edit, so its gap stays. A heading that is
 * not known, or whose unit does not fit, is a problem and its column is left out; so is a row without a serial number.
 */
export function salvageEdits(
  table: TesterTable,
  known: Readonly<Record<string, string | undefined>>,
  how = 'measured, module tester',
): SalvageEdits {
  const edits: Edit[] = [],
    problems: TableProblem[] = []
  const unknown = (column: string): void => {
    const near = nearest(plain(column), TESTER_HEADINGS)
    problems.push({
      column,
      what: 'a heading that is not known',
      found: `«${column}»`,
      accepted: TESTER_HEADINGS.join(', '),
      ...(near ? { nearest: near } : {}),
    })
  }
  const words = table.words.flatMap(c => {
    const key = keyOf<WordKey>(WORDS, c.name)
    if (!key) unknown(c.name)
    return key ? [{ ...c, key }] : []
  })
  const numbers = table.columns.flatMap(c => {
    const key = keyOf<NumberKey>(NAMES, c.name)
    if (!key) unknown(c.name)
    return key ? [{ ...c, key }] : []
  })
  const fitting = numbers.filter(c => {
    const read = readQuantity(`1 ${c.unit ?? ''}`.trim(), NUMBERS[c.key].kind)
    if (!read.ok)
      problems.push({
        column: c.name,
        what: 'a unit that does not fit',
        found: c.unit === undefined ? 'no unit' : `«${c.unit}»`,
        accepted: read.problem.accepted,
      })
    return read.ok
  })
  const serials = words.find(c => c.key === 'serial')
  if (!serials)
    return {
      edits: [],
      problems: [
        ...problems,
        { column: 'serial', what: 'no column names the modules', found: 'nothing', accepted: WORDS.serial.join(', ') },
      ],
    }
  const names = new Map(Object.entries(known).flatMap(([name, serial]) => (serial === undefined ? [] : [[serial, name] as const]))),
    taken = new Set(Object.keys(known))
  const fresh = (): string => {
    let n = taken.size + 1
    while (taken.has(`m${String(n).padStart(2, '0')}`)) n++
    const name = `m${String(n).padStart(2, '0')}`
    taken.add(name)
    return name
  }
  const seen = new Set<string>()
  for (let row = 0; row < table.rows; row++) {
    const serial = serials.values[row]?.trim() ?? ''
    if (serial === '' || seen.has(serial)) {
      problems.push({
        column: serials.name,
        row: row + 1,
        what: serial === '' ? 'a row without a serial number' : 'a serial number that stands twice',
        found: `«${serial}»`,
        accepted: 'one row for each module',
      })
      continue
    }
    seen.add(serial)
    const name = names.get(serial) ?? fresh(),
      at = (key: string): string => pathText(['pack', 'salvage', name, key])
    for (const c of words) {
      const text = c.values[row]?.trim() ?? ''
      if (text !== '') edits.push({ path: at(c.key), now: text })
    }
    for (const c of fitting) {
      const value = c.values[row]
      if (value !== undefined && Number.isFinite(value))
        edits.push({ path: at(c.key), now: `${value} ${c.unit ?? ''}`.trim() + ` (${how})` })
    }
  }
  return { edits, problems }
}
