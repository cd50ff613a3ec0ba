import {
  type Edit,
  fieldAt,
  isTesterNumber,
  isTesterWord,
  pathKeys,
  pathText,
  readQuantity,
  salvageEdits,
  type TesterTable,
} from '@ampwright/conversion'
import { type Fact, type Gap, isGap, type Model } from '@ampwright/engine'
import { readCsv } from '@ampwright/exchange'
import { rowLines } from './row-lines.ts'

/** One thing wrong in a tester's table, with its place: line of the text, row below the headings, name of the column. */
export type TableFault = {
  readonly line?: number
  /** Where in the line, counted in characters; only where a cell could not be read. */
  readonly character?: number
  readonly row?: number
  readonly column: string
  readonly what: string
  readonly found: string
  readonly accepted: string
  readonly nearest?: string
}
export type TesterReading = {
  /** What the table would change; nothing where it has a fault. */
  readonly edits: readonly Edit[]
  readonly faults: readonly TableFault[]
  /** Faults beyond those listed. */
  readonly more: number
  readonly rows: number
}

/**
 * A module tester's table, held against the salvaged modules of a car: the edits it comes to, or everything that is wrong with it. Separated by commas,
 * semicolons or tabs, as a spreadsheet gives it. A cell that says what is measured already is no edit: its ± and origin stay.
 */
export function testerTable(bytes: Uint8Array, { pack }: Model): TesterReading {
  const answer = readCsv(bytes, { words: isTesterWord, empty: 'nan' }),
    lines = rowLines(bytes)
  const known = Object.fromEntries(
    Object.entries(pack.salvage).map(([name, { serial }]) => [name, isGap(serial) ? undefined : serial.value] as const),
  )
  if ('issues' in answer) {
    const cells = answer.issues.map(({ path, line, column, what, found, accepted }): TableFault => {
      const row = lines.indexOf(line)
      return { line, character: column, ...(row > 0 ? { row } : {}), column: path, what, found, accepted }
    })
    const others = asWords(bytes),
      more = others ? faultsOf(others, known, lines) : []
    // Cells below a heading nobody knows are not looked at: the heading is what is wrong.
    const own = others ? cells.filter(f => f.column === '' || isTesterNumber(f.column) || isTesterWord(f.column)) : cells
    return { edits: [], faults: [...more, ...own].sort(byLine), more: answer.more, rows: Math.max(0, lines.length - 1) }
  }
  const { edits } = salvageEdits(answer.csv, known),
    faults = faultsOf(answer.csv, known, lines)
  return { edits: faults.length ? [] : edits.filter(e => isNews(e, pack.salvage)), faults, more: 0, rows: answer.csv.rows }
}

const byLine = (a: TableFault, b: TableFault): number => (a.line ?? 0) - (b.line ?? 0)

/** The table once more with every cell as it stands, to judge headings and serial numbers beside cells that cannot be read. */
function asWords(bytes: Uint8Array): TesterTable | undefined {
  const answer = readCsv(bytes, { words: () => true })
  if ('issues' in answer) return undefined
  const { words, rows } = answer.csv,
    isWord = (c: { name: string }): boolean => isTesterWord(c.name)
  const blank = new Float64Array(rows).fill(Number.NaN)
  return { rows, words: words.filter(isWord), columns: words.filter(c => !isWord(c)).map(c => ({ ...c, values: blank })) }
}

const faultsOf = (table: TesterTable, known: Readonly<Record<string, string | undefined>>, lines: readonly number[]): TableFault[] =>
  salvageEdits(table, known).problems.map(p => {
    const line = lines[p.row ?? 0]
    return { ...p, ...(line === undefined ? {} : { line }) }
  })

type Records = Model['pack']['salvage']
const camel = (key: string): string => key.replace(/-(\w)/g, (_, c: string) => c.toUpperCase())

/** Does an edit say anything that is not measured already? What was only assumed is news once it is measured, though the number be the same. */
function isNews({ path, now }: Edit, records: Records): boolean {
  const [, , name = '', key = ''] = pathKeys(path) ?? [],
    stands = (records[name] as unknown as Record<string, Fact | Fact<string> | Gap> | undefined)?.[camel(key)]
  if (stands === undefined || isGap(stands) || typeof now !== 'string') return true
  if (typeof stands.value === 'string') return stands.value !== now
  const field = fieldAt(pathText(['pack', 'salvage', name, key]))
  if (field?.is !== 'quantity' || typeof stands.value !== 'number') return true
  if (stands.origin && stands.origin.how !== 'measured') return true
  const read = readQuantity(now, field.kind)
  return !read.ok || Math.abs(read.quantity.value - stands.value) > SAME * Math.abs(stands.value)
}
/** Numbers closer than this part of themselves are one number written in two units. */
const SAME = 1e-9
