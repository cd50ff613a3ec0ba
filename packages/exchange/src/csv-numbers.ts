import type { CellReader } from './csv-cells.ts'
import type { Separator } from './csv-table.ts'

export type NoNumber = { readonly what: string; readonly accepted: string }

const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?$/

/** Reads the numbers of one table, which all have the same decimal mark. */
export class CsvNumbers {
  readonly #commas: boolean
  #mark: string | undefined
  #since = 0

  constructor(separator: Separator) {
    this.#commas = separator !== ','
  }

  /** The number a cell holds; undefined when it is empty; otherwise what is wrong with it. */
  value(text: string, at: Pick<CellReader, 'cellPlace'>): number | undefined | NoNumber {
    const cell = text.trim()
    if (cell === '') return undefined
    if (!NUMBER.test(cell)) return this.#wrong(cell)
    const mark = cell.includes('.') ? '.' : cell.includes(',') ? ',' : undefined
    if (mark === ',' && !this.#commas) {
      return { what: 'a comma stands in a number', accepted: 'a decimal point, or semicolons between the columns' }
    }
    if (mark !== undefined && mark !== this.#mark) {
      if (this.#mark !== undefined) {
        return {
          what: 'the decimal mark changes',
          accepted: `a decimal ${this.#mark === ',' ? 'comma' : 'point'} as in line ${this.#since}`,
        }
      }
      this.#mark = mark
      this.#since = at.cellPlace().line
    }
    const value = Number(mark === ',' ? cell.replace(',', '.') : cell)
    return Number.isFinite(value) ? value : { what: 'a number is too large', accepted: 'at most 1.8e308' }
  }

  #wrong(cell: string): NoNumber {
    const mark = this.#mark === ',' || (this.#mark === undefined && this.#commas) ? 'point or comma' : 'point'
    if (/^[+-]?\d{1,3}(?:[., '’\u00a0\u202f]\d{3})+(?:[.,]\d+)?$/.test(cell)) {
      return { what: 'a number has thousands separators', accepted: `digits with one decimal ${mark} only` }
    }
    return { what: 'a cell is no number', accepted: `a number with a decimal ${mark}` }
  }
}
