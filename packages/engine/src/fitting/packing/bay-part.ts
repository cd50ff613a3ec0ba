import type { Random } from '../../numerics/random.ts'
import type { Whole } from './answer.ts'
import type { BayLattice, LatticeTurn } from './bay-lattice.ts'

/** A module on the lattice: which turn, and its low corner. */
export type Spot = { readonly turn: number; readonly at: Whole }

/** An order to fill in: axes from the slowest to the fastest, and from which end of each. */
export type Sweep = { readonly axes: Whole; readonly fromHigh: readonly [boolean, boolean, boolean] }

const ORDERS: readonly Whole[] = [
  [2, 1, 0],
  [2, 0, 1],
  [1, 2, 0],
  [1, 0, 2],
  [0, 2, 1],
  [0, 1, 2],
]
/** The 48 orders there are. */
export const SWEEPS: readonly Sweep[] = ORDERS.flatMap(axes =>
  Array.from({ length: 8 }, (_, n) => ({ axes, fromHigh: [(n & 1) > 0, (n & 2) > 0, (n & 4) > 0] as const })),
)

type Range = { readonly from: Whole; readonly to: Whole }
/** Where a second module may not have its low corner, counted from that of the first: boxes of places, ends not included. */
export type Clashes = readonly (readonly (readonly Range[])[])[]

const three = (f: (i: 0 | 1 | 2) => number): Whole => [f(0), f(1), f(2)]

/** For every pair of turns, the places that clash: bodies closer than the clearance, or the body of one in the strip of the other. */
export function clashes(turns: readonly LatticeTurn[]): Clashes {
  return turns.map(a =>
    turns.map(b => {
      const out: Range[] = [{ from: three(i => 1 - b.pitch[i]), to: a.pitch }]
      const { strip } = a,
        other = b.strip
      if (strip) out.push({ from: three(i => strip.from[i] - b.body[i] + 1), to: strip.to })
      if (other) out.push({ from: three(i => 1 - other.to[i]), to: three(i => a.body[i] - other.from[i]) })
      return out
    }),
  )
}

/** Whether two modules clash. */
export function clash(table: Clashes, a: Spot, b: Spot): boolean {
  for (const { from, to } of (table[a.turn] as Clashes[number])[b.turn] as readonly Range[])
    if (
      b.at[0] - a.at[0] >= from[0] &&
      b.at[0] - a.at[0] < to[0] &&
      b.at[1] - a.at[1] >= from[1] &&
      b.at[1] - a.at[1] < to[1] &&
      b.at[2] - a.at[2] >= from[2] &&
      b.at[2] - a.at[2] < to[2]
    )
      return true
  return false
}

/**
 * A box of the bay that is filled anew, in the order of a sweep: for each turn the places still open, in that order, so that the first mark is the next place.
 */
export class BayPart {
  private readonly lattice: BayLattice
  private readonly table: Clashes
  private low: Whole = [0, 0, 0]
  private high: Whole = [0, 0, 0]
  private sweep: Sweep = SWEEPS[0] as Sweep
  private size = 0
  /** Cells along the sweep's axes, slowest first. */
  private dims: Whole = [0, 0, 0]
  /** One layer for each module placed here, each with the places of all turns. */
  private readonly layers: Uint8Array[] = []
  steps = 0

  constructor(lattice: BayLattice, table: Clashes) {
    this.lattice = lattice
    this.table = table
  }

  private layer(depth: number): Uint8Array {
    const need = this.size * this.lattice.turns.length,
      had = this.layers[depth]
    if (had && had.length >= need) return had
    const made = new Uint8Array(Math.ceil(need * 1.5))
    this.layers[depth] = made
    return made
  }

  /** Opens a box of the bay with the modules that stay, to be filled in the order of a sweep. */
  open(low: Whole, high: Whole, sweep: Sweep, stay: readonly Spot[]): void {
    this.low = low
    this.high = high
    this.sweep = sweep
    this.dims = three(i => high[sweep.axes[i] as 0] - low[sweep.axes[i] as 0])
    this.size = this.dims[0] * this.dims[1] * this.dims[2]
    const layer = this.layer(0)
    this.lattice.turns.forEach((turn, t) => this.copy(layer, t, turn))
    for (const spot of stay) this.close(layer, spot)
  }

  private copy(layer: Uint8Array, t: number, { body }: LatticeTurn): void {
    const places = this.lattice.open[t] as Uint8Array,
      { counts } = this.lattice,
      strides: Whole = [1, counts[0], counts[0] * counts[1]],
      { axes, fromHigh } = this.sweep
    const [n0, n1, n2] = three(i => Math.max(0, (this.dims[i] as number) - body[axes[i] as 0] + 1))
    const step = three(i => strides[axes[i] as 0] * (fromHigh[axes[i] as 0] ? -1 : 1))
    let start = 0
    for (const axis of [0, 1, 2] as const) start += strides[axis] * (fromHigh[axis] ? this.high[axis] - body[axis] : this.low[axis])
    layer.fill(0, t * this.size, (t + 1) * this.size)
    for (let a = 0; a < n0; a++)
      for (let b = 0; b < n1; b++) {
        let from = start + a * step[0] + b * step[1],
          to = t * this.size + (a * this.dims[1] + b) * this.dims[2]
        for (let c = 0; c < n2; c++, from += step[2], to++) layer[to] = places[from] as number
      }
  }

  /** Takes out every place that clashes with a module. */
  private close(layer: Uint8Array, spot: Spot): void {
    const { axes, fromHigh } = this.sweep,
      { dims, low, high, size } = this
    this.lattice.turns.forEach(({ body }, t) => {
      for (const { from, to } of (this.table[spot.turn] as Clashes[number])[t] as readonly Range[]) {
        const q1 = [0, 0, 0],
          q2 = [0, 0, 0]
        for (let i = 0; i < 3; i++) {
          const axis = axes[i] as 0 | 1 | 2,
            a = spot.at[axis] + from[axis],
            b = spot.at[axis] + to[axis]
          q1[i] = Math.max(0, fromHigh[axis] ? high[axis] - body[axis] - b + 1 : a - low[axis])
          q2[i] = Math.min(dims[i] as number, fromHigh[axis] ? high[axis] - body[axis] - a + 1 : b - low[axis])
        }
        const [c1, c2] = [q1[2] as number, q2[2] as number]
        if (c1 >= c2) continue
        for (let a = q1[0] as number; a < (q2[0] as number); a++)
          for (let b = q1[1] as number; b < (q2[1] as number); b++) {
            const row = t * size + (a * dims[1] + b) * dims[2]
            layer.fill(0, row + c1, row + c2)
          }
      }
    })
  }

  private spot(t: number, index: number): Spot {
    const { axes, fromHigh } = this.sweep,
      { body } = this.lattice.turns[t] as LatticeTurn,
      q = [Math.floor(index / (this.dims[1] * this.dims[2])), Math.floor(index / this.dims[2]) % this.dims[1], index % this.dims[2]],
      at: [number, number, number] = [0, 0, 0]
    axes.forEach((axis, i) => {
      const k = axis as 0 | 1 | 2
      at[k] = fromHigh[k] ? this.high[k] - body[k] - (q[i] as number) : this.low[k] + (q[i] as number)
    })
    return { turn: t, at }
  }

  /** Fills the part once, without a second thought, each time with the turn whose next place comes first, of equals with any. */
  fillOnce(chance: Random): Spot[] {
    const layer = this.layer(0),
      out: Spot[] = [],
      turns = this.lattice.turns.length,
      next = new Int32Array(turns)
    for (;;) {
      let first = -1,
        at = this.size
      for (let t = 0; t < turns; t++) {
        const place = this.nextOf(layer, t, next[t] as number)
        next[t] = place < 0 ? this.size : place
        if (place < 0 || place > at || (place === at && chance.word() % 2 === 0)) continue
        at = place
        first = t
      }
      if (first < 0) return out
      const spot = this.spot(first, at)
      this.close(layer, spot)
      this.steps++
      out.push(spot)
    }
  }

  private nextOf(layer: Uint8Array, t: number, from: number): number {
    if (from >= this.size) return -1
    const end = (t + 1) * this.size,
      found = layer.indexOf(1, t * this.size + from)
    return found < 0 || found >= end ? -1 : found - t * this.size
  }

  /** The most modules found for the part in so many steps, trying turns in turn; stops at the number wanted. */
  fillWell(chance: Random, wanted: number, budget: number): Spot[] {
    const turns = this.lattice.turns.length,
      stop = this.steps + budget,
      chosen: Spot[] = []
    let best: Spot[] = []
    const go = (depth: number, from: Int32Array): boolean => {
      const layer = this.layer(depth),
        next = new Int32Array(turns),
        order: number[] = []
      for (let t = 0; t < turns; t++) {
        next[t] = this.nextOf(layer, t, from[t] as number)
        if ((next[t] as number) >= 0) order.push(t)
        else next[t] = this.size
      }
      if (depth > best.length) best = [...chosen]
      if (order.length === 0) return best.length >= wanted
      const keys = Float64Array.from(next, n => n + (chance.word() % 4 === 0 ? this.size * chance.uniform() : chance.uniform()))
      order.sort((a, b) => (keys[a] as number) - (keys[b] as number))
      for (const t of order) {
        if (this.steps >= stop && depth < best.length) return false
        this.steps++
        const spot = this.spot(t, next[t] as number),
          deeper = this.layer(depth + 1)
        deeper.set(layer.subarray(0, this.size * turns))
        this.close(deeper, spot)
        chosen.push(spot)
        if (go(depth + 1, next)) return true
        chosen.pop()
      }
      return false
    }
    go(0, new Int32Array(turns))
    return best
  }
}
