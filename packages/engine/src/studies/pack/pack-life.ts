import { naumannCycling, schmalstiegCycling } from '../../battery/ageing.ts'
import {
  branchByThen,
  capacityByThen,
  factorByThen,
  gainedByCycling,
  gainedByStanding,
  resistanceByThen,
} from '../../battery/ageing-of-resistance.ts'
import { AGEING_LAW, fullCycles, healthLeft, lossOfThisCell, rootLawOnTop, standingOnTop } from '../../battery/ageing-of-years.ts'
import {
  cycleVoltage,
  distanceInAll,
  lossBefore,
  parkedVoltage,
  standingLfp,
  standingNmc,
  throughputOfLaw,
} from '../../battery/ageing-through-seasons.ts'
import { healthOf } from '../../battery/module-lot.ts'
import { powerForTime } from '../../battery/pack-power.ts'
import { RATES } from '../../battery/pack-sums.ts'
import type { Model } from '../../model/model.ts'
import { greatestConsumption } from '../../trip/consumption.ts'
import { type Fact, type Figure, type Gap, isGap, standard, type Value } from '../../working/value.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { rangedTrip, ranges } from '../trips/ranges.ts'
import type { PackFigures } from './pack-figures.ts'
import { packModel } from './pack-model.ts'
import { coldestCells, DURATIONS, HALF, MILD } from './pack-points.ts'
import { usableEnergy } from './usable-energy.ts'

const part = (value: number): Fact => ({
  ...standard(`part.${value}`, 'part of the loss so far that came by standing', 'a', value, '1', {
    work: 'definition',
    place: 'nobody knows how a used module lost its capacity',
  }),
  shows: 'share',
})
/** How a used pack may have lost what it lost: all by standing, half and half, all by cycling. */
const SPLITS = [
  ['by standing', 1],
  ['half and half', 0.5],
  ['by cycling', 0],
] as const

/** The gap to close where nobody has published, or this project not taken in, how cells of a kind age. */
const NO_LAW: Gap = {
  gap: true,
  path: 'pack.life',
  label: 'a published law of ageing for this chemistry, for none is taken in; until then measure the capacity of a module once a year',
  until: 'any time',
}
/** Consumption on the trips whose range is wanted, of several the ones in weather nearest the mean of the year: nobody drives in the coldest of it all year. */
function consumptions(m: Model, answer: unknown): readonly (Figure | Gaps)[] {
  if (isGaps(answer)) return [answer]
  const mean = m.pack.life.temperature,
    all = Object.entries((answer as { trips: Readonly<Record<string, { consumption: Figure } | Gaps>> }).trips)
  const off = (name: string): number => {
    const air = rangedTrip(m, name)?.temperature
    return air === undefined || isGap(air) || isGap(mean) ? 0 : Math.abs(air.value - mean.value)
  }
  const least = Math.min(...all.map(([name]) => off(name)))
  const each = all.flatMap(([name, t]) => (off(name) > least ? [] : [isGaps(t) ? t : t.consumption]))
  return each.length ? each : [{ gaps: [{ gap: true, path: 'brief.goals', label: 'a range goal with its trip', until: 'any time' }] }]
}

/** Health by then for each way the cells may have aged so far; resistance and power only where the law tells resistance too. */
export type PackLife = { readonly after: Readonly<Record<string, Figure>>; readonly resistance: Readonly<Record<string, Figure>> }

/** Health of the pack after some years of standing and driving: a forecast by the law of one cell of its kind. */
export const packLife = study({
  id: 'life',
  stage: 'pack',
  asks: 'How much of the pack is left after some years?',
  reads: (m, ask) => {
    const { life, module: c } = m.pack
    return {
      chemistry: isGap(c.chemistry) || c.chemistry.value === 'NMC' || c.chemistry.value === 'LFP' ? c.chemistry : NO_LAW,
      pack: ask(packModel),
      energy: from(ask(usableEnergy), e => e.warm),
      uses: consumptions(m, ask(ranges)),
      openCircuit: c.openCircuit,
      parallel: c.cellsInParallel,
      cell: c.cellCapacity,
      years: life.years,
      perYear: life.distancePerYear,
      top: life.parkedAt,
      depth: life.depth,
      mean: life.temperature,
      swing: life.swing,
      peakTime: maybe(c.peakTime),
      reserve: maybe(m.brief.reserve),
      coldest: maybe(coldestCells(m)),
    }
  },
  answer: (k, make): PackLife => {
    const { top, depth, mean, swing, years: time } = k
    const distance = make.work('distance', distanceInAll, { perYear: k.perYear, time }, { label: 'Distance driven by then' })
    const consumption = make.work('consumption', greatestConsumption, { each: k.uses as readonly Value[] })
    const cycles = make.work('cycles', fullCycles, { distance, consumption, energy: k.energy as Value }, { label: 'Full cycles by then' })
    // Cells that give nothing at this load drive no year: rules on their voltage say so.
    if (!Number.isFinite(cycles.value)) return { after: {}, resistance: {} }
    const law =
      k.chemistry.value === 'LFP'
        ? iron(make, { top, depth, mean, swing, time, cycles })
        : nickel(make, { top, depth, mean, swing, time, cycles, openCircuit: k.openCircuit })
    const ofThisCell = (key: string, loss: Figure, label: string): Figure =>
      make.work(key, lossOfThisCell, { law: loss, factor: AGEING_LAW }, { label })
    const standing = ofThisCell('standing-here', law.standing, 'Lost by standing, new cells of this kind')
    const cycling = ofThisCell('cycling-here', law.cycling, 'Lost by cycling, new cells of this kind')
    const now = make.work(
      'now',
      healthOf,
      { capacity: k.pack.weakest, parallel: k.parallel, cell: k.cell },
      { label: 'Health of the weakest module now' },
    )
    const after: Record<string, Figure> = {},
      resistance: Record<string, Figure> = {}
    for (const [item, share] of SPLITS) {
      const before = (key: string, a: number): Figure =>
        make.work(
          key,
          lossBefore,
          { health: now, part: part(a) },
          { item, label: key === 'stood' ? `Lost so far by standing, ${item}` : `Lost so far by cycling, ${item}` },
        )
      const stood = before('stood', share),
        driven = before('driven', 1 - share)
      const standingInAll = make.work(
        'standing-in-all',
        k.chemistry.value === 'LFP' ? rootLawOnTop : standingOnTop,
        { before: stood, added: standing },
        { item, label: `Lost by standing in all, so far ${item}` },
      )
      const cyclingInAll = make.work(
        'cycling-in-all',
        rootLawOnTop,
        { before: driven, added: cycling },
        { item, label: `Lost by cycling in all, so far ${item}` },
      )
      const health = make.work(
        'health',
        healthLeft,
        { standing: standingInAll, cycling: cyclingInAll },
        { item, label: `Health of the pack by then, loss so far ${item}` },
      )
      after[item] = health
      if (!law.gained) continue
      const { gained } = law
      const byStanding = (key: string, lost: Figure, label: string): Figure =>
        make.work(key, gainedByStanding, { lost, lawGained: gained.standing, lawLost: law.standing }, { item, label: `${label}, ${item}` })
      const byCycling = (key: string, lost: Figure, label: string): Figure =>
        make.work(
          key,
          gainedByCycling,
          { lost, lawGained: gained.cycling, factor: AGEING_LAW, added: cycling },
          { item, label: `${label}, ${item}` },
        )
      const growth = make.work(
        'resistance',
        resistanceByThen,
        {
          stood: byStanding('gained-stood', stood, 'Resistance gained so far by standing'),
          driven: byCycling('gained-driven', driven, 'Resistance gained so far by cycling'),
          standing: byStanding('gained-standing', standingInAll, 'Resistance gained by standing in all, so far'),
          cycling: byCycling('gained-cycling', cyclingInAll, 'Resistance gained by cycling in all, so far'),
        },
        { item, label: `Resistance by then over that of today, loss so far ${item}` },
      )
      resistance[item] = growth
      powerThen(k, make, item, { now, health, growth })
    }
    return { after, resistance }
  },
})

type PowerRead = {
  readonly pack: PackFigures
  readonly peakTime: Value | Gaps
  readonly reserve: Value | Gaps
  readonly coldest: Value | Gaps
}
/** Power the aged pack gives for ten seconds, beside the limits of today. */
function powerThen(
  { pack, peakTime, reserve, coldest }: PowerRead,
  make: Maker,
  split: string,
  { now, health, growth }: { readonly now: Figure; readonly health: Figure; readonly growth: Figure },
): void {
  // A pack that has nothing left by then has no power to speak of.
  if (isGaps(peakTime) || health.value <= 0 || growth.value === Number.POSITIVE_INFINITY) return
  const aged = {
    openCircuit: pack.openCircuit,
    resistance: pack.resistance,
    factor: make.work('factor-then', factorByThen, { factor: pack.resistanceFactor, growth }, { item: split }),
    branch: make.work('branch-then', branchByThen, { branch: pack.branchResistance, growth }, { item: split }),
    time: pack.branchTime,
    cold: pack.coldFactor,
    capacity: make.work('capacity-then', capacityByThen, { capacity: pack.capacity, now, later: health }, { item: split }),
    after: DURATIONS['10 s'],
    floor: pack.lowestVoltage,
    most: DURATIONS['10 s'].value <= peakTime.value ? pack.peakCurrent : pack.continuousCurrent,
  }
  const places = [
    ['half charge, mild cells', HALF, MILD],
    ['at the reserve, coldest start', reserve, coldest],
  ] as const
  for (const [place, charge, temperature] of places) {
    if (isGaps(charge) || isGaps(temperature)) continue
    make.all(
      'then',
      powerForTime,
      { ...aged, charge, temperature },
      {
        item: `${split}, ${place}`,
        labels: {
          current: `Current of the power limit by then, 10 s, ${place}, loss so far ${split}`,
          power: `Power limit by then, 10 s, ${place}, loss so far ${split}`,
        },
      },
    )
  }
}

type Use = {
  readonly top: Value
  readonly depth: Value
  readonly mean: Value
  readonly swing: Value
  readonly time: Value
  readonly cycles: Value
}
const LABELS = { standing: 'Lost by standing, by the law', cycling: 'Lost by cycling, by the law' } as const
type Law = {
  readonly standing: Figure
  readonly cycling: Figure
  /** Resistance gained by both, where the law tells it. */
  readonly gained?: { readonly standing: Figure; readonly cycling: Figure }
}
function iron(make: Maker, { top, depth, mean, swing, time, cycles }: Use): Law {
  return {
    standing: make.work('standing', standingLfp, { charge: top, mean, swing, time }, { label: LABELS.standing }),
    cycling: make.work('cycling', naumannCycling, { rate: RATES.third, depth, cycles }, { label: LABELS.cycling }),
  }
}
function nickel(
  make: Maker,
  { top, depth, mean, swing, time, cycles, openCircuit }: Use & { readonly openCircuit: Parameters<Maker['derive']>[2][string] },
): Law {
  const curve = openCircuit as never
  const voltage = make.work('parked-voltage', parkedVoltage, { openCircuit: curve, top }, { label: 'Voltage a parked cell stands at' })
  const middle = make.work('cycle-voltage', cycleVoltage, { openCircuit: curve, top, depth }, { label: 'Mean voltage of the daily cycle' })
  const standing = make.all(
    'standing',
    standingNmc,
    { voltage, mean, swing, time },
    { labels: { capacity: LABELS.standing, resistance: 'Resistance gained by standing, by the law' } },
  ).figures
  const cycling = make.all(
    'cycling',
    schmalstiegCycling,
    {
      voltage: middle,
      depth,
      throughput: make.work('throughput', throughputOfLaw, { cycles }, { label: 'Charge moved by the cell of the law' }),
    },
    { labels: { capacity: LABELS.cycling, resistance: 'Resistance gained by cycling, by the law' } },
  ).figures
  return {
    standing: standing.capacity,
    cycling: cycling.capacity,
    gained: { standing: standing.resistance, cycling: cycling.resistance },
  }
}
