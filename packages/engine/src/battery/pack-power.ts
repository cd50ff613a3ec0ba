import { at } from '../numerics/curve.ts'
import { formula } from '../working/formula.ts'
import { amps, coulombs, kelvins, ohms, ratio, seconds, stateOfCharge, volts, watts } from './symbols.ts'

const PLETT = { work: 'plett', place: 'vol. II, power limits by pulse resistance' } as const
const pack = {
  openCircuit: { symbol: 'E', unit: ['1', 'V'], label: 'open-circuit voltage over charge', curve: true },
  resistance: { symbol: 'R_z', unit: ['1', 'Ω'], label: 'ohmic resistance over charge, 25 °C', curve: true },
  factor: ratio('k_R', 'factor on the resistance curve'),
  branch: ohms('R_1', 'branch resistance, 25 °C'),
  time: seconds('τ_1', 'time constant of the branch'),
  cold: { symbol: 'f', unit: ['K', '1'], label: 'resistance over temperature', curve: true },
  charge: stateOfCharge,
  temperature: kelvins('T', 'cell temperature'),
  after: seconds('t', 'load for'),
} as const
const slope = { capacity: coulombs('Q', 'capacity of the pack') }
const R = `R = (R_z(z) · k_R + R_1 · (1 − exp(−t / τ_1))) · f(T)`
type Pack = {
  readonly openCircuit: Curved
  readonly resistance: Curved
  readonly factor: number
  readonly branch: number
  readonly time: number
  readonly cold: Curved
  readonly charge: number
  readonly temperature: number
  readonly after: number
}
type Curved = Parameters<typeof at>[0]
const resistanceThen = ({ resistance, factor, branch, time, cold, charge, temperature, after }: Pack): number =>
  (at(resistance, charge) * factor + branch * (1 - Math.exp(-after / time))) * at(cold, temperature)
/** Open-circuit voltage once a current has taken its charge out (or, below nothing, put it in). */
const openThen = ({ openCircuit, charge, after }: Pack, capacity: number, current: number): number =>
  at(openCircuit, Math.min(1, Math.max(0, charge - (current * after) / capacity)))
/**
 * The greatest current up to a bound that leaves room. The open-circuit voltage is a line through points, so the room falls along straight pieces: the piece
 * with the change of sign is sought, on it the answer is exact. `way`: 1 discharging, -1 charging.
 */
function greatestWithin(
  room: (current: number) => number,
  bound: number,
  { openCircuit, charge, after }: Pack,
  capacity: number,
  way: 1 | -1,
): number {
  let left = room(0)
  if (bound <= 0 || left <= 0) return 0
  let short = room(bound)
  if (short >= 0) return bound
  const { x } = openCircuit
  let low = 0,
    high = bound,
    near = way > 0 ? x.length - 1 : 0,
    far = way > 0 ? 0 : x.length - 1
  while (way * (near - far) >= 0) {
    const middle = (near + far) >> 1,
      current = (way * (charge - (x[middle] as number)) * capacity) / after
    if (current <= low) near = middle - way
    else if (current >= high) far = middle + way
    else {
      const there = room(current)
      if (there >= 0) {
        low = current
        left = there
        near = middle - way
      } else {
        high = current
        short = there
        far = middle + way
      }
    }
  }
  return low + ((high - low) * left) / (left - short)
}
const level = (y: number) => ({ x: Float64Array.of(0, 1000), y: Float64Array.of(y, y) })
const ALONE = {
  openCircuit: level(3.6635),
  resistance: level(0.0373),
  factor: 1,
  branch: 0,
  time: 25,
  cold: level(1),
  charge: 0.5,
  temperature: 298.15,
  after: 10,
  capacity: 1e9,
}
const NCA = { work: 'kollmeyer-2018', place: 'NCA cell at half charge, 10 s resistance; recomputed' } as const

/** Power the pack can give for a time at a charge and temperature, at its terminals, at the end of that time. */
export const powerForTime = formula(
  {
    id: 'pack-power-for-time',
    label: 'Power for a time',
    gives: { current: amps('I', 'current at the limit'), power: watts('P', 'power limit') },
    takes: { ...pack, ...slope, floor: volts('U_min', 'lowest voltage'), most: amps('I_lim', 'current limit') },
    text: `${R}
I ≤ I_lim, I ≤ z · Q / t, the greatest with E(z − I · t / Q) − R · I ≥ U_min and E(z − I · t / Q) ≥ 2 · R · I
P = I · (E(z − I · t / Q) − R · I)`,
    words: 'solved for the current piece by piece of the curve',
    source: PLETT,
    leavesOut: 'Diffusion beyond one branch; in the cold the fall of resistance with current, which is on the cautious side.',
    proof: {
      examples: [
        { takes: { ...ALONE, floor: 2.5, most: 1000 }, gives: { current: 31.193, power: 77.983 }, within: 5e-4, source: NCA },
        { takes: { ...ALONE, floor: 2.5, most: 10 }, gives: { power: 32.905 }, within: 5e-4, source: NCA },
      ],
    },
  },
  x => {
    const r = resistanceThen(x),
      open = (current: number): number => openThen(x, x.capacity, current)
    const within = (room: (i: number) => number, bound: number): number => greatestWithin(room, bound, x, x.capacity, 1)
    const current = within(
      i => open(i) - 2 * r * i,
      within(i => open(i) - r * i - x.floor, Math.min(x.most, (x.charge * x.capacity) / x.after)),
    )
    return { current, power: current * (open(current) - r * current) }
  },
)

/** Power the pack can take for a time: current by the coldest cell, voltage by the ceiling. Comes out positive: into the pack. */
export const chargingForTime = formula(
  {
    id: 'charging-for-time',
    label: 'Power into the pack for a time',
    gives: { current: amps('I', 'charging current at the limit'), power: watts('P', 'power into the pack') },
    takes: {
      ...pack,
      ...slope,
      ceiling: volts('U_max', 'highest voltage'),
      most: amps('I_ch', 'charging current allowed warm'),
      share: { symbol: 's_ch', unit: ['K', '1'], label: 'share of it over temperature', curve: true },
    },
    text: `${R}
I ≤ I_ch · s_ch(T), the greatest with E(min(1, z + I · t / Q)) + R · I ≤ U_max
P = I · (E(min(1, z + I · t / Q)) + R · I)`,
    words: 'solved for the current piece by piece of the curve',
    source: PLETT,
    leavesOut: 'A datasheet’s own allowance for short recovery pulses.',
    proof: {
      examples: [
        {
          takes: { ...ALONE, ceiling: 4.2, most: 1000, share: level(1) },
          gives: { current: 14.383, power: 60.41 },
          within: 5e-3,
          source: NCA,
        },
      ],
    },
  },
  x => {
    const r = resistanceThen(x),
      open = (current: number): number => openThen(x, x.capacity, -current)
    const current = greatestWithin(i => x.ceiling - open(i) - r * i, x.most * at(x.share, x.temperature), x, x.capacity, -1)
    return { current, power: current * (open(current) + r * current) }
  },
)

/** Voltage of the pack after a time of one current, whatever the limits say. */
export const sagAtCurrent = formula(
  {
    id: 'sag-at-current',
    label: 'Pack voltage under a current',
    gives: volts('U', 'pack voltage under load'),
    takes: { ...pack, current: amps('I', 'current, discharging positive') },
    text: `${R}
U = E(z) − R · I`,
    source: PLETT,
    leavesOut: 'The charge taken meanwhile.',
    proof: {
      examples: [
        {
          takes: {
            openCircuit: level(375.26),
            resistance: level(107.584e-3),
            factor: 1,
            branch: 0,
            time: 25,
            cold: level(1),
            charge: 0.5,
            temperature: 298.15,
            after: 10,
            current: 811.1,
          },
          gives: 288,
          within: 0.05,
          source: { work: 'wiggins-2019', place: '96 in series, 2 in parallel, half charge; recomputed' },
        },
      ],
    },
  },
  x => at(x.openCircuit, x.charge) - resistanceThen(x) * x.current,
)

/** Resistance of the pack after a time, at a charge and temperature. */
export const sagResistance = formula(
  {
    id: 'sag-resistance',
    label: 'Resistance of the pack after a time',
    gives: ohms('R', 'resistance of the pack then'),
    takes: {
      resistance: pack.resistance,
      factor: pack.factor,
      branch: pack.branch,
      time: pack.time,
      cold: pack.cold,
      charge: pack.charge,
      temperature: pack.temperature,
      after: pack.after,
    },
    text: R,
    source: PLETT,
    leavesOut: 'Diffusion beyond one branch.',
    proof: {
      examples: [
        {
          takes: {
            resistance: level(0.0305),
            factor: 1,
            branch: 0.0167,
            time: 25.5,
            cold: level(1),
            charge: 0.5,
            temperature: 298.15,
            after: 10,
          },
          gives: 0.0305 + 0.0314216 / 5.8,
          within: 1e-6,
          source: NCA,
        },
      ],
    },
  },
  x => (at(x.resistance, x.charge) * x.factor + x.branch * (1 - Math.exp(-x.after / x.time))) * at(x.cold, x.temperature),
)
