import { highestSpeed } from '../../drive/highest-speed.ts'
import { gripped, type PullPlan } from '../../drive/pull-plan.ts'
import { climbForce, pullAtSpeed, roadLoadAt } from '../../drive/speeds.ts'
import type { Donor } from '../../model/donor.ts'
import type { Model } from '../../model/model.ts'
import { GRAVITY } from '../../vehicle/gravity.ts'
import { type Field, isGap, type Value } from '../../working/value.ts'
import { situation, situationReads } from '../donor/situation.ts'
import type { Situation } from '../donor/situation-figures.ts'
import { type Gaps, isGaps, type Maker, maybe, study, type Trace } from '../study.ts'
import { batteryPull, type FromBattery } from './battery-pull.ts'
import type { Gears } from './gears.ts'
import { gears } from './gears.ts'
import { POINTS } from './operating-points.ts'
import { carOf, pulling, pullingReads } from './pulling.ts'

const SLOPES = [0, 5, 10, 20] as const
const POINTS_ALONG = 121
type Series = Trace['series'][number]

/** Old engine, as far as its plate goes: torque up to the power, power up to the red line. */
function oldEngine({ engine, gearbox, finalDrive }: Donor) {
  const fields = [engine.power, engine.torque, engine.redLine, gearbox.efficiency, finalDrive]
  return fields.some(isGap) || Object.keys(gearbox.gears).length === 0
    ? null
    : {
        power: engine.power,
        torque: engine.torque,
        redLine: engine.redLine,
        efficiency: gearbox.efficiency,
        finalDrive,
        gears: Object.entries(gearbox.gears).map(([name, ratio]) => ({ name, ratio })),
      }
}

/** Pull against road speed: gear by gear and together, for a while and for ever, with the road load on slopes, the grip and the old engine beside it. */
export const tractive = study({
  id: 'tractive',
  stage: 'drive',
  asks: 'How hard does it pull at every speed, and what stands against it?',
  reads: (m: Model, ask) => ({
    car: situationReads(m, ask, m.brief.conditions),
    pulling: pullingReads(m, ask, m.brief.conditions),
    gears: maybe(ask(gears)),
    battery: maybe(ask(batteryPull)),
    old: oldEngine(m.donor),
  }),
  answer: (k, make): { names: readonly string[] } => {
    const s = situation(make, k.car, 'usual'),
      p = pulling(make, k.pulling, 'usual'),
      radius = s.radius.value
    // One list of speeds for all: a little beyond where the fastest unit runs out.
    const most = 1.05 * Math.max(...p.names.map((_, u) => ((p.motors.topSpeed[u] as Value).value * radius) / ratioOf(p, u).value))
    const speeds = Float64Array.from({ length: POINTS_ALONG }, (_, i) => (most * i) / (POINTS_ALONG - 1)),
      axis = { label: 'road speed', unit: 'm/s', values: speeds }
    const sustained = p.winding.ratedTorque.length > 0
    const pull = (u: number, ratio: number, torque: number, power: number): Float64Array => {
      const fastest = ((p.motors.topSpeed[u] as Value).value * radius) / ratio
      return speeds.map(v =>
        v > fastest ? 0 : pullAtSpeed({ torque, power, ratio, efficiency: (p.motors.efficiency[u] as Value).value, radius, speed: v }),
      )
    }
    const both = (u: number, ratio: number, name: string, label: string): Series[] => [
      {
        name: `${name} peak`,
        label: `${label}, for a while`,
        unit: 'N',
        values: pull(u, ratio, (p.motors.torque[u] as Value).value, (p.motors.power[u] as Value).value),
      },
      ...(sustained
        ? [
            {
              name: `${name} continuous`,
              label: `${label}, continuously`,
              unit: 'N',
              values: pull(u, ratio, (p.winding.ratedTorque[u] as Value).value, (p.winding.ratedPower[u] as Value).value),
            },
          ]
        : []),
    ]
    const own = p.names.map((name, u) => both(u, ratioOf(p, u).value, name, name))
    for (const [u, name] of p.names.entries()) {
      const box = isGaps(k.gears) ? undefined : (k.gears as unknown as { units: Record<string, Gears | Gaps> }).units[name]
      const series =
        box && !isGaps(box)
          ? box.gears.flatMap(g => usual(both(u, g.ratio.value, g.name, g.name), g.ratio.value === ratioOf(p, u).value))
          : (own[u] as Series[])
      make.trace(
        'pull',
        {
          label: `Pull of ${name} against road speed`,
          axis,
          series: [...series, roadLoad(s, 0, speeds, true), ...(u === 0 ? old(k.old, speeds, radius) : [])],
        },
        name,
      )
      byCharge(make, name, u, k.battery, p, box && !isGaps(box) ? box : undefined, axis, pull)
    }
    const sum = (which: 'peak' | 'continuous'): Float64Array =>
      speeds.map((_, i) => own.reduce((f, series) => f + (series.find(x => x.name.endsWith(which))?.values[i] ?? 0), 0))
    make.trace('pull-together', {
      label: 'Pull of all motors, road load on slopes, grip',
      axis,
      series: [
        { name: 'peak', label: 'pull for a while', unit: 'N', values: sum('peak') },
        ...(sustained ? [{ name: 'continuous', label: 'pull continuously', unit: 'N', values: sum('continuous') }] : []),
        ...SLOPES.map(slope => roadLoad(s, slope, speeds)),
        { name: 'grip', label: 'most the tyres carry', unit: 'N', values: carried(s, p, speeds) },
      ],
    })
    make.work(
      'level-speed',
      highestSpeed,
      {
        f0: s.f0,
        f1: s.f1,
        f2: s.f2,
        headWind: s.headWind,
        torque: p.motors.torque,
        power: p.motors.power,
        efficiency: p.motors.efficiency,
        ratios: p.names.map((_, u) => ratioOf(p, u)),
        radius: s.radius,
      },
      { label: 'Speed at which peak pull and road load meet' },
    )
    return { names: p.names }
  },
})
type P = ReturnType<typeof pulling>
/** The ratio a unit is usually in: its only one, or the tallest of those it shifts through. */
const ratioOf = (p: P, u: number): Value => p.motors.ratios[p.motors.gears.slice(0, u + 1).reduce((n, c) => n + c.value, 0) - 1] as Value

const usual = (series: readonly Series[], leading: boolean): readonly Series[] =>
  leading ? series.map(x => ({ ...x, leading: true })) : series
const roadLoad = (s: Situation, slope: number, speeds: Float64Array, leading = false): Series => ({
  name: `slope ${slope}`,
  label: slope === 0 ? 'road load on the level' : `road load on ${slope} %`,
  unit: 'N',
  values: against(s, slope / 100, speeds),
  ...(leading ? { leading } : {}),
})
function against(s: Situation, slope: number, speeds: Float64Array): Float64Array {
  const road = { f0: s.f0.value, f1: s.f1.value, f2: s.f2.value, headWind: s.headWind.value }
  return speeds.map(speed =>
    climbForce({ level: roadLoadAt({ ...road, speed }), mass: s.mass.value, rolling: s.rolling.value, slope, gravity: GRAVITY.value }),
  )
}
/** What the tyres carry while the car gathers speed: motors of any strength, in the shares they have. */
function carried(s: Situation, p: P, speeds: Float64Array): Float64Array {
  const car = Object.fromEntries(Object.entries(carOf(s)).map(([name, v]) => [name, v.value])) as unknown as PullPlan,
    plan = { ...car, centre: p.motors.centre.value } as PullPlan
  const share = p.motors.frontShare.map(f => f.value),
    front = share.some(x => x > 0) ? 1e9 * Math.max(...share) : 0,
    rear = share.some(x => x < 1) ? 1e9 * (1 - Math.min(...share)) : 0
  const linked = share.some(x => x > 0 && x < 1),
    out = new Float64Array(2),
    road = { f0: s.f0.value, f1: s.f1.value, f2: s.f2.value, headWind: s.headWind.value }
  return speeds.map(speed => {
    gripped(plan, front, rear, linked, roadLoadAt({ ...road, speed }), 1, out)
    return (out[0] as number) + (out[1] as number)
  })
}
type Drawn = (u: number, ratio: number, torque: number, power: number) => Float64Array
/** One trace for each gear, for a while and for ever: nine curves are as many as can be read. */
function byCharge(
  make: Maker,
  name: string,
  u: number,
  battery: unknown,
  p: P,
  box: Gears | undefined,
  axis: Trace['axis'],
  pull: Drawn,
): void {
  if (isGaps(battery)) return
  const lasting = p.lasting[u]
  const curves = (ratio: number, torque: Value, power: (point: string) => number | undefined): Series[] =>
    POINTS.flatMap(point => {
      const most = power(point.name)
      return most === undefined
        ? []
        : [
            {
              name: point.name,
              label: `${point.charge} charge, ${point.cells} cells`,
              unit: 'N',
              values: pull(u, ratio, torque.value, most),
            },
          ]
    })
  const peak = (point: string): number | undefined => (battery as Record<string, FromBattery>)[point]?.units[name]?.power.value
  for (const { ratio, item } of box?.gears.map(g => ({ ratio: g.ratio.value, item: `${name} ${g.name}` })) ?? [
    { ratio: ratioOf(p, u).value, item: name },
  ]) {
    const label = `Pull of ${item} by charge and temperature of the cells`
    make.trace('pull-by-charge', { label, axis, series: curves(ratio, p.motors.torque[u] as Value, peak) }, item)
    if (lasting?.battery)
      make.trace(
        'continuous-by-charge',
        {
          label: `${label}, continuously`,
          axis,
          series: curves(ratio, p.winding.ratedTorque[u] as Value, point =>
            Math.min(
              (p.winding.ratedPower[u] as Value).value,
              lasting.battery?.points[point]?.value ?? Number.POSITIVE_INFINITY,
              peak(point) ?? Number.POSITIVE_INFINITY,
            ),
          ),
        },
        item,
      )
  }
}
type Old = {
  power: Value
  torque: Value
  redLine: Value
  efficiency: Value
  finalDrive: Value
  gears: readonly { name: string; ratio: Field | Value }[]
}
function old(engine: unknown, speeds: Float64Array, radius: number): Series[] {
  if (engine === null) return []
  const e = engine as Old
  return e.gears.map(g => {
    const ratio = (g.ratio as Value).value * e.finalDrive.value,
      fastest = (e.redLine.value * radius) / ratio
    return {
      name: `old ${g.name}`,
      label: `old engine at most, ${g.name}`,
      unit: 'N',
      values: speeds.map(v =>
        v > fastest
          ? 0
          : pullAtSpeed({ torque: e.torque.value, power: e.power.value, ratio, efficiency: e.efficiency.value, radius, speed: v }),
      ),
    }
  })
}
