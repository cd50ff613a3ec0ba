import { currentInAir, JACKET, temperatureInAir } from '../../high-voltage/cable-heat.ts'
import { COPPER } from '../../high-voltage/conductor-metals.ts'
import { conductorDrop, warmResistance } from '../../high-voltage/conductor-resistance.ts'
import { FLEXIBLE_TABLE, flexibleResistance, nextGauge } from '../../high-voltage/conductor-sizes.ts'
import { currentForHours, listedResistance, strandedDiameter } from '../../high-voltage/wire-current.ts'
import { type Figure, standard, type Value } from '../../working/value.ts'
import { packModel } from '../pack/pack-model.ts'
import { from, type Gaps, isGaps, type Maker, maybe, once, study } from '../study.ts'
import { type CircuitAnswer, circuit, wiresOf } from './circuit.ts'
import { type UserCurrent, userCurrents } from './user-currents.ts'

/** Cars of all samples stay where air is a little thinner at most; the film falls by a few per cent at 2000 m. */
const AIR = {
  ...standard('sea-level-pressure', 'air pressure at the sea', 'p', 101325, 'Pa', { work: 'iso-2533', place: 'sea level' }),
  shows: 'pressure',
} as const

export type WireFigures = {
  /** For hours; null where nothing flows but for moments, as in the precharge. */
  readonly current: Figure | Gaps | null
  /** What it carries for ever in still air at its insulation’s temperature. */
  readonly carries: Figure | Gaps
}
/** Where a conductor would not come to rest. */
const MOLTEN = 'melts'

/** Every wire: the current it carries for hours, what it may carry, how warm it gets, what it loses. Cable schedule and cut list. */
export const wires = study({
  id: 'wire',
  stage: 'high voltage',
  asks: 'What does each wire carry, and what may it carry?',
  reads: (m, ask) => ({
    shape: maybe({ is: from(ask(circuit), c => c) }),
    users: maybe({ of: from(ask(userCurrents), u => u) }),
    supply: maybe({ is: from(ask(packModel), p => p.lowestVoltage) }),
    wires: wiresOf(m).map(([name, w]) => ({
      name,
      at: w.at,
      length: maybe(w.length),
      section: maybe(w.section),
      heat: maybe({ section: w.section, insulation: w.insulation, around: w.around, diameter: w.diameter }),
      voltage: maybe(w.voltage),
      ends: maybe({ from: w.from, to: w.to }),
    })),
  }),
  answer: ({ shape, users, supply, wires }, make): Readonly<Record<string, WireFigures>> => {
    const done = wires.map(w => {
      const item = w.name,
        current = currentOf(make, item, isGaps(shape) ? shape : (shape.is as CircuitAnswer), users as Users)
      const size = w.section as Value | Gaps,
        perMetre = isGaps(size) ? size : resistanceOf(make, item, w.at, size)
      const length = w.length as Value | Gaps
      const hot = isGaps(w.heat) ? w.heat : isGaps(perMetre) ? perMetre : inAir(make, item, w.heat as Heat, perMetre, current)
      const lost =
        isGaps(w.heat) || isGaps(length) || current === null || isGaps(current) || isGaps(perMetre) || isGaps(supply)
          ? undefined
          : dropOf(make, item, { perMetre, length, temperature: (w.heat as Heat).insulation, current, supply: supply.is as Value })
      return { ...w, size, length, current, hot, lost }
    })
    make.table('schedule', {
      label: 'Cable schedule and cut list',
      columns: [
        { key: 'from', label: 'from' },
        { key: 'to', label: 'to' },
        { key: 'length', label: 'length', unit: 'm', shows: 'length' },
        { key: 'section', label: 'conductor', unit: 'm²', shows: 'conductor size' },
        { key: 'gauge', label: 'American gauge, not below' },
        { key: 'voltage', label: 'rated', unit: 'V' },
        { key: 'current', label: 'for hours', unit: 'A' },
        { key: 'carries', label: 'carries in still air', unit: 'A' },
        { key: 'conductor', label: 'conductor then', unit: 'K', shows: 'temperature' },
        { key: 'drop', label: 'loses', unit: 'V' },
      ],
      rows: done.map(w => ({
        name: w.name,
        cells: {
          ...(isGaps(w.ends) ? {} : { from: w.ends.from as Value<string>, to: w.ends.to as Value<string> }),
          length: cell(w.length),
          section: cell(w.size),
          ...(isGaps(w.size) ? {} : { gauge: gaugeName(w.size.value) }),
          voltage: cell(w.voltage as Value | Gaps),
          current: w.current === null ? 'moments' : cell(w.current),
          ...(isGaps(w.hot) ? {} : { carries: w.hot.carries, conductor: w.hot.conductor }),
          drop: w.lost,
        },
      })),
    })
    return Object.fromEntries(done.map(({ name, current, hot }) => [name, { current, carries: isGaps(hot) ? hot : hot.carries }]))
  },
})
const cell = (v: Value | Gaps): Value | undefined => (isGaps(v) ? undefined : v)
/** As the trade writes gauges: 1/0 to 4/0 above 1. */
function gaugeName(section: number): string {
  const gauge = nextGauge(section)
  return gauge === undefined ? 'above 4/0' : gauge > 0 ? `${gauge}` : `${1 - gauge}/0`
}

/** Resistance by length of the nominal section of that size; asks for a section of the table where it is none. */
function resistanceOf(make: Maker, item: string, at: string, section: Value): Value | Gaps {
  if (flexibleResistance(section.value))
    return make.work(
      'per-metre',
      listedResistance,
      { section, table: FLEXIBLE_TABLE },
      { item, label: `Resistance of wire ${item} by length, 20 °C` },
    )
  return {
    gaps: [
      {
        gap: true,
        path: `${at}.section`,
        label: 'nominal section of the conductor, as IEC 60228 lists it',
        until: 'any time',
      },
    ],
  }
}

type Users = { readonly of: Readonly<Record<string, UserCurrent>> } | Gaps
function currentOf(make: Maker, item: string, shape: CircuitAnswer | Gaps, users: Users): Figure | Gaps | null {
  if (isGaps(shape)) return shape
  if (shape.untold.length > 0) return { gaps: shape.untold }
  if (isGaps(users)) return users
  const through = shape.through[item]
  if (!through || through.divides)
    return {
      gaps: [
        {
          gap: true,
          path: `high-voltage.wires.${item}`,
          label: `current of wire ${item}, which divides between ways: by clamp meter`,
          until: 'any time',
        },
      ],
    }
  if (through.users.length === 0) return null
  const each = through.users.map(u => users.of[u]).filter(u => u !== undefined),
    driving = each.flatMap(u => (u.drives === null ? [] : [u.drives])),
    charging = each.flatMap(u => (u.charges === null ? [] : [u.charges])),
    missing = [...driving, ...charging].flatMap(v => (isGaps(v) ? v.gaps : []))
  if (missing.length > 0) return { gaps: once(missing) }
  return make.work(
    'current',
    currentForHours,
    { driving: driving as readonly Value[], charging: charging as readonly Value[] },
    { item, label: `Current of wire ${item} for hours` },
  )
}

type Heat = { readonly section: Value; readonly insulation: Value; readonly around: Value; readonly diameter: Value }
function inAir(
  make: Maker,
  item: string,
  { section, insulation, around, diameter }: Heat,
  resistance: Value,
  current: Figure | Gaps | null,
): { readonly carries: Figure; readonly conductor: Figure | string | undefined } {
  const cable = {
    resistance,
    coefficient: COPPER.coefficient,
    conductor: make.work('core', strandedDiameter, { section }, { item, label: `Conductor of wire ${item}, diameter` }),
    outside: diameter,
    insulation: JACKET.insulation,
    emissivity: JACKET.emissivity,
    pressure: AIR,
    ambient: around,
  }
  const { figures } = make.all(
    'carries',
    currentInAir,
    { most: insulation, ...cable },
    {
      item,
      labels: {
        current: `Current wire ${item} carries in still air`,
        surface: `Jacket of wire ${item} then`,
        heat: `Heat of wire ${item} then, by length`,
      },
    },
  )
  const conductor = (): Figure | string | undefined => {
    if (current === null || isGaps(current)) return undefined
    // Up to what it carries it comes to rest below the temperature of its insulation; beyond, it may never.
    if (
      current.value > figures.current.value &&
      !Number.isFinite(temperatureInAir({ ...numbersOf(cable), current: current.value }).conductor)
    )
      return MOLTEN
    return make.all(
      'warm',
      temperatureInAir,
      { current, ...cable },
      { item, labels: { conductor: `Conductor of wire ${item} after hours`, surface: `Jacket of wire ${item} after hours` } },
    ).figures.conductor
  }
  return { carries: figures.current, conductor: conductor() }
}
const numbersOf = <K extends string>(x: Readonly<Record<K, Value>>): Record<K, number> =>
  Object.fromEntries(Object.entries<Value>(x).map(([key, v]) => [key, v.value])) as Record<K, number>
type Lost = {
  readonly perMetre: Value
  readonly length: Value
  readonly temperature: Value
  readonly current: Value
  readonly supply: Value
}
function dropOf(make: Maker, item: string, { perMetre, length, temperature, current, supply }: Lost): Figure {
  const resistance = make.work(
    'resistance',
    warmResistance,
    { perMetre, length, coefficient: COPPER.coefficient, temperature },
    { item, label: `Resistance of wire ${item} at the temperature of its insulation` },
  )
  return make.all(
    'loses',
    conductorDrop,
    { current, resistance, supply },
    {
      item,
      labels: {
        drop: `Voltage wire ${item} loses`,
        loss: `Heat wire ${item} makes`,
        part: `Voltage wire ${item} loses, of the empty pack`,
      },
    },
  ).figures.drop
}
