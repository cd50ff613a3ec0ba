import { formula } from '../working/formula.ts'
import type { AlignedBox } from './box.ts'
import { checkPlace } from './vector.ts'

const corner = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length', many: true }) as const

/** Gap between two boxes square to the car: along each axis what is free between them, together the straight way from one to the other. */
export const boxGap = formula(
  {
    id: 'box-gap',
    label: 'Gap between two boxes',
    gives: { symbol: 'd', unit: 'm', label: 'gap', shows: 'length' },
    takes: {
      lowA: corner('a_0', 'lowest corner of one box: x, y, z'),
      highA: corner('a_1', 'its highest corner: x, y, z'),
      lowB: corner('b_0', 'lowest corner of the other box: x, y, z'),
      highB: corner('b_1', 'its highest corner: x, y, z'),
    },
    text: 'd = √(Σ (max(0, b_0 − a_1, a_0 − b_1))²)',
    source: { work: 'statics', place: 'distance of two boxes, axis by axis' },
    leavesOut:
      'Boxes that stand askew. Zero says they touch or overlap, not how deep. In the handbook only: no study knows boxes by place yet.',
    proof: {
      examples: [
        {
          takes: { lowA: [0, 0, 0], highA: [0.6, 0.4, 0.25], lowB: [0.72, 0.45, 0.2], highB: [1, 0.9, 0.5] },
          gives: 0.13,
          within: 0.0005,
          source: { work: 'statics', place: 'worked by hand: 120 mm along, 50 mm across, heights overlap' },
        },
      ],
    },
  },
  ({ lowA, highA, lowB, highB }) => {
    for (const [name, corner] of Object.entries({ lowA, highA, lowB, highB })) checkPlace('box-gap', name, corner)
    let sum = 0
    for (let i = 0; i < lowA.length; i++)
      sum += Math.max(0, (lowB[i] as number) - (highA[i] as number), (lowA[i] as number) - (highB[i] as number)) ** 2
    return Math.sqrt(sum)
  },
)

/** Distance of two boxes square to the axes, m; 0 where they touch or overlap. */
export const alignedGap = (a: AlignedBox, b: AlignedBox): number => boxGap({ lowA: a.low, highA: a.high, lowB: b.low, highB: b.high })
