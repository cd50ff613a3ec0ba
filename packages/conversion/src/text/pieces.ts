import { Composer, type CST, type Document, Lexer, Parser, type YAMLError } from 'yaml'
import { MAX_DEPTH, MAX_ISSUES } from './limits.ts'

/** A mark of the full language that the small YAML leaves out, where it stands. */
export type Mark = { readonly kind: 'anchor' | 'alias' | 'tag' | 'list' | 'explicit key'; readonly offset: number; readonly source: string }

export type Composed = {
  readonly document: Document.Parsed | undefined
  readonly errors: readonly YAMLError[]
  readonly marks: readonly Mark[]
  readonly pieces: number
  /** Why composing was given up, if it was. */
  readonly refused: 'depth' | 'pieces' | 'library' | undefined
}

/** The library keeps the document, the value being read and a little more on its stack beside the nested groups. */
const STACK_LIMIT = MAX_DEPTH + 8

/** A sound section is a single token without marks; with far more of either it is not worth reading to the end. */
const MAX_TROUBLE = 4 * MAX_ISSUES

const MARKS: Readonly<Record<string, Mark['kind']>> = { '&': 'anchor', '*': 'alias', '!': 'tag', '-': 'list', '?': 'explicit key' }
/** The lexer's announcement that the next piece is a plain value, whatever it starts with. */
const VALUE_FOLLOWS = '\u001f'

/**
 * Runs the library on one section, piece by piece: its lexer is a flat loop, its parser and composer recurse. So the parser's own stack
 * is watched at every piece and given up before it grows, whatever the scan before may have overlooked.
 *
 * Everything is read as text (`failsafe`): no numbers, dates or booleans; uniqueness of keys is checked elsewhere in linear time.
 */
export function composed(source: string, maxPieces: number): Composed {
  const parser = new Parser()
  const tokens: CST.Token[] = []
  const marks: Mark[] = []
  let pieces = 0
  const given = (refused: Composed['refused']): Composed => ({ document: undefined, errors: [], marks, pieces, refused })
  try {
    let isValue = false
    let isWhole = true
    for (const piece of new Lexer().lex(source)) {
      if (++pieces > maxPieces) return given('pieces')
      const kind = isValue ? undefined : MARKS[piece[0] ?? '']
      if (kind !== undefined) marks.push({ kind, offset: parser.offset, source: piece })
      isValue = piece === VALUE_FOLLOWS
      for (const token of parser.next(piece)) tokens.push(token)
      if (parser.stack.length > STACK_LIMIT) return given('depth')
      isWhole = marks.length + tokens.length <= MAX_TROUBLE
      if (!isWhole) break
    }
    for (const token of parser.end()) tokens.push(token)
    const composer = new Composer({ schema: 'failsafe', uniqueKeys: false, keepSourceTokens: true, logLevel: 'silent' })
    const [document] = composer.compose(tokens, true, source.length)
    const errors = document?.errors ?? []
    if (isWhole) return { document: document as Document.Parsed, errors, marks, pieces, refused: undefined }
    return { document: undefined, errors, marks, pieces, refused: errors.length + marks.length > 0 ? undefined : 'pieces' }
  } catch {
    return given('library')
  }
}
