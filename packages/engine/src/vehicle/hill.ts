import { formula } from '../working/formula.ts'
import { GRAVITY } from './gravity.ts'

const EHSANI = { work: 'ehsani', place: 'vehicle performance, gradeability', mark: 'from memory' } as const

/** The steepest hill a pull at the wheels holds against, from the sum of slope and rolling resistance. */
export const slopeHeld = formula(
  {
    id: 'slope-held',
    label: 'Steepest slope held',
    gives: { symbol: 'p', unit: '1', shows: 'slope' },
    takes: {
      force: { symbol: 'F', unit: 'N', label: 'pull at the wheels less air drag' },
      mass: { symbol: 'm', unit: 'kg', label: 'mass' },
      rolling: { symbol: 'c_r', unit: '1', label: 'rolling resistance' },
    },
    uses: [GRAVITY],
    text: 'd = min(0.999, F / (m · g))\ns = (d − c_r · √(1 − d² + c_r²)) / (1 + c_r²)\np = min(1, s / √(1 − s²))',
    source: EHSANI,
    leavesOut: 'Slopes above 100 %, 45°: no road is that steep, and no more than that is answered.',
    proof: {
      examples: [
        {
          takes: { force: 4000, mass: 1350, rolling: 0.013 },
          gives: 0.3027,
          within: 0.00005,
          source: EHSANI,
          because: 'recomputed by substitution into F = m·g·(sin θ + c_r·cos θ)',
        },
      ],
    },
  },
  ({ force, mass, rolling }) => {
    const d = Math.min(0.999, force / (mass * GRAVITY.value))
    const s = (d - rolling * Math.sqrt(1 - d * d + rolling * rolling)) / (1 + rolling * rolling)
    return Math.min(1, s / Math.sqrt(1 - s * s))
  },
)

/** What a car must pull to stand still on a slope without rolling back: weight along the slope and rolling resistance. */
export const slopeResistance = formula(
  {
    id: 'slope-resistance',
    label: 'Resistance on a slope',
    gives: { symbol: 'F_s', unit: 'N' },
    takes: {
      mass: { symbol: 'm', unit: 'kg', label: 'mass' },
      slope: { symbol: 'p', unit: '1', shows: 'slope', label: 'slope' },
      rolling: { symbol: 'c_r', unit: '1', label: 'rolling resistance' },
    },
    uses: [GRAVITY],
    text: 'θ = atan(p)\nF_s = m · g · (sin(θ) + c_r · cos(θ))',
    source: { work: 'statics', place: 'inclined plane' },
    proof: {
      examples: [
        {
          takes: { mass: 1350, slope: 0.3, rolling: 0.013 },
          gives: 3969,
          within: 0.1,
          source: { work: 'statics', place: 'inclined plane, worked by hand: 1350 kg on 30 %' },
        },
      ],
    },
  },
  ({ mass, slope, rolling }) => {
    const angle = Math.atan(slope)
    return mass * GRAVITY.value * (Math.sin(angle) + rolling * Math.cos(angle))
  },
)

/** The tangent of the steepest hill on which grip is enough to pull away. */
export const lesserSlope = formula(
  {
    id: 'lesser-slope',
    label: 'Slope by the weaker of pull and grip',
    gives: { symbol: 'p', unit: '1', shows: 'slope' },
    takes: {
      pull: { symbol: 'p_F', unit: '1', shows: 'slope', label: 'slope by pull' },
      grip: { symbol: 'p_μ', unit: '1', shows: 'slope', label: 'slope by grip' },
    },
    text: 'p = min(p_F, p_μ)',
    source: { work: 'definition', place: 'the weaker governs' },
    proof: { none: 'definition' },
  },
  ({ pull, grip }) => Math.min(pull, grip),
)
