import { random } from '../../numerics/random.ts'
import type { Answer, Placed } from './answer.ts'
import type { Fill } from './fill.ts'

const FIRST_TRY = 2000
const GROWS = 1.3

/**
 * Better answers one after another, from a first one, until the best is proven: tries of growing length, each in another order drawn from the seed,
 * for one box more than there are, and, where the bound lies higher, in turn for as many as the bound says, which lowers it when there are none.
 */
export function* betterAnswers(
  first: readonly Placed[],
  bound: number,
  seed: number,
  looks: Fill | undefined,
): Generator<Answer<Placed>, void> {
  let placed = first,
    most = bound,
    length = FIRST_TRY,
    high = false
  const chance = random(seed)
  const answer = (): Answer<Placed> => ({ placed, bound: most, seed, steps: looks?.steps() ?? 0 })
  yield answer()
  if (!looks) return
  while (placed.length < most) {
    const wanted = high ? most : placed.length + 1
    const found = looks.look(wanted, Math.ceil(length), chance)
    if (found === 'none') most = wanted - 1
    else if (found !== 'open') placed = found.placed
    else length *= GROWS
    high = !high && most > placed.length + 1
    yield answer()
  }
}
