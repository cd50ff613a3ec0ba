import type { Issue } from '../issue.ts'
import type { Splice } from './splice.ts'

/** Why an edit cannot be made. */
export type Refusal = Pick<Issue, 'what' | 'found' | 'accepted'>

export const isRefusal = (outcome: Splice | Refusal): outcome is Refusal => 'what' in outcome

export const CANNOT_BE_WRITTEN: Refusal = {
  what: 'this name or value cannot be written in the file',
  found: '',
  accepted: 'keys of letters, figures, dashes and points; values of printable characters',
}
