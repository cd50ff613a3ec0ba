import type { Whole } from './answer.ts'

/** A box that may be placed: its sides in cells, of which kind it is. */
export type Way = { readonly kind: number; readonly sides: Whole }
/** A box placed: which way, and the cell of its low corner. */
export type Chosen = { readonly way: number; readonly at: Whole }
export type SearchedThrough = {
  readonly chosen: readonly Chosen[]
  readonly cells: number
  readonly proven: boolean
  readonly steps: number
}

/** Cells of a space that is searched through, at most. */
export const FEW_CELLS = 400

/**
 * Every way to place boxes on the free cells of a small space, for as many cells filled as can be: cell after cell from the bottom up, each the low corner of a box in
 * one of its ways, or of none. Given up after so many steps; then the best so far is not proven.
 *
 * `counts` are boxes of each kind; `may` says whether a box may join those chosen, for clearances and what must stand on what. Boxes chosen before lie no higher. `sinks`:
 * boxes may be let down until something is under them, so that none need be tried in mid-air.
 */
export function searchThrough(
  size: Whole,
  free: Uint8Array,
  ways: readonly Way[],
  counts: readonly number[],
  may: (one: Chosen, chosen: readonly Chosen[]) => boolean,
  sinks: boolean,
  budget: number,
): SearchedThrough {
  const [nx, ny, nz] = size,
    taken = Uint8Array.from(free, f => 1 - f),
    left = [...counts],
    chosen: Chosen[] = []
  const cellsOf = ways.map(({ sides: [a, b, c] }) => {
    const out: number[] = []
    for (let k = 0; k < c; k++) for (let j = 0; j < b; j++) for (let i = 0; i < a; i++) out.push(i + nx * (j + ny * k))
    return out
  })
  const firstWay = counts.map((_, kind) => ways.findIndex(w => w.kind === kind))
  let best: readonly Chosen[] = [],
    most = -1,
    steps = 0
  const fits = (way: number, x: number, y: number, z: number, cell: number): boolean => {
    const [a, b, c] = (ways[way] as Way).sides
    if (x + a > nx || y + b > ny || z + c > nz) return false
    for (const d of cellsOf[way] as number[]) if (taken[cell + d]) return false
    return true
  }
  const restsOn = (way: number, cell: number): boolean => {
    const [a, b] = (ways[way] as Way).sides,
      under = cell - nx * ny
    if (under < 0) return true
    for (let j = 0; j < b; j++) for (let i = 0; i < a; i++) if (taken[under + i + nx * j]) return true
    return false
  }
  const cellsOfWay = cellsOf.map(cells => cells.length)
  /** Most cells that can still be filled from a cell on: what is free, or what is left; of boxes of one size whole ones. */
  const hope = (from: number): number => {
    let room = 0
    for (let i = from; i < taken.length; i++) if (!taken[i]) room++
    let small = Infinity,
      large = 0,
      boxes = 0
    for (let w = 0; w < ways.length; w++) {
      const { kind } = ways[w] as Way,
        cells = cellsOfWay[w] as number
      if (!left[kind]) continue
      if (cells < small) small = cells
      if (cells > large) large = cells
      if (firstWay[kind] === w) boxes += (left[kind] as number) * cells
    }
    if (small > room) return 0
    return Math.min(boxes, small === large ? Math.floor(room / small) * small : room)
  }
  const go = (from: number, filled: number): void => {
    if (filled > most) {
      most = filled
      best = [...chosen]
    }
    for (let cell = from; cell < taken.length; cell++) {
      if (taken[cell]) continue
      if (steps >= budget || filled + hope(cell) <= most) return
      steps++
      const x = cell % nx,
        y = Math.floor(cell / nx) % ny,
        z = Math.floor(cell / (nx * ny))
      for (let w = 0; w < ways.length; w++) {
        const { kind } = ways[w] as Way,
          one: Chosen = { way: w, at: [x, y, z] }
        if (!left[kind] || !fits(w, x, y, z, cell) || (sinks && !restsOn(w, cell)) || !may(one, chosen)) continue
        const cells = cellsOf[w] as number[]
        for (const d of cells) taken[cell + d] = 1
        left[kind] = (left[kind] as number) - 1
        chosen.push(one)
        go(cell + 1, filled + cells.length)
        chosen.pop()
        left[kind] = (left[kind] as number) + 1
        for (const d of cells) taken[cell + d] = 0
        if (steps >= budget) return
      }
    }
  }
  go(0, 0)
  return { chosen: best, cells: most, proven: steps < budget, steps }
}
