import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'

const GTR = { work: 'un-gtr-15', place: 'Annex 4, default road load where nothing is measured', mark: 'from memory' } as const
const ROLLING = standard('default-rolling', 'Default rolling part over mass', 'a_0', 0.14, 'N/kg', GTR)
// Published per (km/h)²: 2.8e-6 N per kg, 0.0170 N per m².
const PER_MASS = standard('default-air-per-mass', 'Default squared part over mass', 'a_2', 2.8e-6 * 3.6 ** 2, 'N·s²/(m²·kg)', GTR)
const PER_AREA = standard('default-air-per-area', 'Default squared part over width times height', 'b_2', 0.017 * 3.6 ** 2, 'N·s²/m⁴', GTR)

/** Road load that type approval takes where nobody measured: pessimistic on purpose, an upper mark to hold a coast-down against. */
export const defaultRoadLoad = formula(
  {
    id: 'default-road-load',
    label: 'Default road load of type approval',
    gives: {
      f0: { symbol: 'f_0', unit: 'N', label: 'constant part' },
      f2: { symbol: 'f_2', unit: 'N·s²/m²', label: 'part rising with speed squared' },
    },
    takes: {
      mass: { symbol: 'm', unit: 'kg', label: 'test mass' },
      width: { symbol: 'b', unit: 'm', label: 'width', shows: 'length' },
      height: { symbol: 'H', unit: 'm', label: 'height', shows: 'length' },
    },
    uses: [ROLLING, PER_MASS, PER_AREA],
    text: 'f_0 = a_0 · m\nf_2 = a_2 · m + b_2 · b · H',
    source: GTR,
    leavesOut: 'Everything of this car but its mass and size.',
    proof: {
      examples: [
        {
          takes: { mass: 1500, width: 1.8, height: 1.5 },
          gives: { f0: 210, f2: 0.0501 * 3.6 ** 2 },
          within: 1e-4 * 3.6 ** 2,
          source: { work: 'un-gtr-15', place: '1 500 kg, 1.8 by 1.5 m; recomputed', mark: 'from memory' },
        },
      ],
    },
  },
  ({ mass, width, height }) => ({
    f0: ROLLING.value * mass,
    f2: PER_MASS.value * mass + PER_AREA.value * width * height,
  }),
)
