import { type Answer, checkNumber, checkSides, type Placed } from './answer.ts'
import { fill } from './fill.ts'
import { fiveBlocks } from './five-blocks.ts'
import { rectangleBound } from './rectangle-bound.ts'
import { betterAnswers } from './search.ts'

export type PlacedRectangle = { readonly x: number; readonly y: number; readonly length: number; readonly width: number }
export type Rectangle = { readonly length: number; readonly width: number }

/**
 * Boxes of one kind in one layer, quarter turns allowed: ever better answers, the first by five blocks, later ones by exact search. Ends when the best is
 * proven; until then as long as it is asked. Very fine rasters (over 60 000 cells) get the five blocks alone.
 *
 * Sides in whole units (millimetres for instance), gaps counted into the box. Throws RangeError on a side that is none, and above 2000 boxes.
 */
export function* packRectangle(space: Rectangle, box: Rectangle, seed: number): Generator<Answer<PlacedRectangle>, void> {
  checkSides({ 'space length': space.length, 'space width': space.width, 'box length': box.length, 'box width': box.width })
  // The short side lies along the floor of the search: fewer surfaces to tell apart.
  const upright = space.length >= space.width
  const [floor, up] = upright ? [space.width, space.length] : [space.length, space.width]
  const turned = box.length === box.width ? [] : [[box.width, 1, box.length] as const]
  const bound = rectangleBound(space.length, space.width, box.length, box.width)
  checkNumber(bound)
  const blocks = fiveBlocks(space.length, space.width, box.length, box.width)
  const back = ({ at, sides }: Placed): PlacedRectangle =>
    upright ? { x: at[2], y: at[0], length: sides[2], width: sides[0] } : { x: at[0], y: at[2], length: sides[0], width: sides[2] }
  const plain = ({ at, sides }: Placed): PlacedRectangle => ({ x: at[0], y: at[1], length: sides[0], width: sides[1] })
  const looks = blocks.length < bound ? fill([floor, 1, up], [[box.length, 1, box.width], ...turned]) : undefined
  for (const { placed, ...rest } of betterAnswers(blocks, bound, seed, looks))
    yield { placed: placed.map(placed === blocks ? plain : back), ...rest }
}
