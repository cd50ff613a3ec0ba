import { formula } from '../working/formula.ts'

const PLAN = { work: 'statics', place: 'a turning wheel seen from above' } as const
const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const
const DEGREE = Math.PI / 180
const wheel = { radius: 0.305, width: 0.205, offset: 0.03 } as const

export type WheelSize = {
  /** Radius of the tyre, m. */
  readonly radius: number
  /** Width of the tyre, m. */
  readonly width: number
  /** Wheel centre outboard of the steering axis, m. */
  readonly offset: number
}

/** How far a wheel reaches from its steering axis at one steering angle, at one height over or under the wheel centre. */
export const wheelReach = formula(
  {
    id: 'wheel-reach',
    label: 'Reach of a turned wheel',
    gives: {
      inboard: length('d_i', 'inboard of the steering axis'),
      outboard: length('d_o', 'outboard of it'),
      fore: length('d_x', 'ahead and behind'),
      most: length('d_max', 'ahead and behind, most of all angles'),
    },
    takes: {
      radius: length('R', 'radius of the tyre'),
      width: length('w', 'width of the tyre'),
      offset: length('e', 'wheel centre outboard of the steering axis'),
      angle: { symbol: 'δ', unit: 'rad', label: 'steering angle', shows: 'angle', holds: [0, 0.9] },
      height: { ...length('z', 'height over or under the wheel centre'), holds: [-0.2, 0.2] },
    },
    text: [
      'r = √(R² − z²)',
      'd_i = r · sin(δ) + (w / 2 − e) · cos(δ)',
      'd_o = r · sin(δ) + (w / 2 + e) · cos(δ)',
      'd_x = r · cos(δ) + (w / 2 + e) · sin(δ)',
      'd_max = √(r² + (w / 2 + e)²)',
    ].join('\n'),
    source: PLAN,
    leavesOut:
      'Camber, a steering axis that leans, and what sticks out of the tread. Usual to the tyre over full travel and lock: 15 to 20 mm, 12 mm more with a snow chain (common practice). In the handbook only: no study knows wheel houses yet.',
    proof: {
      examples: [
        {
          takes: { ...wheel, angle: 0, height: 0 },
          gives: { inboard: 0.0725, outboard: 0.1325 },
          within: 0.00005,
          source: hand('205 mm tyre, straight ahead'),
        },
        {
          takes: { ...wheel, angle: 38 * DEGREE, height: 0 },
          gives: { inboard: 0.2449, outboard: 0.2922, fore: 0.3219, most: 0.3325 },
          within: 0.00005,
          source: hand('205 mm tyre at 38 degrees'),
        },
        {
          takes: { ...wheel, angle: 38 * DEGREE, height: 0.15 },
          gives: { inboard: 0.2206 },
          within: 0.00005,
          source: hand('the same, 150 mm above the wheel centre'),
        },
      ],
    },
  },
  ({ radius, width, offset, angle, height }) => {
    const r = Math.sqrt(radius ** 2 - height ** 2),
      inner = width / 2 - offset,
      outer = width / 2 + offset
    return {
      inboard: r * Math.sin(angle) + inner * Math.cos(angle),
      outboard: r * Math.sin(angle) + outer * Math.cos(angle),
      fore: r * Math.cos(angle) + outer * Math.sin(angle),
      most: Math.sqrt(r ** 2 + outer ** 2),
    }
  },
)

/** Steering angle at which a wheel reaches furthest ahead and behind, rad. */
export const angleOfFurthestReach = ({ radius, width, offset }: WheelSize): number => Math.atan((width / 2 + offset) / radius)

export type Envelope = { readonly inboard: number; readonly outboard: number; readonly fore: number }

/**
 * The room a wheel takes from its steering axis over all angles from straight to `lock`, at a height from the standing wheel centre, while it moves from
 * `droop` below to `bump` above it; m. Undefined where the wheel never comes to that height. Peaks between straight and lock are met exactly.
 */
export function wheelEnvelope(size: WheelSize, lock: number, height: number, droop: number, bump: number): Envelope | undefined {
  if (!(lock >= 0 && lock < Math.PI / 2)) throw new RangeError(`steering lock: from 0 to below a quarter turn, found ${lock}`)
  if (!(droop >= 0 && bump >= 0)) throw new RangeError(`travel: droop and bump must be at least 0, found ${droop} and ${bump}`)
  // The wheel is widest at its centre: what counts is how near the centre can come to the height.
  const nearest = height > bump ? height - bump : height < -droop ? height + droop : 0
  if (Math.abs(nearest) > size.radius) return undefined
  const r = Math.sqrt(size.radius ** 2 - nearest ** 2),
    inner = size.width / 2 - size.offset,
    outer = size.width / 2 + size.offset
  const most = (sine: number, cosine: number): number => {
    const peak = Math.atan2(sine, cosine)
    const at = (d: number): number => sine * Math.sin(d) + cosine * Math.cos(d)
    return peak > 0 && peak < lock ? Math.hypot(sine, cosine) : Math.max(at(0), at(lock))
  }
  return { inboard: most(r, inner), outboard: most(r, outer), fore: most(outer, r) }
}
