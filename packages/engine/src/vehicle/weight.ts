import { formula } from '../working/formula.ts'
import { GRAVITY } from './gravity.ts'

/** Weight of a mass. */
export const weightOf = formula(
  {
    id: 'weight',
    label: 'Weight',
    gives: { symbol: 'W', unit: 'N', label: 'weight', shows: 'force' },
    takes: { mass: { symbol: 'm', unit: 'kg', label: 'mass', shows: 'mass' } },
    uses: [GRAVITY],
    text: 'W = m · g',
    source: { work: 'definition', place: 'weight' },
    proof: { none: 'definition' },
  },
  ({ mass }) => mass * GRAVITY.value,
)
