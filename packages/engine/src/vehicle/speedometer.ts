import { formula } from '../working/formula.ts'

/** What the speedometer shows over what it showed before, at one and the same road speed: a wheel that rolls further turns more slowly. */
export const speedometerScale = formula(
  {
    id: 'speedometer-scale',
    label: 'Speedometer against before',
    gives: { symbol: 'k_s', unit: '1', shows: 'ratio' },
    takes: {
      radius: { symbol: 'r', unit: 'm', label: 'rolling radius now', shows: 'length' },
      before: { symbol: 'r_0', unit: 'm', label: 'rolling radius the speedometer was set for', shows: 'length' },
      ratio: { symbol: 'i_s', unit: '1', label: 'turns of its drive for one turn of the wheels, now over before', shows: 'ratio' },
    },
    text: 'k_s = r_0 / r · i_s',
    source: { work: 'definition', place: 'kinematics of the speedometer drive' },
    proof: { none: 'definition' },
  },
  ({ radius, before, ratio }) => (before / radius) * ratio,
)

/** Turns of the wheel on a kilometre. */
export const turnsPerDistance = formula(
  {
    id: 'turns-per-distance',
    label: 'Wheel turns per distance',
    gives: { symbol: 'n_s', unit: '1/m' },
    takes: { radius: { symbol: 'r', unit: 'm', label: 'rolling radius', shows: 'length' } },
    text: 'n_s = 1 / (2 · π · r)',
    source: { work: 'definition', place: 'circle' },
    proof: {
      examples: [
        {
          takes: { radius: 0.3067 },
          gives: 0.5189,
          within: 0.0002,
          source: { work: 'etrto', place: '205/55 R16: 518.9 turns per kilometre', mark: 'from memory' },
        },
      ],
    },
  },
  ({ radius }) => 1 / (2 * Math.PI * radius),
)

/** Another axle ratio behind the speedometer's drive turns it faster or slower. */
export const ratioChange = formula(
  {
    id: 'ratio-change',
    label: 'Axle ratio now over before',
    gives: { symbol: 'i_s', unit: '1', shows: 'ratio' },
    takes: {
      now: { symbol: 'i', unit: '1', label: 'axle ratio now', shows: 'ratio' },
      before: { symbol: 'i_0', unit: '1', label: 'axle ratio before', shows: 'ratio' },
    },
    text: 'i_s = i / i_0',
    source: { work: 'definition', place: 'ratio of ratios' },
    proof: { none: 'definition' },
  },
  ({ now, before }) => now / before,
)
