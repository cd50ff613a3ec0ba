import { quoted } from '../issue.ts'
import { decimal, textOf, whole } from './decimal.ts'
import { isPlace, PLACE_WANTED, refuse } from './mesh-file.ts'

const [TAB, LINE_FEED, RETURN, BLANK, BACKSLASH] = [9, 10, 13, 32, 92]

/** Walks over the words of a text file byte by byte. The word at hand is `bytes` from `from` to `to`. */
export class Words {
  readonly bytes: Uint8Array
  from = 0
  to: number
  line = 1
  #lineStart: number

  constructor(bytes: Uint8Array, at = 0) {
    this.bytes = bytes
    this.to = at
    this.#lineStart = at
  }

  where(): string {
    return `line ${this.line}, column ${this.from - this.#lineStart + 1}`
  }

  /** Goes to the next word of this line; false at its end. A backslash before the line end joins the next line. */
  inLine(): boolean {
    const { bytes } = this
    let i = this.to
    for (; i < bytes.length; i++) {
      const c = bytes[i]
      if (c === BLANK || c === TAB) continue
      if (c === BACKSLASH && this.#endsLine(i + 1)) {
        i = this.#behindLineEnd(i + 1)
        this.line++
        this.#lineStart = i + 1
        continue
      }
      break
    }
    this.from = i
    if (i >= bytes.length || this.#endsLine(i)) {
      this.to = i
      return false
    }
    this.#toWordEnd()
    return true
  }

  /** Goes to the start of the next line; false at the end of the file. */
  nextLine(): boolean {
    const { bytes } = this
    let i = this.to
    while (i < bytes.length && !this.#endsLine(i)) i++
    if (i >= bytes.length) {
      this.from = this.to = i
      return false
    }
    i = this.#behindLineEnd(i) + 1
    this.line++
    this.#lineStart = this.from = this.to = i
    return i < bytes.length
  }

  /** Goes to the next word, over line ends; false at the end of the file. */
  next(): boolean {
    while (!this.inLine()) if (!this.nextLine()) return false
    return true
  }

  is(word: string): boolean {
    if (this.to - this.from !== word.length) return false
    for (let i = 0; i < word.length; i++) if (((this.bytes[this.from + i] as number) | 32) !== word.charCodeAt(i)) return false
    return true
  }

  text(): string {
    return textOf(this.bytes, this.from, this.to)
  }

  /** What stands here, as a message quotes it. */
  found(): string {
    return this.from >= this.bytes.length ? 'the end of the file' : this.from === this.to ? 'the end of the line' : quoted(this.text())
  }

  number(): number {
    return decimal(this.bytes, this.from, this.to)
  }

  whole(): number {
    return whole(this.bytes, this.from, this.to)
  }

  /** The word at hand as a coordinate. Throws MeshRefusal. */
  coordinate(there: boolean): number {
    const value = there ? this.number() : Number.NaN
    if (isPlace(value)) return value
    return refuse(this.where(), there ? 'a coordinate is not accepted' : 'a coordinate is missing', this.found(), PLACE_WANTED)
  }

  #endsLine(i: number): boolean {
    const c = this.bytes[i]
    return c === LINE_FEED || c === RETURN
  }

  /** The last byte of the line end at `i`: two bytes make one end where a line feed follows a return. */
  #behindLineEnd(i: number): number {
    return this.bytes[i] === RETURN && this.bytes[i + 1] === LINE_FEED ? i + 1 : i
  }

  #toWordEnd(): void {
    const { bytes } = this
    let i = this.from
    while (i < bytes.length) {
      const c = bytes[i] as number
      if (c === BLANK || c === TAB || c === LINE_FEED || c === RETURN) break
      i++
    }
    this.to = i
  }
}
