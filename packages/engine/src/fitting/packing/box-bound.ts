import type { Whole } from './answer.ts'
import { shrunk } from './raster.ts'

const product = (sides: readonly number[]): number => sides.reduce((a, b) => a * b, 1)

/** The most boxes a space can hold with all six turns, the least of three bounds; see each. The space is first shrunk to sums of sides of the box. */
export function boxBound(space: Whole, box: Whole): number {
  const small = space.map(side => shrunk(side, box)) as unknown as Whole
  const volume = product(box)
  return Math.max(0, Math.min(Math.floor((product(small) - colouringWaste(small, box)) / volume), planeBound(small, box)))
}

/**
 * What every packing wastes at least, by colour: cut the space into cubes of half a side of the box, black and white in turn. Each box, however it lies,
 * holds as much black as white, and what the space has more of one colour stays empty.
 *
 * Source: after de Bruijn, Filling boxes with bricks, American Mathematical Monthly 76 (1969) 37–40 (from memory).
 */
export function colouringWaste(space: Whole, box: Whole): number {
  let most = 0
  for (const side of box) {
    // Cubes of a whole half, third half … of the side: the box must hold whole pairs of them.
    for (let pairs = 1; side / (2 * pairs) >= 1; pairs++) {
      if (side % (2 * pairs) !== 0) continue
      const cube = side / (2 * pairs)
      most = Math.max(most, product(space.map(s => Math.min(s % (2 * cube), 2 * cube - (s % (2 * cube))))))
    }
  }
  return most
}

/**
 * How many boxes fit by the planes they are cut by. A net of points, closer than the shortest side of the box, has one inside every box, so a plane across the
 * space cuts no more boxes than the net has points in it, nor than faces fit by area. Each box is cut by planes along all three axes over its three
 * sides together: so many times their sum fits.
 */
export function planeBound(space: Whole, box: Whole): number {
  const short = Math.min(...box),
    sum = box[0] + box[1] + box[2],
    face = product(box) / Math.max(...box)
  const [a, b, c] = space.map(side => Math.floor(side / short)) as [number, number, number]
  const cut = (net: number, area: number): number => Math.min(net, Math.floor(area / face))
  const reach =
    space[0] * cut(b * c, space[1] * space[2]) + space[1] * cut(a * c, space[0] * space[2]) + space[2] * cut(a * b, space[0] * space[1])
  return Math.floor(reach / sum)
}
