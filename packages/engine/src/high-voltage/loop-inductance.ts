import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { COPPER } from './conductor-metals.ts'
import { frequency, henries, length, MM } from './conductor-symbols.ts'

const recomputed = (place: string) => ({ work: 'circuits', place: `${place}; recomputed` }) as const
const VACUUM = standard('magnetic-constant', 'magnetic constant', 'μ_0', 4e-7 * Math.PI, 'H/m', {
  work: 'definition',
  place: 'magnetic constant, 4π·1e-7 to nine figures',
})

/** Inductance of two parallel round conductors, there and back. Close together is less: run both poles side by side. */
export const loopInductance = formula(
  {
    id: 'loop-inductance',
    label: 'Inductance of a cable pair',
    gives: henries('L', 'loop'),
    takes: {
      spacing: length('a', 'spacing of the centres'),
      radius: length('r', 'radius of a conductor'),
      length: length('ℓ', 'length of the pair, one way'),
    },
    uses: [VACUUM],
    text: 'L = μ_0 / π · (ln(a / r) + ¼) · ℓ',
    source: { work: 'circuits', place: 'parallel pair of round wires, direct current' },
    leavesOut: 'Screens and steel nearby; pack, contactors and busbars add their own.',
    proof: {
      examples: [
        {
          takes: { spacing: 20 * MM, radius: 4.7 * MM, length: 1 },
          gives: 0.6793e-6,
          within: 6e-11,
          source: recomputed('20 mm, 4.7 mm, 1 m'),
        },
        {
          takes: { spacing: 20 * MM, radius: 4.7 * MM, length: 3 },
          gives: 2.04e-6,
          within: 5e-9,
          source: recomputed('20 mm, 4.7 mm, 3 m'),
        },
      ],
    },
  },
  ({ spacing, radius, length }) => (VACUUM.value / Math.PI) * (Math.log(spacing / radius) + 0.25) * length,
)

/** Depth at which a current that alternates has fallen to 1/e of that at the surface of copper. */
export const skinDepth = formula(
  {
    id: 'skin-depth',
    label: 'Skin depth in copper',
    gives: length('δ', 'skin depth'),
    takes: { frequency: frequency('f', 'frequency') },
    uses: [COPPER.resistivity, VACUUM],
    text: 'δ = √(ρ_20 / (π · f · μ_0))',
    source: { work: 'circuits', place: 'skin effect' },
    proof: {
      examples: [
        { takes: { frequency: 500 }, gives: 2.96 * MM, within: 0.006 * MM, source: recomputed('500 Hz') },
        { takes: { frequency: 10e3 }, gives: 0.661 * MM, within: 0.0006 * MM, source: recomputed('10 kHz') },
      ],
    },
  },
  ({ frequency }) => Math.sqrt(COPPER.resistivity.value / (Math.PI * frequency * VACUUM.value)),
)
