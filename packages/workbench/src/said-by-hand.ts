import type { Edit } from '@ampwright/conversion'
import { type Finding, findingId, findingKey, type Outcome } from '@ampwright/engine'
import { Refusal } from './refusal.ts'

export type Accepting = { readonly by: string; readonly reason: string; readonly scope: string; readonly date: string }
/** What is said where a finding is no matter of this car. */
export type SettingAside = Omit<Accepting, 'scope'>

/** The edit that accepts a finding. What rests on nothing, and what holds anyway, cannot be accepted. */
export function acceptance(f: Finding, given: Accepting): Edit {
  refuseUnless(['failing', 'marginal'], f, 'accept', 'only what is failing or marginal can be accepted')
  stated('accept', given, { by: 'who that is', reason: 'why it may stay so', scope: 'what it holds for' }, 'who accepts a finding says')
  return {
    path: ['accepted', findingKey(f)],
    now: { by: given.by, reason: given.reason, scope: given.scope, date: given.date, rests: f.rests },
  }
}

/** The edit that says a finding does not apply to this car. What holds anyway needs none. */
export function settingAside(f: Finding, given: SettingAside): Edit {
  const only = 'only what is failing, marginal or unanswered can be said not to apply'
  refuseUnless(['failing', 'marginal', 'unanswered'], f, 'does-not-apply', only)
  stated('does-not-apply', given, { by: 'who that is', reason: 'why not' }, 'who says that a finding does not apply says')
  return { path: ['does-not-apply', findingKey(f)], now: { by: given.by, reason: given.reason, date: given.date, rests: f.rests } }
}

/** The edits that take back what was said of a finding by hand, whether it still holds or has lapsed. */
export function takingBack(f: Finding): readonly Edit[] {
  const said = f.outcome === 'accepted' ? 'accepted' : f.byHand ? 'does not apply' : f.unheeded?.as
  if (said === undefined) throw new Refusal(`take-back: nothing was said of ${findingId(f)} by hand; it is ${f.outcome}`)
  return [{ path: [said === 'accepted' ? 'accepted' : 'does-not-apply', findingKey(f)], now: null }]
}

/** What somebody says of a finding on a screen, or that it is taken back. */
export type Saying =
  | ({ readonly as: 'accepted' } & Accepting)
  | ({ readonly as: 'does not apply' } & SettingAside)
  | { readonly as: 'taken back' }
/** The edits that say it. */
export const sayingEdits = (f: Finding, saying: Saying): readonly Edit[] =>
  saying.as === 'accepted' ? [acceptance(f, saying)] : saying.as === 'does not apply' ? [settingAside(f, saying)] : takingBack(f)

function refuseUnless(may: readonly Outcome[], f: Finding, command: string, only: string): void {
  if (!may.includes(f.outcome)) throw new Refusal(`${command}: ${f.rule} is ${f.outcome}; ${only}`)
  if (f.rests === '') throw new Refusal(`${command}: ${f.rule} rests on nothing that could change; it would never lapse`)
}

/** Refuses what is empty, and a day that is none. */
function stated<K extends string>(
  command: string,
  given: Readonly<Record<NoInfer<K> | 'date', string>>,
  asks: Readonly<Record<K, string>>,
  who: string,
): void {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(given.date))
    throw new Refusal(`${command}: --date: found «${given.date}»; a date such as 2026-11-25 is wanted`)
  for (const [word, ask] of Object.entries(asks) as [K, string][])
    if (given[word].trim() === '') throw new Refusal(`${command}: --${word} is empty; ${who} ${ask}`)
}

/** Who set a finding aside, why, when that lapses, and how it would come out otherwise. */
export function asideText({ byHand: h }: Pick<Finding, 'byHand'>): string | undefined {
  if (h === undefined) return undefined
  const lapses = h.otherwise === 'unanswered' ? 'what it waits for' : 'anything it rests on'
  return `Does not apply because ${ended(h.because)}, said by ${h.by} on ${h.date}. It would be ${h.otherwise} otherwise. Lapses as soon as ${lapses} changes.`
}

/** What was said of a finding by hand and does not hold, and why. */
export function unheededText({ unheeded: u }: Pick<Finding, 'unheeded'>): string | undefined {
  if (u === undefined) return undefined
  const what = u.as === 'accepted' ? 'An acceptance' : 'A word that this does not apply'
  if (u.lacks.length) return `${what} stands in the file and does not count: not stated is ${u.lacks.join(', ')}.`
  return `${what} has lapsed: what it rested on has changed since ${u.by} said on ${u.date}: ${ended(u.because ?? '')}.`
}
/** Words of a person, without the full stop they may have put. */
const ended = (words: string): string => words.trim().replace(/[.;,]+$/, '')
