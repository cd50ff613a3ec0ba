import { formula } from '../../working/formula.ts'

const HANDBOOK = 'In the handbook only: no study lays modules out yet.'
const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const count = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'count' }) as const
const STATICS = { work: 'statics', place: 'whole boxes along each side; areas' } as const
const RESULT = { work: 'birgin-2010', place: 'packing found and bound worked out again' } as const
/** A hair: three boxes of 0.2 m go into 0.6 m, although binary fractions say 2.9999. */
const HAIR = 1e-9

/** Boxes of one kind in one layer: all one way round, all the other way round, and the number no mixture can pass. */
export const boxesInLayer = formula(
  {
    id: 'boxes-in-layer',
    label: 'Boxes of one kind in one layer',
    gives: {
      oneWay: count('n_1', 'all along'),
      otherWay: count('n_2', 'all across'),
      most: count('n_max', 'never more than, mixed'),
    },
    takes: {
      length: length('L', 'length of the space'),
      width: length('W', 'width of the space'),
      boxLength: length('ℓ', 'length of a box, with its gap'),
      boxWidth: length('w', 'width of a box, with its gap'),
    },
    text: [
      'n_1 = floor(L / ℓ + 0.000000001) · floor(W / w + 0.000000001)',
      'n_2 = floor(L / w + 0.000000001) · floor(W / ℓ + 0.000000001)',
      'n_max = floor(L · W / (ℓ · w) + 0.000000001)',
    ].join('\n'),
    source: STATICS,
    leavesOut: `What a mixture of both really reaches, which lies between: it takes a search. ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { length: 1.5, width: 1.1, boxLength: 0.39, boxWidth: 0.152 },
          gives: { oneWay: 21, otherWay: 18, most: 27 },
          within: 0,
          source: { work: 'statics', place: 'worked by hand: 390 × 152 mm in 1500 × 1100 mm; a mixture reaches 26' },
        },
        {
          takes: { length: 1.2, width: 0.85, boxLength: 0.59, boxWidth: 0.225 },
          gives: { oneWay: 6, otherWay: 5, most: 7 },
          within: 0,
          source: { work: 'statics', place: 'worked by hand: 590 × 225 mm in 1200 × 850 mm; a mixture reaches 7' },
        },
      ],
    },
  },
  ({ length, width, boxLength, boxWidth }) => ({
    oneWay: Math.floor(length / boxLength + HAIR) * Math.floor(width / boxWidth + HAIR),
    otherWay: Math.floor(length / boxWidth + HAIR) * Math.floor(width / boxLength + HAIR),
    most: Math.floor((length * width) / (boxLength * boxWidth) + HAIR),
  }),
)

/**
 * Number of boxes that no mixture of both ways round can pass, sharper than the area: lay the space out in strips of the length, or the width, of a
 * box, and count what the remainders must waste. Sides in whole units, those of the box without a common divisor.
 */
export const barnesBound = formula(
  {
    id: 'barnes-bound',
    label: 'Boxes in one layer, never more than',
    gives: count('n_max', 'never more than'),
    takes: {
      length: count('L', 'length of the space, in whole units'),
      width: count('W', 'width of the space, in whole units'),
      boxLength: count('ℓ', 'length of a box, in whole units'),
      boxWidth: count('w', 'width of a box, in whole units'),
    },
    text: [
      'r_1 = L − ℓ · floor(L / ℓ)',
      's_1 = W − ℓ · floor(W / ℓ)',
      'r_2 = L − w · floor(L / w)',
      's_2 = W − w · floor(W / w)',
      'u_1 = min(r_1 · s_1, (ℓ − r_1) · (ℓ − s_1))',
      'u_2 = min(r_2 · s_2, (w − r_2) · (w − s_2))',
      'n_max = floor((L · W − max(u_1, u_2)) / (ℓ · w))',
    ].join('\n'),
    source: { work: 'barnes-1979', place: 'waste of strips' },
    leavesOut: `A common divisor of the two sides: divide it out first, and round the space down. ${HANDBOOK}`,
    proof: {
      examples: [
        { takes: { length: 86, width: 52, boxLength: 15, boxWidth: 11 }, gives: 26, within: 0, source: RESULT },
        { takes: { length: 86, width: 82, boxLength: 15, boxWidth: 11 }, gives: 42, within: 0, source: RESULT },
        { takes: { length: 43, width: 26, boxLength: 7, boxWidth: 3 }, gives: 53, within: 0, source: RESULT },
        { takes: { length: 49, width: 28, boxLength: 8, boxWidth: 3 }, gives: 57, within: 0, source: RESULT },
      ],
    },
  },
  ({ length, width, boxLength, boxWidth }) => {
    const waste = (t: number): number => {
      const r = length - t * Math.floor(length / t),
        s = width - t * Math.floor(width / t)
      return Math.min(r * s, (t - r) * (t - s))
    }
    return Math.floor((length * width - Math.max(waste(boxLength), waste(boxWidth))) / (boxLength * boxWidth))
  },
)
