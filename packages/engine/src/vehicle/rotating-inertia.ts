import { formula } from '../working/formula.ts'
import { ROTATING_SHARE } from './road-load-reference.ts'

const GILLESPIE = { work: 'gillespie', place: 'ch. 2, effective mass', mark: 'from memory' } as const
const MASS = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const RATIO = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'ratio' }) as const
const RADIUS = { symbol: 'r', unit: 'm', label: 'rolling radius', shows: 'length' } as const
const INERTIA = (symbol: string, label: string) => ({ symbol, unit: 'kg·m²', label }) as const
/** lb·in·s² in kg·m², and inches: the published example is in these. */
const LB_IN_S2 = 0.45359237 * 9.80665 * 0.0254
const INCH = 0.0254

/** What turns counts as so much further mass. Each part with its own ratio to the wheels: wheels 1, a propshaft the axle ratio, a rotor the total ratio. */
export const equivalentMass = formula(
  {
    id: 'equivalent-mass',
    label: 'Equivalent mass of what turns',
    gives: MASS('m_rot', 'equivalent mass'),
    takes: {
      inertias: { symbol: 'J_k', unit: 'kg·m²', label: 'inertia of a part', many: true },
      ratios: { symbol: 'i_k', unit: '1', label: 'its turns for one turn of the wheels', shows: 'ratio', many: true },
      radius: RADIUS,
    },
    text: 'm_rot = (Σ J_k · i_k · i_k) / r²',
    source: GILLESPIE,
    leavesOut: 'Losses of the gears, under 0.5 % of the result.',
    proof: {
      examples: [
        {
          takes: {
            inertias: [0.8 * LB_IN_S2, 1.3 * LB_IN_S2, 1.2 * LB_IN_S2, 11 * LB_IN_S2, 11 * LB_IN_S2],
            ratios: [4.28 * 2.92, 4.28 * 2.92, 2.92, 1, 1],
            radius: 12.59 * INCH,
          },
          gives: 878 * 0.45359237,
          within: 0.75,
          source: {
            work: 'gillespie',
            place: 'ch. 2, example of driveline inertia: equivalent weight 878 lb in first gear',
            mark: 'from memory',
          },
          because: 'the book rounds the inertia to 361 and g to 386 in/s²; unrounded 877 lb',
        },
      ],
    },
  },
  ({ inertias, ratios, radius }) => {
    let sum = 0
    for (let i = 0; i < inertias.length; i++) sum += (inertias[i] as number) * (ratios[i] as number) * (ratios[i] as number)
    return sum / radius ** 2
  },
)

/** Mass factor of a car with one motor: how much heavier than its mass it is to accelerate. */
export const massFactor = formula(
  {
    id: 'mass-factor',
    label: 'Mass factor',
    gives: { symbol: 'δ', unit: '1', shows: 'ratio' },
    takes: {
      mass: MASS('m', 'mass'),
      equivalent: MASS('m_rot', 'equivalent mass of what turns'),
    },
    text: 'δ = 1 + m_rot / m',
    source: GILLESPIE,
    proof: {
      examples: [
        {
          takes: { mass: 1400, equivalent: (4 + 0.04 * 81) / 0.09 },
          gives: 1.057,
          within: 0.0005,
          source: { work: 'statics', place: 'worked by hand: 1400 kg, r 0.30 m, four wheels of 1 kg·m², rotor 0.04 kg·m² behind 9' },
        },
      ],
    },
  },
  ({ mass, equivalent }) => 1 + equivalent / mass,
)

/** Mass factor while driving or braking through gears with losses. */
export const massFactorWithLosses = formula(
  {
    id: 'mass-factor-with-losses',
    label: 'Mass factor, gear losses counted',
    gives: {
      driving: { symbol: 'δ_d', unit: '1', label: 'driving', shows: 'ratio' },
      recovering: { symbol: 'δ_r', unit: '1', label: 'recovering', shows: 'ratio' },
    },
    takes: {
      mass: MASS('m', 'mass'),
      wheels: INERTIA('J_W', 'all wheels'),
      rotor: INERTIA('J_m', 'rotor and what turns with it'),
      ratio: RATIO('i', 'total ratio'),
      efficiency: { symbol: 'η', unit: '1', label: 'motor to wheels', shows: 'share', holds: [0.7, 1] },
      radius: RADIUS,
    },
    text: 'δ_d = 1 + (J_W + J_m · i² · η) / (m · r²)\nδ_r = 1 + (J_W + J_m · i² / η) / (m · r²)',
    source: GILLESPIE,
    proof: {
      examples: [
        {
          takes: { mass: 1400, wheels: 4, rotor: 0.04, ratio: 9, efficiency: 1, radius: 0.3 },
          gives: { driving: 1.057, recovering: 1.057 },
          within: 0.0005,
          source: { work: 'statics', place: 'worked by hand, no losses' },
        },
      ],
    },
  },
  ({ mass, wheels, rotor, ratio, efficiency, radius }) => ({
    driving: 1 + (wheels + rotor * ratio ** 2 * efficiency) / (mass * radius ** 2),
    recovering: 1 + (wheels + (rotor * ratio ** 2) / efficiency) / (mass * radius ** 2),
  }),
)

/** Mass that coasts: with the parts that turn where they are known. */
export const coastingMass = formula(
  {
    id: 'coasting-mass',
    label: 'Coasting mass',
    gives: MASS('m_e', 'coasting mass'),
    takes: { mass: MASS('m', 'mass as tested'), wheels: INERTIA('J_W', 'all wheels'), radius: RADIUS },
    text: 'm_e = m + J_W / r²',
    source: GILLESPIE,
    leavesOut: 'Shafts and gears behind a box in neutral, below 0.5 % of the mass.',
    proof: { none: 'the equivalent mass of the wheels alone, added' },
  },
  ({ mass, wheels, radius }) => mass + wheels / radius ** 2,
)
/** Mass that coasts, by the share the test procedure allows where nothing was measured. */
export const coastingMassByShare = formula(
  {
    id: 'coasting-mass-by-share',
    label: 'Coasting mass, by share',
    gives: MASS('m_e', 'coasting mass'),
    takes: { mass: MASS('m', 'mass as tested') },
    uses: [ROTATING_SHARE],
    text: 'm_e = m · (1 + s_rot)',
    source: {
      work: 'un-gtr-15',
      place: 'Annex 4: 3 % of the mass in running order, taken here of the mass as tested',
      mark: 'from memory',
    },
    proof: { none: 'the share itself is the published value' },
  },
  ({ mass }) => mass * (1 + ROTATING_SHARE.value),
)

/**
 * Mass factor of a car with a piston engine, by an old rule of thumb. Not for electric cars: the squared term stands for a flywheel, and at a ratio of 9
 * gives about four times too much.
 */
export const massFactorOfEngineCar = formula(
  {
    id: 'mass-factor-of-engine-car',
    label: 'Mass factor, car with piston engine',
    gives: { symbol: 'δ', unit: '1', shows: 'ratio' },
    takes: { ratio: RATIO('ξ', 'total ratio, engine to wheels') },
    text: 'δ = 1.04 + 0.0025 · ξ²',
    source: { work: 'wong', place: 'mass factor of passenger cars', mark: 'from memory' },
    leavesOut: 'Electric motors: the term with the ratio is engine and flywheel. Use the equivalent mass of the parts for them.',
    proof: {
      examples: [
        {
          takes: { ratio: 9 },
          gives: 1.24,
          within: 0.005,
          source: { work: 'wong', place: 'mass factor of passenger cars', mark: 'from memory' },
          because: '1.2425 at a ratio of 9, by hand',
        },
      ],
    },
  },
  ({ ratio }) => 1.04 + 0.0025 * ratio ** 2,
)
