import { massOfStronger, moneyOfStronger, strengthForBoth, strengthForPull, strengthForTime } from '../../cost/stronger-drive.ts'
import { fullThrottle, fullThrottleCoarse } from '../../drive/acceleration.ts'
import type { Model } from '../../model/model.ts'
import { type Field, type Figure, isGap, type Value } from '../../working/value.ts'
import { standsAlone } from '../donor/ledger.ts'
import { climb } from '../drive/climb.ts'
import { heldSpeed } from '../drive/held-speed.ts'
import { UNLIMITED_WAY } from '../drive/operating-points.ts'
import type { Rating } from '../drive/ratings.ts'
import { type Asked, ratioWindow, type UnitWindow } from '../drive/ratio-window.ts'
import { topSpeed } from '../drive/top-speed.ts'
import { type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'

/** What a motor strong enough would weigh and cost more than the one there. Money is open while a price is. */
export type Stronger = {
  readonly unit: string
  readonly goals: readonly string[]
  readonly times: Figure
  readonly mass: Figure | Gaps
  readonly money: Figure | Gaps
  /** For two goals that leave no ratio: the time to settle for at the shortest ratio allowed. */
  readonly settle?: Figure
}

const unitsOf = (m: Model) => Object.entries(m.drive.units)
const listOf = (fields: readonly (Field | undefined)[]): readonly Field[] => fields.filter((f): f is Field => f !== undefined)

/** What it would take, in motor, mass and money, to meet the goals that no ratio of this motor meets. */
export const strongerDrive = study({
  id: 'stronger-drive',
  stage: 'brief',
  asks: 'What would a drive weigh and cost that meets the goals this one cannot?',
  reads: (m, ask) => ({
    names: unitsOf(m).map(([name]) => name),
    masses: unitsOf(m).map(([, u]) => maybe(listOf([u.motor.mass, standsAlone(u) ? u.inverter.mass : undefined]))),
    prices: unitsOf(m).map(([, u]) => maybe(listOf([u.motor.price, standsAlone(u) ? u.inverter.price : undefined]))),
    windows: maybe(ask(ratioWindow)),
    fast: maybe(ask(topSpeed)),
    climbs: maybe(ask(climb)),
    steady: maybe(ask(heldSpeed)),
    wanted: Object.fromEntries(
      Object.entries(m.brief.goals).flatMap(([name, g]) =>
        (g?.kind === 'top speed' || g?.kind === 'steady speed') && !isGap(g.speed) ? [[name, g.speed]] : [],
      ),
    ),
  }),
  answer: (k, make): { list: readonly Stronger[] } => {
    const windows = isGaps(k.windows) ? [] : Object.values(k.windows.units)
    const cost = (unit: string, item: string, times: Figure): Pick<Stronger, 'mass' | 'money'> => {
      const place = k.names.indexOf(unit),
        masses = k.masses[place] as readonly Value[] | Gaps,
        prices = k.prices[place] as readonly Value[] | Gaps
      return {
        mass: isGaps(masses)
          ? masses
          : make.work('mass', massOfStronger, { times, masses }, { item, label: `Mass of a motor strong enough, ${item}` }),
        money: isGaps(prices)
          ? prices
          : make.work('money', moneyOfStronger, { times, prices }, { item, label: `Price of a motor strong enough, ${item}` }),
      }
    }
    /** A run with one unit in another ratio, all else as it is. */
    const run = (goal: string, unit: string, ratio: Figure, key: string, label: string): { time: Figure; within: Value } | undefined => {
      const s = isGaps(k.windows) ? undefined : k.windows.sprints[goal]
      return s && timeIn(make, s, goal, unit, ratio, key, label)
    }
    const list = windows.flatMap((w): readonly Stronger[] => {
      if (isGaps(w) || !w.empty) return []
      const { unit } = w
      if (w.goals.some(g => g.none))
        return w.goals.flatMap((g): readonly Stronger[] => {
          const item = `${unit} ${g.goal}`
          const times =
            g.none === 'power'
              ? byPull(make, k, g.goal, item)
              : g.none === 'time' && g.best
                ? byTime(make, run, g.goal, unit, g.best)
                : undefined
          return times ? [{ unit, goals: [g.goal], times, ...cost(unit, item, times) }] : []
        })
      return both(make, w, run, cost)
    })
    make.table('goals', {
      label: 'Goals that this drive cannot meet, and what one would take that does',
      columns: [
        { key: 'times', label: 'times as strong' },
        { key: 'mass', label: 'more mass', unit: 'kg' },
        { key: 'money', label: 'more money', unit: '€' },
        { key: 'settle', label: 'or time to settle for', unit: 's' },
      ],
      rows: list.map(s => ({
        name: `${s.goals.join(' and ')}, ${s.unit}`,
        cells: {
          times: s.times,
          mass: isGaps(s.mass) ? undefined : s.mass,
          money: isGaps(s.money) ? undefined : s.money,
          settle: s.settle,
        },
      })),
    })
    return { list }
  },
})

type Run = (goal: string, unit: string, ratio: Figure, key: string, label: string) => { time: Figure; within: Value } | undefined
type Costed = (unit: string, item: string, times: Figure) => Pick<Stronger, 'mass' | 'money'>

function both(make: Maker, w: UnitWindow, run: Run, cost: Costed): readonly Stronger[] {
  if (w.collide.length !== 2 || !w.low || !w.high) return []
  const [one, other] = w.collide as [string, string],
    item = `${w.unit} ${one} and ${other}`
  const times = make.work(
    'times',
    strengthForBoth,
    { tallest: w.low, shortest: w.high },
    { item, label: `Motor strong enough for ${one} and ${other}` },
  )
  const settle = run(one, w.unit, w.high, 'settle', `Time to settle for, ${one} beside ${other}`)
  return [{ unit: w.unit, goals: [one, other], times, ...cost(w.unit, item, times), ...(settle ? { settle: settle.time } : {}) }]
}

function byTime(make: Maker, run: Run, goal: string, unit: string, best: Figure): Figure | undefined {
  const quickest = run(goal, unit, best, 'quickest', `Time at the quickest ratio, ${goal}`)
  return quickest
    ? make.work(
        'times',
        strengthForTime,
        { quickest: quickest.time, within: quickest.within },
        { item: `${unit} ${goal}`, label: `Motor strong enough for ${goal}` },
      )
    : undefined
}

type Pulls = {
  readonly goals: Readonly<Record<string, { readonly need: Figure; readonly speed?: Value; readonly units: readonly Rating[] } | Gaps>>
}
function byPull(
  make: Maker,
  k: { readonly fast: unknown; readonly climbs: unknown; readonly steady: unknown; readonly wanted: unknown },
  goal: string,
  item: string,
): Figure | undefined {
  const of = (all: unknown) => {
    const answer = all as Pulls | Gaps
    const found = isGaps(answer) ? undefined : answer.goals[goal]
    return found && !isGaps(found) ? found : undefined
  }
  const climbing = of(k.climbs),
    found = climbing ?? of(k.fast) ?? of(k.steady),
    speed = climbing?.speed ?? (k.wanted as Readonly<Record<string, Value>>)[goal]
  if (!found || !speed) return undefined
  return make.work(
    'times',
    strengthForPull,
    { need: found.need, speed, powers: found.units.map(u => u.power), efficiencies: found.units.map(u => u.efficiency) },
    { item, label: `Motor strong enough for ${goal}` },
  )
}

function timeIn(
  make: Maker,
  { names, inputs: { within, ...inputs } }: Asked,
  goal: string,
  unit: string,
  ratio: Figure,
  key: string,
  label: string,
): { time: Figure; within: Value } {
  const before = inputs.gears.slice(0, names.indexOf(unit)),
    place = before.reduce((sum, gears) => sum + gears.value, 0)
  const { figures } = make.all(
    key,
    fullThrottle,
    { ...inputs, ratios: inputs.ratios.map((r, i) => (i === place ? ratio : r)), travel: UNLIMITED_WAY },
    {
      item: `${unit} ${goal}`,
      labels: {
        time: label,
        warmest: `${label}: warmest winding`,
        slipping: `${label}: held back by grip`,
        distance: `${label}: way`,
        speed: `${label}: speed at the end`,
        rollout: `${label}: first foot`,
      },
      rerun: fullThrottleCoarse,
    },
  )
  return { time: figures.time, within }
}
