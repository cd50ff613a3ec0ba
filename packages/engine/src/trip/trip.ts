import { GRAVITY } from '../physics/gravity.ts'
import { formula } from '../working/formula.ts'
import type { TripTotals } from './plan.ts'
import { isSteady, rangeToEmpty } from './range.ts'
import { simulate } from './simulate.ts'
import { planOf, SECOND_UNIT, type SecondNumbers, TRIP_TAKES, type TripNumbers } from './trip-takes.ts'
import { highestByWindow } from './windows.ts'

/** Steps of a named trip and of its twin for spread [s]; of a range where nothing changes along the way. */
const FINE = 0.1
const COARSE = 1
const STEADY = 10

const joules = (symbol: string, label: string) => ({ symbol, unit: 'J', label, shows: 'energy' }) as const
const amps = (symbol: string, label: string) => ({ symbol, unit: 'A', label }) as const
const kelvins = (symbol: string, label: string) => ({ symbol, unit: 'K', label, shows: 'temperature' }) as const
const spell = (symbol: string, label: string) => ({ symbol, unit: 's', label, shows: 'duration' }) as const
const metres = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'distance' }) as const

/** Sums over many steps differ by rounding where nothing differs. */
const beyondRounding = (value: number, rounding: number): number => (value > rounding ? value : 0)

const GIVES = {
  consumption: { symbol: 'c_b', unit: 'J/m', label: 'Consumption at the battery', shows: 'consumption' },
  distance: metres('s', 'Distance'),
  time: spell('t', 'Time'),
  'distance-missed': metres('s_miss', 'Distance the car fell short of the trace'),
  'time-slow': spell('t_slow', 'Time more than 2 km/h below the trace'),
  'end-charge': { symbol: 'z_1', unit: '1', label: 'Charge at the end', shows: 'share' },
  'from-charge': joules('E_ch', 'Energy out of the charge'),
  'to-battery': joules('E_bat', 'Lost in the battery'),
  'to-cabin': joules('E_cab', 'Cabin'),
  'to-other': joules('E_aux', '12 V and others'),
  'to-motors': joules('E_mot', 'Lost in motors and inverters'),
  'to-driveline': joules('E_line', 'Lost in gears under load'),
  'to-idle': joules('E_idle', 'Drag of gears, and of motors without current'),
  'to-rolling': joules('E_roll', 'Rolling'),
  'to-air': joules('E_air', 'Air'),
  'to-slope': joules('E_slope', 'Height gained'),
  'to-brakes': joules('E_brk', 'Brakes'),
  'to-motion': joules('E_kin', 'Left in motion'),
  drawn: joules('E_out', 'Drawn from the battery'),
  'put-back': joules('E_in', 'Put back into the battery'),
  recovered: joules('E_rec', 'Recovered while braking'),
  'lost-to-cut-off': joules('E_cut', 'Not recovered: too slow'),
  'lost-to-torque': joules('E_M', 'Not recovered: torque'),
  'lost-to-grip': joules('E_μ', 'Not recovered: grip'),
  'lost-to-power': joules('E_P', 'Not recovered: power limit'),
  'lost-to-full': joules('E_full', 'Not recovered: battery full or cold'),
  'peak-current': amps('I_pk', 'Peak current'),
  'peak-charge-current': amps('I_rec', 'Peak charging current'),
  'rms-1-s': amps('I_1s', 'Highest rms current over 1 s'),
  'rms-10-s': amps('I_10s', 'Highest rms current over 10 s'),
  'rms-30-s': amps('I_30s', 'Highest rms current over 30 s'),
  'rms-1-min': amps('I_1min', 'Highest rms current over 1 min'),
  'rms-3-min': amps('I_3min', 'Highest rms current over 3 min'),
  'rms-10-min': amps('I_10min', 'Highest rms current over 10 min'),
  'rms-30-min': amps('I_30min', 'Highest rms current over 30 min'),
  'lowest-voltage': { symbol: 'U_low', unit: 'V', label: 'Lowest voltage' },
  'hottest-winding': kelvins('T_hot', 'Hottest winding'),
  'hottest-inverter': kelvins('T_hotinv', 'Hottest inverter'),
  'hottest-pack': kelvins('T_hotb', 'Warmest cells'),
  'above-continuous': spell('t_over', 'Time above the continuous rating'),
} as const
type TripResults = { readonly [K in keyof typeof GIVES]: number }

function results(t: TripTotals, rms: Float64Array, units: number): TripResults {
  const { energy: e, regeneration: r } = t
  const hottest = (node: number): number => Math.max(...Array.from({ length: units }, (_, i) => t.hottest[node + 3 * i]!))
  return {
    consumption: t.distance > 0 ? t.net / t.distance : Number.POSITIVE_INFINITY,
    distance: t.distance,
    time: t.time,
    'distance-missed': beyondRounding(t.asked - t.distance, 1e-9 * t.asked),
    'time-slow': t.slowTime,
    'end-charge': t.endCharge,
    'from-charge': e.fromCharge,
    'to-battery': e.battery,
    'to-cabin': e.cabin,
    'to-other': e.other,
    'to-motors': e.motors,
    'to-driveline': e.driveline,
    'to-idle': e.idle,
    'to-rolling': e.rolling,
    'to-air': e.air,
    'to-slope': e.slope,
    'to-brakes': e.brakes,
    'to-motion': e.motion,
    drawn: t.drawn,
    'put-back': beyondRounding(t.putBack, 1e-12 * t.drawn),
    recovered: r.recovered,
    'lost-to-cut-off': r.cutOff,
    'lost-to-torque': r.torque,
    'lost-to-grip': r.grip,
    'lost-to-power': r.power,
    'lost-to-full': r.battery,
    'peak-current': t.peakCurrent,
    'peak-charge-current': beyondRounding(t.peakChargeCurrent, 1e-9),
    'rms-1-s': rms[0]!,
    'rms-10-s': rms[1]!,
    'rms-30-s': rms[2]!,
    'rms-1-min': rms[3]!,
    'rms-3-min': rms[4]!,
    'rms-10-min': rms[5]!,
    'rms-30-min': rms[6]!,
    'lowest-voltage': t.lowestVoltage,
    'hottest-winding': hottest(3),
    'hottest-inverter': hottest(4),
    'hottest-pack': t.hottest[1]!,
    'above-continuous': t.aboveContinuous,
  }
}

function drive(x: TripNumbers, second: SecondNumbers | undefined, step: number) {
  const { totals, traces } = simulate(planOf(x, second, step))
  return { ...results(totals, highestByWindow(traces.currents, traces.times.length - 1, step), x.ratio.length), traces }
}

const SOURCE = {
  work: 'gillespie',
  place: 'ch. 2 road load and grip; the battery by its equivalent circuit; steps of 0.1 s',
  mark: 'from memory',
} as const
const TEXT =
  'At every step: force = road load + slope + (m + m_rot) · change of speed, within torque, power, winding temperature, grip and battery; current from power; charge, branch voltage and temperatures on.'
const OUT =
  'Stops of a recorded track, slip, bends, wind from the side, brakes that cannot hold the trace, reversible heat. Recovery works as if the pedal blended it with the brakes.'
const PROOF = { none: 'a simulation: wheel energies of ten cycles, a second writing in C, and published cars stand in its tests' } as const
const ADDS_UP = 'a simulation in steps'

/** A trip with one drive unit: what it takes, where it goes, what gets hot, what the car could not do. Its run also holds the series. */
export const tripOfOne = formula(
  {
    id: 'trip',
    label: 'Trip',
    gives: GIVES,
    takes: TRIP_TAKES,
    uses: [GRAVITY],
    text: TEXT,
    words: ADDS_UP,
    source: SOURCE,
    leavesOut: OUT,
    proof: PROOF,
  },
  x => drive(x, undefined, FINE),
)
export const tripOfOneCoarse = (x: TripNumbers): TripResults => drive(x, undefined, COARSE)

/** The same with two units, the first asked for its share of the pull. */
export const tripOfTwo = formula(
  {
    id: 'trip-two-units',
    label: 'Trip with two drive units',
    gives: GIVES,
    takes: { ...TRIP_TAKES, ...SECOND_UNIT },
    uses: [GRAVITY],
    text: TEXT,
    words: ADDS_UP,
    source: SOURCE,
    leavesOut: OUT,
    proof: PROOF,
  },
  x => drive(x, x, FINE),
)
export const tripOfTwoCoarse = (x: TripNumbers & SecondNumbers): TripResults => drive(x, x, COARSE)

const RANGE_GIVES = {
  range: metres('s_R', 'Range'),
  time: spell('t_R', 'Time until the reserve'),
  energy: joules('E_R', 'Energy at the battery until the reserve'),
  'from-charge': joules('E_ch', 'Energy out of the charge until the reserve'),
  consumption: { symbol: 'c_R', unit: 'J/m', label: 'Consumption at the battery', shows: 'consumption' },
  'lowest-voltage': { symbol: 'U_low', unit: 'V', label: 'Lowest voltage' },
  'distance-missed': metres('s_miss', 'Distance the car fell short of the trace'),
} as const
const RANGE_TAKES = {
  reserve: { symbol: 'z_res', unit: '1', label: 'kept in reserve', shows: 'share' },
  coldEnergy: { symbol: 's_T', unit: ['K', '1'], label: 'share of the energy at 25 °C over cell temperature', curve: true },
} as const
type RangeNumbers = { readonly reserve: number; readonly coldEnergy: TripNumbers['coldFactor'] }

function empty(x: TripNumbers & RangeNumbers, second: SecondNumbers | undefined, find: typeof rangeToEmpty) {
  const { range, time, energy, fromCharge, consumption, lowestVoltage, missed } = find(
    planOf(x, second, isSteady(x.trace, x.slope) ? STEADY : COARSE),
    x.reserve,
    x.coldEnergy,
  )
  return {
    range,
    time,
    energy,
    'from-charge': fromCharge,
    consumption,
    'lowest-voltage': lowestVoltage,
    'distance-missed': beyondRounding(missed, 1e-9 * range),
  }
}
const RANGE_TEXT =
  'The trip is repeated in steps of 1 s, of 10 s where speed and slope stay the same. Left is the energy between the present charge and the level where cells of this temperature are empty, plus the reserve; the range ends in the last lap by share of it.'

/** How far on repeated trips until the reserve, with one drive unit. */
export const rangeOfOne = formula(
  {
    id: 'range',
    label: 'Range to the reserve',
    gives: RANGE_GIVES,
    takes: { ...TRIP_TAKES, ...RANGE_TAKES },
    uses: [GRAVITY],
    text: RANGE_TEXT,
    words: ADDS_UP,
    source: SOURCE,
    leavesOut: OUT,
    proof: PROOF,
  },
  x => empty(x, undefined, rangeToEmpty),
)
/** The same with two units. */
export const rangeOfTwo = formula(
  {
    id: 'range-two-units',
    label: 'Range to the reserve with two drive units',
    gives: RANGE_GIVES,
    takes: { ...TRIP_TAKES, ...RANGE_TAKES, ...SECOND_UNIT },
    uses: [GRAVITY],
    text: RANGE_TEXT,
    words: ADDS_UP,
    source: SOURCE,
    leavesOut: OUT,
    proof: PROOF,
  },
  x => empty(x, x, rangeToEmpty),
)
