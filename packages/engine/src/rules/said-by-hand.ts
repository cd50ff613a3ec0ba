import type { Acceptance, Model, NotApplying } from '../model/model.ts'
import { type Fact, type Field, isGap } from '../working/value.ts'
import { type Finding, findingId, findingKey, type Said, type Unheeded } from './rule.ts'

/**
 * What somebody said of a finding by hand: that they accept it, or that it does not apply to this car. Either holds as long as what the finding rests on is what it was
 * then; afterwards the finding is what it is, and tells what lapsed.
 *
 * Every harm may be set aside, people's too, as every harm may be accepted: only with a name and a reason, and counted by itself, never among what is sound.
 * What is sound, and what the rule itself finds not to apply, stays as it is. Where a file says both, an acceptance that holds goes first: it owns up to the breach.
 */
export function saidByHand(own: Finding, model: Model): Finding {
  if (own.outcome === 'sound' || own.outcome === 'does not apply') return own
  const accepted = own.outcome === 'unanswered' ? undefined : accepts(own, rowOf(own, model.accepted))
  if (accepted && !accepted.unheeded) return accepted
  return setsAside(own, rowOf(own, model.doesNotApply)) ?? accepted ?? own
}
/** The row under the name of the finding, as the file writes it or as it is said. */
const rowOf = <T>(f: Finding, rows: Readonly<Record<string, T | undefined>>): T | undefined => rows[findingKey(f)] ?? rows[findingId(f)]

function accepts(f: Finding, row: Acceptance | undefined): Finding | undefined {
  if (!row) return undefined
  const unheeded = whyNot('accepted', f, row, [row.by, row.reason, row.scope, row.date, row.rests])
  if (unheeded) return { ...f, ...unheeded }
  return { ...f, outcome: 'accepted', reason: `${wordOf(row.reason)} (${wordOf(row.by)}, ${wordOf(row.date)}; ${wordOf(row.scope)})` }
}

function setsAside(f: Finding, row: NotApplying | undefined): Finding | undefined {
  if (!row) return undefined
  const unheeded = whyNot('does not apply', f, row, [row.by, row.reason, row.date, row.rests])
  if (unheeded) return { ...f, ...unheeded }
  const by = wordOf(row.by) ?? '',
    date = wordOf(row.date) ?? ''
  return {
    ...f,
    outcome: 'does not apply',
    reason: `${wordOf(row.reason)}, said by ${by} on ${date}`,
    byHand: { by, date, because: wordOf(row.reason) ?? '', otherwise: f.outcome },
    gaps: [],
    remedies: [],
  }
}

/** Why what was said does not hold: something of it is not stated, or what the finding rests on has changed. */
function whyNot(
  as: Said,
  f: Finding,
  row: Acceptance | NotApplying,
  needed: readonly Field<string>[],
): Pick<Finding, 'unheeded' | 'lapsed'> | undefined {
  // In its own finding a label need not name the finding once more.
  const lacks = needed.flatMap(x => (isGap(x) ? [x.label.replace(/ \([^()]*\)$/, '')] : [])),
    said = { as, by: wordOf(row.by), because: wordOf(row.reason), date: wordOf(row.date) }
  if (lacks.length) return { unheeded: { ...stated(said), lacks } }
  return wordOf(row.rests) === f.rests ? undefined : { lapsed: true, unheeded: { ...stated(said), lacks: [] } }
}
const stated = (said: object): Omit<Unheeded, 'lacks'> =>
  Object.fromEntries(Object.entries(said).filter(([, v]) => v !== undefined)) as Omit<Unheeded, 'lacks'>
const wordOf = (field: Field<string>): string | undefined => (isGap(field) ? undefined : (field as Fact<string>).value)
