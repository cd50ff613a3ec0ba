import type { ErrorCode, YAMLError } from 'yaml'
import { asFound } from '../issue.ts'
import type { Said } from './source.ts'

/** Messages that name the mistake more exactly than the library's code does; the first pattern that fits its text is taken. */
const BY_TEXT: readonly (readonly [RegExp, string, string])[] = [
  [/^Missing closing/, 'a quote is not closed on its line', ''],
  [/^Comments must be separated/, 'a comment needs a space in front of it', '`value # comment`'],
  [/^Missing , |^Unexpected scalar token/, 'a comma is missing between two entries', '`{ a: 1, b: 2 }`'],
  [/^Missing space after :/, 'a colon needs a space behind it', '`key: value`'],
  [/^Unexpected ,|^Unexpected empty item/, 'a comma too many', 'one comma between two entries'],
  [/^Flow (?:map|sequence) in block collection/, 'a bracket is not closed on its line', ''],
  [/^Block collections are not allowed within flow/, 'a comma is missing, or a value holds a colon', '`{ a: 1, b: "x: y" }`'],
  [/^Unexpected flow-(?:map|seq)-end/, 'a closing bracket without an opening one', 'a value that holds brackets in quotes'],
  [/^Unexpected .* at node end/, 'something stands behind the end of a value', 'one value; in quotes from its first character to its last'],
  [/^Not a YAML token/, 'something stands behind the bar that starts a note', '`note: |`, with the text in the lines below'],
]

const BY_CODE: Partial<Readonly<Record<ErrorCode, readonly [what: string, accepted: string]>>> = {
  BAD_DQ_ESCAPE: ['a backslash in double quotes starts an escape that is not known', '`\\\\` for a backslash, or single quotes'],
  BAD_SCALAR_START: ['a value cannot start with this character unless it is in quotes', 'the value in quotes'],
  BAD_INDENT: ['this line is not in line with its neighbours', 'the same number of spaces for all keys of a group'],
  BLOCK_AS_IMPLICIT_KEY: ['a second colon in one value', 'a value that contains a colon in quotes'],
  MULTILINE_IMPLICIT_KEY: ['a key and its colon are not on one line', '`key: value`'],
  KEY_OVER_1024_CHARS: ['a key is far too long', 'a short readable name'],
  RESOURCE_EXHAUSTION: ['the text nests too deep', ''],
  TAB_AS_INDENT: ['a tab is used for indentation', 'spaces'],
  MISSING_CHAR: ['a line needs a key, a colon and a value', '`key: value`'],
}

/** What one of the library's errors means to someone writing a conversion file; `found` is the text it points at. */
export function saidPlainly(error: YAMLError, found: string): Said {
  const byText = BY_TEXT.find(([pattern]) => pattern.test(error.message))
  const [what, accepted] = byText ? [byText[1], byText[2]] : (BY_CODE[error.code] ?? ['this cannot be read', '`key: value`'])
  return { what, found: asFound(found), accepted }
}
