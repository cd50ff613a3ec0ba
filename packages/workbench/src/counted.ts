import type { Finding, Outcome } from '@ampwright/engine'

type Aside = Pick<Finding, 'outcome'> & { readonly byHand?: unknown }

/** Whether a finding asks for nothing: it is sound, or the rule itself finds that it does not apply. What was set aside by hand stays in view. */
export const asksNothing = (f: Aside): boolean => f.outcome === 'sound' || (f.outcome === 'does not apply' && f.byHand === undefined)

/** How a finding is counted: what was set aside by hand by itself. */
export type Counted = Outcome | 'said not to apply'
export const countedAs = (f: Aside): Counted => (f.byHand === undefined ? f.outcome : 'said not to apply')
/** Every way to be counted, worst first. */
export const COUNTED: readonly Counted[] = ['failing', 'unanswered', 'marginal', 'accepted', 'said not to apply', 'sound', 'does not apply']
