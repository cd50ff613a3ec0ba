import { checkAxis, segment } from './curve.ts'

/** A surface over a rectangle of points: `z` row by row, one row for each `x`, one column for each `y`. Edges are held. */
export type Grid = { readonly x: Float64Array; readonly y: Float64Array; readonly z: Float64Array }

/** A checked grid of its own copy. Throws RangeError when an axis does not rise strictly, `z` has not x × y values, or one is not finite. */
export function grid(x: ArrayLike<number>, y: ArrayLike<number>, z: ArrayLike<number>): Grid {
  checkAxis('x', x)
  checkAxis('y', y)
  const wanted = x.length * y.length
  if (z.length !== wanted) throw new RangeError(`z must have ${x.length} × ${y.length} = ${wanted} values, found ${z.length}`)
  for (let i = 0; i < z.length; i++) if (!Number.isFinite(z[i])) throw new RangeError(`z[${i}] must be a finite number, found ${z[i]}`)
  return { x: Float64Array.from(x), y: Float64Array.from(y), z: Float64Array.from(z) }
}

const within = (share: number): number => (share < 0 ? 0 : share > 1 ? 1 : share)

/** Value of a grid by straight lines along both axes (bilinear), edges held. NaN at NaN. */
export function gridAt({ x, y, z }: Grid, atX: number, atY: number): number {
  const i = segment(x, atX)
  const j = segment(y, atY)
  const s = within((atX - x[i]!) / (x[i + 1]! - x[i]!))
  const t = within((atY - y[j]!) / (y[j + 1]! - y[j]!))
  return bilinear(z, i * y.length + j, y.length, s, t)
}

function bilinear(z: Float64Array, corner: number, row: number, s: number, t: number): number {
  const z00 = z[corner]!
  const z01 = z[corner + 1]!
  const z10 = z[corner + row]!
  const z11 = z[corner + row + 1]!
  const near = z00 + (z01 - z00) * t
  const far = z10 + (z11 - z10) * t
  return near + (far - near) * s
}

/** A grid at equal steps along both axes: found without a search. */
export type UniformGrid = {
  readonly firstX: number
  readonly perStepX: number
  readonly rows: number
  readonly firstY: number
  readonly perStepY: number
  readonly columns: number
  readonly z: Float64Array
}

/**
 * A grid taken again at `rows` × `columns` equal steps between its edges; the same surface where every point of its axes lies on a step.
 *
 * Throws RangeError when a count is not a whole number of at least 2.
 */
export function uniformGrid(grid: Grid, rows: number, columns: number): UniformGrid {
  for (const [name, n] of [
    ['rows', rows],
    ['columns', columns],
  ] as const) {
    if (!Number.isInteger(n) || n < 2) throw new RangeError(`${name} must be a whole number of at least 2, found ${n}`)
  }
  const firstX = grid.x[0]!
  const firstY = grid.y[0]!
  const spanX = grid.x[grid.x.length - 1]! - firstX
  const spanY = grid.y[grid.y.length - 1]! - firstY
  const z = new Float64Array(rows * columns)
  for (let i = 0; i < rows; i++) {
    for (let j = 0; j < columns; j++) {
      z[i * columns + j] = gridAt(grid, firstX + (spanX * i) / (rows - 1), firstY + (spanY * j) / (columns - 1))
    }
  }
  return { firstX, perStepX: (rows - 1) / spanX, rows, firstY, perStepY: (columns - 1) / spanY, columns, z }
}

/** Value of an equally stepped grid, edges held, without a search. NaN at NaN. */
export function uniformGridAt(grid: UniformGrid, x: number, y: number): number {
  const { rows, columns } = grid
  const placeX = (x - grid.firstX) * grid.perStepX
  const placeY = (y - grid.firstY) * grid.perStepY
  // The last step belongs to the last piece, so that the far edge needs no corner beyond it.
  const i = placeX > 0 ? Math.min(Math.floor(placeX), rows - 2) : 0
  const j = placeY > 0 ? Math.min(Math.floor(placeY), columns - 2) : 0
  return bilinear(grid.z, i * columns + j, columns, within(placeX - i), within(placeY - j))
}
