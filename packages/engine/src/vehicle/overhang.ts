import { formula } from '../working/formula.ts'

const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const

/** How far one place lies behind another. */
export const overhang = formula(
  {
    id: 'overhang',
    label: 'One place behind another',
    gives: length('d', 'behind it by'),
    takes: { end: length('x_1', 'the one, behind the front axle'), axle: length('x_2', 'the other, behind the front axle') },
    text: 'd = x_1 − x_2',
    source: { work: 'definition', place: 'difference of two places along the car' },
    proof: { none: 'definition' },
  },
  ({ end, axle }) => end - axle,
)
