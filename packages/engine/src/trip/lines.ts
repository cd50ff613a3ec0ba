import { type Curve, type Grid, uniform, uniformGrid } from '../numerics/index.ts'

/** Steps a curve, and each side of a map, is taken again at where its own points do not stand at equal steps. */
export const CURVE_POINTS = 1025
export const GRID_POINTS = 129

const equalSteps = (x: Float64Array): boolean => {
  const last = x.length - 1,
    step = (x[last]! - x[0]!) / last
  for (let i = 1; i < last; i++) if (!(Math.abs(x[i]! - x[0]! - i * step) <= 1e-9 * step)) return false
  return true
}

/**
 * Keeps the last two lists made of each curve or map. A spread runs the same trip dozens of times with one number changed, and all but a few of the
 * runs take the very same curves: taking a map again at 129 by 129 places costs more than a steady run to empty. Nobody writes into such a list.
 */
function kept<T extends object>(make: (of: T, factor: number) => Float64Array): (of: T, factor?: number) => Float64Array {
  type Made = { readonly factor: number; readonly list: Float64Array }
  const all = new WeakMap<T, readonly Made[]>()
  return (of, factor = 1) => {
    const had = all.get(of) ?? [],
      found = had.find(m => Object.is(m.factor, factor))
    if (found) return found.list
    const made: Made = { factor, list: make(of, factor) }
    all.set(of, [made, ...had.slice(0, 1)])
    return made.list
  }
}

/**
 * A curve at equal steps in one flat list, looked up without a search: first x, 1 over the step, then the values times a factor.
 *
 * Its own points where they stand at equal steps, else taken again at 1025. Why flat: objects that hold whole numbers here and others there make the
 * engine's compiler throw its work away and start again; a list of doubles never does.
 */
export const line = kept((curve: Curve, factor: number): Float64Array => {
  const { first, perStep, y } = uniform(curve, equalSteps(curve.x) ? curve.x.length : CURVE_POINTS)
  const out = new Float64Array(y.length + 2)
  out[0] = first
  out[1] = perStep
  for (let i = 0; i < y.length; i++) out[i + 2] = y[i]! * factor
  return out
})
/** Value of a line, ends held. NaN at NaN. */
export function lineAt(line: Float64Array, x: number): number {
  const place = (x - line[0]!) * line[1]!,
    last = line.length - 3
  if (place <= 0) return line[2]!
  if (place >= last) return line[last + 2]!
  const i = place | 0,
    y = line[i + 2]!
  return y + (line[i + 3]! - y) * (place - i)
}

/** Where the values of a surface begin; before them stand first x, 1 over its step, rows, first y, 1 over its step, columns. */
export const SURFACE_FROM = 6
/** A map in one flat list, values times a factor. Axis by axis its own points where they stand at equal steps, else 129. */
export const surface = kept((grid: Grid, factor: number): Float64Array => {
  const g = uniformGrid(grid, equalSteps(grid.x) ? grid.x.length : GRID_POINTS, equalSteps(grid.y) ? grid.y.length : GRID_POINTS)
  const out = new Float64Array(g.z.length + SURFACE_FROM)
  out.set([g.firstX, g.perStepX, g.rows, g.firstY, g.perStepY, g.columns])
  for (let i = 0; i < g.z.length; i++) out[i + SURFACE_FROM] = g.z[i]! * factor
  return out
})
/** Value of a surface, edges held. NaN at NaN. */
export function surfaceAt(surface: Float64Array, atX: number, atY: number): number {
  const rows = surface[2]! | 0,
    columns = surface[5]! | 0
  let x = (atX - surface[0]!) * surface[1]!,
    y = (atY - surface[3]!) * surface[4]!
  if (x < 0) x = 0
  else if (x > rows - 1) x = rows - 1
  if (y < 0) y = 0
  else if (y > columns - 1) y = columns - 1
  let row = x | 0,
    column = y | 0
  if (row > rows - 2) row--
  if (column > columns - 2) column--
  x -= row
  y -= column
  const corner = SURFACE_FROM + row * columns + column,
    low = surface[corner]! + (surface[corner + 1]! - surface[corner]!) * y,
    high = surface[corner + columns]! + (surface[corner + columns + 1]! - surface[corner + columns]!) * y
  return low + (high - low) * x
}
