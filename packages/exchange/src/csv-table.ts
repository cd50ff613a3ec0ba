import type { Issue } from './issue.ts'

export type Separator = ',' | ';' | '\t'
export type NumberColumn = { readonly name: string; readonly unit?: string; readonly values: Float64Array }
export type WordColumn = { readonly name: string; readonly unit?: string; readonly values: readonly string[] }

export type Csv = {
  readonly columns: readonly NumberColumn[]
  /** The columns asked for as words. */
  readonly words: readonly WordColumn[]
  readonly rows: number
  /** Lines before the header that start with #, without it: licence, origin, conditions. */
  readonly notes: readonly string[]
  readonly separator: Separator
}

/** The table, or everything that is wrong with the file: the first hundred issues, and how many more there are. */
export type CsvAnswer = { readonly csv: Csv } | { readonly issues: readonly Issue[]; readonly more: number }

export type CsvOptions = {
  /** Without it: a tab if the header has one, else a semicolon if it has one, else a comma. */
  readonly separator?: Separator
  /** Columns to be kept as words instead of read as numbers: names that must be there, or which of the names there are. */
  readonly words?: readonly string[] | ((name: string) => boolean)
  /** What an empty cell of a number column is: an issue, or NaN. */
  readonly empty?: 'refuse' | 'nan'
  readonly mostBytes?: number
  /** Most cells kept, words and numbers together. */
  readonly mostCells?: number
}

export const MOST_CSV_BYTES = 100_000_000
export const MOST_CSV_CELLS = 20_000_000
