import { highestSpeed } from '../../drive/highest-speed.ts'
import { leastSpeed, pullAtSpeed, roadLoadAt } from '../../drive/speeds.ts'
import type { TopSpeedGoal } from '../../model/brief.ts'
import { type Fact, type Field, type Figure, isGap, type Value } from '../../working/value.ts'
import { situation, situationReads } from '../donor/situation.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import { conditionsOf, pulling, pullingReads, ratiosOf, roadOf, speedLimits } from './pulling.ts'
import type { Rating } from './ratings.ts'

export type TopSpeed = {
  readonly goal: Fact
  readonly speed: Figure
  /** Every limit by name, and the one that governs. */
  readonly limits: Readonly<Record<string, Value>>
  readonly binding: string
  /** The battery is what pulls no harder. */
  readonly weak: boolean
  /** Road load at the speed wanted, and what each unit gives there: continuously where a rating is stated, else for a while. */
  readonly need: Figure
  readonly radius: Value
  readonly units: readonly Rating[]
}
const given = (f: Field): Field | null => (isGap(f) ? null : f)

/** What limits top speed: motor, gearbox, pull for ever and for a while, battery, tyre. */
export const topSpeed = study({
  id: 'top-speed',
  stage: 'drive',
  asks: 'How fast can it go, and what stops it there?',
  reads: (m, ask) => {
    const goals = Object.entries(m.brief.goals).filter((g): g is [string, TopSpeedGoal] => g[1]?.kind === 'top speed')
    return {
      names: goals.map(([name]) => name),
      goals: goals.map(([, g]) => {
        const conditions = conditionsOf(g, m.brief.conditions)
        return maybe({ speed: g.speed, situation: situationReads(m, ask, conditions), pulling: pullingReads(m, ask, conditions) })
      }),
      tyre: given(m.donor.tyre.topSpeed),
    }
  },
  answer: ({ names, goals, tyre }, make): { goals: Readonly<Record<string, TopSpeed | Gaps>> } => ({
    goals: Object.fromEntries(
      goals.map((g, k): [string, TopSpeed | Gaps] => {
        const item = names[k] as string
        if (isGaps(g)) return [item, g]
        const s = situation(make, g.situation, item),
          p = pulling(make, g.pulling, item),
          limits: Record<string, Value> = {}
        // A unit that shifts runs out in its tallest gear, the last of its list.
        const tallest = p.names.map((_, u) => ratiosOf(p, u).at(-1) as Value)
        for (const u of p.names.keys()) Object.assign(limits, speedLimits(make, p, u, tallest[u] as Value, s.radius, item))
        const road = { ...roadOf(s), efficiency: p.motors.efficiency, ratios: tallest, radius: s.radius }
        const peak = make.work(
          'by-peak-pull',
          highestSpeed,
          { ...road, torque: p.motors.torque, power: p.motors.power },
          { item, label: 'Speed the peak rating holds' },
        )
        const sustained = p.winding.ratedTorque.length > 0
        limits['pull for a while'] = peak
        if (sustained)
          limits['continuous pull'] = make.work(
            'by-continuous-pull',
            highestSpeed,
            { ...road, torque: p.winding.ratedTorque, power: p.winding.ratedPower },
            { item, label: 'Speed the continuous rating holds' },
          )
        // The cells may give less for long than the motors stand.
        const ever = p.lasting.flatMap(l => (l.battery ? [l.battery.ever] : []))
        if (sustained && ever.length === p.names.length)
          limits['battery'] = make.work(
            'by-battery',
            highestSpeed,
            { ...road, torque: p.motors.torque, power: ever },
            { item, label: 'Speed the battery holds' },
          )
        if (tyre) limits['tyre'] = tyre as Fact
        const all = Object.values(limits),
          speed = make.work('speed', leastSpeed, { limits: all }, { item, label: `Top speed, ${item}` })
        const binding = Object.keys(limits).find(name => (limits[name] as Value).value === speed.value) as string
        make.table(
          'limits',
          {
            label: `What limits top speed, ${item}`,
            columns: [
              { key: 'speed', label: 'speed', unit: 'm/s', shows: 'speed' },
              { key: 'governs', label: '' },
            ],
            rows: Object.entries(limits).map(([name, v]) => ({ name, cells: { speed: v, governs: name === binding ? 'governs' : '' } })),
          },
          item,
        )
        const need = make.work(
          'need',
          roadLoadAt,
          { ...roadOf(s), speed: g.speed },
          { item, label: `Road load at the speed wanted, ${item}` },
        )
        const units = p.names.map((name, u): Rating => {
          const torque = (sustained ? p.winding.ratedTorque[u] : p.motors.torque[u]) as Value,
            held = p.lasting[u],
            power = (sustained ? held?.power : p.motors.power[u]) as Value,
            ratio = tallest[u] as Value,
            efficiency = p.motors.efficiency[u] as Value
          return {
            name,
            ratio,
            torque,
            power,
            efficiency,
            motor: (sustained ? p.winding.ratedPower[u] : p.peak[u]) as Value,
            pull: make.work(
              'pull',
              pullAtSpeed,
              { torque, power, ratio, efficiency, radius: s.radius, speed: g.speed },
              { item: `${item} ${name}`, label: `Pull of ${name} at the speed wanted` },
            ),
          }
        })
        const weak =
          binding === 'battery' ||
          (binding === 'pull for a while' && p.peak.some((most, u) => (p.motors.power[u] as Value).value < most.value))
        return [item, { goal: g.speed, speed, limits, binding, weak, need, radius: s.radius, units }]
      }),
    ),
  }),
})
