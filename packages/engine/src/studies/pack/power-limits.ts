import { chargingForTime, powerForTime } from '../../battery/pack-power.ts'
import { contactorForTime, fuseForTime } from '../../battery/pack-sums.ts'
import { grid } from '../../numerics/grid.ts'
import type { Figure, Grid, Value } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import { bmsLimits } from './bms-limits.ts'
import type { PackFigures } from './pack-figures.ts'
import { packModel } from './pack-model.ts'
import { coldestCells, DURATIONS, type Duration, HALF, MILD, NEARLY_FULL } from './pack-points.ts'

export type Limit = { readonly current: Figure; readonly power: Figure }
export type PowerLimits = {
  /** Out of the pack for each duration, at half charge and mild, and at the reserve with cells as cold as any trip starts. */
  readonly mild: Readonly<Record<Duration, Limit | Gaps>>
  readonly cold: Readonly<Record<Duration, Limit | Gaps>>
  /** Into the pack for 10 s: mild at half charge, cold at half charge, mild when nearly full. */
  readonly into: { readonly mild: Limit | Gaps; readonly cold: Limit | Gaps; readonly full: Limit | Gaps }
}

const OUT = { mild: 'half charge, mild cells', cold: 'at the reserve, coldest start' } as const
const INTO = { mild: 'half charge, mild cells', cold: 'half charge, coldest start', full: 'nine tenths charged, mild cells' } as const
const CHARGES = [0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9, 1] as const,
  CELSIUS = [-20, -10, 0, 10, 20, 30, 40] as const
const KELVIN = CELSIUS.map(c => c + 273.15)
const NAMES = Object.keys(DURATIONS) as Duration[]

/** What the pack gives and takes for a time, between its voltage floor and ceiling and what cells and BMS allow. */
export const powerLimits = study({
  id: 'power',
  stage: 'pack',
  asks: 'How much power can the pack give and take, at which charge and temperature, and for how long?',
  reads: (m, ask) => ({
    pack: ask(packModel),
    peakTime: maybe(m.pack.module.peakTime),
    reserve: maybe(m.brief.reserve),
    coldest: maybe(coldestCells(m)),
    bms: bmsLimits(m.pack).drive.pull,
    fuse: maybe({ rating: m.pack.limits.fuse }),
    contactor: maybe({ rating: m.pack.limits.contactor }),
    melts: maybe({ melts: m.pack.limits.fuseMelts }),
    carries: maybe({ peak: m.pack.limits.contactorPeak }),
  }),
  answer: ({ pack, peakTime, reserve, coldest, ...parts }, make): PowerLimits => {
    const circuit = {
      openCircuit: pack.openCircuit,
      resistance: pack.resistance,
      factor: pack.resistanceFactor,
      branch: pack.branchResistance,
      time: pack.branchTime,
      cold: pack.coldFactor,
      capacity: pack.capacity,
    }
    // Up to the time the datasheet states the peak current counts, beyond it the continuous one.
    const most = (name: Duration): Value | Gaps =>
      name === 'continuous'
        ? pack.held.continuous
        : isGaps(peakTime)
          ? peakTime
          : DURATIONS[name].value <= peakTime.value
            ? pack.held.peak
            : pack.held.continuous
    const out = (name: Duration, charge: Value, temperature: Value, place: keyof typeof OUT): Limit | Gaps => {
      const limit = most(name)
      if (isGaps(limit)) return limit
      const { current, power } = make.all(
        '',
        powerForTime,
        { ...circuit, charge, temperature, after: DURATIONS[name], floor: pack.lowestVoltage, most: limit },
        {
          item: `${name} ${place}`,
          labels: {
            current: `Current of the power limit, ${name}, ${OUT[place]}`,
            power: `Power limit, ${name}, ${OUT[place]}`,
          },
        },
      ).figures
      return { current, power }
    }
    const { chargeShare: share } = pack.held
    const into = (charge: Value, temperature: Value, place: keyof typeof INTO): Limit | Gaps =>
      isGaps(share)
        ? share
        : make.all(
            'into',
            chargingForTime,
            {
              ...circuit,
              charge,
              temperature,
              after: DURATIONS['10 s'],
              ceiling: pack.highestVoltage,
              most: pack.held.charge,
              share,
            },
            {
              item: place,
              labels: { current: `Current into the pack, 10 s, ${INTO[place]}`, power: `Power into the pack, 10 s, ${INTO[place]}` },
            },
          ).figures
    for (const name of NAMES) {
      const limit = most(name)
      if (isGaps(limit)) continue
      const inputs = { ...circuit, after: DURATIONS[name], floor: pack.lowestVoltage, most: limit }
      const numbers = {
        openCircuit: pack.openCircuit.value,
        resistance: pack.resistance.value,
        factor: pack.resistanceFactor.value,
        branch: pack.branchResistance.value,
        time: pack.branchTime.value,
        cold: pack.coldFactor.value,
        capacity: pack.capacity.value,
        after: DURATIONS[name].value,
        floor: pack.lowestVoltage.value,
        most: limit.value,
        charge: 0,
        temperature: 0,
      }
      const z = CHARGES.flatMap(charge =>
        KELVIN.map(temperature => {
          numbers.charge = charge
          numbers.temperature = temperature
          return powerForTime(numbers).power
        }),
      )
      const map: Figure<Grid> = make.derive('map', powerForTime, inputs, grid(CHARGES, KELVIN, z), 'W', {
        item: name,
        label: `Power limit over charge and temperature, ${name}`,
      })
      make.table(
        'limits',
        {
          label: `Power limit over charge and cell temperature, ${name}`,
          columns: CELSIUS.map(c => ({ key: `${c} °C`, label: `${c} °C`, unit: 'W' })),
          rows: CHARGES.map((charge, i) => ({
            name: `${Math.round(charge * 100)} %`,
            cells: Object.fromEntries(CELSIUS.map((c, j) => [`${c} °C`, map.value.z[i * CELSIUS.length + j]])),
          })),
        },
        name,
      )
    }
    const beside = governing(pack, peakTime, parts)
    const numbers = {
      openCircuit: pack.openCircuit.value,
      resistance: pack.resistance.value,
      factor: pack.resistanceFactor.value,
      branch: pack.branchResistance.value,
      time: pack.branchTime.value,
      cold: pack.coldFactor.value,
      capacity: pack.capacity.value,
      floor: pack.lowestVoltage.value,
      most: Number.POSITIVE_INFINITY,
    }
    const points = [
      { charge: HALF, cells: MILD, place: 'mild' },
      ...(isGaps(reserve) || isGaps(coldest) ? [] : [{ charge: reserve as Value, cells: coldest as Value, place: 'cold' } as const]),
    ] as const
    make.table('governs', {
      label: 'What governs the current out of the pack',
      columns: [...GOVERNING.map(key => ({ key, label: key, unit: 'A' })), { key: 'governs', label: 'governs' }],
      rows: points.flatMap(({ charge, cells, place }) =>
        NAMES.map(name => {
          const floor = powerForTime({
            ...numbers,
            charge: charge.value,
            temperature: cells.value,
            after: DURATIONS[name].value,
          }).current
          const all: Readonly<Record<string, Value | number | undefined>> = { 'voltage floor': floor, ...beside(name) }
          const least = GOVERNING.filter(key => all[key] !== undefined).reduce((a, b) => (amount(all[b]) < amount(all[a]) ? b : a))
          return { name: `${name}, ${OUT[place]}`, cells: { ...all, governs: least } }
        }),
      ),
    })
    const all = (charge: Value | Gaps, temperature: Value | Gaps, place: keyof typeof OUT): Readonly<Record<Duration, Limit | Gaps>> => {
      const gaps = [charge, temperature].flatMap(x => (isGaps(x) ? x.gaps : []))
      return Object.fromEntries(
        NAMES.map(name => [name, gaps.length ? { gaps } : out(name, charge as Value, temperature as Value, place)]),
      ) as Record<Duration, Limit | Gaps>
    }
    return {
      mild: all(HALF, MILD, 'mild'),
      cold: all(reserve, coldest, 'cold'),
      into: {
        mild: into(HALF, MILD, 'mild'),
        cold: isGaps(coldest) ? coldest : into(HALF, coldest, 'cold'),
        full: into(NEARLY_FULL, MILD, 'full'),
      },
    }
  },
})

const GOVERNING = ['voltage floor', 'cells', 'BMS', 'fuse', 'contactor'] as const
const amount = (x: Value | number | undefined): number => (x === undefined ? Number.POSITIVE_INFINITY : typeof x === 'number' ? x : x.value)

type Parts = {
  readonly bms: Value | null
  readonly fuse: { readonly rating: Value } | Gaps
  readonly contactor: { readonly rating: Value } | Gaps
  readonly melts: { readonly melts: Value } | Gaps
  readonly carries: { readonly peak: Value } | Gaps
}
/** What each part beside the voltage floor lets through for a time. Fuse and contactor carry more for a peak, where the file says how much. */
function governing(pack: PackFigures, peakTime: Value | Gaps, { bms, fuse, contactor, melts, carries }: Parts) {
  return (name: Duration): Readonly<Record<Exclude<(typeof GOVERNING)[number], 'voltage floor'>, Value | number | undefined>> => {
    const short = name !== 'continuous',
      peak = short && !isGaps(peakTime) && DURATIONS[name].value <= peakTime.value
    return {
      cells: short && isGaps(peakTime) ? undefined : peak ? pack.peakCurrent : pack.continuousCurrent,
      BMS: bms ?? undefined,
      fuse: isGaps(fuse)
        ? undefined
        : !short
          ? fuse.rating
          : isGaps(melts)
            ? undefined
            : fuseForTime({ rating: fuse.rating.value, melts: melts.melts.value }),
      contactor: isGaps(contactor)
        ? undefined
        : !short
          ? contactor.rating
          : isGaps(carries)
            ? undefined
            : contactorForTime({ rating: contactor.rating.value, peak: carries.peak.value }),
    }
  }
}
