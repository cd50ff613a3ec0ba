import { formula } from '../working/formula.ts'

const STATICS = { work: 'statics', place: 'torque through a gear train' } as const
const torque = (symbol: string, label: string) => ({ symbol, unit: 'N·m', label }) as const
const ratio = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'ratio' }) as const

/** Torque at an input at which the driven tyres slip: more cannot be put through it. */
export const torqueAtSlip = formula(
  {
    id: 'torque-at-slip',
    label: 'Torque at which the tyres slip',
    gives: torque('M_μ', 'torque at the input'),
    takes: {
      share: { symbol: 'q', unit: '1', label: 'pull by grip over weight', shows: 'share' },
      mass: { symbol: 'm', unit: 'kg', label: 'mass' },
      gravity: { symbol: 'g', unit: 'm/s²', label: 'acceleration of free fall' },
      radius: { symbol: 'r', unit: 'm', label: 'rolling radius', shows: 'length' },
      ratio: ratio('i', 'input to wheels'),
      efficiency: { symbol: 'η', unit: '1', label: 'input to wheels', shows: 'share' },
    },
    text: 'M_μ = q · m · g · r / (i · η)',
    source: STATICS,
    leavesOut: 'Shock: a wheel that slips and grips again puts in more for an instant.',
    proof: {
      examples: [
        {
          takes: { share: 0.5, mass: 1300, gravity: 9.80665, radius: 0.28, ratio: 12, efficiency: 0.95 },
          gives: 156.6,
          within: 0.05,
          source: { work: 'statics', place: 'worked by hand: 6374 N at 0.28 m through 12' },
        },
      ],
    },
  },
  ({ share, mass, gravity, radius, ratio, efficiency }) => (share * mass * gravity * radius) / (ratio * efficiency),
)

/** What comes through: the torque there is, or what makes the tyres slip. */
export const torqueThrough = formula(
  {
    id: 'torque-through',
    label: 'Torque that comes through',
    gives: torque('M', 'torque'),
    takes: { torque: torque('M_in', 'torque there is'), slip: torque('M_μ', 'torque at which the tyres slip') },
    text: 'M = min(M_in, M_μ)',
    source: { work: 'definition', place: 'the lesser' },
    proof: { none: 'definition' },
  },
  ({ torque, slip }) => Math.min(torque, slip),
)

/** Torque behind one or more gear steps, losses left out: the gears see all of it. */
export const torqueBehind = formula(
  {
    id: 'torque-behind',
    label: 'Torque behind gear steps',
    gives: torque('M', 'torque'),
    takes: { torque: torque('M_1', 'torque before'), ratio: ratio('i', 'steps together') },
    text: 'M = M_1 · i',
    source: STATICS,
    proof: { none: 'definition' },
  },
  ({ torque, ratio }) => torque * ratio,
)

/** The greatest of several. */
export const greatestTorque = formula(
  {
    id: 'greatest-torque',
    label: 'Greatest torque',
    gives: torque('M', 'torque'),
    takes: { torques: { ...torque('M_k', 'in one gear'), many: true } },
    text: 'M = max(M_k)',
    source: { work: 'definition', place: 'the greatest' },
    proof: { none: 'definition' },
  },
  ({ torques }) => Math.max(...torques),
)
