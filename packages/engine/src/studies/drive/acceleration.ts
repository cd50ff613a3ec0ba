import { clocked, fullThrottle, fullThrottleCoarse } from '../../drive/acceleration.ts'
import { run } from '../../drive/full-throttle.ts'
import type { AccelerationGoal } from '../../model/brief.ts'
import type { Model } from '../../model/model.ts'
import type { Fact, Figure, Value } from '../../working/value.ts'
import { numbers } from '../../working/work.ts'
import { situation, situationReads } from '../donor/situation.ts'
import { type Ask, type Gaps, isGaps, type Known, type Maker, maybe, study } from '../study.ts'
import { QUARTER_MILE, STANDSTILL, speedOf, UNLIMITED_SPEED, UNLIMITED_WAY } from './operating-points.ts'
import { carOf, conditionsOf, pulling, pullingReads } from './pulling.ts'

export type Sprint = {
  readonly goal: Fact
  readonly to: Fact
  readonly time: Figure
  readonly warmest: Figure
  readonly slipping: Figure
  readonly withBattery: boolean
}

/** What a run under a goal's conditions reads; the window of ratios reads the same. */
export const sprintReads = (m: Model, ask: Ask, goal: AccelerationGoal) => {
  const conditions = conditionsOf(goal, m.brief.conditions)
  return {
    from: goal.from,
    to: goal.to,
    within: goal.within,
    situation: situationReads(m, ask, conditions),
    pulling: pullingReads(m, ask, conditions),
  }
}
export const accelerationGoals = (m: Model): readonly (readonly [string, AccelerationGoal])[] =>
  Object.entries(m.brief.goals).filter((g): g is [string, AccelerationGoal] => g[1]?.kind === 'acceleration')

/** What every car is asked, whatever its brief says. */
const USUAL = [
  ['0-50', STANDSTILL, speedOf(50)],
  ['0-100', STANDSTILL, speedOf(100)],
  ['80-120', speedOf(80), speedOf(120)],
] as const

/** Runs at full pull: each goal, the usual ones, a quarter of a mile. */
export const acceleration = study({
  id: 'acceleration',
  stage: 'drive',
  asks: 'How quickly does it gather speed?',
  reads: (m, ask) => {
    const goals = accelerationGoals(m),
      common = m.brief.conditions
    return {
      names: goals.map(([name]) => name),
      goals: goals.map(([, g]) => maybe(sprintReads(m, ask, g))),
      usual: maybe({ situation: situationReads(m, ask, common), pulling: pullingReads(m, ask, common) }),
    }
  },
  answer: ({ names, goals, usual }, make): { goals: Readonly<Record<string, Sprint | Gaps>>; usual: Readonly<Record<string, Figure>> } => ({
    goals: Object.fromEntries(
      goals.map((g, i): [string, Sprint | Gaps] => {
        const item = names[i] as string
        if (isGaps(g)) return [item, g]
        const { figures, withBattery } = sprint(make, g, item, g.from, g.to, `Time, ${item}`)
        return [item, { goal: g.within, to: g.to, time: figures.time, warmest: figures.warmest, slipping: figures.slipping, withBattery }]
      }),
    ),
    usual: isGaps(usual) ? {} : usually(make, usual),
  }),
})

type Known_ = { readonly situation: Known<ReturnType<typeof situationReads>>; readonly pulling: Known<ReturnType<typeof pullingReads>> }
function inputsOf(make: Maker, k: Known_, item: string) {
  const s = situation(make, k.situation, item),
    p = pulling(make, k.pulling, item)
  return { s, p, inputs: { ...carOf(s), ...p.motors, ...p.winding } }
}
function sprint(make: Maker, k: Known_, item: string, from: Value, to: Value, label: string) {
  const { p, inputs } = inputsOf(make, k, item)
  const { figures } = make.all(
    '',
    fullThrottle,
    { ...inputs, from, to, travel: UNLIMITED_WAY },
    {
      item,
      labels: {
        time: label,
        warmest: `Warmest winding, ${item}`,
        slipping: `Held back by grip, ${item}`,
        distance: `Way, ${item}`,
        speed: `Speed at the end, ${item}`,
        rollout: `First foot, ${item}`,
      },
      rerun: fullThrottleCoarse,
    },
  )
  return { figures, withBattery: p.hasBattery }
}

function usually(make: Maker, k: Known_): Readonly<Record<string, Figure>> {
  const { inputs } = inputsOf(make, k, 'usual'),
    out: Record<string, Figure> = {}
  for (const [item, from, to] of USUAL)
    out[item] = make.all(
      '',
      fullThrottle,
      { ...inputs, from, to, travel: UNLIMITED_WAY },
      {
        item,
        labels: {
          time: `${item} km/h`,
          warmest: `Warmest winding, ${item} km/h`,
          slipping: `Held back by grip, ${item} km/h`,
          distance: `Way, ${item} km/h`,
          speed: `Speed at the end, ${item} km/h`,
          rollout: `First foot, ${item} km/h`,
        },
        rerun: fullThrottleCoarse,
      },
    ).figures.time
  const item = 'quarter mile',
    mile = { ...inputs, from: STANDSTILL, to: UNLIMITED_SPEED, travel: QUARTER_MILE }
  const { figures } = make.all('', fullThrottle, mile, {
    item,
    labels: {
      time: 'Quarter mile from standstill',
      speed: 'Speed at the quarter mile',
      warmest: 'Warmest winding, quarter mile',
      slipping: 'Held back by grip, quarter mile',
      distance: 'Way, quarter mile',
      rollout: 'First foot, quarter mile',
    },
    rerun: fullThrottleCoarse,
  })
  out[item] = figures.time
  // A car that never gets there has no time on the clock.
  if (Number.isFinite(figures.time.value))
    out['quarter mile, on the clock'] = make.work(
      'clocked',
      clocked,
      { time: figures.time, rollout: figures.rollout },
      { item, label: 'Quarter mile on the clock of a drag strip' },
    )
  trace(make, numbers(mile) as never)
  return out
}

/** Speed over time of the quarter mile. */
function trace(make: Maker, x: Parameters<typeof fullThrottle>[0]): void {
  const times: number[] = [],
    speeds: number[] = [],
    ways: number[] = [],
    warm: number[] = [],
    { travel, ...plan } = x
  run({ ...plan, distance: travel }, undefined, (t, v, s, w) => {
    times.push(t)
    speeds.push(v)
    ways.push(s)
    warm.push(w)
  })
  make.trace('run', {
    label: 'A quarter of a mile at full pull',
    axis: { label: 'time', unit: 's', values: Float64Array.from(times) },
    series: [
      { name: 'speed', label: 'speed', unit: 'm/s', values: Float64Array.from(speeds) },
      { name: 'distance', label: 'way', unit: 'm', shows: 'distance', values: Float64Array.from(ways) },
      { name: 'warmest', label: 'warmest winding, 0 as the coolant, 1 at its limit', unit: '1', values: Float64Array.from(warm) },
    ],
  })
}
