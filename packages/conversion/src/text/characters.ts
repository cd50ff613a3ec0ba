import type { Issue } from '../issue.ts'
import { MAX_BYTES } from './limits.ts'

/** Byte order mark; allowed once, as the very first character. */
export const BYTE_ORDER_MARK = 0xfeff

type Kind = 'control' | 'return' | 'surrogate' | 'mark'

const SAYS: Record<Kind, { what: string; accepted: string }> = {
  control: { what: 'a control character cannot be part of a text file', accepted: 'printable characters, tabs and line ends' },
  return: { what: 'a carriage return stands alone', accepted: 'lines that end in LF or in CR LF' },
  surrogate: { what: 'half of a character stands alone', accepted: 'whole characters' },
  mark: { what: 'an invisible character stands inside the text', accepted: 'a byte order mark only at the very start' },
}

/** Problems with single characters: the first of each kind, with the number of the others. Also whether the text is over the size limit. */
export function characterIssues(text: string): { readonly issues: readonly Issue[]; readonly tooLarge: boolean } {
  const seen = new Map<Kind, { at: number; line: number; lineStart: number; count: number }>()
  let bytes = 0
  let line = 1
  let lineStart = 0
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i)
    bytes += c < 0x80 ? 1 : c < 0x800 ? 2 : 3
    const kind = c >= 32 && c < 127 ? undefined : kindAt(text, i, c)
    if (kind !== undefined) {
      const first = seen.get(kind)
      if (first === undefined) seen.set(kind, { at: i, line, lineStart, count: 1 })
      else first.count++
    } else if (c >= 0xd800 && c < 0xdc00) {
      bytes++
      i++
    }
    if (c === 10) {
      line++
      lineStart = i + 1
    }
  }
  const issues = [...seen].map(([kind, { at, line, lineStart, count }]): Issue => {
    const code = text.charCodeAt(at).toString(16).toUpperCase().padStart(4, '0')
    const found = `U+${code}${count > 1 ? ` and ${count - 1} more like it` : ''}`
    return { line, column: at - lineStart + 1, path: '', ...SAYS[kind], found }
  })
  return { issues, tooLarge: bytes > MAX_BYTES }
}

function kindAt(text: string, at: number, c: number): Kind | undefined {
  if (c === 9 || c === 10) return undefined
  if (c === 13) return text.charCodeAt(at + 1) === 10 ? undefined : 'return'
  if (c < 32 || (c >= 127 && c < 160) || c === 0x2028 || c === 0x2029) return 'control'
  if (c === BYTE_ORDER_MARK) return at === 0 ? undefined : 'mark'
  if (c < 0xd800 || c > 0xdfff) return undefined
  const next = text.charCodeAt(at + 1)
  return c < 0xdc00 && next >= 0xdc00 && next <= 0xdfff ? undefined : 'surrogate'
}
