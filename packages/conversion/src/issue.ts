/**
 * One thing wrong in a file, said so that it can be mended: where it stands, what is wrong, what was found there and what is accepted.
 *
 * Lines and columns count from 1. An empty `found` or `accepted` is left out when printed. Without a `harm` an issue is an error; a note
 * does not stop the file from being used.
 */
export type Issue = {
  readonly file?: string
  readonly line: number
  readonly column: number
  readonly path: string
  readonly what: string
  readonly found: string
  readonly accepted: string
  readonly nearest?: string
  readonly harm?: 'error' | 'note'
  /** What could not be looked up, where that is what is wrong. */
  readonly about?: 'part'
}

export const isError = (issue: Issue): boolean => issue.harm !== 'note'

/** The issue on one line: `file:line:col path: what; found …; accepted …; did you mean …?` */
export function formatIssue(issue: Issue): string {
  const place = `${issue.file === undefined ? '' : `${issue.file}:`}${issue.line}:${issue.column}`
  const parts = [issue.path === '' ? issue.what : `${issue.path}: ${issue.what}`]
  if (issue.found !== '') parts.push(`found ${issue.found}`)
  if (issue.accepted !== '') parts.push(`accepted ${issue.accepted}`)
  if (issue.nearest !== undefined) parts.push(`did you mean ${issue.nearest}?`)
  return `${place} ${parts.join('; ')}`
}

/** Longest piece of the user's text that is quoted back. */
const LONGEST = 60

/** Characters that could disturb a terminal or deceive the eye, and halves of characters. */
const UNPRINTABLE = /[\p{Cc}\p{Cs}\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]/gu

/** A piece of the user's text as it may be shown: in double quotes, cut when long, unprintable characters by their code. */
export function asFound(text: string): string {
  const cut = text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text
  return `"${cut.replace(UNPRINTABLE, character => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`)}"`
}
