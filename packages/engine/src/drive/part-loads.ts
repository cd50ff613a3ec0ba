import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'

const DEFINITION = { work: 'definition', place: 'power is torque times speed' } as const
const torque = (symbol: string, label: string) => ({ symbol, unit: 'N·m', label }) as const
const power = (symbol: string, label: string) => ({ symbol, unit: 'W', label }) as const
const speed = (symbol: string, label: string) => ({ symbol, unit: 'rad/s', label, shows: 'rotational speed' }) as const

/** How far stated torque, power and base speed are from fitting together. */
export const statedDisagreement = formula(
  {
    id: 'stated-disagreement',
    label: 'Stated figures apart',
    gives: { symbol: 'ε', unit: '1', label: 'apart', shows: 'share' },
    takes: { torque: torque('M_max', 'peak torque'), power: power('P_max', 'peak power'), baseSpeed: speed('ω_b', 'base speed') },
    text: 'ε = abs(M_max · ω_b / P_max − 1)',
    source: DEFINITION,
    proof: { none: 'definition' },
  },
  ({ torque, power, baseSpeed }) => Math.abs((torque * baseSpeed) / power - 1),
)
/** Torque in each half-shaft behind an open or locked differential. */
export const halfShaftTorque = formula(
  {
    id: 'half-shaft-torque',
    label: 'Torque in a half-shaft',
    gives: torque('M_h', 'half-shaft'),
    takes: {
      torque: torque('M', 'motor torque that comes through'),
      ratio: { symbol: 'i', unit: '1', label: 'total ratio', shows: 'ratio' },
      efficiency: { symbol: 'η', unit: '1', label: 'motor to wheels', shows: 'share' },
    },
    text: 'M_h = M · i · η / 2',
    source: { work: 'statics', place: 'a differential halves the torque' },
    leavesOut: 'A locked differential with one wheel on ice puts all of it into one shaft.',
    proof: { none: 'definition' },
  },
  ({ torque, ratio, efficiency }) => (torque * ratio * efficiency) / 2,
)
/** Grip a recovering axle needs: its braking pull over what stands on it while the load moves forward. */
export const recoveryGrip = formula(
  {
    id: 'recovery-grip',
    label: 'Grip that recovery needs',
    gives: { symbol: 'μ_n', unit: '1', label: 'grip needed', shows: 'ratio' },
    takes: {
      own: { symbol: 'F_a', unit: 'N', label: 'braking pull at this axle' },
      all: { symbol: 'F', unit: 'N', label: 'braking pull of all axles' },
      axle: { symbol: 'm_a', unit: 'kg', label: 'axle mass, standing' },
      height: { symbol: 'h', unit: 'm', label: 'height of the centre of mass' },
      wheelbase: { symbol: 'L', unit: 'm', label: 'wheelbase' },
      gravity: { symbol: 'g', unit: 'm/s²', label: 'acceleration of free fall' },
      sign: { symbol: 'σ', unit: '1', label: '1 at the front axle, −1 at the rear' },
    },
    text: 'μ_n = F_a / max(0.001 · m_a · g, m_a · g + σ · F · h / L)',
    source: { work: 'gillespie', place: 'ch. 3, braking: load transfer', mark: 'from memory' },
    leavesOut: 'Brakes used at the same time, slope, an open differential on a split surface.',
    proof: {
      examples: [
        {
          takes: { own: 3000, all: 3000, axle: 600, height: 0.5, wheelbase: 2.5, gravity: 9.80665, sign: -1 },
          gives: 0.5677,
          within: 0.0001,
          source: { work: 'statics', place: 'worked by hand: 3000 N at a rear axle of 600 kg, h 0.5 m, L 2.5 m' },
        },
      ],
    },
  },
  ({ own, all, axle, height, wheelbase, gravity, sign }) =>
    own / Math.max(0.001 * axle * gravity, axle * gravity + (sign * all * height) / wheelbase),
)
/** Braking pull at the wheels while the motor recovers: the driveline brakes along. */
export const recoveryPull = formula(
  {
    id: 'recovery-pull',
    label: 'Braking pull of recovery',
    gives: { symbol: 'F', unit: 'N', label: 'braking pull' },
    takes: {
      share: { symbol: 's_r', unit: '1', label: 'share of peak torque', shows: 'share' },
      torque: torque('M', 'peak torque'),
      ratio: { symbol: 'i', unit: '1', label: 'total ratio', shows: 'ratio' },
      efficiency: { symbol: 'η', unit: '1', label: 'motor to wheels', shows: 'share' },
      radius: { symbol: 'r', unit: 'm', label: 'rolling radius', shows: 'length' },
    },
    text: 'F = s_r · M · i / (η · r)',
    source: { work: 'ehsani', place: 'regenerative braking: the driveline loss acts the other way', mark: 'from memory' },
    proof: { none: 'power in equals power out over the efficiency' },
  },
  ({ share, torque, ratio, efficiency, radius }) => (share * torque * ratio) / (efficiency * radius),
)

/** A driveline that loses more than a fifth is not in working order: with this much lost recovery brakes hardest. */
export const WORST_DRIVELINE = {
  ...standard('driveline.worst', 'a driveline in working order loses no more than a fifth', 'η', 0.8, '1', {
    work: 'practice',
    place: 'gearboxes and axles in order lose well below a fifth',
    mark: 'common practice',
  }),
  shows: 'share',
} as const
/** A front axle brakes lightest where no load moves onto it. */
export const NO_HEIGHT = {
  ...standard('centre.at-the-ground', 'no load moves forward', 'h', 0, 'm', { work: 'definition', place: 'centre of mass at the ground' }),
  shows: 'length',
} as const
/** Share of a pull that a surface lets through. */
export const pullLeft = formula(
  {
    id: 'pull-left',
    label: 'Share of recovery a surface allows',
    gives: { symbol: 'k', unit: '1', label: 'share left', shows: 'share' },
    takes: {
      grip: { symbol: 'μ', unit: '1', label: 'grip of the surface', shows: 'ratio' },
      needed: { symbol: 'μ_n', unit: '1', label: 'grip needed', shows: 'ratio' },
    },
    text: 'k = min(1, μ / μ_n)',
    source: { work: 'definition', place: 'share' },
    leavesOut: 'That less pull moves less load forward.',
    proof: { none: 'proportion' },
  },
  ({ grip, needed }) => Math.min(1, grip / needed),
)
