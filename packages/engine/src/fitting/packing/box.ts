import { type Answer, checkNumber, checkSides, type Placed, type Whole } from './answer.ts'
import { boxBound } from './box-bound.ts'
import { type Fill, fill } from './fill.ts'
import { net } from './net.ts'
import { betterAnswers } from './search.ts'

/** The turns of a box that differ. */
export function turnsOf([a, b, c]: Whole): readonly Whole[] {
  const all: readonly Whole[] = [
    [a, b, c],
    [a, c, b],
    [b, a, c],
    [b, c, a],
    [c, a, b],
    [c, b, a],
  ]
  return all.filter((t, i) => all.findIndex(o => o[0] === t[0] && o[1] === t[1] && o[2] === t[2]) === i)
}

/**
 * Boxes of one kind in a space, all six turns allowed: ever better answers, the first with all boxes one way round. Ends when the best is proven; until
 * then as long as it is asked, which for some spaces is for ever. Spaces cut into over 60 000 cells get the first answer alone.
 *
 * Sides in whole units, gaps counted into the box. Throws RangeError on a side that is none, and above 2000 boxes.
 */
export function* packBox(space: Whole, box: Whole, seed: number): Generator<Answer<Placed>, void> {
  const sides = ([s, b]: readonly [Whole, Whole]): Record<string, number> => ({
    'space length': s[0],
    'space width': s[1],
    'space height': s[2],
    'box length': b[0],
    'box width': b[1],
    'box height': b[2],
  })
  checkSides(sides([space, box]))
  const turns = turnsOf(box),
    bound = boxBound(space, box)
  checkNumber(bound)
  const first = turns.map(t => oneWayRound(space, t)).reduce((best, now) => (now.length > best.length ? now : best))
  yield* betterAnswers(first, bound, seed, both(fill(space, turns), net(space, turns), bound))
}

/** Fills from the bottom up; where a net may have a box for each of its points, serves its points in turn with that. */
function both(bottomUp: Fill | undefined, points: ReturnType<typeof net>, bound: number): Fill | undefined {
  if (!points || points.boxes > bound) return bottomUp
  if (!bottomUp) return points
  let turn = false
  return {
    steps: () => bottomUp.steps() + points.steps(),
    look(boxes, steps, chance) {
      turn = !turn
      return (turn ? points : bottomUp).look(boxes, steps, chance)
    },
  }
}

function oneWayRound(space: Whole, sides: Whole): readonly Placed[] {
  const out: Placed[] = []
  for (let z = 0; z + sides[2] <= space[2]; z += sides[2])
    for (let y = 0; y + sides[1] <= space[1]; y += sides[1])
      for (let x = 0; x + sides[0] <= space[0]; x += sides[0]) out.push({ at: [x, y, z], sides })
  return out
}
