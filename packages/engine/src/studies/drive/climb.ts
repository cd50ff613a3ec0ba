import { torqueAtSpeed } from '../../drive/envelope.ts'
import { windingHeat } from '../../drive/motor-loss.ts'
import { climbForce, leastSpeed, motorSpeed, roadLoadAt, slopeBelowSpeed, torqueInShare } from '../../drive/speeds.ts'
import { pullTogether } from '../../drive/wheel-force.ts'
import { windingSteady } from '../../drive/winding.ts'
import type { ClimbGoal } from '../../model/brief.ts'
import type { Model } from '../../model/model.ts'
import { GRAVITY } from '../../vehicle/gravity.ts'
import { slopeAtSpeed } from '../../vehicle/steady-speed.ts'
import { type Fact, type Figure, isGap, type Value } from '../../working/value.ts'
import { situation, situationReads } from '../donor/situation.ts'
import { type Ask, from, type Gaps, isGaps, type Known, type Maker, maybe, study } from '../study.ts'
import { driveUnits } from './drive-units.ts'
import { lasting } from './operating-points.ts'
import { conditionsOf, pulling, pullingReads, ratioAt, roadOf, speedLimits } from './pulling.ts'
import { heldBackByBattery, type Rating, ratingsFor } from './ratings.ts'
import type { UnitFigures } from './unit-figures.ts'

export type Climb = {
  readonly goal: Fact
  readonly speed: Fact
  readonly slope: Figure
  /** The fastest that motors and gearbox inputs allow in the gears it climbs in, and which of them it is. */
  readonly fastest: Figure
  readonly binding: string
  /** The battery is what pulls no harder. */
  readonly weak: boolean
  readonly need: Figure
  readonly radius: Value
  /** What each unit gives for as long as the goal asks. */
  readonly units: readonly Rating[]
  readonly warmest: Figure
  readonly limit: Value
}
export const climbGoals = (m: Model): readonly (readonly [string, ClimbGoal])[] =>
  Object.entries(m.brief.goals).filter((g): g is [string, ClimbGoal] => g[1]?.kind === 'climb')

const reads = (m: Model, ask: Ask, goal: ClimbGoal) => {
  const conditions = conditionsOf(goal, m.brief.conditions)
  return {
    slope: goal.slope,
    speed: goal.speed,
    duration: isGap(goal.duration) ? null : goal.duration,
    situation: situationReads(m, ask, conditions),
    pulling: pullingReads(m, ask, { surface: conditions.surface, transfer: goal.transfer }),
    units: ask(driveUnits),
    ready: Object.keys(m.drive.units).map(name =>
      from(ask(driveUnits), d => {
        const u = d.units[name] as UnitFigures | Gaps
        return isGaps(u) ? u : { name }
      }),
    ),
  }
}

/** Climbs the brief asks for: the slope held by the continuous rating, for 30 s and for 5 min, and how warm the windings settle. */
export const climb = study({
  id: 'climb',
  stage: 'drive',
  asks: 'Which hills does it climb at the speed wanted, and for how long?',
  reads: (m, ask) => {
    const goals = climbGoals(m)
    return { names: goals.map(([name]) => name), goals: goals.map(([, g]) => maybe(reads(m, ask, g))) }
  },
  answer: ({ names, goals }, make): { goals: Readonly<Record<string, Climb | Gaps>> } => ({
    goals: Object.fromEntries(
      goals.map((g, i): [string, Climb | Gaps] => [names[i] as string, isGaps(g) ? g : climbing(make, g, names[i] as string)]),
    ),
  }),
})

type Read = Known<ReturnType<typeof reads>>
function climbing(make: Maker, g: Read, item: string): Climb {
  const s = situation(make, g.situation, item),
    p = pulling(make, g.pulling, item),
    list = g.ready.map(r => g.units.units[r.name] as UnitFigures)
  const level = make.work('level', roadLoadAt, { ...roadOf(s), speed: g.speed }, { item, label: `Road load on the level, ${item}` })
  const need = make.work(
    'need',
    climbForce,
    { level, mass: s.mass, rolling: s.rolling, slope: g.slope, gravity: GRAVITY },
    { item, label: `Pull the climb needs, ${item}` },
  )
  const ratios = list.map((_, u) => ratioAt(p, u, g.speed, s.radius))
  const limits: Record<string, Figure> = Object.assign(
    {},
    ...list.map((_, u) => speedLimits(make, p, u, ratios[u] as Value, s.radius, item)),
  )
  const fastest = make.work(
    'fastest',
    leastSpeed,
    { limits: Object.values(limits) },
    { item, label: `Fastest in the gear it climbs in, ${item}` },
  )
  const slopeBy = (key: string, label: string, pulls: readonly Value[]): Figure => {
    const pull =
      pulls.length === 1
        ? (pulls[0] as Value)
        : make.work(`${key}-pull-together`, pullTogether, { forces: pulls }, { item, label: `Pull of all motors, ${label}` })
    const slope = make.work(
      `${key}-by-pull`,
      slopeAtSpeed,
      { pull, load: level, mass: s.mass },
      { item, label: `Slope by pull, ${label}, ${item}` },
    )
    return make.work(key, slopeBelowSpeed, { slope, speed: g.speed, fastest }, { item, label: `Slope ${label}, ${item}` })
  }
  const { timed, continuous } = ratingsFor(make, { pulling: p, units: list, ratios, radius: s.radius, speed: g.speed, item })
  const steady = g.duration ? timed('asked', 'for the time asked', g.duration as Fact) : continuous()
  const slope = slopeBy(
    'slope',
    g.duration ? 'held for the time asked' : 'held continuously',
    steady.map(r => r.pull),
  )
  for (const [key, label, seconds] of [
    ['slope-30-s', 'held for 30 s', 30],
    ['slope-5-min', 'held for 5 min', 300],
  ] as const)
    slopeBy(
      key,
      label,
      timed(key, label, lasting(seconds)).map(r => r.pull),
    )
  const all =
    steady.length === 1
      ? (steady[0]?.pull as Value)
      : make.work('pull-together', pullTogether, { forces: steady.map(r => r.pull) }, { item, label: `Pull of all motors, ${item}` })
  const warm = list.map((u, i) => {
    const more = (what: string) => ({ item: `${item} ${u.name}`, label: `${what} of ${u.name}, ${item}` }),
      r = steady[i] as Rating
    const speed = make.work('motor-speed', motorSpeed, { speed: g.speed, radius: s.radius, ratio: r.ratio }, more('Motor speed'))
    const full = make.work('torque-here', torqueAtSpeed, { torque: r.torque, power: r.power, speed }, more('Torque at hand'))
    const torque = make.work('torque', torqueInShare, { full, need, all }, more('Torque needed'))
    return make.work(
      'winding',
      windingSteady,
      {
        heat: make.work('heat', windingHeat, { losses: u.losses, factor: u.lossFactor, speed, torque }, more('Heat in the winding')),
        conductance: u.conductance,
        coolant: u.coolant,
      },
      more('Winding temperature in the long run'),
    )
  })
  const hottest = warm
    .map((w, i) => [w, list[i] as UnitFigures] as const)
    .sort((a, b) => b[0].value / b[1].windingLimit.value - a[0].value / a[1].windingLimit.value)[0] as readonly [Figure, UnitFigures]
  return {
    goal: g.slope as Fact,
    speed: g.speed as Fact,
    slope,
    fastest,
    binding: Object.keys(limits).find(name => limits[name]?.value === fastest.value) as string,
    weak: heldBackByBattery(steady, s.radius, g.speed),
    need,
    radius: s.radius,
    units: steady,
    warmest: hottest[0],
    limit: hottest[1].windingLimit,
  }
}
