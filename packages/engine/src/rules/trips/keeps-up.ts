import { judge } from '../../working/judge.ts'
import { standard, type Value } from '../../working/value.ts'

/** How much of a trip a car may fall short of and still be said to drive it. */
export const HUNDREDTH = standard('trip.may-miss', 'share of a trip that may be missed', 's_miss', 0.01, '1', {
  work: 'practice',
  place: 'one part in a hundred',
  mark: 'common practice',
})

/** Why the range on a trip the car cannot follow is no good news: slower than asked it takes less. Nothing where it keeps up. */
export const flattered = (missed: Value): string | undefined =>
  judge(missed.value, 'at most', HUNDREDTH.value, 0) === 'failing'
    ? 'the car falls short of the speeds this trip asks, and a slower trip takes less'
    : undefined
