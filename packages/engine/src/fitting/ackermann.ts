import { formula } from '../working/formula.ts'

const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const angle = (symbol: string, label: string) => ({ symbol, unit: 'rad', label, shows: 'angle' }) as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const
const DEGREE = Math.PI / 180
const car = { inner: 38 * DEGREE, wheelbase: 2.45, track: 1.28, offset: 0.03 } as const

/** How far the outer wheel turns when all wheels roll about one point, and the circle it then runs. */
export const ackermann = formula(
  {
    id: 'ackermann',
    label: 'Outer wheel and turning circle',
    gives: { outer: angle('δ_o', 'steering angle of the outer wheel'), circle: length('D', 'circle of the outer front wheel') },
    takes: {
      inner: { ...angle('δ_i', 'steering angle of the inner wheel'), holds: [0.05, 0.9] },
      wheelbase: length('L', 'wheelbase'),
      track: length('T_k', 'between the steering axes'),
      offset: length('e', 'wheel centre outboard of the steering axis'),
    },
    text: 'δ_o = atan(1 / (1 / tan(δ_i) + T_k / L))\nD = 2 · (L / sin(δ_o) + e)',
    source: { work: 'statics', place: 'all wheels roll about one point (Ackermann)' },
    leavesOut:
      'Tyres that slip sideways, and linkages that follow the rule only near. In the handbook only: no study asks for steering yet.',
    proof: {
      examples: [
        {
          takes: car,
          gives: { outer: 29.02 * DEGREE },
          within: 0.005 * DEGREE,
          source: hand('inner wheel at 38 degrees, wheelbase 2.45 m'),
        },
        { takes: car, gives: { circle: 10.16 }, within: 0.005, source: hand('inner wheel at 38 degrees, wheelbase 2.45 m') },
      ],
    },
  },
  ({ inner, wheelbase, track, offset }) => {
    const outer = Math.atan(1 / (1 / Math.tan(inner) + track / wheelbase))
    return { outer, circle: 2 * (wheelbase / Math.sin(outer) + offset) }
  },
)
