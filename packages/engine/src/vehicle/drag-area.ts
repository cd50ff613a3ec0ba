import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'

const HUCHO = { work: 'hucho', place: 'frontal area of passenger cars', mark: 'from memory' } as const
const FILL = standard('frontal-fill', 'Frontal area over width times height', 'k_A', 0.81, '1', HUCHO)
const area = (symbol: string, label: string) => ({ symbol, unit: 'm²', label, shows: 'area' }) as const

/** Drag area from outer sizes: frontal area by width and height, times the coefficient of the body's class. */
export const dragAreaBySize = formula(
  {
    id: 'drag-area-by-size',
    label: 'Drag area by width and height',
    gives: area('A_d', 'drag area'),
    takes: {
      width: { symbol: 'b', unit: 'm', label: 'width without mirrors', shows: 'length' },
      height: { symbol: 'H', unit: 'm', label: 'height', shows: 'length' },
      drag: { symbol: 'c_d', unit: '1', label: 'drag coefficient', shows: 'ratio' },
    },
    uses: [FILL],
    text: 'A_d = k_A · b · H · c_d',
    source: HUCHO,
    leavesOut: 'Mirrors, open windows, roof load.',
    proof: { none: 'the factor itself is the published value' },
  },
  ({ width, height, drag }) => FILL.value * width * height * drag,
)

/** Frontal area guessed from the mass of a passenger car. */
export const frontalAreaByMass = formula(
  {
    id: 'frontal-area-by-mass',
    label: 'Frontal area by mass',
    gives: area('A', 'frontal area'),
    takes: { mass: { symbol: 'm', unit: 'kg', label: 'mass', holds: [800, 2000] } },
    uses: [
      standard('frontal-area-at', 'Frontal area at 765 kg', 'A_0', 1.6, 'm²', { work: 'wong', place: 'frontal area', mark: 'from memory' }),
      standard('frontal-area-per-mass', 'Frontal area per mass', 'a', 0.00056, 'm²/kg', {
        work: 'wong',
        place: 'frontal area',
        mark: 'from memory',
      }),
      standard('frontal-area-mass', 'Mass the rule starts at', 'm_0', 765, 'kg', {
        work: 'wong',
        place: 'frontal area',
        mark: 'from memory',
      }),
    ],
    text: 'A = A_0 + a · (m − m_0)',
    source: { work: 'wong', place: 'frontal area of cars of 800 to 2000 kg', mark: 'from memory' },
    proof: { none: 'the rule itself is the published value' },
  },
  ({ mass }) => 1.6 + 0.00056 * (mass - 765),
)
