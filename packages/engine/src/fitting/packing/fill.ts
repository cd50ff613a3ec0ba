import type { Random } from '../../numerics/random.ts'
import type { Placed, Whole } from './answer.ts'
import { type Raster, raster } from './raster.ts'

/** Found: so many boxes. None: proven that there is no such packing. Open: out of steps. */
export type Filled = { readonly placed: readonly Placed[] } | 'none' | 'open'
export type Fill = {
  /** Looks for a packing of so many boxes with so many steps, in an order drawn by chance. */
  readonly look: (boxes: number, steps: number, chance: Random) => Filled
  readonly steps: () => number
}

/** Above so many cells the search would look for hours and remember too much: it is not begun. */
const CELLS = 60_000
/** Surfaces remembered as hopeless, at most. */
const REMEMBERED = 400_000
/** Boxes and empty cells one upon another in one try, at most: deeper, the machine has no room to come back from. */
const DEEPEST = 4000
const FOUND = 1,
  NONE = 0,
  OPEN = -1

/**
 * Exact search for a packing, filling a space from the bottom up.
 *
 * The space is cut at the sums of sides; above every cell of the floor stands what is decided, up to a height. The lowest cell, the first of them, is either
 * the corner of a box, in one of its turns, or stays empty: every packing with all boxes pushed to the origin is met once. A surface is given up when
 * the rows and columns left free on it must waste more than may be wasted, or when it was found hopeless before. Undefined where the space is cut into too
 * many cells.
 */
export function fill(space: Whole, turns: readonly Whole[]): Fill | undefined {
  const rasters = ([0, 1, 2] as const).map(axis => raster(space[axis], [...new Set(turns.map(t => t[axis]))])) as [Raster, Raster, Raster]
  const [X, Y, Z] = rasters.map(r => r.points) as [readonly number[], readonly number[], readonly number[]]
  const n = X.length - 1,
    m = Y.length - 1,
    top = Z.length - 1
  if (n * m * top > CELLS || top > 0xffff) return undefined
  const [length, width, height] = [X[n] as number, Y[m] as number, Z[top] as number]
  const place = rasters.map(r => new Map(r.points.map((p, i) => [p, i])))
  const ends = turns.map(sides =>
    rasters.map((r, axis) => Int32Array.from(r.points, p => place[axis]?.get(p + (sides[axis] as number)) ?? -1)),
  )
  const gaps = (points: readonly number[]): Int32Array => Int32Array.from(points.slice(1), (p, i) => p - (points[i] as number))
  const dx = gaps(X),
    dy = gaps(Y),
    dz = gaps(Z)
  const lost = Int32Array.from(Z, z => height - z - (rasters[2].below[height - z] as number))
  const [first] = turns as readonly [Whole]
  const volume = first[0] * first[1] * first[2]
  const surface = new Uint16Array(n * m)
  const hopeless = new Map<string, number>()
  let placed: Placed[] = [],
    steps = 0,
    stop = 0,
    chance: Random

  /** Whether rows or columns left free must waste more than may be wasted. */
  function wastes(allowed: number): boolean {
    let up = 0,
      low = top,
      high = 0
    for (let y = 0, i = 0; y < m; y++)
      for (let x = 0; x < n; x++, i++) {
        const h = surface[i] as number
        up += (lost[h] as number) * (dx[x] as number) * (dy[y] as number)
        if (h < low) low = h
        if (h > high) high = h
      }
    if (up > allowed) return true
    let along = 0,
      across = 0
    for (let z = low; z < high; z++) {
      const thick = dz[z] as number
      for (let y = 0; y < m; y++) {
        const free = rowWaste(y * n, 1, n, z, X, rasters[0].below)
        if (free) along += free * (dy[y] as number) * thick
      }
      if (along > allowed) return true
      if (m === 1) continue
      for (let x = 0; x < n; x++) {
        const free = rowWaste(x, n, m, z, Y, rasters[1].below)
        if (free) across += free * (dx[x] as number) * thick
      }
      if (across > allowed) return true
    }
    return false
  }
  function rowWaste(start: number, step: number, count: number, z: number, points: readonly number[], below: Int32Array): number {
    let from = -1,
      waste = 0
    for (let k = 0, i = start; k <= count; k++, i += step)
      if (k < count && (surface[i] as number) <= z) {
        if (from < 0) from = k
      } else if (from >= 0) {
        const free = (points[k] as number) - (points[from] as number)
        waste += free - (below[free] as number)
        from = -1
      }
    return waste
  }
  function level(x0: number, x1: number, y0: number, y1: number, at: number): boolean {
    for (let y = y0; y < y1; y++) for (let i = y * n + x0; i < y * n + x1; i++) if (surface[i] !== at) return false
    return true
  }
  function raise(x0: number, x1: number, y0: number, y1: number, to: number): void {
    for (let y = y0; y < y1; y++) surface.fill(to, y * n + x0, y * n + x1)
  }

  function go(allowed: number, depth: number): number {
    if (++steps > stop || depth > DEEPEST) return OPEN
    let low = top,
      at = 0
    for (let i = 0; i < surface.length; i++)
      if ((surface[i] as number) < low) {
        low = surface[i] as number
        at = i
      }
    if (low === top) return FOUND
    if (wastes(allowed)) return NONE
    const key = String.fromCharCode(...surface),
      before = hopeless.get(key)
    if (before !== undefined && allowed <= before) return NONE
    const y0 = Math.floor(at / n),
      x0 = at - y0 * n
    const start = turns.length > 1 ? chance.word() % turns.length : 0,
      back = turns.length > 2 && chance.word() % 2 === 1
    for (let k = 0; k < turns.length; k++) {
      const t = (start + (back ? turns.length - k : k)) % turns.length,
        [ex, ey, ez] = ends[t] as [Int32Array, Int32Array, Int32Array]
      const x1 = ex[x0] as number,
        y1 = ey[y0] as number,
        z1 = ez[low] as number
      if (x1 < 0 || y1 < 0 || z1 < 0 || !level(x0, x1, y0, y1, low)) continue
      raise(x0, x1, y0, y1, z1)
      placed.push({ at: [X[x0] as number, Y[y0] as number, Z[low] as number], sides: turns[t] as Whole })
      const found = go(allowed, depth + 1)
      if (found === FOUND) return FOUND
      placed.pop()
      raise(x0, x1, y0, y1, low)
      if (found === OPEN) return OPEN
    }
    const empty = (dx[x0] as number) * (dy[y0] as number) * (dz[low] as number)
    if (empty <= allowed) {
      surface[at] = low + 1
      const found = go(allowed - empty, depth + 1)
      if (found === FOUND) return FOUND
      surface[at] = low
      if (found === OPEN) return OPEN
    }
    if (before !== undefined || hopeless.size < REMEMBERED) hopeless.set(key, allowed)
    return NONE
  }

  return {
    steps: () => steps,
    look(boxes, budget, by) {
      const allowed = length * width * height - boxes * volume
      if (allowed < 0) return 'none'
      surface.fill(0)
      placed = []
      stop = steps + budget
      chance = by
      const found = go(allowed, 0)
      return found === FOUND ? { placed: [...placed] } : found === NONE ? 'none' : 'open'
    },
  }
}
