import { formula } from '../working/formula.ts'

const GEOMETRY = { work: 'statics', place: 'tangent from a point to a circle' } as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const
const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const angle = (symbol: string, label: string) => ({ symbol, unit: 'rad', label, shows: 'angle' }) as const
const HANDBOOK = 'In the handbook only: the least over all low points counts, and no study knows them yet.'
const DEGREE = Math.PI / 180

/** Slope under a tyre on which a point of the body just touches. */
const touches = (radius: number, distance: number, height: number): number =>
  Math.atan(radius / Math.sqrt(distance ** 2 + (radius - height) ** 2 - radius ** 2)) - Math.atan((radius - height) / distance)

/** Steepest slope the car drives onto, or off, before a point ahead of the front axle, or behind the rear one, touches. */
export const approachAngle = formula(
  {
    id: 'approach-angle',
    label: 'Approach or departure angle',
    gives: angle('α', 'approach or departure angle'),
    takes: {
      radius: length('R', 'loaded radius'),
      distance: length('d', 'point beyond the axle'),
      height: length('z', 'point above the ground'),
    },
    text: 'α = atan(R / √(d² + (R − z)² − R²)) − atan((R − z) / d)',
    source: GEOMETRY,
    leavesOut: 'Springs that give as the wheel climbs.',
    proof: {
      examples: [
        {
          takes: { radius: 0.295, distance: 0.78, height: 0.21 },
          gives: 15.87 * DEGREE,
          within: 0.005 * DEGREE,
          source: hand('a point 0.78 m ahead, 0.21 m high'),
        },
        {
          takes: { radius: 0.295, distance: 0.92, height: 0.24 },
          gives: 15.25 * DEGREE,
          within: 0.005 * DEGREE,
          source: hand('a point 0.92 m behind, 0.24 m high'),
        },
      ],
    },
  },
  ({ radius, distance, height }) => touches(radius, distance, height),
)

/** Sharpest crest the car drives over before a point between the axles touches. */
export const rampAngle = formula(
  {
    id: 'ramp-angle',
    label: 'Ramp angle',
    gives: angle('β', 'ramp angle'),
    takes: {
      radius: length('R', 'loaded radius'),
      x: length('x', 'point behind the front axle'),
      height: length('z', 'point above the ground'),
      wheelbase: length('L', 'wheelbase'),
    },
    text: [
      'α_F = atan(R / √(x² + (R − z)² − R²)) − atan((R − z) / x)',
      'α_R = atan(R / √((L − x)² + (R − z)² − R²)) − atan((R − z) / (L − x))',
      'β = α_F + α_R',
    ].join('\n'),
    source: GEOMETRY,
    leavesOut: 'Springs that give on the crest.',
    proof: {
      examples: [
        {
          takes: { radius: 0.295, x: 1.3, height: 0.15, wheelbase: 2.45 },
          gives: 14.23 * DEGREE,
          within: 0.006 * DEGREE,
          source: hand('the corner of a box at 1.30 m, 0.15 m high, wheelbase 2.45 m: 6.67 and 7.56 degrees'),
        },
      ],
    },
  },
  ({ radius, x, height, wheelbase }) => touches(radius, x, height) + touches(radius, wheelbase - x, height),
)

/** What is left under a low point when the car sinks under its load, the wheels spring in, and a front tyre goes flat. */
export const clearanceInUse = formula(
  {
    id: 'clearance-in-use',
    label: 'Clearance in use',
    gives: length('z_u', 'clearance left'),
    takes: {
      standing: length('z', 'clearance as measured, standing'),
      sinks: length('Δz', 'body sinks there under the added mass'),
      jounce: length('t', 'travel there as the wheels spring in'),
      flat: length('δ', 'front tyre flat: its axle drops by'),
      x: length('x', 'point behind the front axle'),
      wheelbase: length('L', 'wheelbase'),
    },
    text: 'z_u = z − Δz − t − δ · (1 − x / L)',
    source: { work: 'statics', place: 'a straight line through both axles' },
    leavesOut: `A flat tyre drops its axle 50 to 80 mm (common practice); 0 leaves it out. ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { standing: 0.18, sinks: 0.02176, jounce: 0.06, flat: 0.06, x: 1.5, wheelbase: 2.45 },
          gives: 0.18 - 0.02176 - 0.06 - 0.0233,
          within: 0.00005,
          source: hand('a front tyre flat by 60 mm takes 23.3 mm more at 1.5 m of 2.45 m'),
        },
      ],
    },
  },
  ({ standing, sinks, jounce, flat, x, wheelbase }) => standing - sinks - jounce - flat * (1 - x / wheelbase),
)
