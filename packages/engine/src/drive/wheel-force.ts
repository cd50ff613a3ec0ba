import { formula } from '../working/formula.ts'

/** Total ratio from motor to wheel, and the pull it makes. */
export const totalRatio = formula(
  {
    id: 'total-ratio',
    label: 'Total ratio, motor to wheel',
    gives: { symbol: 'i', unit: '1', shows: 'ratio' },
    takes: { steps: { symbol: 'i_k', unit: '1', label: 'steps on the way', shows: 'ratio', many: true } },
    text: 'i = exp(Σ ln(i_k))',
    source: { work: 'definition', place: 'gear train' },
    proof: { none: 'definition' },
  },
  ({ steps }) => {
    let i = 1
    for (const step of steps) i *= step
    return i
  },
)

export const wheelForce = formula(
  {
    id: 'wheel-force',
    label: 'Pull at the wheels',
    gives: { symbol: 'F', unit: 'N' },
    takes: {
      torque: { symbol: 'M', unit: 'N·m', label: 'motor torque' },
      ratio: { symbol: 'i', unit: '1', label: 'total ratio', shows: 'ratio' },
      efficiency: { symbol: 'η', unit: '1', label: 'motor to wheel', shows: 'share', holds: [0.7, 1] },
      radius: { symbol: 'r', unit: 'm', label: 'rolling radius', shows: 'length' },
    },
    text: 'F = M · i · η / r',
    source: { work: 'gillespie', place: 'ch. 2, tractive force', mark: 'from memory' },
    proof: { none: 'elementary: power in equals power out over the efficiency' },
  },
  ({ torque, ratio, efficiency, radius }) => (torque * ratio * efficiency) / radius,
)

/** The pulls of several motors together. */
export const pullTogether = formula(
  {
    id: 'pull-together',
    label: 'Pull of all motors',
    gives: { symbol: 'F', unit: 'N' },
    takes: { forces: { symbol: 'F_k', unit: 'N', label: 'pull of one motor', many: true } },
    text: 'F = Σ F_k',
    source: { work: 'statics', place: 'sum of forces' },
    proof: { none: 'definition' },
  },
  ({ forces }) => forces.reduce((sum, f) => sum + f, 0),
)
