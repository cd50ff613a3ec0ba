import { formula } from '../working/formula.ts'
import { metres, newtons, pascals, squareMetres } from './symbols.ts'

const ELASTIC = { work: 'statics', place: 'springs side by side and in a row' } as const
const FIXTURE = {
  work: 'practice',
  place: 'fixture of 300 kgf on the large face of a prismatic LFP cell; recomputed',
  mark: 'from memory',
} as const
const stiffness = (symbol: string, label: string) => ({ symbol, unit: 'N/m', label }) as const
const count = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'count' }) as const

/** Force on the end plates for a pressure on the cells. Pouch 30 to 70 kPa, prismatic 50 to 100 kPa at 30 to 50 % charge; the maker's figure overrides. */
export const clampingForce = formula(
  {
    id: 'clamping-force',
    label: 'Clamping force on the cells',
    gives: newtons('F', 'force on the end plates'),
    takes: {
      pressure: pascals('p', 'pressure on the cells'),
      length: metres('ℓ', 'length of the face'),
      width: metres('b', 'width of the face'),
    },
    text: 'F = p · ℓ · b',
    source: { work: 'practice', place: 'planning pressures of cell fixtures', mark: 'common practice' },
    proof: {
      examples: [
        { takes: { pressure: 81.68e3, length: 0.174, width: 0.207 }, gives: 2942, within: 0.5, source: FIXTURE },
        { takes: { pressure: 81.68e3, length: 0.13, width: 0.2 }, gives: 2124, within: 0.5, source: FIXTURE },
      ],
    },
  },
  ({ pressure, length, width }) => pressure * length * width,
)

/** The fixture presses on the largest face of the cell, so its smallest side drops out. */
export const facePressure = formula(
  {
    id: 'face-pressure',
    label: 'Pressure on the face of the cells',
    gives: pascals('p', 'pressure on the cells'),
    takes: {
      force: newtons('F', 'force on the end plates'),
      length: metres('ℓ', 'length of the cell'),
      width: metres('b', 'width of the cell'),
      height: metres('h', 'height of the cell'),
    },
    text: 'p = F · min(ℓ, b, h) / (ℓ · b · h)',
    source: { work: 'statics', place: 'force over area' },
    leavesOut: 'Plates that bend: the middle of the face gets less.',
    proof: {
      examples: [
        { takes: { force: 2942, length: 0.174, width: 0.072, height: 0.207 }, gives: 81.68e3, within: 20, source: FIXTURE },
        { takes: { force: 2124, length: 0.13, width: 0.036, height: 0.2 }, gives: 81.68e3, within: 20, source: FIXTURE },
      ],
    },
  },
  ({ force, length, width, height }) => (force * Math.min(length, width, height)) / (length * width * height),
)

/** Tie rods of a stack, together. */
export const rodStiffness = formula(
  {
    id: 'rod-stiffness',
    label: 'Stiffness of tie rods',
    gives: stiffness('k_r', 'all rods together'),
    takes: {
      rods: count('n', 'rods'),
      modulus: pascals('E', 'modulus of the rods'),
      area: squareMetres('A_s', 'stress area of one rod'),
      length: metres('L', 'free length'),
    },
    text: 'k_r = n · E · A_s / L',
    source: ELASTIC,
    proof: {
      examples: [
        {
          takes: { rods: 4, modulus: 210e9, area: 36.6e-6, length: 0.5 },
          gives: 61.49e6,
          within: 5e3,
          source: { work: 'statics', place: 'four M8 rods of half a metre; recomputed' },
        },
      ],
    },
  },
  ({ rods, modulus, area, length }) => (rods * modulus * area) / length,
)
/** One pad between two cells. */
export const padStiffness = formula(
  {
    id: 'pad-stiffness',
    label: 'Stiffness of one pad',
    gives: stiffness('k_p', 'one pad'),
    takes: {
      modulus: pascals('E', 'modulus of the pad'),
      length: metres('ℓ', 'length of the face'),
      width: metres('b', 'width of the face'),
      thickness: metres('s', 'thickness'),
    },
    text: 'k_p = E · ℓ · b / s',
    source: ELASTIC,
    proof: {
      examples: [
        {
          takes: { modulus: 0.7e6, length: 0.13, width: 0.2, thickness: 1.5e-3 },
          gives: 12.133e6,
          within: 5e2,
          source: { work: 'statics', place: 'pad of 1.5 mm on a face of 130 × 200 mm; recomputed' },
        },
      ],
    },
  },
  ({ modulus, length, width, thickness }) => (modulus * length * width) / thickness,
)
/** Force added when the cells grow. Without pads a third of a millimetre already bends the plates: pads are not optional. */
export const growthForce = formula(
  {
    id: 'growth-force',
    label: 'Force added by growing cells',
    gives: newtons('F_g', 'force added'),
    takes: {
      rods: stiffness('k_r', 'all rods together'),
      pad: stiffness('k_p', 'one pad'),
      pads: count('n_p', 'pads in a row'),
      growth: metres('δ', 'growth of the stack'),
    },
    text: 'F_g = δ / (1 / k_r + n_p / k_p)',
    source: ELASTIC,
    leavesOut: 'The cells count as rigid, the end plates too.',
    proof: {
      examples: [
        {
          takes: { rods: 61.49e6, pad: 12.133e6, pads: 13, growth: 3.6e-3 },
          gives: 3310,
          within: 5,
          source: { work: 'statics', place: 'twelve cells, thirteen pads; recomputed' },
        },
        {
          takes: { rods: 61.49e6, pad: 12.133e6, pads: 0, growth: 0.36e-3 },
          gives: 22.1e3,
          within: 50,
          source: { work: 'statics', place: 'no pads, a tenth of the growth; recomputed' },
        },
      ],
    },
  },
  ({ rods, pad, pads, growth }) => growth / (1 / rods + pads / pad),
)
