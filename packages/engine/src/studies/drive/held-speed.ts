import { highestSpeed } from '../../drive/highest-speed.ts'
import { leastSpeed, roadLoadAt } from '../../drive/speeds.ts'
import type { SteadySpeedGoal } from '../../model/brief.ts'
import type { Model } from '../../model/model.ts'
import { type Fact, type Figure, isGap, type Value } from '../../working/value.ts'
import { situation, situationReads } from '../donor/situation.ts'
import { type Ask, from, type Gaps, isGaps, type Known, type Maker, maybe, study } from '../study.ts'
import { driveUnits } from './drive-units.ts'
import { conditionsOf, pulling, pullingReads, ratioAt, roadOf, speedLimits } from './pulling.ts'
import { heldBackByBattery, type Rating, ratingsFor } from './ratings.ts'
import type { UnitFigures } from './unit-figures.ts'

export type HeldSpeed = {
  readonly goal: Fact
  readonly duration: Fact | null
  /** The highest speed held for the time asked, and what sets it: a motor, a gearbox input, or the pull. */
  readonly speed: Figure
  readonly binding: string
  readonly weak: boolean
  /** Road load at the speed wanted, and what each unit gives there for that time. */
  readonly need: Figure
  readonly radius: Value
  readonly units: readonly Rating[]
}

const reads = (m: Model, ask: Ask, goal: SteadySpeedGoal) => {
  const conditions = conditionsOf(goal, m.brief.conditions)
  return {
    speed: goal.speed,
    duration: isGap(goal.duration) ? null : goal.duration,
    situation: situationReads(m, ask, conditions),
    pulling: pullingReads(m, ask, { surface: conditions.surface }),
    units: ask(driveUnits),
    ready: Object.keys(m.drive.units).map(name =>
      from(ask(driveUnits), d => {
        const u = d.units[name] as UnitFigures | Gaps
        return isGaps(u) ? u : { name }
      }),
    ),
  }
}

/** The highest speed held on the level for the time asked, with load, trailer and weather of the goal. */
export const heldSpeed = study({
  id: 'held-speed',
  stage: 'drive',
  asks: 'How fast does it go for as long as wanted, loaded and in the weather wanted?',
  reads: (m, ask) => {
    const goals = Object.entries(m.brief.goals).filter((g): g is [string, SteadySpeedGoal] => g[1]?.kind === 'steady speed')
    return { names: goals.map(([name]) => name), goals: goals.map(([, g]) => maybe(reads(m, ask, g))) }
  },
  answer: ({ names, goals }, make): { goals: Readonly<Record<string, HeldSpeed | Gaps>> } => ({
    goals: Object.fromEntries(
      goals.map((g, i): [string, HeldSpeed | Gaps] => [names[i] as string, isGaps(g) ? g : holding(make, g, names[i] as string)]),
    ),
  }),
})

function holding(make: Maker, g: Known<ReturnType<typeof reads>>, item: string): HeldSpeed {
  const s = situation(make, g.situation, item),
    p = pulling(make, g.pulling, item),
    list = g.ready.map(r => g.units.units[r.name] as UnitFigures),
    ratios = list.map((_, u) => ratioAt(p, u, g.speed, s.radius))
  const { timed, continuous } = ratingsFor(make, { pulling: p, units: list, ratios, radius: s.radius, speed: g.speed, item })
  const units = g.duration ? timed('asked', 'for the time asked', g.duration as Fact) : continuous()
  const limits: Record<string, Figure> = Object.assign(
    {},
    ...list.map((_, u) => speedLimits(make, p, u, ratios[u] as Value, s.radius, item)),
  )
  limits['pull'] = make.work(
    'by-pull',
    highestSpeed,
    {
      ...roadOf(s),
      torque: units.map(r => r.torque),
      power: units.map(r => r.power),
      efficiency: units.map(r => r.efficiency),
      ratios,
      radius: s.radius,
    },
    { item, label: `Speed the pull holds ${g.duration ? 'for the time asked' : 'continuously'}, ${item}` },
  )
  const speed = make.work('speed', leastSpeed, { limits: Object.values(limits) }, { item, label: `Speed held, ${item}` })
  const need = make.work('need', roadLoadAt, { ...roadOf(s), speed: g.speed }, { item, label: `Road load at the speed wanted, ${item}` })
  return {
    goal: g.speed as Fact,
    duration: g.duration as Fact | null,
    speed,
    binding: Object.keys(limits).find(name => limits[name]?.value === speed.value) as string,
    weak: heldBackByBattery(units, s.radius, g.speed),
    need,
    radius: s.radius,
    units,
  }
}
