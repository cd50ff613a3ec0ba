import type { Goal } from '../../model/brief.ts'
import type { Model } from '../../model/model.ts'
import type { Table } from '../../studies/study.ts'
import { type AnyValue, type Field, isGap } from '../../working/value.ts'
import type { Finding } from '../rule.ts'

export type GoalKind = Goal['kind']
/** The rule that judges a goal of each kind. */
export const GOAL_RULES: Readonly<Record<GoalKind, string>> = {
  range: 'range',
  acceleration: 'acceleration',
  'top speed': 'top-speed',
  climb: 'climb',
  'steady speed': 'steady-speed',
  'hill start': 'hill-start',
  charging: 'charging',
}
const CONDITIONS = ['load', 'trailer', 'surface', 'temperature', 'altitude', 'headWind'] as const
/** What a kind of goal asks for, in the order it is said. */
const WANTED: Readonly<Record<GoalKind, readonly string[]>> = {
  'top speed': ['speed'],
  acceleration: ['from', 'to', 'within'],
  'hill start': ['slope'],
  climb: ['slope', 'speed', 'duration'],
  'steady speed': ['speed', 'duration'],
  range: ['distance'],
  charging: ['from', 'to', 'distance', 'within', 'temperature'],
}
const LABELS: Readonly<Record<string, string>> = {
  kind: 'goal',
  outcome: 'outcome',
  found: 'found',
  beside: 'fails beside it',
  speed: 'speed',
  from: 'from',
  to: 'to',
  within: 'within',
  slope: 'slope',
  duration: 'for',
  distance: 'distance',
  trip: 'trip',
  place: 'place',
  load: 'load',
  trailer: 'trailer',
  surface: 'road',
  temperature: 'temperature',
  altitude: 'altitude',
  headWind: 'head wind',
}

type Fields = Readonly<Record<string, Field<never> | undefined>>
const valueOf = (field: Field<never> | undefined): AnyValue | undefined =>
  field === undefined || isGap(field) ? undefined : (field as AnyValue)

/** Where a goal's conditions stand: at the goal, else common to all; those of a range or charging goal with its trip. */
function conditionsOf(m: Model, goal: Goal): Fields {
  const trip = 'trip' in goal && !isGap(goal.trip) ? m.trips.named[goal.trip.value] : undefined
  const own = goal as unknown as Fields,
    ofTrip = trip as unknown as Fields | undefined,
    common = m.brief.conditions as unknown as Fields
  return Object.fromEntries(
    CONDITIONS.map(key => {
      const field = own[key]
      if (goal.kind === 'range' || goal.kind === 'charging') return [key, field && !isGap(field) ? field : ofTrip?.[key]]
      return [key, field && !isGap(field) ? field : common[key]]
    }),
  )
}

/** Each goal of the brief with its conditions, how it came out, and what else about it fails. */
export function goals(m: Model, findings: readonly Finding[]): readonly Table[] {
  const all = Object.entries(m.brief.goals).filter((g): g is [string, Goal] => g[1] !== undefined)
  if (all.length === 0) return []
  const ofGoals = findings.filter(f => f.about.some(path => path.startsWith('brief.goals.')))
  const rows = all.map(([name, goal]) => {
    const at = `brief.goals.${name}`
    const judged = ofGoals.filter(f => f.about.some(path => path === at || path.startsWith(`${at}.`))),
      own = judged.find(f => f.rule === GOAL_RULES[goal.kind] && f.item === name),
      beside = new Set(judged.filter(f => f !== own && f.outcome === 'failing').map(f => f.title))
    const fields = goal as unknown as Fields,
      conditions = conditionsOf(m, goal)
    const cells: Record<string, AnyValue | string | undefined> = {
      kind: goal.kind,
      outcome: own?.outcome ?? 'unanswered',
      found: own?.found,
      beside: beside.size ? [...beside].join('; ') : undefined,
    }
    for (const key of [...WANTED[goal.kind], 'trip', 'place']) cells[key] ??= valueOf(fields[key])
    for (const key of CONDITIONS) cells[key] ??= valueOf(conditions[key])
    return { name, cells: Object.fromEntries(Object.entries(cells).filter(([, v]) => v !== undefined)) }
  })
  const used = new Set(rows.flatMap(r => Object.keys(r.cells)))
  const columns = Object.entries(LABELS)
    .filter(([key]) => used.has(key))
    .map(([key, label]) => ({ key, label }))
  return [{ id: 'brief.goals', label: 'Goals of the brief', columns, rows }]
}
