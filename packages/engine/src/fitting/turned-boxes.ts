import { formula } from '../working/formula.ts'

const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const sides = {
  halfLength: 0.3,
  halfWidth: 0.2,
  halfHeight: 0.1,
  halfLengthB: 0.25,
  halfWidthB: 0.15,
  halfHeightB: 0.1,
  turn: Math.PI / 6,
} as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const

/**
 * Air between a box square to the car and one turned about the vertical, along the five axes that can part them: an upper box may pass over, or a side
 * of either may lie clear.
 */
export const turnedBoxesGap = formula(
  {
    id: 'turned-boxes-gap',
    label: 'Air between a box and a turned one, at least',
    gives: {
      gap: length('d', 'apart at least; below zero they overlap by so much'),
      along: length('d_1', 'along the one box'),
      across: length('d_2', 'across it'),
      up: length('d_3', 'in height'),
      alongTurned: length('d_4', 'along the turned box'),
      acrossTurned: length('d_5', 'across the turned box'),
    },
    takes: {
      x: length('x', 'centre of the turned box from that of the other, along the car'),
      y: length('y', 'the same, across'),
      z: length('z', 'the same, up'),
      turn: { symbol: 'θ', unit: 'rad', label: 'turned about the vertical', shows: 'angle' },
      halfLength: length('a_x', 'half the length of the square box'),
      halfWidth: length('a_y', 'half its width'),
      halfHeight: length('a_z', 'half its height'),
      halfLengthB: length('b_x', 'half the length of the turned box'),
      halfWidthB: length('b_y', 'half its width'),
      halfHeightB: length('b_z', 'half its height'),
    },
    text: [
      'c = abs(cos(θ))',
      's = abs(sin(θ))',
      'd_1 = abs(x) − a_x − b_x · c − b_y · s',
      'd_2 = abs(y) − a_y − b_x · s − b_y · c',
      'd_3 = abs(z) − a_z − b_z',
      'd_4 = abs(x · cos(θ) + y · sin(θ)) − a_x · c − a_y · s − b_x',
      'd_5 = abs(y · cos(θ) − x · sin(θ)) − a_x · s − a_y · c − b_y',
      'd = max(d_1, d_2, d_3, d_4, d_5)',
    ].join('\n'),
    source: { work: 'gottschalk-1996', place: 'separating axes of two boxes' },
    leavesOut:
      'Apart at a corner, the true distance is a little more than this; a box tilted as well needs all fifteen axes. In the handbook only: no study knows boxes by place yet.',
    proof: {
      examples: [
        {
          takes: { x: 0.62, y: 0.1, z: 0.05, ...sides },
          gives: { gap: 0.0285, along: 0.0285, across: -0.3549, up: -0.15, alongTurned: -0.0229, acrossTurned: -0.2498 },
          within: 0.00005,
          source: hand('turned 30 degrees, centre at 0.62, 0.10, 0.05 m: apart by 28.5 mm'),
        },
        {
          takes: { x: 0.5, y: 0.1, z: 0.05, ...sides },
          gives: { gap: -0.0915, along: -0.0915, across: -0.3549, up: -0.15, alongTurned: -0.1268, acrossTurned: -0.3098 },
          within: 0.00006,
          source: hand('the same at 0.50 m: overlapping by 91.5 mm'),
        },
        {
          takes: {
            x: 0.7,
            y: 0.4,
            z: 0.1,
            turn: Math.PI / 4,
            halfLength: 0.4,
            halfWidth: 0.25,
            halfHeight: 0.15,
            halfLengthB: 0.3,
            halfWidthB: 0.1,
            halfHeightB: 0.12,
          },
          gives: { gap: 0.0182 },
          within: 0.00005,
          source: hand('turned 45 degrees: best axis 18.2 mm, true distance 19.2 mm'),
        },
      ],
    },
  },
  ({ x, y, z, turn, halfLength, halfWidth, halfHeight, halfLengthB, halfWidthB, halfHeightB }) => {
    const cos = Math.cos(turn),
      sin = Math.sin(turn),
      c = Math.abs(cos),
      s = Math.abs(sin)
    const along = Math.abs(x) - halfLength - halfLengthB * c - halfWidthB * s,
      across = Math.abs(y) - halfWidth - halfLengthB * s - halfWidthB * c,
      up = Math.abs(z) - halfHeight - halfHeightB,
      alongTurned = Math.abs(x * cos + y * sin) - halfLength * c - halfWidth * s - halfLengthB,
      acrossTurned = Math.abs(y * cos - x * sin) - halfLength * s - halfWidth * c - halfWidthB
    return { gap: Math.max(along, across, up, alongTurned, acrossTurned), along, across, up, alongTurned, acrossTurned }
  },
)
