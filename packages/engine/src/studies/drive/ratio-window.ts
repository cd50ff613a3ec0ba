import { ratioForTime, ratioForTimeNear, type Window } from '../../drive/ratio-window.ts'
import { greatestRatio, leastRatio, ratioForPull, ratioForSpeed, ratioInUsualRange } from '../../drive/speeds.ts'
import { pullTogether } from '../../drive/wheel-force.ts'
import { ratedSpeed } from '../../drive/winding.ts'
import type { Model } from '../../model/model.ts'
import type { Field, Figure, Value } from '../../working/value.ts'
import { isGap, standard } from '../../working/value.ts'
import { numbers } from '../../working/work.ts'
import { rolling } from '../donor/rolling.ts'
import { situation } from '../donor/situation.ts'
import { from, type Gaps, isGaps, type Known, type Maker, maybe, study } from '../study.ts'
import { accelerationGoals, sprintReads } from './acceleration.ts'
import { type Climb, climb } from './climb.ts'
import { type Envelope, envelopes } from './envelopes.ts'
import { type Gears, gears } from './gears.ts'
import { type HeldSpeed, heldSpeed } from './held-speed.ts'
import { type HillStart, hillStart } from './hill-start.ts'
import { counted } from './operating-points.ts'
import { partLoads, type RecoveryAt } from './part-loads.ts'
import { carOf, pulling } from './pulling.ts'
import type { Rating } from './ratings.ts'
import { type TopSpeed, topSpeed } from './top-speed.ts'
import { speedGoals } from './wanted-speed.ts'

/** Which total ratios of one unit meet one goal, all else as it is. `none` says why no ratio does. */
export type GoalWindow = {
  readonly goal: string
  readonly kind: string
  readonly low?: Figure
  readonly high?: Figure
  readonly best?: Figure
  readonly none?: 'power' | 'battery' | 'grip' | 'time'
}
export type UnitWindow = {
  readonly unit: string
  readonly present: Figure
  readonly goals: readonly GoalWindow[]
  /** Tallest and shortest ratio that meet every goal; the window is empty where the tallest lies above the shortest. */
  readonly low?: Figure
  readonly high?: Figure
  readonly empty: boolean
  /** The two goals that leave nothing between them, or the one that no ratio meets. */
  readonly collide: readonly string[]
  /** Gears of the kept box inside the window that turn nothing too fast at any speed driven and leave recovery its grip, the nearest to the present ratio first. */
  readonly inside: readonly string[]
  /** The shortest ratio at which all of that holds. */
  readonly stands: number
}
const NO_OTHERS = standard('no-other-unit', 'no other unit pulls', 'F_o', 0, 'N', { work: 'definition', place: 'one unit' })

/** The window of the total ratio: what every goal of the brief allows, where the present ratio lies, what is best for each. */
export const ratioWindow = study({
  id: 'window',
  stage: 'drive',
  asks: 'Which total ratio meets every goal?',
  reads: (m, ask) => ({
    names: Object.keys(m.drive.units),
    held: Object.values(m.drive.units).map(u => isGap(u.shifting) || u.shifting.value === 'held in one gear'),
    ready: Object.keys(m.drive.units).map(name =>
      maybe(
        from(ask(envelopes), e => {
          const x = e.units[name] as Envelope | Gaps
          return isGaps(x) ? x : { name }
        }),
      ),
    ),
    box: Object.values(m.drive.units).map(u =>
      !isGap(u.through) && u.through.value === 'kept gearbox' && !isGap(m.donor.gearbox.inputSpeed) ? m.donor.gearbox.inputSpeed : null,
    ),
    envelopes: maybe(ask(envelopes)),
    fast: maybe(ask(topSpeed)),
    climbs: maybe(ask(climb)),
    steady: maybe(ask(heldSpeed)),
    starts: maybe(ask(hillStart)),
    gears: maybe(ask(gears)),
    radius: maybe(from(ask(rolling), r => r.radius)),
    driven: speedsDriven(m),
    recovery: maybe(from(ask(partLoads), p => p.recovery)),
    wet: maybe(m.donor.grip.wet),
    sprintNames: accelerationGoals(m).map(([name]) => name),
    sprints: accelerationGoals(m).map(([, g]) => maybe(sprintReads(m, ask, g))),
  }),
  answer: (k, make): { units: Readonly<Record<string, UnitWindow | Gaps>>; sprints: Readonly<Record<string, Asked>> } => {
    const units: Record<string, UnitWindow | Gaps> = {},
      sprints = k.sprints.map((s, i) => (isGaps(s) ? undefined : asked(make, s, k.sprintNames[i] as string)))
    for (const [u, unit] of k.names.entries()) {
      const ready = k.ready[u] as { name: string } | Gaps
      if (isGaps(ready)) units[unit] = ready
      else if (k.held[u]) {
        const e = (k.envelopes as { units: Record<string, Envelope> }).units[unit] as Envelope
        const top = [e.topSpeed, ...(k.box[u] ? [k.box[u] as Field as Value] : [])]
        const goals = [
          ...answered<TopSpeed>(k.fast).map(([goal, a]) => pullGoal(make, e, top, goal, 'top speed', { ...a, speed: a.goal })),
          ...sprints.flatMap((s, i) => (s ? [sprintGoal(make, s, e, top, k.sprintNames[i] as string)] : [])),
          ...answered<HillStart>(k.starts).map(([goal, a]) => startGoal(make, e, goal, a)),
          ...answered<HeldSpeed>(k.steady).map(([goal, a]) => pullGoal(make, e, top, goal, 'steady speed', { ...a, speed: a.goal })),
          ...answered<Climb>(k.climbs).map(([goal, a]) => pullGoal(make, e, top, goal, 'climb', a)),
        ]
        const stands = Math.min(
          ...(isGaps(k.radius)
            ? []
            : top.flatMap(t => k.driven.map(v => ratioForSpeed({ speed: t.value, radius: (k.radius as Figure).value, roadSpeed: v })))),
          ...recoveryStands(e, k.recovery, k.wet),
        )
        units[unit] = together(
          make,
          e,
          goals,
          stands,
          isGaps(k.gears) ? undefined : (k.gears as unknown as { units: Record<string, Gears | Gaps> }).units[unit],
        )
      }
    }
    return { units, sprints: Object.fromEntries(sprints.flatMap((s, i) => (s ? [[k.sprintNames[i] as string, s]] : []))) }
  },
})
/** Highest speeds of the goals and the trips, as far as they are known; a climb in another range of the transfer case turns the motor otherwise. */
function speedsDriven(m: Model): readonly number[] {
  const goals = speedGoals(m).flatMap(({ speed, transfer }) => (isGap(speed) || (transfer && !isGap(transfer)) ? [] : [speed.value]))
  const trips = Object.values(m.trips.named).flatMap(t => {
    const speed = !t ? undefined : t.kind === 'cycle' ? t.trace : t.kind === 'route' && !isGap(t.timing) ? t.timing : t.speed
    if (!speed || isGap(speed)) return []
    return [typeof speed.value === 'number' ? speed.value : Math.max(...speed.value.y)]
  })
  return [...goals, ...trips]
}
/** The ratio up to which recovery stays within the grip of a wet road; where it does not even now, the present one. */
function recoveryStands(e: Envelope, recovery: unknown, wet: unknown): readonly number[] {
  const needs = isGaps(recovery)
    ? undefined
    : (recovery as Readonly<Record<string, RecoveryAt>>)[e.axle === 'front' ? 'front' : 'rear']?.needed
  return needs === undefined || isGaps(wet) ? [] : [e.ratio.value * Math.max(1, (wet as Value).value / needs.value)]
}
/** The goals of another study that were answered. */
const answered = <A extends object>(
  answer: Gaps | { readonly goals: Readonly<Record<string, A | Gaps>> },
): readonly (readonly [string, A])[] =>
  isGaps(answer) ? [] : Object.entries(answer.goals).flatMap(([goal, a]): (readonly [string, A])[] => (isGaps(a) ? [] : [[goal, a]]))

type Needs = { readonly speed: Value; readonly need: Figure; readonly radius: Value; readonly units: readonly Rating[] }
/** Goals that ask for a pull at a speed: torque sets the tallest ratio, speed of motor and gearbox input the shortest. */
function pullGoal(make: Maker, e: Envelope, top: readonly Value[], goal: string, kind: string, a: Needs): GoalWindow {
  const item = `${e.name} ${goal}`,
    own = a.units.find(r => r.name === e.name) as Rating,
    others = othersOf(
      make,
      item,
      a.units.filter(r => r.name !== e.name).map(r => r.pull),
    )
  const high = usual(make, e, own.ratio, item, 'high', shortestAt(make, item, top, a.radius, a.speed))
  const wanted = (a.need.value - others.value) * a.speed.value
  if (own.power.value * own.efficiency.value < wanted)
    return { goal, kind, high, none: own.motor.value * own.efficiency.value < wanted ? 'power' : 'battery' }
  const pull = make.work(
    'pull-ratio',
    ratioForPull,
    { force: a.need, others, radius: a.radius, torque: own.torque, efficiency: own.efficiency },
    { item, label: `Ratio that pulls enough, ${goal}` },
  )
  const corner = make.work(
    'corner',
    ratedSpeed,
    { power: own.power, torque: own.torque, baseSpeed: e.baseSpeed },
    { item, label: `Speed of the rating, ${goal}` },
  )
  const strongest = make.work(
    'strongest',
    ratioForSpeed,
    { speed: corner, radius: a.radius, roadSpeed: a.speed },
    { item, label: `Ratio at which all its power is there, ${goal}` },
  )
  return {
    goal,
    kind,
    high,
    low: usual(make, e, own.ratio, item, 'low', pull),
    best: usual(
      make,
      e,
      own.ratio,
      item,
      'best',
      make.work('best-ratio', leastRatio, { ratios: [strongest, high] }, { item, label: `Best ratio, ${goal}` }),
    ),
  }
}
/** Motor and gearbox input at their top speed at the road speed wanted. */
function shortestAt(make: Maker, item: string, top: readonly Value[], radius: Value, roadSpeed: Value): Figure {
  const each = top.map((speed, i) =>
    make.work(
      i === 0 ? 'by-motor' : 'by-gearbox',
      ratioForSpeed,
      { speed, radius, roadSpeed },
      { item, label: i === 0 ? 'Shortest ratio by the motor' : 'Shortest ratio by the gearbox input' },
    ),
  )
  return make.work('shortest', leastRatio, { ratios: each }, { item, label: 'Shortest ratio at the speed wanted' })
}
function othersOf(make: Maker, item: string, pulls: readonly Value[]): Value {
  return pulls.length === 0 ? NO_OTHERS : make.work('others', pullTogether, { forces: pulls }, { item, label: 'Pull of the other units' })
}
const END = { low: 'Tallest ratio', high: 'Shortest ratio', best: 'Best ratio' } as const
/** The end of a window as the ratio in the range the car is usually in. */
function usual(make: Maker, e: Envelope, here: Value, item: string, end: keyof typeof END, ratio: Figure): Figure {
  return make.work(end, ratioInUsualRange, { ratio, usual: e.ratio, here }, { item, label: `${END[end]}, ${item}` })
}

function startGoal(make: Maker, e: Envelope, goal: string, a: HillStart): GoalWindow {
  const item = `${e.name} ${goal}`,
    own = a.units.find(r => r.name === e.name) as HillStart['units'][number],
    others = othersOf(
      make,
      item,
      a.units.filter(r => r.name !== e.name).map(r => r.pull),
    )
  if (own.byGrip.value < a.goal.value) return { goal, kind: 'hill start', none: 'grip' }
  return {
    goal,
    kind: 'hill start',
    low: usual(
      make,
      e,
      own.ratio,
      item,
      'low',
      make.work(
        'pull-ratio',
        ratioForPull,
        { force: a.need, others, radius: a.radius, torque: e.peakTorque, efficiency: e.efficiency },
        { item, label: `Ratio that pulls away, ${goal}` },
      ),
    ),
  }
}

type Sprint = Known<ReturnType<typeof sprintReads>>
/** A timed run as it was asked for: names of the units, in the order of their lists, and what the run takes. */
export type Asked = ReturnType<typeof asked>
function asked(make: Maker, s: Sprint, goal: string) {
  const road = situation(make, s.situation, goal),
    p = pulling(make, s.pulling, goal)
  return {
    names: p.names,
    radius: road.radius,
    to: s.to as Value,
    inputs: { ...carOf(road), ...p.motors, ...p.winding, from: s.from as Value, to: s.to as Value, within: s.within as Value },
  }
}
function sprintGoal(make: Maker, s: Asked, e: Envelope, top: readonly Value[], goal: string): GoalWindow {
  const item = `${e.name} ${goal}`,
    which = { ...counted(s.names.indexOf(e.name)), label: 'place of the unit' },
    inputs = { ...s.inputs, which }
  let near: ((x: Parameters<typeof ratioForTime>[0]) => Window) | undefined
  const done: { figures: { low: Figure; high: Figure; best: Figure }; run: unknown } = make.all('time', ratioForTime, inputs as never, {
    item,
    labels: {
      low: `Tallest ratio that keeps the time, ${item}`,
      high: `Shortest ratio that keeps the time, ${item}`,
      best: `Quickest ratio, ${item}`,
    },
    rerun: x => (near ??= ratioForTimeNear(done.run as Window, numbers(inputs as never) as never))(x as never),
  })
  const { low, high, best } = done.figures,
    shortest = make.work(
      'high',
      leastRatio,
      { ratios: [high, shortestAt(make, item, top, s.radius, s.to)] },
      { item, label: `Shortest ratio, ${item}` },
    )
  if (high.value < low.value) return { goal, kind: 'acceleration', none: 'time', best }
  return {
    goal,
    kind: 'acceleration',
    low,
    high: shortest,
    best: make.work('best', leastRatio, { ratios: [best, shortest] }, { item, label: `Best ratio, ${item}` }),
  }
}

function together(make: Maker, e: Envelope, goals: readonly GoalWindow[], stands: number, box: Gears | Gaps | undefined): UnitWindow {
  const item = e.name,
    lows = goals.flatMap(g => (g.low ? [g.low] : [])),
    highs = goals.flatMap(g => (g.high ? [g.high] : []))
  const low = lows.length
    ? make.work('low', greatestRatio, { ratios: lows }, { item, label: `Tallest ratio that meets every goal, ${item}` })
    : undefined
  const high = highs.length
    ? make.work('high', leastRatio, { ratios: highs }, { item, label: `Shortest ratio that meets every goal, ${item}` })
    : undefined
  const hopeless = goals.filter(g => g.none).map(g => g.goal),
    crossed = low && high && low.value > high.value
  const byLow = goals.find(g => g.low && g.low.value === low?.value)?.goal,
    byHigh = goals.find(g => g.high && g.high.value === high?.value)?.goal
  const collide = hopeless.length ? hopeless : crossed ? [...new Set([byLow as string, byHigh as string])] : []
  const fits = (i: number): boolean => collide.length === 0 && (!low || i >= low.value) && (!high || i <= high.value)
  const apart = (i: number): number => Math.abs(Math.log(i / e.ratio.value))
  const inside =
    box && !isGaps(box)
      ? box.gears
          .filter(g => fits(g.ratio.value) && g.ratio.value <= stands)
          .sort((a, b) => apart(a.ratio.value) - apart(b.ratio.value))
          .map(g => g.name)
      : []
  const here = (g: GoalWindow): string =>
    g.none
      ? `no ratio: ${g.none}`
      : g.low && e.ratio.value < g.low.value
        ? 'too tall'
        : g.high && e.ratio.value > g.high.value
          ? 'too short'
          : 'met'
  make.table(
    'ratio',
    {
      label: `Window of the total ratio of ${item}`,
      columns: [
        { key: 'low', label: 'tallest' },
        { key: 'best', label: 'best' },
        { key: 'high', label: 'shortest' },
        { key: 'here', label: 'present ratio' },
      ],
      rows: [
        ...goals.map(g => ({ name: g.goal, cells: { low: g.low, best: g.best, high: g.high, here: here(g) } })),
        {
          name: 'every goal',
          cells: {
            low,
            best: undefined,
            high,
            here: collide.length ? `no ratio: ${collide.join(' and ')}` : fits(e.ratio.value) ? 'inside' : 'outside',
          },
        },
      ],
    },
    item,
  )
  return {
    unit: item,
    present: e.ratio,
    goals,
    empty: collide.length > 0,
    collide,
    inside,
    stands,
    ...(low ? { low } : {}),
    ...(high ? { high } : {}),
  }
}
