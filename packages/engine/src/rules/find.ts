import type { Model } from '../model/model.ts'
import { markOf } from '../sources.ts'
import type { Answers } from '../studies/answers.ts'
import { type Gaps, isGaps, once } from '../studies/study.ts'
import { breaksAllOver, judge, type Outcome } from '../working/judge.ts'
import { assumptions, leaves } from '../working/leaves.ts'
import { halfWidthOfDifference, type SpreadMemo } from '../working/spread.ts'
import { type AnyValue, type Fact, type Gap, isGap, type Value } from '../working/value.ts'
import { chosenLimits } from './limits.ts'
import type { Finding, Judgement, Remedy, Rule } from './rule.ts'
import { saidByHand } from './said-by-hand.ts'
import { decides, type Limit } from './sets/sets.ts'

/** Judges one rule over the car. `memo` given: with bands; without it, best values only. */
export function findings(rule: Rule, answers: Pick<Answers, 'current' | 'ask'>, memo?: SpreadMemo): readonly Finding[] {
  const model = answers.current()
  return rule.judgements(model, answers.ask, chosenLimits(model)).map(j => saidByHand(finding(rule, j, model, memo), model))
}

/** The row, without what a comparison carries beside it. */
const rowAlone = ({ requirement, from, fellBack, onlyWhen }: Limit): Limit => ({
  requirement,
  from,
  fellBack,
  ...(onlyWhen === undefined ? {} : { onlyWhen }),
})

/** Said wherever no law was found. */
const FELL_BACK = 'The rule set says nothing on this: common practice stands in, which is no law.'
const gapsOf = (...x: (AnyValue | Gap | Gaps)[]): readonly Gap[] => once(x.flatMap(v => (isGap(v) ? [v] : isGaps(v) ? v.gaps : [])))

function finding(rule: Rule, j: Judgement, model: Model, memo: SpreadMemo | undefined): Finding {
  const base = {
    rule: rule.id,
    title: rule.title,
    stage: rule.stage,
    harm: rule.harm,
    says: j.requirement?.fellBack ? `${j.says} ${FELL_BACK}` : j.says,
    slots: j.slots ?? {},
    source: rule.source,
    remedies: j.remedies ?? [],
    about: j.about,
    gaps: [],
    assumed: [],
    rests: '',
    ...(j.item === undefined ? {} : { item: j.item }),
    ...(rule.caution === undefined ? {} : { caution: rule.caution }),
    ...(j.requirement ? { requirement: rowAlone(j.requirement) } : {}),
  } satisfies Omit<Finding, 'outcome'>
  if ('doesNotApply' in j) return { ...base, outcome: 'does not apply', reason: j.doesNotApply }
  const onlyWhen = j.requirement?.onlyWhen
  if (onlyWhen !== undefined) {
    const asked = model.brief.individualApproval
    if (isGap(asked)) return { ...base, outcome: 'unanswered', gaps: [asked], reason: onlyWhen, rests: waitsFor([asked], []) }
    if (asked.value === 'no') return { ...base, outcome: 'does not apply', reason: onlyWhen }
  }
  if ('missing' in j) {
    const gaps = gapsOf(j.missing)
    return { ...base, outcome: 'unanswered', gaps, rests: waitsFor(gaps, []) }
  }
  if ('holds' in j) {
    const { assumed, print } = restsOn(j.rests),
      unsure = unsureOf(rule, assumed, j)
    const outcome = !j.holds ? 'failing' : j.marginal ? 'marginal' : 'sound'
    // One object, filled as it becomes known: an edit makes hundreds of these.
    return Object.assign(base, { assumed, rests: print }, unsure ? unanswered(unsure, base.remedies, j.rests) : eased(outcome, rule, j))
  }
  const gaps = gapsOf(j.found, j.limit)
  if (gaps.length) return { ...base, outcome: 'unanswered', gaps, rests: waitsFor(gaps, [j.found, j.limit]) }
  const found = j.found as Value,
    limit = j.limit as Value
  const half = memo ? halfWidthOfDifference(found, limit, memo) : 0
  const { assumed, print } = restsOn([found, limit]),
    unsure = unsureOf(rule, assumed, j, limit)
  const judged = Object.assign(base, { found, required: { side: j.side, limit }, half, assumed, rests: print })
  if (unsure === ASSUMED && memo && breaksAllOver(found.value, j.side, limit.value, half)) {
    const outcome = eased('failing', rule, j)
    return Object.assign(judged, outcome, {
      reason:
        outcome.reason ??
        (half > 0 ? 'broken over the whole ± of what is assumed' : 'broken at the very value assumed, which carries no ±'),
    })
  }
  return Object.assign(
    judged,
    unsure ? unanswered(unsure, base.remedies, [found, limit]) : eased(judge(found.value, j.side, limit.value, half), rule, j),
  )
}
/** A finding that waits for what is assumed says how to find each of these out. */
const unanswered = (
  reason: string,
  remedies: readonly Remedy[],
  rests: readonly AnyValue[],
): Pick<Finding, 'outcome' | 'reason' | 'remedies'> => ({
  outcome: 'unanswered',
  reason,
  remedies: reason === ASSUMED ? [...remedies, ...howToKnow(rests)] : remedies,
})
function howToKnow(values: readonly AnyValue[]): readonly Remedy[] {
  const facts = new Map(values.flatMap(assumptions).map(f => [f.path, f]))
  return [...facts.values()].map(({ path, label, measure: m }): Remedy => {
    const how = m ? `${m.tool} (${m.accuracy}, ${m.minutes} min)` : 'measure it, or read it off where it is a part'
    return { do: 'measure', says: `To know ${label}: ${how}.`, path }
  })
}

/** A breach of a limit that was only quoted, or that a milder reading allows, is marginal and says why. */
function eased(outcome: Outcome, rule: Rule, { requirement, eased, doubted }: Judgement): Pick<Finding, 'outcome' | 'reason' | 'doubted'> {
  if (doubted !== undefined && outcome !== 'failing') return { outcome: 'marginal', reason: doubted, doubted: true }
  if (outcome !== 'failing') return { outcome }
  if (requirement && decides(requirement.requirement, rule.harm) === 'warning only')
    return {
      outcome: 'marginal',
      reason: requirement.requirement.read === 'Q' ? 'the limit is only quoted by others' : 'the limit is known from memory only',
    }
  return eased === undefined ? { outcome } : { outcome: 'marginal', reason: eased }
}

const assumedIn = (values: readonly AnyValue[]): readonly string[] => [...new Set(values.flatMap(v => assumptions(v).map(f => f.path)))]

const ASSUMED = 'rests on an assumed value'
/** With harm S3 nothing is called good by an assumed value, nor decided by a limit known from memory only. A breach no end of the ± escapes is said. */
function unsureOf(rule: Rule, assumed: readonly string[], { requirement }: Judgement, limit?: Value): string | undefined {
  if (rule.harm !== 'S3') return undefined
  if (requirement && decides(requirement.requirement, rule.harm) === 'no') return 'the limit is known from memory only'
  const origin = limit && 'origin' in limit ? (limit as Fact).origin : undefined
  // An assumed limit can be measured; one of a standard cannot.
  if (origin?.source && origin.how !== 'assumed' && markOf(origin.source) === 'from memory') return 'the limit is known from memory only'
  return assumed.length ? ASSUMED : undefined
}

type RestsOn = { readonly assumed: readonly string[]; readonly print: string }
/** One value may meet several limits: what they rest on is kept by the last value and told apart by the others. */
const restsKept = new WeakMap<AnyValue, readonly { readonly of: readonly AnyValue[]; readonly rests: RestsOn }[]>()
const KEPT = 8

/** The assumptions in what a finding rests on, and a print of every leaf. */
function restsOn(values: readonly AnyValue[]): RestsOn {
  const last = values.at(-1)
  const kept = (last && restsKept.get(last)) ?? [],
    before = kept.find(({ of }) => of.length === values.length && of.every((v, i) => v === values[i]))
  if (before) return before.rests
  const rests = { assumed: assumedIn(values), print: fingerprint(values) }
  if (last) restsKept.set(last, [{ of: [...values], rests }, ...kept.slice(0, KEPT)])
  return rests
}

/** A curve or a map, every number of it, as one word. */
function rowsPrint(rows: object): string {
  const before = printed.get(rows)
  if (before !== undefined) return before
  const word = fnv(
    Object.entries(rows)
      .map(([axis, numbers]) => `${axis}:${[...(numbers as Iterable<number>)].join(',')}`)
      .join(';'),
  ).toString(16)
  printed.set(rows, word)
  return word
}
const printed = new WeakMap<object, string>()

/** Values never change once made. */
const lines = new WeakMap<AnyValue, readonly string[]>()
function linesOf(value: AnyValue): readonly string[] {
  const before = lines.get(value)
  if (before) return before
  const all = leaves(value)
    .map(f => `${f.path}=${typeof f.value === 'object' ? rowsPrint(f.value) : f.value}`)
    .sort()
  lines.set(value, all)
  return all
}

/** FNV-1a over path and value of every leaf: stable across sessions, changes when anything the finding rests on changes. */
export const fingerprint = (values: readonly AnyValue[]): string => printOf(values.flatMap(linesOf))

/** What an unanswered finding rests on: the values it waits for, and what is known of found and limit. A gap that closes or opens changes it. */
const waitsFor = (gaps: readonly Gap[], known: readonly (AnyValue | Gap | Gaps)[]): string =>
  printOf([...gaps.map(g => `${g.path}?`), ...known.flatMap(v => (isGap(v) || isGaps(v) ? [] : linesOf(v)))])

function printOf(lines: readonly string[]): string {
  return fnv([...lines].sort().join('\n'))
    .toString(16)
    .padStart(8, '0')
}
function fnv(text: string): number {
  let h = 0x811c9dc5
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193)
  return h >>> 0
}
