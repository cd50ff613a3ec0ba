import type { Source } from '../sources.ts'
import { formula } from '../working/formula.ts'
import { type Fact, standard } from '../working/value.ts'

const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const HANDBOOK: Source = { work: 'practice', place: 'densities of sheet, as handbooks have them', mark: 'from memory' }
const density = (name: string, label: string, value: number): Fact =>
  standard(`density.${name.replaceAll(' ', '-')}`, label, 'ρ', value, 'kg/m³', HANDBOOK)

/** Density of what shells of battery boxes are made of. */
export const SHELL_DENSITY = {
  steel: density('steel', 'density of steel', 7850),
  'stainless steel': density('stainless steel', 'density of stainless steel', 7900),
  aluminium: density('aluminium', 'density of aluminium', 2700),
  'glass-fibre laminate': density('glass-fibre laminate', 'density of glass-fibre laminate', 1700),
} as const satisfies Readonly<Record<string, Fact>>

/** Mass of the sheet of a closed box. */
export const shellMass = formula(
  {
    id: 'shell-mass',
    label: 'Mass of the sheet of a box',
    gives: { symbol: 'm', unit: 'kg', label: 'sheet of the box' },
    takes: {
      length: length('ℓ', 'outer length'),
      width: length('w', 'outer width'),
      height: length('h', 'outer height'),
      wall: length('t', 'thickness of the sheet'),
      density: { symbol: 'ρ', unit: 'kg/m³', label: 'density of the sheet' },
    },
    text: 'm = ρ · (ℓ · w · h − (ℓ − 2 · t) · (w − 2 · t) · (h − 2 · t))',
    source: { work: 'statics', place: 'outer less inner volume, times density' },
    leavesOut: 'Flanges, frame, feet, lid overlap, bolts, plates and busbars: weigh the finished box.',
    proof: {
      examples: [
        {
          takes: { length: 0.5, width: 0.4, height: 0.3, wall: 0.002, density: 2700 },
          gives: 2700 * (0.06 - 0.496 * 0.396 * 0.296),
          within: 1e-9,
          source: { work: 'statics', place: 'worked by hand: 0.94 m² of 2 mm sheet is 5.08 kg before the corners are counted once' },
        },
      ],
    },
  },
  ({ length, width, height, wall, density }) =>
    density * (length * width * height - (length - 2 * wall) * (width - 2 * wall) * (height - 2 * wall)),
)

/** Mass of one flat piece of sheet by its outer sides. */
export const sheetPiece = formula(
  {
    id: 'sheet-piece',
    label: 'Mass of a piece of sheet',
    gives: { symbol: 'm', unit: 'kg', label: 'one piece' },
    takes: {
      one: length('a', 'one side'),
      other: length('b', 'other side'),
      wall: length('t', 'thickness of the sheet'),
      density: { symbol: 'ρ', unit: 'kg/m³', label: 'density of the sheet' },
    },
    text: 'm = ρ · a · b · t',
    source: { work: 'statics', place: 'volume times density' },
    leavesOut: 'Bends, flanges and holes. Pieces by their outer sides count the edges where they meet twice.',
    proof: {
      examples: [
        {
          takes: { one: 0.5, other: 0.4, wall: 0.002, density: 2700 },
          gives: 1.08,
          within: 1e-9,
          source: { work: 'statics', place: 'worked by hand: 0.2 m² of 2 mm sheet' },
        },
      ],
    },
  },
  ({ one, other, wall, density }) => density * one * other * wall,
)
