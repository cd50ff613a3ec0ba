/** One thing wrong in a file: where it stands, what is wrong, what was found there and what is accepted. Lines and columns count from 1. */
export type Issue = {
  readonly line: number
  readonly column: number
  /** Which part of the file: a column's name, an element's place in its document; empty for the file as a whole. */
  readonly path: string
  readonly what: string
  readonly found: string
  readonly accepted: string
}

const LONGEST_QUOTED = 60
const LONGEST = 300
/** Characters that could disturb a terminal or deceive the eye, and halves of characters. */
const UNPRINTABLE = /[\p{Cc}\p{Cs}\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff]/gu

function harmless(text: string, longest: number): string {
  const cut = text.length > longest ? `${text.slice(0, longest - 1)}…` : text
  return cut.replace(UNPRINTABLE, character => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`)
}

/** A piece of the user's text as it may be shown: quoted, cut when long, unprintable characters by their code. */
export const quoted = (text: string): string => `"${harmless(text, LONGEST_QUOTED)}"`

/** An issue that is safe to print, though names from the file stand in its words. */
export function issueOf({ line, column, path, what, found, accepted }: Issue): Issue {
  const safe = (text: string): string => harmless(text, LONGEST)
  return { line, column, path: safe(path), what: safe(what), found: safe(found), accepted: safe(accepted) }
}

/** Carries an issue out of the depth of a reader. Readers catch it at their door; it never leaves this package. */
export class Refusal extends Error {
  readonly issue: Issue
  constructor(issue: Issue) {
    super(issue.what)
    this.issue = issueOf(issue)
  }
}
