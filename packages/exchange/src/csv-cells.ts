import { quoted, Refusal } from './issue.ts'
import type { Place } from './source-text.ts'

/** Takes the cells of a table one after the other; `row` ends each row. Where they began, `cellPlace` and `rowPlace` of the reader say. */
export type CellListener = {
  readonly cell: (text: string, inQuotes: boolean) => void
  readonly row: () => void
  /** A character between a closing quotation mark and the separator. */
  readonly stray: (character: string, place: Place) => void
}

const LONGEST = 10_000

type State = 'start' | 'bare' | 'quoted' | 'closed'

/** Cuts text into cells and rows by RFC 4180, in one pass however the text is cut into pieces. Throws Refusal. */
export class CellReader {
  readonly #listener: CellListener
  readonly #separator: number
  #state: State = 'start'
  /** The cell at hand as far as earlier pieces hold it, where it and its row began, and whether it is the first of its row. */
  #kept = ''
  #cellLine: number
  #cellColumn = 1
  #rowLine: number
  #leads = true
  /** Line at hand, and where it began, counted in characters taken. */
  #line: number
  #lineStart = 0
  #before = 0
  #at = 0
  /** A carriage return was just met: a line feed behind it ends no further line. */
  #returned = false

  constructor(separator: string, line: number, listener: CellListener) {
    this.#listener = listener
    this.#separator = separator.charCodeAt(0)
    this.#line = line
    this.#cellLine = line
    this.#rowLine = line
  }

  place(): Place {
    return { line: this.#line, column: this.#before + this.#at - this.#lineStart + 1 }
  }

  cellPlace(): Place {
    return { line: this.#cellLine, column: this.#cellColumn }
  }

  rowPlace(): Place {
    return { line: this.#rowLine, column: 1 }
  }

  take(text: string): void {
    const separator = this.#separator
    let from = 0
    for (let i = 0; i < text.length; i++) {
      const c = text.charCodeAt(i)
      this.#at = i
      if (c < 32 && c !== 9 && c !== 10 && c !== 13)
        this.#refuse(this.place(), 'a control character is not accepted', quoted(text[i]!), 'text')
      const broken = c === 10 || c === 13
      const second = c === 10 && this.#returned
      this.#returned = c === 13
      if (broken) this.#breakLine(second)
      if (this.#state === 'quoted') {
        if (c !== 34) continue
        this.#keep(text.slice(from, i))
        this.#state = 'closed'
        from = i + 1
      } else if (second) {
        from = i + 1
        this.#begin(true)
      } else if (c === separator || broken) {
        this.#end(this.#state === 'bare' ? text.slice(from, i) : '', broken)
        from = i + 1
      } else if (c === 34 && this.#state !== 'bare') {
        // Two quotation marks stand for one: the first closed too early.
        if (this.#state === 'closed') this.#keep('"')
        this.#state = 'quoted'
        from = i + 1
      } else if (this.#state === 'closed') {
        if (c !== 32) this.#listener.stray(text[i]!, this.place())
        from = i + 1
      } else this.#state = 'bare'
    }
    if (this.#state === 'quoted' || this.#state === 'bare') this.#keep(text.slice(from))
    this.#before += text.length
    this.#at = 0
  }

  end(): void {
    if (this.#state === 'quoted')
      this.#refuse(this.cellPlace(), 'a quotation mark is never closed', 'the end of the file', 'a closing quotation mark')
    if (this.#state !== 'start' || !this.#leads) this.#end('', true)
  }

  #breakLine(second: boolean): void {
    if (!second) this.#line++
    this.#lineStart = this.#before + this.#at + 1
  }

  #end(rest: string, endsRow: boolean): void {
    this.#keep(rest)
    this.#listener.cell(this.#kept, this.#state === 'closed')
    if (endsRow) this.#listener.row()
    this.#kept = ''
    this.#state = 'start'
    this.#begin(endsRow)
  }

  /** The next cell begins behind the character at hand. */
  #begin(newRow: boolean): void {
    this.#leads = newRow
    this.#cellLine = this.#line
    this.#cellColumn = this.#before + this.#at - this.#lineStart + 2
    if (newRow) this.#rowLine = this.#line
  }

  #keep(text: string): void {
    if (text === '') return
    this.#kept = this.#kept === '' ? text : this.#kept + text
    if (this.#kept.length > LONGEST)
      this.#refuse(this.cellPlace(), 'a cell is too long', `more than ${LONGEST} characters`, 'a shorter one')
  }

  #refuse(at: Place, what: string, found: string, accepted: string): never {
    throw new Refusal({ ...at, path: '', what, found, accepted })
  }
}
