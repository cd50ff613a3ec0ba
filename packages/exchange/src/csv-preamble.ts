import type { Separator } from './csv-table.ts'
import { quoted, Refusal } from './issue.ts'
import type { Place } from './source-text.ts'

const LONGEST = 65_536
const MOST_NOTES = 1000

/** Where the table begins: its separator, the line of its header, and the text from there on as far as it is known. */
export type TableStart = { readonly separator: Separator; readonly line: number; readonly text: string }

/** What stands before the table: notes with #, empty lines; and which character separates its columns. */
export class CsvPreamble {
  readonly notes: string[] = []
  #text = ''
  #searched = 0
  #line = 1
  #returned = false

  place(): Place {
    return { line: this.#line, column: 1 }
  }

  /** The start of the table once its header row is complete. */
  take(text: string, separator: Separator | undefined): TableStart | undefined {
    this.#text += text
    for (;;) {
      const end = this.#lineEnd()
      if (end < 0) {
        if (this.#text.length > LONGEST)
          this.#refuse('a line before the table is too long', `more than ${LONGEST} characters`, 'shorter lines')
        return undefined
      }
      const found = this.#look(this.#text.slice(0, end), separator)
      if (found) return found
      const returned = this.#text[end] === '\r'
      this.#text = this.#text.slice(end + 1)
      this.#searched = 0
      // The line feed of a pair ends no line of its own.
      if (!(this.#returned && end === 0 && !returned)) this.#line++
      this.#returned = returned
    }
  }

  /** The same when the file is at its end. */
  end(separator: Separator | undefined): TableStart | undefined {
    return this.#look(this.#text, separator)
  }

  #lineEnd(): number {
    for (let i = this.#searched; i < this.#text.length; i++) {
      const c = this.#text.charCodeAt(i)
      if (c === 10 || c === 13) return i
    }
    this.#searched = this.#text.length
    return -1
  }

  #look(line: string, separator: Separator | undefined): TableStart | undefined {
    const control = /[\0-\x08\x0b\x0c\x0e-\x1f]/.exec(line)
    if (control) this.#refuse('a control character is not accepted', quoted(control[0]), 'text')
    if (line.trim() === '') return undefined
    if (line.startsWith('#')) {
      if (this.notes.length >= MOST_NOTES) this.#refuse('there are too many notes before the table', `more than ${MOST_NOTES}`, 'fewer')
      this.notes.push(line.slice(1).trim())
      return undefined
    }
    return { separator: separator ?? separatorOf(line), line: this.#line, text: this.#text }
  }

  #refuse(what: string, found: string, accepted: string): never {
    throw new Refusal({ ...this.place(), path: '', what, found, accepted })
  }
}

/** A tab if the header has one outside quotation marks, else a semicolon if it has one, else a comma. */
function separatorOf(header: string): Separator {
  const bare = header.replace(/"[^"]*(?:"|$)/g, '')
  return bare.includes('\t') ? '\t' : bare.includes(';') ? ';' : ','
}
