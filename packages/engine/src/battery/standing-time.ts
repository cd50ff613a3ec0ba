import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { amps, coulombs, hours, share } from './symbols.ts'

/** Less than this nobody's meter shows, and a pack that loses nothing would stand for ever. */
const LEAST = standard('least-draw', 'least current told from none', 'I_0', 1e-6, 'A', {
  work: 'definition',
  place: 'a millionth of an ampere',
})

/** How long a parked pack lasts until its cells are at their lowest. */
export const standingTime = formula(
  {
    id: 'standing-time',
    label: 'Time a parked pack lasts',
    gives: hours('t', 'time until empty'),
    takes: {
      charge: share('z', 'state of charge it is left at'),
      capacity: coulombs('Q', 'usable charge of the pack'),
      draw: amps('I_s', 'current out of the parked pack'),
    },
    uses: [LEAST],
    text: 't = z · Q / max(I_s, I_0)',
    source: { work: 'circuits', place: 'charge over a steady current' },
    leavesOut: 'What wakes up in between, and the cold, which takes some of the charge away.',
    proof: {
      examples: [
        {
          takes: { charge: 1, capacity: 30 * 3600, draw: 0.02 },
          gives: 62.5 * 86400,
          within: 1,
          source: { work: 'circuits', place: '20 mA on 30 Ah: 62.5 days; recomputed' },
        },
      ],
    },
  },
  ({ charge, capacity, draw }) => (charge * capacity) / Math.max(draw, LEAST.value),
)
