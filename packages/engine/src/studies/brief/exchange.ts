import {
  massLacking,
  massOfRange,
  moneyLacking,
  moneyOfRange,
  packMass,
  packOnRear,
  rangeByBudget,
  rangeByRoom,
  rangeLacking,
  rangeOfMass,
  rangeOfMoney,
  speedToSettleFor,
} from '../../cost/exchange.ts'
import { budgetLeft } from '../../cost/parts.ts'
import type { Model } from '../../model/model.ts'
import { otherAxle } from '../../vehicle/mass-and-axles.ts'
import { type Field, type Figure, isGap, type Value } from '../../working/value.ts'
import { ledger } from '../donor/ledger.ts'
import { RATED, type Rated } from '../donor/ratings.ts'
import { type Rooms, room } from '../donor/room.ts'
import { ratioWindow, type UnitWindow } from '../drive/ratio-window.ts'
import { unboxed } from '../pack/pack-mass.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study, type Table } from '../study.ts'
import { rangeGoals, ranges } from '../trips/ranges.ts'
import { cost } from './cost.ts'

/** What stands against a range goal: a rating in a load case, or the budget. */
export type Against = {
  /** Such as «two-up, rear axle», or «budget». */
  readonly name: string
  readonly wanted: Value
  /** Range left when that rating or the budget is used up to its end by battery. */
  readonly allowed: Figure
  /** What has to give way for both: mass or money on the one side, or range on the other. */
  readonly lacking: Figure
  readonly giveUp: Figure
  readonly about: readonly string[]
}
export type Exchange = {
  /** What is left of the budget. */
  readonly left: Figure | Gaps
  readonly goals: Readonly<Record<string, readonly (Against | { readonly name: string; readonly gaps: Gaps })[] | Gaps>>
}

type Goal = { readonly name: string; readonly trip: string; readonly distance: Field }
const goalsOf = (m: Model): readonly Goal[] =>
  [...rangeGoals(m)].flatMap(([trip, goals]) => goals.map(([name, goal]) => ({ name, trip, distance: goal.distance })))

/** What range costs in money and mass by this car's own numbers, and which goals of the brief cannot both be had. */
export const exchange = study({
  id: 'exchange',
  stage: 'brief',
  asks: 'What does range cost in money and mass, and which goals collide over it?',
  reads: (m, ask) => {
    const goals = goalsOf(m),
      loads = Object.keys(m.brief.loads)
    return {
      names: goals.map(g => g.name),
      goals: goals.map(g =>
        maybe({ wanted: g.distance, range: from(ask(ranges), r => from(r.trips[g.trip] ?? { gaps: [] }, t => t.range)) }),
      ),
      kerb: maybe(ask(ledger)),
      boxes: [...(unboxed(m, ask) ? [m.pack.unboxed.x] : []), ...Object.values(m.pack.boxes).map(b => b.x)],
      wheelbase: maybe(m.donor.wheelbase),
      loads,
      rooms: loads.map(name => maybe({ of: from(ask(room), r => r.cases[name] as Rooms) })),
      person: maybe(m.brief.person),
      cost: maybe(ask(cost)),
      windows: maybe(ask(ratioWindow)),
      speeds: Object.fromEntries(
        Object.entries(m.brief.goals).flatMap(([name, g]) =>
          (g?.kind === 'top speed' || g?.kind === 'steady speed') && !isGap(g.speed) ? [[name, g.speed]] : [],
        ),
      ),
      budget: maybe(m.brief.budget),
    }
  },
  answer: (k, make): Exchange => {
    const pack = isGaps(k.kerb)
      ? k.kerb
      : isGaps(k.wheelbase)
        ? k.wheelbase
        : fitted(make, k.kerb.added, k.boxes as readonly Value[], k.wheelbase)
    const priced = isGaps(k.cost) ? k.cost : k.cost.pack,
      left = leftOf(make, k.cost, k.budget)
    const tightest = RATED.map(rated => tightestOf(rated, k.loads, k.rooms))
    const goals = k.goals.map((g, i): [string, Exchange['goals'][string]] => {
      const item = k.names[i] as string
      if (isGaps(g)) return [item, g]
      // Nothing stands against a range without end, and nothing is to be had for it.
      if (g.range.value === Infinity) return [item, []]
      if (!isGaps(pack)) {
        make.work('mass-of-10-km', massOfRange, { pack: pack.mass, range: g.range }, { item, label: `Battery mass of 10 km, ${item}` })
        if (!isGaps(k.person))
          make.work(
            'range-of-person',
            rangeOfMass,
            { mass: k.person, pack: pack.mass, range: g.range },
            { item, label: `Range one person’s mass is worth, ${item}` },
          )
      }
      if (!isGaps(priced)) {
        make.work('price-of-10-km', moneyOfRange, { pack: priced, range: g.range }, { item, label: `Battery price of 10 km, ${item}` })
        make.work('range-of-100-eur', rangeOfMoney, { pack: priced, range: g.range }, { item, label: `Range 100 € are worth, ${item}` })
      }
      const byMass = tightest.flatMap(t => (isGaps(pack) ? [{ name: t.rated, gaps: pack }] : against(make, item, g, pack, t)))
      const byMoney = isGaps(left)
        ? [{ name: 'budget', gaps: left }]
        : isGaps(priced)
          ? [{ name: 'budget', gaps: priced }]
          : [budgetAgainst(make, item, g, priced, left)]
      return [item, [...byMass, ...byMoney]]
    })
    const answer = { left, goals: Object.fromEntries(goals) }
    pairs(make, answer, isGaps(k.windows) ? [] : ratioPairs(make, Object.values(k.windows.units), k.speeds))
    return answer
  },
})

type Fitted = Readonly<Record<Rated, Value>> & { readonly mass: Figure }

/** Mass of the battery boxes, in all and on each axle; boxes stand last in what went in. */
function fitted(make: Maker, added: readonly Value[], x: readonly Value[], wheelbase: Value): Fitted | Gaps {
  if (x.length === 0) return { gaps: [{ gap: true, path: 'pack.boxes', label: 'battery boxes', until: 'any time', why: 'missing' }] }
  const boxes = added.slice(-x.length)
  const mass = make.work('pack', packMass, { boxes }, { label: 'Pack as fitted' })
  const rear = make.work('pack-on', packOnRear, { boxes, x, wheelbase }, { item: 'rear axle', label: 'Pack on the rear axle' })
  return {
    mass,
    total: mass,
    'rear axle': rear,
    'front axle': make.work('pack-on', otherAxle, { total: mass, one: rear }, { item: 'front axle', label: 'Pack on the front axle' }),
  }
}

function leftOf(make: Maker, all: { parts: Figure | Gaps } | Gaps, budget: Value | Gaps): Figure | Gaps {
  if (isGaps(budget)) return budget
  const parts = isGaps(all) ? all : all.parts
  return isGaps(parts) ? parts : make.work('left', budgetLeft, { budget, cost: parts }, { label: 'Left of the budget' })
}

type Tightest = { readonly rated: Rated; readonly load: string; readonly room: Figure } | { readonly rated: Rated; readonly gaps: Gaps }

/** The load case that leaves the least room to a rating. */
function tightestOf(rated: Rated, loads: readonly string[], rooms: readonly ({ readonly of: Rooms } | Gaps)[]): Tightest {
  const found = rooms.map((r, i) => ({ load: loads[i] as string, room: isGaps(r) ? r : r.of[rated] }))
  const known = found
    .flatMap(({ load, room: r }) => (isGaps(r) ? [] : [{ rated, load, room: r.room }]))
    .sort((a, b) => a.room.value - b.room.value)
  const open = found.flatMap(({ room: r }) => (isGaps(r) ? r.gaps : []))
  return open.length || known.length === 0 ? { rated, gaps: { gaps: open } } : (known[0] as Tightest)
}

type Wanted = { readonly wanted: Value; readonly range: Value }

/** A rating against a range goal. A pack that does not load that axle does not meet it there. */
function against(
  make: Maker,
  goal: string,
  { wanted, range }: Wanted,
  pack: Fitted,
  t: Tightest,
): readonly (Against | { name: string; gaps: Gaps })[] {
  if ('gaps' in t) return [{ name: t.rated, gaps: t.gaps }]
  const share = pack[t.rated]
  if (share.value <= 0) return []
  const name = `${t.load}, ${t.rated}`,
    item = `${goal} ${name}`
  const allowed = make.work(
    'allowed',
    rangeByRoom,
    { range, room: t.room, pack: share },
    { item, label: `Range that ${name} allows, ${goal}` },
  )
  return [
    {
      name,
      wanted,
      allowed,
      lacking: make.work(
        'lacking',
        massLacking,
        { wanted, allowed, range, pack: share },
        { item, label: `Mass to give up for ${goal}, ${name}` },
      ),
      giveUp: make.work('give-up', rangeLacking, { wanted, allowed }, { item, label: `Range to give up, ${goal}, ${name}` }),
      about: [`brief.goals.${goal}.distance`, `brief.loads.${t.load}`, 'donor.ratings', 'pack.boxes'],
    },
  ]
}

function budgetAgainst(make: Maker, goal: string, { wanted, range }: Wanted, pack: Figure, left: Figure): Against {
  const item = `${goal} budget`
  const allowed = make.work('allowed', rangeByBudget, { range, left, pack }, { item, label: `Range that the budget allows, ${goal}` })
  return {
    name: 'budget',
    wanted,
    allowed,
    lacking: make.work('lacking', moneyLacking, { wanted, allowed, range, pack }, { item, label: `Money to find for ${goal}` }),
    giveUp: make.work('give-up', rangeLacking, { wanted, allowed }, { item, label: `Range to give up, ${goal}, budget` }),
    about: [`brief.goals.${goal}.distance`, 'brief.budget', 'brief.prices', 'pack.module.price'],
  }
}

/** Goals that leave no total ratio between them, and the top speed at which one ratio would do for both. */
function ratioPairs(make: Maker, windows: readonly (UnitWindow | Gaps)[], speeds: Readonly<Record<string, Value>>): Table['rows'] {
  return windows.flatMap(w => {
    if (isGaps(w) || w.collide.length !== 2 || !w.low || !w.high) return []
    const [one, other] = w.collide as [string, string],
      wanted = speeds[other]
    const settle = wanted
      ? {
          settle: make.work(
            'settle-for',
            speedToSettleFor,
            { wanted, shortest: w.high, tallest: w.low },
            { item: `${one} and ${other}, ${w.unit}`, label: `Top speed to settle for, ${one} and ${other}` },
          ),
        }
      : {}
    return [{ name: `${one} and ${other}, ratio of ${w.unit}`, cells: { tallest: w.low, shortest: w.high, ...settle } }]
  })
}

/** Pairs of goals, and what giving way on either side would take. */
function pairs(make: Maker, { goals }: Exchange, more: Table['rows']): void {
  const rows = Object.entries(goals).flatMap(([goal, list]) =>
    isGaps(list)
      ? []
      : list.flatMap(a =>
          'gaps' in a
            ? []
            : [{ name: `${goal} and ${a.name}`, cells: { wanted: a.wanted, allowed: a.allowed, lacking: a.lacking, giveUp: a.giveUp } }],
        ),
  )
  make.table('pairs', {
    label: 'Goals against each other',
    columns: [
      { key: 'wanted', label: 'range wanted', unit: 'm', shows: 'distance' },
      { key: 'allowed', label: 'range the other allows', unit: 'm', shows: 'distance' },
      { key: 'lacking', label: 'to give up elsewhere' },
      { key: 'giveUp', label: 'or range to give up', unit: 'm', shows: 'distance' },
      { key: 'tallest', label: 'tallest ratio one allows' },
      { key: 'shortest', label: 'shortest ratio the other allows' },
      { key: 'settle', label: 'or top speed to settle for', unit: 'm/s', shows: 'speed' },
    ],
    rows: [...rows, ...more],
  })
}
