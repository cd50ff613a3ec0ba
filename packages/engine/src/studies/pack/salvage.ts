import {
  capacityOff,
  capacitySpread,
  fallAllowed,
  fallOff,
  fastestFall,
  greatestLeak,
  healthOf,
  lowestInsulation,
  lowestRest,
  medianFall,
  medianShare,
  resistanceOff,
  resistanceSpread,
  slopeAtVoltage,
  voltageSpread,
} from '../../battery/module-lot.ts'
import { cellCount } from '../../battery/pack-arithmetic.ts'
import { modulesOfBothForms, resistanceAsMain, voltageAsMain } from '../../battery/two-forms.ts'
import { moduleInsulation, packInsulation } from '../../battery/salvage-limits.ts'
import { dailyFall, monthlyLeak } from '../../battery/self-discharge.ts'
import type { Model } from '../../model/model.ts'
import { type Field, type Figure, type Gap, isGap, type Value } from '../../working/value.ts'
import { type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { othersInStrings } from './other-module.ts'
import { packModel } from './pack-model.ts'
import { cellsOf, isOther, missingRecords, recordsInPack } from './salvaged-modules.ts'

/** A reading of the lot: the figure judged, and the module that stands worst. */
export type OfLot = {
  readonly found: Figure
  readonly worst: string
  /** What is missing until the lot is complete: so far only the modules recorded are held against each other. */
  readonly missing?: Gaps
}
export type Salvage = {
  readonly places: Figure | Gaps
  readonly capacity: OfLot | Gaps
  readonly median: Figure | Gaps
  readonly resistance: OfLot | Gaps
  readonly fall: OfLot | Gaps
  /** The fastest fall of any module, with what the others of its lot allow. */
  readonly beside: (OfLot & { readonly allowed: Figure }) | Gaps
  /** The fastest fall of any module, one module being enough to judge. */
  readonly alone: OfLot | Gaps
  readonly leak: OfLot | Gaps
  readonly rest: OfLot | Gaps
  readonly apart: Figure | Gaps
  readonly insulation: OfLot | Gaps
  readonly insulationWanted: Figure | Gaps
}

/** Modules it takes to say anything: of one by itself, and of one that stands out of a lot still being recorded. */
const ALONE = 1,
  LOT = 3
type Row = {
  readonly name: string
  readonly health: Figure | undefined
  readonly fall: Figure | undefined
  /** As of a module of the main form. */
  readonly resistance: Value | undefined
  readonly cells: Readonly<Record<'capacity' | 'health' | 'resistance' | 'leak' | 'insulation', Value | undefined>>
}
const rested = (records: readonly { readonly name: string; readonly rest: Value | Gaps }[]) =>
  records.flatMap(({ name, rest }) => (isGaps(rest) ? [] : [{ name, value: rest }]))

type Reading = 'capacity' | 'resistance' | 'restVoltage' | 'insulation'
/** One reading of every module in the pack: a lot is judged only when it is complete. */
function lot(m: Model, reading: Reading) {
  const records = recordsInPack(m.pack)
  return maybe({ each: records.map(([, r]) => r[reading]), rest: records.length ? missingRecords(m.pack) : null, own: ownCells(m) })
}
/** Cells in series of each module of the other form that is recorded: its readings are held against the others as if it had as many as those. */
const ownCells = (m: Model): readonly Field[] =>
  recordsInPack(m.pack)
    .filter(([, r]) => isOther(r))
    .map(([, r]) => cellsOf(m.pack, r))
const middle = (list: readonly Value[]): number => {
  const s = list.map(v => v.value).sort((a, b) => a - b),
    m = s.length >> 1
  return s.length % 2 ? (s[m] as number) : ((s[m - 1] as number) + (s[m] as number)) / 2
}

type Readings = { readonly records: readonly { readonly name: string; readonly own: Value | Gaps | null }[]; readonly series: Value | Gaps }
/** Readings of modules of the other form, as one of the main form of the same cells would show them; those of the main form as they are. */
function asMainForm({ records, series }: Readings, make: Maker) {
  const known = new Map<string, Value | Gaps>()
  const once = (key: string, i: number, reading: Value, work: (own: Value, cells: Value, item: string) => Figure): Value | Gaps => {
    const { name, own } = records[i] as Readings['records'][number],
      item = `${name} ${key}`
    if (own === null) return reading
    if (!known.has(item)) known.set(item, isGaps(own) ? own : isGaps(series) ? series : work(own, series, item))
    return known.get(item) as Value | Gaps
  }
  return {
    voltage: (i: number, key: 'rest' | 'later', reading: Value): Value | Gaps =>
      once(key, i, reading, (own, cells, item) =>
        make.work(
          'as-main',
          voltageAsMain,
          { reading, own, cells },
          { item, label: `Rest voltage of ${item.replace(/ .*/, '')} as of the main form` },
        ),
      ),
    resistance: (i: number, reading: Value): Value | Gaps =>
      once('resistance', i, reading, (own, cells, item) =>
        make.work(
          'as-main',
          resistanceAsMain,
          { reading, own, cells },
          { item, label: `Resistance of ${item.replace(/ .*/, '')} as of the main form` },
        ),
      ),
  }
}
/** A complete lot, each reading as of the main form: what that takes is known where the lot is. */
const eachAs = (each: readonly Value[], as: (i: number, v: Value) => Value | Gaps): readonly Value[] =>
  each.map((v, i) => as(i, v)).filter((v): v is Value => !isGaps(v))
/** Readings of one module; the gaps of the first that is none. */
function both<K extends string>(x: Readonly<Record<K, Value | Gaps>>): Readonly<Record<K, Value>> | Gaps {
  const missing = Object.values<Value | Gaps>(x).find(isGaps)
  return missing ?? (x as Readonly<Record<K, Value>>)
}

/** What the records of salvaged modules say: health and leak of each, how alike they are, which one stands worst. */
export const salvage = study({
  id: 'salvage',
  stage: 'pack',
  asks: 'What do the salvaged modules say of themselves?',
  reads: (m, ask) => ({
    records: recordsInPack(m.pack).map(([name, r]) => ({
      name,
      own: isOther(r) ? maybe(cellsOf(m.pack, r)) : null,
      capacity: maybe(r.capacity),
      resistance: maybe(r.resistance),
      insulation: maybe(r.insulation),
      rest: maybe(r.restVoltage),
      falling: maybe({ first: r.restVoltage, later: r.restVoltageLater, apart: r.daysApart }),
    })),
    series: maybe(m.pack.module.cellsInSeries),
    cells: maybe({ parallel: m.pack.module.cellsInParallel, cell: m.pack.module.cellCapacity }),
    openCircuit: maybe(m.pack.module.openCircuit),
    places: maybe({ modules: m.pack.strings, cells: m.pack.modulesInSeries }),
    others: othersInStrings(m)?.inSeries ?? null,
    highest: maybe(ask(packModel)),
    capacity: lot(m, 'capacity'),
    resistance: lot(m, 'resistance'),
    rest: lot(m, 'restVoltage'),
    insulation: lot(m, 'insulation'),
    falls: maybe({
      each: recordsInPack(m.pack).map(([, r]) => ({ first: r.restVoltage, later: r.restVoltageLater, apart: r.daysApart })),
      rest: Object.keys(m.pack.salvage).length ? missingRecords(m.pack) : null,
      own: ownCells(m),
      series: m.pack.module.cellsInSeries,
    }),
  }),
  answer: (k, make): Salvage => {
    const alike = asMainForm(k, make),
      records = k.records.map((r, i) => ({
        ...r,
        rest: isGaps(r.rest) ? r.rest : alike.voltage(i, 'rest', r.rest),
        falling: isGaps(r.falling)
          ? r.falling
          : both({
              first: alike.voltage(i, 'rest', r.falling.first),
              later: alike.voltage(i, 'later', r.falling.later),
              apart: r.falling.apart,
            }),
      }))
    const rows = records.map((r, i): Row => {
      const item = r.name,
        series = k.series
      const health =
        isGaps(r.capacity) || isGaps(k.cells)
          ? undefined
          : make.work('health', healthOf, { capacity: r.capacity, ...k.cells }, { item, label: `Health of ${item}` })
      const fall =
        isGaps(r.falling) || isGaps(series)
          ? undefined
          : make.work(
              'fall',
              dailyFall,
              { ...r.falling, cells: series },
              { item, label: `Fall of the rest voltage of ${item} in a day, one cell` },
            )
      const leak =
        !fall || isGaps(r.falling) || isGaps(series) || isGaps(k.openCircuit)
          ? undefined
          : make.work(
              'leak',
              monthlyLeak,
              {
                fall,
                slope: make.work(
                  'slope',
                  slopeAtVoltage,
                  { openCircuit: k.openCircuit, voltage: r.falling.first, cells: series },
                  { item, label: `Slope of the open-circuit voltage where ${item} rests` },
                ),
              },
              { item, label: `Self-discharge of ${item} in thirty days` },
            )
      const shown = <T>(x: T | Gaps): T | undefined => (isGaps(x) ? undefined : x)
      return {
        name: item,
        health,
        fall,
        resistance: isGaps(r.resistance) ? undefined : shown(alike.resistance(i, r.resistance)),
        cells: { capacity: shown(r.capacity), health, resistance: shown(r.resistance), leak, insulation: shown(r.insulation) },
      }
    })
    if (rows.length)
      make.table('modules', {
        label: 'Salvaged modules',
        columns: [
          { key: 'capacity', label: 'capacity', unit: 'C' },
          { key: 'health', label: 'health', unit: '1', shows: 'share' },
          { key: 'resistance', label: 'resistance', unit: 'Ω' },
          { key: 'leak', label: 'self-discharge in 30 days', unit: '1', shows: 'share' },
          { key: 'insulation', label: 'insulation', unit: 'Ω' },
        ],
        rows: rows.map(({ name, cells }) => ({ name, cells })),
      })
    const places = isGaps(k.places)
      ? k.places
      : make.work(
          'places',
          cellCount,
          k.others
            ? {
                modules: k.places.modules,
                cells: make.work(
                  'in-string',
                  modulesOfBothForms,
                  { modules: k.places.cells, others: k.others },
                  { label: 'Modules in each string' },
                ),
              }
            : k.places,
          { label: 'Modules the pack needs', symbol: 'n' },
        )
    const none: Gaps = { gaps: [] },
      several = rows.length > 1
    const has = (reading: keyof Row['cells'] | 'fall'): readonly { readonly name: string; readonly value: Value }[] =>
      rows.flatMap(r => {
        const value = reading === 'fall' ? r.fall : reading === 'resistance' ? r.resistance : r.cells[reading]
        return value ? [{ name: r.name, value }] : []
      })
    /** Complete, or what was recorded so far: one module that is bad by itself is named at once, one that stands out of its lot from three on. */
    const ofLot = (
      complete: object | Gaps,
      read: readonly { readonly name: string; readonly value: Value }[],
      least: number,
      found: (each: readonly Value[]) => Figure,
      badness: (each: readonly Value[]) => (v: number) => number,
    ): OfLot | Gaps => {
      if (isGaps(complete) ? read.length < least : read.length === 0 || (least !== ALONE && !several))
        return isGaps(complete) ? complete : none
      const each = read.map(r => r.value),
        bad = badness(each)
      const worst = read.reduce((a, b) => (bad(b.value.value) > bad(a.value.value) ? b : a)).name
      return { found: found(each), worst, ...(isGaps(complete) ? { missing: complete } : {}) }
    }
    const off =
      (each: readonly Value[]) =>
      (v: number): number =>
        Math.abs(v - middle(each))
    if (!isGaps(k.capacity) && several)
      make.work('capacity-spread', capacitySpread, { each: k.capacity.each }, { label: 'Spread of capacity of the lot' })
    const healths = rows.map(r => r.health)
    const median = isGaps(k.capacity)
      ? k.capacity
      : isGaps(k.cells)
        ? k.cells
        : several
          ? make.work('median', medianShare, { each: healths as readonly Figure[] }, { label: 'Median health of the lot' })
          : none
    if (!isGaps(k.resistance) && several)
      make.work(
        'resistance-spread',
        resistanceSpread,
        { each: eachAs(k.resistance.each, alike.resistance) },
        { label: 'Spread of resistance of the lot' },
      )
    const insulations = has('insulation').map(r => r.value)
    if (insulations.length > 1)
      make.work(
        'insulation-together',
        packInsulation,
        { modules: insulations },
        { label: `Insulation of all modules together${isGaps(k.insulation) ? ', of those recorded so far' : ''}` },
      )
    const series = k.series,
      fell = has('fall'),
      greatest = () => (v: number) => v
    const beside = ofLot(k.falls, fell, LOT, each => make.work('fall-off', fallOff, { each }), greatest)
    const alone = ofLot(k.falls, fell, ALONE, each => make.work('fastest', fastestFall, { each }), greatest)
    const apartOf = (name: string): Value => {
      const falling = records.find(r => r.name === name)?.falling
      if (!falling || isGaps(falling)) throw new RangeError(`module ${name} has a fall and no readings`)
      return falling.apart
    }
    return {
      places,
      median,
      capacity: ofLot(k.capacity, has('capacity'), LOT, each => make.work('capacity-off', capacityOff, { each }), off),
      resistance: ofLot(k.resistance, has('resistance'), LOT, each => make.work('resistance-off', resistanceOff, { each }), off),
      fall: beside,
      beside:
        isGaps(beside) || isGaps(alone) || isGaps(series)
          ? isGaps(beside)
            ? beside
            : none
          : {
              ...alone,
              allowed: make.work('fall-allowed', fallAllowed, {
                median: make.work('median-fall', medianFall, { each: fell.map(f => f.value) }),
                cells: series,
                apart: fell.map(f => apartOf(f.name)),
              }),
            },
      alone,
      leak: isGaps(k.openCircuit)
        ? k.openCircuit
        : ofLot(k.falls, has('leak'), ALONE, each => make.work('greatest-leak', greatestLeak, { each }), greatest),
      rest: isGaps(series)
        ? series
        : ofLot(
            k.rest,
            rested(records),
            isGaps(k.rest) ? ALONE : LOT,
            each => make.work('lowest-rest', lowestRest, { each, cells: series }),
            () => v => -v,
          ),
      apart: isGaps(series)
        ? series
        : isGaps(k.rest)
          ? k.rest
          : several
            ? make.work('apart', voltageSpread, { each: eachAs(k.rest.each, (i, v) => alike.voltage(i, 'rest', v)), cells: series })
            : none,
      insulation: ofLot(
        k.insulation,
        has('insulation'),
        isGaps(k.insulation) ? ALONE : LOT,
        each => make.work('lowest-insulation', lowestInsulation, { each }),
        () => v => -v,
      ),
      insulationWanted: isGaps(places)
        ? places
        : isGaps(k.highest)
          ? k.highest
          : make.work(
              'insulation-wanted',
              moduleInsulation,
              { modules: places, highest: k.highest.highestVoltage },
              { label: 'Insulation wanted of each module' },
            ),
    }
  },
})

const READINGS = ['capacity', 'resistance', 'restVoltage', 'restVoltageLater', 'daysApart', 'insulation'] as const
/** Every reading a record in the pack still lacks. */
export const lackingReadings = (m: Model): readonly Gap[] => recordsInPack(m.pack).flatMap(([, r]) => READINGS.map(k => r[k]).filter(isGap))
