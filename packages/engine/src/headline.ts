import { GOAL_RULES, type GoalKind } from './rules/brief/goals.ts'
import { usualPartsListed } from './rules/donor/usual-parts.ts'
import type { Finding } from './rules/rule.ts'
import { type Figure, type Gap, isFigure, type Value } from './working/value.ts'

/** Runs every car is timed over, whatever its brief asks; a goal of the brief goes before them. */
const USUAL = /@(0-50|0-100|80-120|quarter mile)$/
/** A charge by its time, or by the distance put back in the time there is. */
const CHARGE = /^charge\.(time|distance-back)@/
/** What is always in view, in this order; a pattern may match one figure for each goal or load case. */
const HEADLINE: readonly RegExp[] = [
  /^range\.range@/,
  /^acceleration\.time@/,
  /^top-speed\.speed@/,
  /^held-speed\.speed@/,
  /^climb\.slope@/,
  /^hill-start\.slope@/,
  CHARGE,
  /^ledger\.kerb$/,
  /^room\.to@.* axle$/,
  /^room\.payload$/,
  /^cost\.parts$/,
]

const ANY = new RegExp(HEADLINE.map(p => p.source).join('|'))

type Answered = { readonly figures: ReadonlyMap<string, Figure> }

/** The headline figures of an assessment, those that could be answered: for runs the goals of the brief, for axles the one with least room. */
export function headlineOf(a: Answered): readonly Figure[] {
  const numbers = [...a.figures.values()].filter(f => typeof f.value === 'number' && ANY.test(f.id))
  return HEADLINE.flatMap(pattern => {
    const found = numbers.filter(f => pattern.test(f.id))
    if (pattern.source.includes('room'))
      return found.length && pattern.source.includes('axle') ? [found.reduce((a, b) => (b.value < a.value ? b : a))] : found
    if (pattern === CHARGE)
      return found.filter(f => f.id.startsWith('charge.distance') || !a.figures.has(f.id.replace('charge.time', 'charge.distance-back')))
    const goals = found.filter(f => !USUAL.test(f.id))
    return goals.length ? goals : found.filter(f => f.id.endsWith('@0-100') || !USUAL.test(f.id))
  })
}

/** One line of the headline: a figure with what is wanted of it, or a goal that cannot be answered yet with what is missing. */
export type HeadlineRow = {
  readonly label: string
  readonly figure?: Figure
  readonly outcome?: Finding['outcome']
  readonly wanted?: { readonly side: 'at most' | 'at least'; readonly limit: Value }
  readonly missing: readonly Gap[]
  /** Usual parts of a conversion that mass and cost leave out: nobody has said where they are. */
  readonly without?: readonly string[]
}
/** What stands too low while usual parts are not in the list. */
const OF_THE_LIST: readonly string[] = ['ledger.kerb', 'cost.parts']
/** Kinds of goal in the order of the headline, with the place of their figures in it and what a line without one is called. */
const GOALS: Readonly<Record<GoalKind, readonly [place: RegExp, label: string]>> = {
  range: [/^range\./, 'Range'],
  acceleration: [/^acceleration\./, 'Time'],
  'top speed': [/^top-speed\./, 'Top speed'],
  'steady speed': [/^held-speed\./, 'Speed held'],
  climb: [/^climb\./, 'Slope held'],
  'hill start': [/^hill-start\./, 'Hill start'],
  charging: [/^charge\./, 'Charging'],
}

/** The headline line by line: every goal of the brief has its own, answered or not. */
export function headlineRows(a: Answered & { readonly findings: readonly Finding[] }): readonly HeadlineRow[] {
  const figures = headlineOf(a),
    goals = (Object.keys(GOALS) as GoalKind[]).map(kind => ({
      place: GOALS[kind][0],
      label: GOALS[kind][1],
      findings: a.findings.filter(f => f.rule === GOAL_RULES[kind] && f.item),
    }))
  const judging = (figure: Figure): readonly Finding[] => {
    const all = a.findings.filter(f => idOf(f) === figure.id && f.required)
    const ofGoals = goals.flatMap(g =>
      g.findings.filter(f => all.includes(f) || (f.found === undefined && g.place.test(figure.id) && figure.id.endsWith(`@${f.item}`))),
    )
    return ofGoals.length ? ofGoals : all.slice(0, 1)
  }
  const unlisted = a.findings.flatMap(f => (f.rule === usualPartsListed.id && f.outcome === 'unanswered' && f.item ? [f.item] : []))
  const shown = new Set<Finding>()
  const rowsOf = (figure: Figure): readonly HeadlineRow[] => {
    const by = judging(figure)
    for (const f of by) shown.add(f)
    const without = OF_THE_LIST.includes(figure.id) && unlisted.length ? { without: unlisted } : {}
    if (by.length === 0) return [{ label: figure.label, figure, missing: [], ...without }]
    return by.map(f => ({
      label: by.length > 1 ? `${figure.label}, ${f.item}` : figure.label,
      figure,
      outcome: f.outcome,
      ...(f.required ? { wanted: f.required } : {}),
      missing: f.gaps,
      ...without,
    }))
  }
  const answered = figures.map(figure => ({ figure, rows: rowsOf(figure) }))
  const waiting = ({ label, findings }: (typeof goals)[number]): readonly HeadlineRow[] =>
    findings
      .filter(f => !shown.has(f) && (f.outcome !== 'does not apply' || f.byHand))
      .map(f => ({
        label: `${label}, ${f.item}`,
        outcome: f.outcome,
        ...(f.found && isFigure(f.found) ? { figure: f.found } : {}),
        ...(f.required ? { wanted: f.required } : {}),
        missing: f.gaps,
      }))
  const others = answered.filter(({ figure }) => !goals.some(g => g.place.test(figure.id)))
  return [
    ...goals.flatMap(g => [...answered.filter(({ figure }) => g.place.test(figure.id)).flatMap(x => x.rows), ...waiting(g)]),
    ...others.flatMap(x => x.rows),
  ]
}
const idOf = (f: Finding): string | undefined => (f.found && isFigure(f.found) ? f.found.id : undefined)
