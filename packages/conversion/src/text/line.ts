/** How a line begins: its first character that is neither blank nor tab (its end if there is none), and the first tab before that. */
export type LineStart = { readonly first: number; readonly tab: number; readonly kind: 'blank' | 'comment' | 'content' }

/** What the content of one line holds, seen by itself. Offsets are into the whole text; -1 means "not there". */
export type LineShape = {
  /** A leading `- ` or `? `, and how many. */
  readonly indicator: number
  readonly indicators: number
  /** The colons that end a key outside brackets: the first, the second, and how many. */
  readonly colon: number
  readonly secondColon: number
  readonly colons: number
  /** Whether something other than a comment follows the first colon, and whether it is a block scalar, whose text stands below. */
  readonly hasValue: boolean
  readonly opensNote: boolean
  /** Keys on the line, inside brackets or not, and commas inside brackets. */
  readonly keys: number
  readonly commas: number
  /** Brackets: open at the end of the line, most open at once, and the last one opened. */
  readonly open: number
  readonly deepest: number
  readonly bracket: number
  /** A quote that does not close on the line. */
  readonly openQuote: number
}

const NOTHING: LineShape = {
  indicator: -1,
  indicators: 0,
  colon: -1,
  secondColon: -1,
  colons: 0,
  hasValue: false,
  opensNote: false,
  keys: 0,
  commas: 0,
  open: 0,
  deepest: 0,
  bracket: -1,
  openQuote: -1,
}

type Growing = { -readonly [K in keyof LineShape]: LineShape[K] }

const isBlank = (character: string | undefined): boolean => character === ' ' || character === '\t'
const isFlowMark = (character: string): boolean => character === ',' || isOpening(character) || isClosing(character)
const isOpening = (character: string | undefined): boolean => character === '[' || character === '{'
const isClosing = (character: string | undefined): boolean => character === ']' || character === '}'

export function lineStart(text: string, from: number, end: number): LineStart {
  let tab = -1
  let first = from
  while (first < end && isBlank(text[first])) {
    if (text[first] === '\t' && tab < 0) tab = first
    first++
  }
  return { first, tab, kind: first === end ? 'blank' : text[first] === '#' ? 'comment' : 'content' }
}

/** Reads the content `[first, end)` of one line, `open` brackets being open before it: one pass, no look behind. */
export function lineShape(text: string, first: number, end: number, open: number): LineShape {
  const line: Growing = { ...NOTHING, open, deepest: open }
  /** Whether a new key or value may start here, and whether a quote or bracket has just closed, after which a colon needs no blank. */
  let fresh = true
  let closed = false
  for (let i = first; i < end; i++) {
    const character = text[i] ?? ''
    if (isBlank(character)) continue
    if (character === '#' && i > first && isBlank(text[i - 1])) break
    const next = i + 1 < end ? (text[i + 1] ?? '') : ' '
    const inBlock = line.open === 0
    if (character === ':' && (isBlank(next) || (!inBlock && (closed || isFlowMark(next))))) {
      countKey(line, i)
      fresh = true
      closed = false
      continue
    }
    if (inBlock && !fresh) continue
    if (inBlock && line.colons > 0) line.hasValue = true
    if (fresh && inBlock && isBlank(next) && (character === '-' || character === '?')) {
      if (line.indicators++ === 0) line.indicator = i
      continue
    }
    if (fresh && inBlock && line.colons > 0 && (character === '|' || character === '>')) {
      line.opensNote = true
      break
    }
    if (fresh && (character === '"' || character === "'")) {
      const close = closingQuote(text, i, end)
      if (close < 0) {
        line.openQuote = i
        break
      }
      i = close
      fresh = false
      closed = true
      continue
    }
    closed = isClosing(character)
    fresh = bracketOrComma(line, character, i, fresh)
  }
  return line
}

function countKey(line: Growing, at: number): void {
  line.keys++
  if (line.open > 0) return
  line.colons++
  if (line.colons === 1) line.colon = at
  else if (line.colons === 2) line.secondColon = at
}

/** Keeps count of brackets and commas; gives whether a new key or value may start behind this character. */
function bracketOrComma(line: Growing, character: string, at: number, fresh: boolean): boolean {
  if (isOpening(character) && (fresh || line.open > 0)) {
    line.open++
    line.deepest = Math.max(line.deepest, line.open)
    line.bracket = at
    return true
  }
  if (line.open === 0) return false
  if (isClosing(character)) line.open--
  if (character === ',') line.commas++
  return character === ','
}

/** The quote that closes the one at `at`, or -1. In double quotes a backslash protects the next character; in single quotes `''` is one. */
function closingQuote(text: string, at: number, end: number): number {
  const quote = text[at]
  for (let i = at + 1; i < end; i++) {
    if (text[i] === '\\' && quote === '"') i++
    else if (text[i] === quote) {
      if (quote !== "'" || i + 1 >= end || text[i + 1] !== "'") return i
      i++
    }
  }
  return -1
}
