import { barnesBound } from './by-hand.ts'
import { commonDivisor, shrunk } from './raster.ts'

/** The most boxes a rectangle can hold with quarter turns: area and Barnes, after both sides are shrunk to sums of sides of boxes. */
export function rectangleBound(length: number, width: number, boxLength: number, boxWidth: number): number {
  const divisor = commonDivisor(boxLength, boxWidth),
    sides = [boxLength, boxWidth]
  return barnesBound({
    length: shrunk(length, sides) / divisor,
    width: shrunk(width, sides) / divisor,
    boxLength: boxLength / divisor,
    boxWidth: boxWidth / divisor,
  })
}
