import { quoted, Refusal } from './issue.ts'
import type { Place } from './source-text.ts'
import { type Attributes, reference, tagOf } from './xml-tag.ts'

/** What is told of a document, element by element. `open` says whether the element's own text is wanted at its `close`. */
export type XmlListener = {
  readonly open: (name: string, attributes: Attributes, place: Place) => boolean
  readonly close: (name: string, text: string, place: Place) => void
}

const DEEPEST = 64
const LONGEST = 65_536
const LONGEST_REFERENCE = 12

type State = 'text' | 'head' | 'tag' | 'value' | 'instruction' | 'comment' | 'cdata' | 'reference'
type Element = { readonly name: string; readonly wanted: boolean; readonly place: Place; text: string }

/**
 * Reads a small part of XML 1.0 in one pass: elements, attributes, text, comments, instructions, CDATA, the five standard entities and character
 * references. Throws Refusal.
 *
 * A document type is refused: entities of its own are how a small file becomes a large one. So are nesting over 64, a tag or wanted text over
 * 65 536 characters, control characters, and a declared encoding other than UTF-8. Time grows with the text alone, however it is cut into pieces.
 */
export class XmlReader {
  readonly #listener: XmlListener
  readonly #open: Element[] = []
  #rooted = false
  #state: State = 'text'
  /** Quotation mark a value will end with; how many characters of a closing sequence were just met. */
  #quote = 0
  #run = 0
  /** Markup gathered from earlier pieces, and where it began. */
  #gathered = ''
  #started: Place = { line: 1, column: 1 }
  /** The piece at hand, from where on it is not yet used, and the character at hand. */
  #piece = ''
  #from = 0
  #at = 0
  /** Characters in earlier pieces; line at hand and where it began. */
  #before = 0
  #line = 1
  #lineStart = 0

  constructor(listener: XmlListener) {
    this.#listener = listener
  }

  place(): Place {
    return { line: this.#line, column: this.#before + this.#at - this.#lineStart + 1 }
  }

  take(piece: string): void {
    this.#piece = piece
    this.#from = 0
    for (this.#at = 0; this.#at < piece.length; this.#at++) {
      const c = piece.charCodeAt(this.#at)
      if (c < 32 && c !== 9 && c !== 10 && c !== 13)
        this.#refuse(this.place(), 'a control character is not accepted', quoted(piece[this.#at]!), 'text')
      this.#step(c)
      if (c === 10) {
        this.#line++
        this.#lineStart = this.#before + this.#at + 1
      }
    }
    this.#save()
    this.#before += piece.length
    this.#at = 0
    this.#piece = ''
  }

  end(): void {
    const element = this.#open.at(-1)
    const inside = { head: 'tag', value: 'tag' }[this.#state as string] ?? this.#state
    if (this.#state !== 'text') this.#refuse(this.place(), `the file ends inside a ${inside}`, 'the end of the file', 'a complete document')
    if (element) {
      this.#refuse(
        this.place(),
        `<${element.name}> of line ${element.place.line} is never closed`,
        'the end of the file',
        `</${element.name}>`,
      )
    }
    if (!this.#rooted) this.#refuse(this.place(), 'the file holds no document', 'the end of the file', 'an XML document')
  }

  #step(c: number): void {
    switch (this.#state) {
      case 'text':
        if (c === 60 /* < */) this.#leaveText('head')
        else if (this.#open.length === 0) this.#onlySpace(c)
        else if (c === 38 /* & */) this.#leaveText('reference')
        return
      case 'head':
        return this.#head()
      case 'tag':
        if (c === 34 || c === 39 /* quotation marks */) {
          this.#quote = c
          this.#state = 'value'
        } else if (c === 62 /* > */) {
          this.#gather()
          this.#tag()
          this.#backToText()
        } else if (c === 60) this.#refuse(this.#started, 'a tag is not closed', quoted(`<${this.#markup()}`), '> before the next <')
        return
      case 'value':
        if (c === this.#quote) this.#state = 'tag'
        else if (c === 60)
          this.#refuse(this.#started, 'a value or tag is not closed', quoted(`<${this.#markup()}`), 'a closing quotation mark and >')
        return
      case 'instruction':
        if (c === 62 && this.#run === 1) {
          this.#gather()
          this.#instruction()
          this.#backToText()
        } else this.#run = c === 63 /* ? */ ? 1 : 0
        return
      case 'comment':
        if (c === 62 && this.#run >= 2) this.#backToText()
        else this.#run = c === 45 /* - */ ? this.#run + 1 : 0
        return
      case 'cdata':
        if (c === 62 && this.#run >= 2) {
          this.#keep(this.#markup().slice(0, -2))
          this.#backToText()
        } else this.#run = c === 93 /* ] */ ? this.#run + 1 : 0
        return
      case 'reference':
        if (c === 59 /* ; */) {
          this.#reference(this.#markup())
          this.#backToText()
        } else if (this.#gathered.length + this.#at - this.#from > LONGEST_REFERENCE) {
          this.#refuse(this.#started, 'a reference is not closed', quoted(`&${this.#markup()}`), '&amp; for &')
        }
    }
  }

  #onlySpace(c: number): void {
    if (c === 32 || c === 9 || c === 10 || c === 13) return
    this.#refuse(this.place(), 'text stands outside the document', quoted(String.fromCharCode(c)), 'one element that holds everything')
  }

  #leaveText(state: State): void {
    this.#keep(this.#piece.slice(this.#from, this.#at))
    this.#started = this.place()
    this.#begin(state)
  }

  #begin(state: State): void {
    this.#state = state
    this.#run = 0
    this.#gathered = ''
    this.#from = this.#at + 1
  }

  #backToText(): void {
    this.#begin('text')
  }

  /** After `<`: which kind of markup it is. Everything else with `!` declares a document type. */
  #head(): void {
    this.#gathered += this.#piece[this.#at]!
    this.#from = this.#at + 1
    const head = this.#gathered
    if (head === '?') this.#begin('instruction')
    else if (head === '!--') this.#begin('comment')
    else if (head === '![CDATA[') {
      if (this.#open.length === 0)
        this.#refuse(this.#started, 'text stands outside the document', quoted(`<${head}`), 'one element that holds everything')
      this.#begin('cdata')
    } else if (head[0] !== '!') {
      if (head === '>') this.#refuse(this.#started, 'a tag is empty', '"<>"', 'a name')
      this.#state = 'tag'
    } else if (!'!--'.startsWith(head) && !'![CDATA['.startsWith(head)) {
      this.#refuse(this.#started, 'a document type or declaration is not accepted', quoted(`<${head}`), 'elements, comments and text only')
    }
  }

  #tag(): void {
    if (this.#gathered.startsWith('/')) return this.#close(this.#gathered.slice(1).trimEnd())
    const tag = tagOf(this.#gathered)
    if (typeof tag === 'string') return this.#refuse(this.#started, tag, quoted(`<${this.#gathered}>`), '<name attribute="value">')
    if (this.#open.length === 0 && this.#rooted) {
      this.#refuse(this.#started, 'a second document begins', `<${tag.name}>`, 'one element that holds everything')
    }
    if (this.#open.length >= DEEPEST)
      this.#refuse(this.#started, 'elements are nested too deeply', `more than ${DEEPEST}`, `at most ${DEEPEST}`)
    this.#rooted = true
    const wanted = this.#listener.open(tag.name, tag.attributes, this.#started)
    this.#open.push({ name: tag.name, wanted, place: this.#started, text: '' })
    if (tag.empty) this.#close(tag.name)
  }

  #close(name: string): void {
    const element = this.#open.at(-1)
    if (!element) return this.#refuse(this.#started, 'a closing tag closes nothing', quoted(`</${name}>`), 'an opening tag before it')
    if (element.name !== name) {
      const accepted = `</${element.name}>, opened in line ${element.place.line}`
      this.#refuse(this.#started, 'a closing tag does not fit', quoted(`</${name}>`), accepted)
    }
    this.#open.pop()
    this.#listener.close(name, element.text, this.#started)
  }

  #instruction(): void {
    const encoding = /^xml\s.*?encoding\s*=\s*["']([^"']*)["']/s.exec(this.#gathered)?.[1]
    if (encoding !== undefined && !/^(utf-8|us-ascii)$/i.test(encoding)) {
      this.#refuse(this.#started, 'the encoding is not accepted', quoted(encoding), 'UTF-8')
    }
  }

  #reference(name: string): void {
    const character = reference(name)
    if (character === undefined) {
      return this.#refuse(
        this.#started,
        'an entity is not known',
        quoted(`&${name};`),
        '&lt; &gt; &amp; &apos; &quot; or a character number',
      )
    }
    this.#keep(character)
  }

  /** Text of the element at hand. */
  #keep(text: string): void {
    const element = this.#open.at(-1)
    if (!element?.wanted) return
    element.text += text
    if (element.text.length > LONGEST) this.#refuse(element.place, 'a text is too long', `more than ${LONGEST} characters`, 'a shorter one')
  }

  /** The markup at hand, so far. */
  #markup(): string {
    return this.#gathered + this.#piece.slice(this.#from, this.#at)
  }

  #gather(): void {
    this.#gathered = this.#markup()
    this.#from = this.#at
    if (this.#gathered.length > LONGEST)
      this.#refuse(this.#started, 'a tag is too long', `more than ${LONGEST} characters`, 'a shorter one')
  }

  /** At the end of a piece: keeps what a later piece needs of it. */
  #save(): void {
    if (this.#state === 'text') this.#keep(this.#piece.slice(this.#from))
    else if (this.#state === 'comment') this.#gathered = ''
    else if (this.#state === 'cdata' && !this.#open.at(-1)?.wanted) this.#gathered = this.#markup().slice(-3)
    else this.#gather()
  }

  #refuse(at: Place, what: string, found: string, accepted: string): never {
    throw new Refusal({ ...at, path: this.#open.map(e => e.name).join('/'), what, found, accepted })
  }
}
