import { naumannCycling, schmalstiegCycling } from '../../battery/ageing.ts'
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
import { RATES } from '../../battery/pack-sums.ts'
import { greatestConsumption } from '../../trip/consumption.ts'
import { type Fact, type Figure, standard, type Value } from '../../working/value.ts'
import { from, type Gaps, isGaps, type Maker, study } from '../study.ts'
import { ranges } from '../trips/ranges.ts'
import { packModel } from './pack-model.ts'
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

/** Consumption on every trip whose range is wanted. */
function consumptions(answer: unknown): readonly (Figure | Gaps)[] {
  const each = isGaps(answer)
    ? [answer]
    : Object.values((answer as { trips: Readonly<Record<string, { consumption: Figure } | Gaps>> }).trips).map(t =>
        isGaps(t) ? t : t.consumption,
      )
  return each.length ? each : [{ gaps: [{ gap: true, path: 'brief.goals', label: 'a range goal with its trip', until: 'any time' }] }]
}

export type PackLife = { readonly after: Readonly<Record<string, Figure>> }

/** Health of the pack after some years of standing and driving: a forecast by the law of one cell of its kind. */
export const packLife = study({
  id: 'life',
  stage: 'pack',
  asks: 'How much of the pack is left after some years?',
  reads: (m, ask) => {
    const { life, module: c } = m.pack
    return {
      chemistry: c.chemistry,
      pack: ask(packModel),
      energy: from(ask(usableEnergy), e => e.warm),
      uses: consumptions(ask(ranges)),
      openCircuit: c.openCircuit,
      parallel: c.cellsInParallel,
      cell: c.cellCapacity,
      years: life.years,
      perYear: life.distancePerYear,
      top: life.parkedAt,
      depth: life.depth,
      mean: life.temperature,
      swing: life.swing,
    }
  },
  answer: (k, make): PackLife => {
    // No law of standing and cycling is at hand for the other chemistries.
    if (k.chemistry.value !== 'NMC' && k.chemistry.value !== 'LFP') return { after: {} }
    const { top, depth, mean, swing, years: time } = k
    const distance = make.work('distance', distanceInAll, { perYear: k.perYear, time }, { label: 'Distance driven by then' })
    const consumption = make.work('consumption', greatestConsumption, { each: k.uses as readonly Value[] })
    const cycles = make.work('cycles', fullCycles, { distance, consumption, energy: k.energy as Value }, { label: 'Full cycles by then' })
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
    return {
      after: Object.fromEntries(
        SPLITS.map(([item, share]) => {
          const before = (key: string, a: number): Figure =>
            make.work(
              key,
              lossBefore,
              { health: now, part: part(a) },
              { item, label: key === 'stood' ? `Lost so far by standing, ${item}` : `Lost so far by cycling, ${item}` },
            )
          const stood = make.work(
            'standing-in-all',
            k.chemistry.value === 'LFP' ? rootLawOnTop : standingOnTop,
            { before: before('stood', share), added: standing },
            { item, label: `Lost by standing in all, so far ${item}` },
          )
          const driven = make.work(
            'cycling-in-all',
            rootLawOnTop,
            { before: before('driven', 1 - share), added: cycling },
            { item, label: `Lost by cycling in all, so far ${item}` },
          )
          return [
            item,
            make.work(
              'health',
              healthLeft,
              { standing: stood, cycling: driven },
              { item, label: `Health of the pack by then, loss so far ${item}` },
            ),
          ]
        }),
      ),
    }
  },
})

type Use = {
  readonly top: Value
  readonly depth: Value
  readonly mean: Value
  readonly swing: Value
  readonly time: Value
  readonly cycles: Value
}
const LABELS = { standing: 'Lost by standing, by the law', cycling: 'Lost by cycling, by the law' } as const
function iron(make: Maker, { top, depth, mean, swing, time, cycles }: Use): { standing: Figure; cycling: Figure } {
  return {
    standing: make.work('standing', standingLfp, { charge: top, mean, swing, time }, { label: LABELS.standing }),
    cycling: make.work('cycling', naumannCycling, { rate: RATES.third, depth, cycles }, { label: LABELS.cycling }),
  }
}
function nickel(
  make: Maker,
  { top, depth, mean, swing, time, cycles, openCircuit }: Use & { readonly openCircuit: Parameters<Maker['derive']>[2][string] },
): { standing: Figure; cycling: Figure } {
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
  return { standing: standing.capacity, cycling: cycling.capacity }
}
