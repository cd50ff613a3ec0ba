import type { Issue } from '../issue.ts'
import { BYTE_ORDER_MARK, characterIssues } from './characters.ts'
import { IssueList } from './issue-list.ts'
import { MAX_BYTES } from './limits.ts'
import { outlined, type Stretch } from './outline.ts'
import { decodedUtf8 } from './utf8.ts'

export { MAX_BYTES, MAX_DEPTH, MAX_KEYS } from './limits.ts'

export type Scan =
  | { readonly ok: true; readonly text: string; readonly sections: readonly Stretch[]; readonly problems: IssueList }
  | { readonly ok: false; readonly problems: IssueList }

/**
 * The one linear pass over a file before the library sees any of it: refuses what is too large, too deep, too full, or not text at all,
 * finds the top-level sections, and collects what is wrong with single lines (tabs, marks, lists, missing colons, open quotes).
 *
 * Bytes are decoded as UTF-8 here. A byte order mark at the start stays in the text but belongs to no section.
 */
export function scan(input: Uint8Array | string): Scan {
  if (input.length > MAX_BYTES) return refused([tooLarge(input.length)])
  const decoded = typeof input === 'string' ? ({ ok: true, text: input } as const) : decodedUtf8(input)
  if (!decoded.ok) return refused([notUtf8(input as Uint8Array, decoded.byte)])
  const { text } = decoded
  const { issues, tooLarge: large } = characterIssues(text)
  if (large) return refused([tooLarge(text.length)])
  if (issues.length > 0) return refused(issues)
  const { sections, problems, refusal } = outlined(text, text.charCodeAt(0) === BYTE_ORDER_MARK ? 1 : 0)
  if (refusal) return refused([refusal, ...problems.issues])
  return { ok: true, text, sections, problems }
}

function refused(issues: readonly Issue[]): Scan {
  const problems = new IssueList()
  for (const issue of issues) problems.add(issue)
  return { ok: false, problems }
}

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`

function tooLarge(atLeast: number): Issue {
  return {
    line: 1,
    column: 1,
    path: '',
    what: 'the file is too large to be a conversion',
    found: `${megabytes(atLeast)} or more`,
    accepted: `up to ${megabytes(MAX_BYTES)}`,
  }
}

function notUtf8(bytes: Uint8Array, byte: number): Issue {
  let line = 1
  let lineStart = 0
  for (let i = 0; i < byte; i++) {
    if (bytes[i] === 10) {
      line++
      lineStart = i + 1
    }
  }
  const wide = byte === 0 && ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
  return {
    line,
    column: byte - lineStart + 1,
    path: '',
    what: wide ? 'the file is written in UTF-16' : `byte ${byte + 1} is not UTF-8 text`,
    found: `byte 0x${(bytes[byte] ?? 0).toString(16).padStart(2, '0')}`,
    accepted: 'a text file saved as UTF-8',
  }
}
