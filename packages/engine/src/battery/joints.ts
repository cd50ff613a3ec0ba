import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { amps, metres, ohms, volts } from './symbols.ts'

const COPPER = standard('copper-resistivity', 'resistivity of copper, 20 °C', 'ρ_Cu', 1.724e-8, 'Ω·m', {
  work: 'definition',
  place: 'standard annealed copper, 20 °C',
})

/** Resistance of a copper bar between joints, at 20 °C. */
export const busbarResistance = formula(
  {
    id: 'busbar-resistance',
    label: 'Resistance of a copper bar',
    gives: ohms('R_bar', 'bar'),
    takes: { length: metres('ℓ', 'length'), width: metres('b', 'width'), thickness: metres('s', 'thickness') },
    uses: [COPPER],
    text: 'R_bar = ρ_Cu · ℓ / (b · s)',
    source: { work: 'circuits', place: 'resistance of a conductor' },
    proof: {
      examples: [
        {
          takes: { length: 0.06, width: 0.02, thickness: 0.003 },
          gives: 17.24e-6,
          within: 5e-9,
          source: { work: 'circuits', place: 'bar of 60 × 20 × 3 mm; recomputed' },
        },
      ],
    },
  },
  ({ length, width, thickness }) => (COPPER.value * length) / (width * thickness),
)
/** What a meter reads across a joint. Up to 50 µΩ on small terminals, 20 µΩ on large ones; twice the median of like joints is a bad one. */
export const jointDrop = formula(
  {
    id: 'joint-drop',
    label: 'Voltage across a joint',
    gives: volts('ΔU', 'voltage across the joint'),
    takes: { current: amps('I', 'current'), resistance: ohms('R_j', 'joint') },
    text: 'ΔU = I · R_j',
    source: { work: 'circuits', place: 'Ohm’s law' },
    proof: {
      examples: [
        {
          takes: { current: 200, resistance: 100e-6 },
          gives: 0.02,
          within: 1e-12,
          source: { work: 'circuits', place: 'joint of 100 µΩ at 200 A' },
        },
      ],
    },
  },
  ({ current, resistance }) => current * resistance,
)
