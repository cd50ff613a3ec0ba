import { formula } from '../working/formula.ts'

const share = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'share' }) as const
const MU = { symbol: 'μ', unit: '1', label: 'grip coefficient', holds: [0.05, 1.3] } as const
const common = {
  grip: MU,
  rearShare: share('ψ', 'static share on the rear axle'),
  height: { symbol: 'h', unit: 'm', label: 'height of the centre of mass' },
  wheelbase: { symbol: 'L', unit: 'm', label: 'wheelbase' },
} as const
const GILLESPIE = { work: 'gillespie', place: 'ch. 2, traction-limited acceleration', mark: 'from memory' } as const
const byHand = { work: 'statics', place: 'worked by hand: L 2.45 m, h 0.54 m, centre 1.15 m behind the front axle' } as const
const exercise = { work: 'jazar', place: 'exercise: 1.8 t, L 2.6 m, h 0.7 m, centre of mass midway, grip 0.7, g 9.81' } as const

/**
 * What the grip of the driven axle allows, as a share of weight: acceleration over g on the level, or the tangent of a hill at a standing start.
 * Load moves off the front axle as the car pulls.
 */
export const gripFront = formula(
  {
    id: 'grip-front',
    label: 'Grip limit, front drive',
    gives: share('q', 'pull over weight'),
    takes: common,
    text: 'q = μ · (1 − ψ) / (1 + μ · h / L)',
    source: GILLESPIE,
    leavesOut: 'Rolling resistance, lift, an open differential.',
    proof: {
      examples: [
        { takes: { grip: 0.7, rearShare: 0.5, height: 0.7, wheelbase: 2.6 }, gives: 2.889 / 9.81, within: 1e-4, source: exercise },
        { takes: { grip: 0.8, rearShare: 1.15 / 2.45, height: 0.54, wheelbase: 2.45 }, gives: 0.3609, within: 0.00005, source: byHand },
        {
          takes: { grip: 0.6, rearShare: 1.15 / 2.45, height: 0.54, wheelbase: 2.45 },
          gives: Math.tan((15.7 * Math.PI) / 180),
          within: 0.001,
          source: byHand,
          because: 'on a hill with grip 0.6: 15.7°, a tenth of a degree',
        },
      ],
    },
  },
  ({ grip, rearShare, height, wheelbase }) => (grip * (1 - rearShare)) / (1 + (grip * height) / wheelbase),
)
/** The same for the rear axle, which gains load. */
export const gripRear = formula(
  {
    id: 'grip-rear',
    label: 'Grip limit, rear drive',
    gives: share('q', 'pull over weight'),
    takes: common,
    text: 'q = μ · ψ / (1 − μ · h / L)',
    source: GILLESPIE,
    leavesOut: 'Rolling resistance, lift; a live axle with open differential loses more.',
    proof: {
      examples: [
        { takes: { grip: 0.7, rearShare: 0.5, height: 0.7, wheelbase: 2.6 }, gives: 4.231 / 9.81, within: 1e-4, source: exercise },
        { takes: { grip: 0.8, rearShare: 1.15 / 2.45, height: 0.54, wheelbase: 2.45 }, gives: 0.4559, within: 0.00005, source: byHand },
        {
          takes: { grip: 0.6, rearShare: 1.15 / 2.45, height: 0.54, wheelbase: 2.45 },
          gives: Math.tan((18.0 * Math.PI) / 180),
          within: 0.001,
          source: byHand,
          because: 'on a hill with grip 0.6: 18.0°, a tenth of a degree',
        },
      ],
    },
  },
  ({ grip, rearShare, height, wheelbase }) => (grip * rearShare) / (1 - (grip * height) / wheelbase),
)
/** All wheels driven through locked or ideal distribution: the whole weight pulls. */
export const gripAll = formula(
  {
    id: 'grip-all',
    label: 'Grip limit, all wheels',
    gives: share('q', 'pull over weight'),
    takes: { grip: MU },
    text: 'q = μ',
    source: GILLESPIE,
    proof: { examples: [{ takes: { grip: 0.7 }, gives: 6.867 / 9.81, within: 1e-4, source: exercise }] },
  },
  ({ grip }) => grip,
)
/** Share of the mass that stands on the rear axle. */
export const rearShare = formula(
  {
    id: 'rear-share',
    label: 'Static share on the rear axle',
    gives: share('ψ', 'rear share'),
    takes: { rear: { symbol: 'm_R', unit: 'kg', label: 'rear axle mass' }, total: { symbol: 'm', unit: 'kg', label: 'mass' } },
    text: 'ψ = m_R / m',
    source: { work: 'definition', place: 'share' },
    proof: { none: 'definition' },
  },
  ({ rear, total }) => rear / total,
)
