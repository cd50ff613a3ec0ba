import type { Outcome } from '@ampwright/engine'

/** Each outcome has a shape beside its word: colour alone tells nobody anything. */
export const MARKS: Readonly<Record<Outcome, string>> = {
  sound: '●',
  marginal: '◐',
  failing: '▲',
  unanswered: '◌',
  'does not apply': '–',
  accepted: '✓',
}
