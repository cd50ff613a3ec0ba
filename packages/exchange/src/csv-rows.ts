import { type CellListener, CellReader } from './csv-cells.ts'
import { type Heading, headingOf, headingText } from './csv-header.ts'
import { CsvNumbers } from './csv-numbers.ts'
import { CsvPreamble } from './csv-preamble.ts'
import { type CsvAnswer, type CsvOptions, MOST_CSV_CELLS, type Separator } from './csv-table.ts'
import { Growing } from './growing.ts'
import { type Issue, issueOf, quoted, Refusal } from './issue.ts'
import type { Place, TextReader } from './source-text.ts'

const MOST_ISSUES = 100
const MOST_COLUMNS = 1000

type Column = { readonly heading: Heading; readonly numbers?: Growing; readonly words?: string[] }

/** Builds columns from rows and collects what is wrong with them. */
export class CsvRows implements TextReader<CsvAnswer> {
  readonly #options: CsvOptions
  readonly #preamble = new CsvPreamble()
  readonly #issues: Issue[] = []
  #more = 0
  #cells: CellReader | undefined
  #numbers: CsvNumbers | undefined
  #separator: Separator = ','
  #headings: { readonly text: string; readonly place: Place }[] = []
  #columns: readonly Column[] | undefined
  #rows = 0
  #kept = 0
  /** Cells met in the row at hand; whether there is only one and it is empty, for then the line may be blank. */
  #met = 0
  #blank = false

  constructor(options: CsvOptions) {
    this.#options = options
  }

  take(text: string): void {
    if (this.#cells) return this.#cells.take(text)
    const found = this.#preamble.take(text, this.#options.separator)
    if (found) this.#start(found.separator, found.line, found.text)
  }

  place(): Place {
    return (this.#cells ?? this.#preamble).place()
  }

  refused(issue: Issue): CsvAnswer {
    return { issues: [...this.#issues, issue], more: this.#more }
  }

  end(): CsvAnswer {
    const found = this.#cells ? undefined : this.#preamble.end(this.#options.separator)
    if (found) this.#start(found.separator, found.line, found.text)
    if (!this.#cells)
      this.#refuse({ line: 1, column: 1 }, '', 'the file holds no table', 'no header row', 'a row of column names and rows of numbers')
    this.#cells?.end()
    if (this.#issues.length > 0) return { issues: this.#issues, more: this.#more }
    const columns = this.#columns ?? []
    const csv = {
      columns: columns.flatMap(({ heading, numbers }) => (numbers ? [{ ...heading, values: numbers.values() }] : [])),
      words: columns.flatMap(({ heading, words }) => (words ? [{ ...heading, values: words }] : [])),
      rows: this.#rows,
      notes: this.#preamble.notes,
      separator: this.#separator,
    }
    return { csv }
  }

  #start(separator: Separator, line: number, text: string): void {
    const listener: CellListener = {
      cell: (content, inQuotes) => this.#cell(content, inQuotes),
      row: () => this.#row(),
      stray: (character, place) =>
        this.#issue(place, this.#name(), 'text stands behind a quotation mark', quoted(character), 'a separator'),
    }
    this.#separator = separator
    this.#numbers = new CsvNumbers(separator)
    this.#cells = new CellReader(separator, line, listener)
    this.#cells.take(text)
  }

  #cell(text: string, inQuotes: boolean): void {
    if (!this.#columns) {
      const place = this.#cells!.cellPlace()
      this.#headings.push({ text, place })
      if (this.#headings.length > MOST_COLUMNS)
        this.#refuse(place, '', 'the table has too many columns', `more than ${MOST_COLUMNS}`, 'fewer')
      return
    }
    if (this.#met === 0 && text === '' && !inQuotes) {
      this.#blank = true
      this.#met = 1
      return
    }
    if (this.#blank) {
      this.#blank = false
      this.#fill(0, '', false)
    }
    this.#fill(this.#met++, text, inQuotes)
  }

  #fill(index: number, text: string, inQuotes: boolean): void {
    const column = this.#columns?.[index]
    if (!column) return
    const { name } = column.heading
    if (++this.#kept > (this.#options.mostCells ?? MOST_CSV_CELLS)) {
      this.#refuse(
        this.#cells!.cellPlace(),
        name,
        'the table is too large',
        `more than ${this.#kept - 1} cells`,
        'a shorter table or fewer columns',
      )
    }
    if (column.words) {
      column.words.push(inQuotes ? text : text.trim())
      return
    }
    const value = this.#numbers!.value(text, this.#cells!)
    if (typeof value === 'number') column.numbers!.push(value)
    else if (value === undefined && this.#options.empty === 'nan') column.numbers!.push(Number.NaN)
    // A first cell found empty is reported when the second is met: it is at the start of its line.
    else if (value === undefined)
      this.#issue(index === 0 ? this.#cells!.rowPlace() : this.#cells!.cellPlace(), name, 'a cell is empty', 'nothing', 'a number')
    else this.#issue(this.#cells!.cellPlace(), name, value.what, quoted(text.trim()), value.accepted)
  }

  #row(): void {
    const place = this.#cells!.rowPlace()
    if (!this.#columns) return this.#header(place)
    const blank = this.#blank
    const met = this.#met
    this.#blank = false
    this.#met = 0
    if (blank && met === 1) return
    this.#rows++
    const wanted = this.#columns.length
    if (met !== wanted) this.#issue(place, '', 'a row has another number of cells than the header', `${met} cells`, `${wanted} cells`)
  }

  #header(place: Place): void {
    const names = new Set<string>()
    const headings = new Set<string>()
    const wanted = this.#options.words ?? [],
      words = typeof wanted === 'function' ? [] : wanted,
      isWord = typeof wanted === 'function' ? wanted : (name: string): boolean => wanted.includes(name)
    const columns = this.#headings.map(({ text, place: at }): Column => {
      const heading = headingOf(text)
      if (heading.name === '') this.#issue(at, '', 'a column has no name', 'nothing', 'a name such as speed [km/h]')
      else if (typeof this.#numbers!.value(text, this.#cells!) === 'number') {
        this.#issue(at, '', 'the first row holds a number', quoted(text.trim()), 'a row of column names above the numbers')
      } else if (headings.has(headingText(heading)))
        this.#issue(at, heading.name, 'two columns have the same name and unit', quoted(text.trim()), 'different names')
      names.add(heading.name)
      headings.add(headingText(heading))
      return isWord(heading.name) ? { heading, words: [] } : { heading, numbers: new Growing() }
    })
    for (const name of words) {
      if (!names.has(name)) this.#issue(place, name, 'a column is missing', [...names].slice(0, 20).map(quoted).join(', '), quoted(name))
    }
    // Without sound names nothing below them can be reported well.
    const last = this.#issues.pop()
    if (last) throw new Refusal(last)
    this.#numbers = new CsvNumbers(this.#separator)
    this.#columns = columns
  }

  #name(): string {
    return this.#columns?.[this.#met]?.heading.name ?? ''
  }

  #issue(place: Place, path: string, what: string, found: string, accepted: string): void {
    if (this.#issues.length < MOST_ISSUES) this.#issues.push(issueOf({ ...place, path, what, found, accepted }))
    else this.#more++
  }

  #refuse(place: Place, path: string, what: string, found: string, accepted: string): never {
    throw new Refusal({ ...place, path, what, found, accepted })
  }
}
