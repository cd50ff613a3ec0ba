import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'

const ETRTO = { work: 'etrto', place: 'dynamic rolling circumference', mark: 'from memory' } as const
const RADIAL = standard('rolling-factor-radial', 'Rolling circumference of a radial tyre over its diameter', 'f_rad', 3.05, '1', ETRTO)
const BIAS = standard('rolling-factor-bias', 'Rolling circumference of a cross-ply tyre over its diameter', 'f_bias', 2.99, '1', ETRTO)

/** Unloaded diameter of a tyre from its size marking. */
export const tyreDiameter = formula(
  {
    id: 'tyre-diameter',
    label: 'Unloaded tyre diameter',
    gives: { symbol: 'D', unit: 'm', shows: 'length' },
    takes: {
      rim: { symbol: 'd', unit: 'm', label: 'rim diameter' },
      width: { symbol: 'w', unit: 'm', label: 'section width' },
      aspect: { symbol: 'a', unit: '1', label: 'aspect ratio' },
    },
    text: 'D = d + 2 · w · a',
    source: { work: 'etrto', place: 'size designation' },
    proof: {
      examples: [
        {
          takes: { rim: 16 * 0.0254, width: 0.205, aspect: 0.55 },
          gives: 0.6319,
          within: 0.00005,
          source: { work: 'etrto', place: '205/55 R16, overall diameter', mark: 'from memory' },
        },
      ],
    },
  },
  ({ rim, width, aspect }) => rim + 2 * width * aspect,
)

/** Rolling radius: what speed, gearing and torque go by. The loaded radius, 3–4 % smaller, is for clearances and heights. */
export const rollingRadius = formula(
  {
    id: 'rolling-radius',
    label: 'Rolling radius',
    gives: { symbol: 'r', unit: 'm', shows: 'length' },
    takes: { diameter: { symbol: 'D', unit: 'm', label: 'unloaded diameter' } },
    uses: [RADIAL],
    text: 'r = f_rad · D / (2 · π)',
    source: ETRTO,
    leavesOut: 'Wear, pressure and speed: a worn tyre rolls up to 2 % less. Radial tyres only.',
    proof: {
      examples: [
        {
          takes: { diameter: 0.6319 },
          gives: 0.3067,
          within: 0.00005,
          source: { work: 'etrto', place: '205/55 R16, rolling circumference 1927 mm', mark: 'from memory' },
        },
      ],
    },
  },
  ({ diameter }) => (RADIAL.value * diameter) / (2 * Math.PI),
)

/** Rolling radius of a cross-ply tyre. */
export const rollingRadiusBias = formula(
  {
    id: 'rolling-radius-bias',
    label: 'Rolling radius, cross-ply',
    gives: { symbol: 'r', unit: 'm', shows: 'length' },
    takes: { diameter: { symbol: 'D', unit: 'm', label: 'unloaded diameter' } },
    uses: [BIAS],
    text: 'r = f_bias · D / (2 · π)',
    source: ETRTO,
    proof: { none: 'the factor itself is the published value' },
  },
  ({ diameter }) => (BIAS.value * diameter) / (2 * Math.PI),
)

/** Rolling radius from a circumference measured on the car: mark the tyre, roll it loaded. */
export const rollingRadiusMeasured = formula(
  {
    id: 'rolling-radius-measured',
    label: 'Rolling radius, measured',
    gives: { symbol: 'r', unit: 'm', shows: 'length' },
    takes: { circumference: { symbol: 'C', unit: 'm', label: 'rolling circumference' } },
    text: 'r = C / (2 · π)',
    source: { work: 'definition', place: 'circle' },
    proof: { none: 'definition' },
  },
  ({ circumference }) => circumference / (2 * Math.PI),
)
