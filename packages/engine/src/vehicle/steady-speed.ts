import { root } from '../numerics/index.ts'
import { formula } from '../working/formula.ts'
import { GRAVITY } from './gravity.ts'

const BOOK = (example: string) => ({ work: 'mannering-washburn', place: example, mark: 'from memory' }) as const
const MPH = 0.44704,
  LB = 0.45359237,
  LBF = LB * 9.80665,
  FT = 0.3048,
  SLUG_PER_FT3 = 515.3788

/** Rolling resistance that rises with speed, hard road. */
export const rollingAtSpeed = formula(
  {
    id: 'rolling-at-speed',
    label: 'Rolling resistance at speed',
    gives: { symbol: 'c_r', unit: '1', shows: 'ratio' },
    takes: {
      rolling: { symbol: 'c_0', unit: '1', label: 'at walking pace', shows: 'ratio' },
      speed: { symbol: 'v', unit: 'm/s', label: 'speed', shows: 'speed', holds: [0, 60] },
      doubling: { symbol: 'v_2', unit: 'm/s', label: 'speed at which it has doubled: 44.73 m/s', shows: 'speed', holds: [40, 50] },
    },
    text: 'c_r = c_0 · (1 + v / v_2)',
    source: { work: 'mannering-washburn', place: 'ch. 2, rolling resistance' },
    leavesOut: 'Some books print the same with 100 km/h in place of 100 mph; that is a slip.',
    proof: {
      examples: [
        {
          takes: { rolling: 0.01, speed: 70 * MPH, doubling: 44.73 },
          gives: 0.017,
          within: 0.00005,
          source: { work: 'gillespie', place: 'ch. 4: 0.01 (1 + V/100), V in mph', mark: 'from memory' },
        },
      ],
    },
  },
  ({ rolling, speed, doubling }) => rolling * (1 + speed / doubling),
)

/** Level top speed a power at the wheels holds: where power is used up by rolling and air drag. */
export const speedByPower = formula(
  {
    id: 'speed-by-power',
    label: 'Top speed by power',
    gives: { symbol: 'v', unit: 'm/s', shows: 'speed' },
    takes: {
      power: { symbol: 'P', unit: 'W', label: 'power at the wheels', shows: 'power' },
      f0: { symbol: 'f_0', unit: 'N', label: 'constant part of road load' },
      f1: { symbol: 'f_1', unit: 'N·s/m', label: 'part rising with speed' },
      f2: { symbol: 'f_2', unit: 'N·s²/m²', label: 'part rising with speed squared' },
    },
    text: 'P = f_0 · v + f_1 · v² + f_2 · v³, solved for v',
    words: 'a cubic solved by trial',
    source: BOOK('ch. 2, maximum speed'),
    proof: {
      examples: [
        {
          takes: {
            power: 50 * 550 * LBF * FT,
            f0: 0.01 * 2500 * LBF,
            f1: ((0.01 * 2500) / 147) * (LBF / FT),
            f2: 0.5 * 0.002378 * SLUG_PER_FT3 * 0.38 * 20 * FT * FT,
          },
          gives: 133 * FT,
          within: 0.25 * FT,
          source: BOOK('example 2.1: 2500 lb, drag 0.38 on 20 ft², 50 hp at the wheels: 133 ft/s'),
          because: 'the book gives whole feet; recomputed 132.83 ft/s',
        },
      ],
    },
  },
  ({ power, f0, f1, f2 }) => root(v => f0 * v + f1 * v * v + f2 * v * v * v - power, 0, 1000, 1e-12) ?? Number.NaN,
)

/** Slope a pull still climbs at a steady speed, by its sine. */
export const slopeAtSpeed = formula(
  {
    id: 'slope-at-speed',
    label: 'Slope climbed at a steady speed',
    gives: { symbol: 'p', unit: '1', shows: 'slope' },
    takes: {
      pull: { symbol: 'F', unit: 'N', label: 'pull at the wheels' },
      load: { symbol: 'F_0', unit: 'N', label: 'road load on the level at this speed' },
      mass: { symbol: 'm', unit: 'kg', label: 'mass' },
    },
    uses: [GRAVITY],
    text: 's = max(−0.999, min(0.999, (F − F_0) / (m · g)))\np = s / √(1 − s²)',
    source: BOOK('ch. 2, gradeability'),
    leavesOut: 'The slightly smaller rolling resistance on the slope.',
    proof: {
      examples: [
        {
          takes: { pull: 255 * LBF, load: (86.22 + 33.97) * LBF, mass: 2000 * LB },
          gives: 0.067,
          within: 0.0008,
          source: BOOK('example 2.2: 2000 lb, 255 lb of pull at 70 mph: 6.7 %'),
          because: 'the book takes the sine for the slope; recomputed 6.74 %',
        },
      ],
    },
  },
  ({ pull, load, mass }) => {
    const s = Math.max(-0.999, Math.min(0.999, (pull - load) / (mass * GRAVITY.value)))
    return s / Math.sqrt(1 - s * s)
  },
)
