import { root } from '../numerics/root.ts'
import { formula } from '../working/formula.ts'
import { roadLoad } from './pull-plan.ts'
import { ROAD, UNITS } from './pull-takes.ts'

const MPH = 0.44704,
  LBF = 0.45359237 * 9.80665,
  FT = 0.3048
const FASTEST = 200
const BOOK = {
  work: 'mannering-washburn',
  place: 'example 2.1: 2500 lb, drag 0.38 on 20 ft², 50 hp at the wheels: 133 ft/s',
  mark: 'from memory',
} as const

type Pulling = {
  readonly torque: readonly number[]
  readonly power: readonly number[]
  readonly efficiency: readonly number[]
  readonly ratios: readonly number[]
  readonly radius: number
}
/** Pull of all units at a speed, grip left out. */
export function pullAt({ torque, power, efficiency, ratios, radius }: Pulling, v: number): number {
  let f = 0
  for (let u = 0; u < torque.length; u++) {
    const i = ratios[u] as number
    f += Math.min(((torque[u] as number) * i) / radius, (power[u] as number) / v) * (efficiency[u] as number)
  }
  return f
}

/** The speed at which pull and road load meet on the level. */
export const highestSpeed = formula(
  {
    id: 'highest-speed',
    label: 'Speed at which pull and road load meet',
    gives: { symbol: 'v', unit: 'm/s', label: 'speed', shows: 'speed' },
    takes: {
      ...ROAD,
      ...UNITS,
      ratios: { symbol: 'i', unit: '1', label: 'total ratio, each unit', many: true, shows: 'ratio' },
      radius: { symbol: 'r', unit: 'm', label: 'rolling radius', shows: 'length' },
    },
    text: 'Σ min(M·i/r, P/v)·η = f_0 + f_1·v + f_2·(v + v_w)², solved for v',
    words: 'solved by trial, to a thousandth of a millimetre per second',
    source: { work: 'ehsani', place: 'vehicle performance, maximum speed', mark: 'from memory' },
    leavesOut: 'Top speed of motors and gearbox: counted apart. Zero where the car does not move off.',
    proof: {
      examples: [
        {
          takes: {
            f0: 0.01 * 2500 * LBF,
            f1: ((0.01 * 2500) / 147) * (LBF / FT),
            f2: 0.5 * 0.002378 * 515.3788 * 0.38 * 20 * FT * FT,
            headWind: 0,
            torque: [1e4],
            power: [50 * 550 * LBF * FT],
            efficiency: [1],
            ratios: [10],
            radius: 0.3,
          },
          gives: 133 * FT,
          within: 0.25 * FT,
          source: BOOK,
          because: 'the book gives whole feet; recomputed 132.83 ft/s',
        },
        {
          takes: {
            f0: 0.01 * 2500 * LBF,
            f1: ((0.01 * 2500) / 147) * (LBF / FT),
            f2: 0.5 * 0.002378 * 515.3788 * 0.38 * 20 * FT * FT,
            headWind: 0,
            torque: [1e4, 1e4],
            power: [25 * 550 * LBF * FT, 25 * 550 * LBF * FT],
            efficiency: [1, 1],
            ratios: [10, 8],
            radius: 0.3,
          },
          gives: 90.6 * MPH,
          within: 0.1 * MPH,
          source: BOOK,
          because: 'the same power from two motors',
        },
      ],
    },
  },
  x => {
    const spare = (v: number): number => pullAt(x, v) - roadLoad(x, v)
    const slow = 1e-3
    if (spare(slow) <= 0) return 0
    return root(spare, slow, FASTEST, 1e-6) ?? FASTEST
  },
)
