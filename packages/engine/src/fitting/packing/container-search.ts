import type { Whole } from './answer.ts'
import { type Blocks, type BoxKind, type Support, waysRound } from './container-blocks.ts'
import { EmptySpaces, WIDE } from './container-spaces.ts'
import { raster } from './raster.ts'

/** A half-filled container. */
export class Load {
  readonly spaces: EmptySpaces
  /** Boxes of each kind still outside. */
  readonly left: Int32Array
  /** Blocks that may still be had, largest first. */
  ids: Uint16Array
  idCount = 0
  /** Blocks placed: low corner, high corner, which. */
  placed = new Int32Array(64 * WIDE)
  placedCount = 0
  volume = 0

  constructor(space: Whole, kinds: readonly BoxKind[], blocks: Blocks, support: Support) {
    const least = [0, 1, 2].map(i => Math.min(...kinds.flatMap(k => waysRound(k).map(w => w[i] as number)))) as unknown as Whole
    this.spaces = new EmptySpaces(space, support, least)
    this.left = Int32Array.from(kinds, k => k.count)
    this.ids = Uint16Array.from({ length: blocks.count }, (_, i) => i)
    this.idCount = blocks.count
  }

  copyFrom(other: Load): void {
    this.spaces.copyFrom(other.spaces)
    this.left.set(other.left)
    if (this.ids.length < other.idCount) this.ids = new Uint16Array(other.idCount)
    this.ids.set(other.ids.subarray(0, other.idCount))
    this.idCount = other.idCount
    if (this.placed.length < other.placed.length) this.placed = new Int32Array(other.placed.length)
    this.placed.set(other.placed.subarray(0, other.placedCount * WIDE))
    this.placedCount = other.placedCount
    this.volume = other.volume
  }
}

/**
 * How the next block is valued: contact to the power of `contact`, the part still usable to that of `loss`, boxes to that of `-boxes`. Gaps up to `near` of the container count
 * as contact, and blocks larger than `largest` of it are left alone.
 */
export type Taste = Readonly<Record<'contact' | 'boxes' | 'loss' | 'near' | 'largest', number>>
export const PLAIN: Taste = { contact: 4, boxes: 0.2, loss: 1, near: 0.04, largest: 1 }

/**
 * Puts blocks into a container one after the other: the empty space nearest to a corner is served next, with the block of the greatest value
 * volume · (part of the space that sums of sides can still use) · contact⁴ / boxes^0.2.
 *
 * Source: Araya, Guerrero and Nuñez, VCS: a new heuristic function for selecting boxes in the single container loading problem, Computers & Operations Research 82 (2017)
 * 93–101 (from memory).
 */
export class Loader {
  private readonly space: Whole
  private readonly kinds: readonly BoxKind[]
  private readonly blocks: Blocks
  private readonly support: Support
  private readonly sums = new Map<string, readonly [Int32Array, Int32Array, Int32Array]>()
  private readonly near = new Int32Array(3)
  private worth: Float64Array
  private taste: Taste = PLAIN
  private neighbours = new Int32Array(64 * 6)
  private neighbourCount = 0
  steps = 0

  constructor(space: Whole, kinds: readonly BoxKind[], blocks: Blocks, support: Support) {
    this.space = space
    this.kinds = kinds
    this.blocks = blocks
    this.support = support
    this.worth = new Float64Array(blocks.count)
    this.prefer(PLAIN)
  }

  empty(): Load {
    return new Load(this.space, this.kinds, this.blocks, this.support)
  }

  prefer(taste: Taste): void {
    this.taste = taste
    this.near.set(this.space.map(s => Math.floor(s * taste.near)))
    const { volume, boxes } = this.blocks,
      largest = taste.largest * this.space[0] * this.space[1] * this.space[2]
    this.worth = volume.map((v, b) => (v > largest && boxes[b] !== 1 ? 0 : v * (boxes[b] as number) ** -taste.boxes))
  }

  /** The best blocks for the space served next, best first; none when the container is full. Spaces nothing fits into are given up. */
  next(load: Load, most: number, out: Int32Array, values: Float64Array): number {
    for (;;) {
      const space = load.spaces.nearest()
      if (space < 0) return 0
      const found = this.best(load, space, most, out, values)
      if (found > 0) return found
      load.spaces.remove(space)
    }
  }

  private best(load: Load, space: number, most: number, out: Int32Array, values: Float64Array): number {
    const { length, width, height } = this.blocks,
      { ids, idCount } = load,
      { at } = load.spaces,
      p = space * WIDE
    const dl = (at[p + 3] as number) - (at[p] as number),
      dw = (at[p + 4] as number) - (at[p + 1] as number),
      dh = (at[p + 5] as number) - (at[p + 2] as number)
    const [sx, sy, sz] = this.sumsOf(load.left),
      whole = dl * dw * dh
    this.lookAround(load, p)
    let found = 0
    for (let i = 0; i < idCount; i++) {
      const b = ids[i] as number,
        l = length[b] as number,
        w = width[b] as number,
        h = height[b] as number
      if (l > dl || w > dw || h > dh || this.worth[b] === 0) continue
      const used = ((l + (sx[dl - l] as number)) * (w + (sy[dw - w] as number)) * (h + (sz[dh - h] as number))) / whole
      let value = (this.worth[b] as number) * (this.taste.loss === 1 ? used : used ** this.taste.loss)
      if (found === most && value <= (values[found - 1] as number)) continue
      const c = this.contact(at, p, l, w, h)
      value *= this.taste.contact === 4 ? c * c * c * c : c ** this.taste.contact
      if (found === most && value <= (values[found - 1] as number)) continue
      let k = found < most ? found++ : found - 1
      for (; k > 0 && (values[k - 1] as number) < value; k--) {
        values[k] = values[k - 1] as number
        out[k] = out[k - 1] as number
      }
      values[k] = value
      out[k] = b
    }
    return found
  }

  /** Largest sum of sides of boxes still outside, up to each length, along each axis. */
  private sumsOf(left: Int32Array): readonly [Int32Array, Int32Array, Int32Array] {
    let key = ''
    for (let k = 0; k < left.length; k += 16) {
      let bits = 0
      for (let j = k; j < k + 16 && j < left.length; j++) if ((left[j] as number) > 0) bits |= 1 << (j - k)
      key += String.fromCharCode(bits)
    }
    let sums = this.sums.get(key)
    if (!sums) {
      const ways = this.kinds.flatMap((k, i) => ((left[i] as number) > 0 ? waysRound(k) : []))
      sums = this.space.map((s, axis) => raster(s, [...new Set(ways.map(w => w[axis] as number))]).below) as [
        Int32Array,
        Int32Array,
        Int32Array,
      ]
      if (this.sums.size > 20_000) this.sums.clear()
      this.sums.set(key, sums)
    }
    return sums
  }

  /** Keeps the placed blocks that a block in this space may touch. */
  private lookAround(load: Load, p: number): void {
    const { at } = load.spaces,
      [nx, ny, nz] = this.near as unknown as Whole,
      x1 = (at[p] as number) - nx,
      y1 = (at[p + 1] as number) - ny,
      z1 = (at[p + 2] as number) - nz,
      x2 = (at[p + 3] as number) + nx,
      y2 = (at[p + 4] as number) + ny,
      z2 = (at[p + 5] as number) + nz,
      { placed } = load
    if (this.neighbours.length < placed.length) this.neighbours = new Int32Array(placed.length)
    let n = 0
    for (let i = 0, q = 0; i < load.placedCount; i++, q += WIDE)
      if (
        (placed[q] as number) <= x2 &&
        (placed[q + 3] as number) >= x1 &&
        (placed[q + 1] as number) <= y2 &&
        (placed[q + 4] as number) >= y1 &&
        (placed[q + 2] as number) <= z2 &&
        (placed[q + 5] as number) >= z1
      ) {
        for (let k = 0; k < 6; k++) this.neighbours[n + k] = placed[q + k] as number
        n += 6
      }
    this.neighbourCount = n
  }

  /** Low corner of a block in a space: in the corner that is nearest to one of the container, on the floor where it must stand. */
  private corner(at: Int32Array, p: number, axis: 0 | 1 | 2, side: number): number {
    const low = at[p + axis] as number,
      high = at[p + axis + 3] as number
    if (axis === 2 && this.support === 'full') return low
    return low <= this.space[axis] - high ? low : high - side
  }

  /** Part of the faces of a block, placed in a space, that touch the container or other blocks, small gaps left out. */
  private contact(at: Int32Array, p: number, l: number, w: number, h: number): number {
    const x1 = this.corner(at, p, 0, l),
      y1 = this.corner(at, p, 1, w),
      z1 = this.corner(at, p, 2, h),
      x2 = x1 + l,
      y2 = y1 + w,
      z2 = z1 + h,
      { near, space, neighbours } = this,
      nx = near[0] as number,
      ny = near[1] as number,
      nz = near[2] as number
    const ax = w * h,
      ay = l * h,
      az = l * w
    let left = x1 <= nx ? ax : 0,
      right = space[0] - x2 <= nx ? ax : 0,
      front = y1 <= ny ? ay : 0,
      back = space[1] - y2 <= ny ? ay : 0,
      below = this.support === 'full' || z1 <= nz ? az : 0,
      above = space[2] - z2 <= nz ? az : 0
    for (let i = 0, n = this.neighbourCount; i < n; i += 6) {
      const a1 = neighbours[i] as number,
        b1 = neighbours[i + 1] as number,
        c1 = neighbours[i + 2] as number,
        a2 = neighbours[i + 3] as number,
        b2 = neighbours[i + 4] as number,
        c2 = neighbours[i + 5] as number
      const ox = (a2 < x2 ? a2 : x2) - (a1 > x1 ? a1 : x1),
        oy = (b2 < y2 ? b2 : y2) - (b1 > y1 ? b1 : y1),
        oz = (c2 < z2 ? c2 : z2) - (c1 > z1 ? c1 : z1)
      if (oy > 0 && oz > 0) {
        if (a2 <= x1) {
          if (x1 - a2 <= nx) left += oy * oz
        } else if (a1 >= x2 && a1 - x2 <= nx) right += oy * oz
      } else if (ox > 0 && oz > 0) {
        if (b2 <= y1) {
          if (y1 - b2 <= ny) front += ox * oz
        } else if (b1 >= y2 && b1 - y2 <= ny) back += ox * oz
      } else if (ox > 0 && oy > 0) {
        if (c2 <= z1) {
          if (z1 - c2 <= nz) below += ox * oy
        } else if (c1 >= z2 && c1 - z2 <= nz) above += ox * oy
      }
    }
    const touched =
      Math.min(left, ax) + Math.min(right, ax) + Math.min(front, ay) + Math.min(back, ay) + Math.min(below, az) + Math.min(above, az)
    return touched / (2 * (ax + ay + az))
  }

  /** Puts a block into the space served next. */
  place(load: Load, b: number): void {
    const { length, width, height, topLength, topWidth, from, kind, takes, volume } = this.blocks,
      { spaces } = load,
      space = spaces.nearest(),
      p = space * WIDE,
      l = length[b] as number,
      w = width[b] as number,
      h = height[b] as number
    const x = this.corner(spaces.at, p, 0, l),
      y = this.corner(spaces.at, p, 1, w),
      z = this.corner(spaces.at, p, 2, h)
    if ((load.placedCount + 1) * WIDE > load.placed.length) {
      const more = new Int32Array(load.placed.length * 2)
      more.set(load.placed)
      load.placed = more
    }
    load.placed.set([x, y, z, x + l, y + w, z + h, b], load.placedCount++ * WIDE)
    load.volume += volume[b] as number
    for (let i = from[b] as number; i < (from[b + 1] as number); i++) {
      const k = kind[i] as number
      load.left[k] = (load.left[k] as number) - (takes[i] as number)
    }
    this.forget(load)
    spaces.cut(x, y, z, x + l, y + w, z + h, x + (topLength[b] as number), y + (topWidth[b] as number))
    this.steps++
  }

  /** Blocks for which too few boxes are left are dropped for good. */
  private forget(load: Load): void {
    const { from, kind, takes } = this.blocks,
      { ids, left } = load
    let kept = 0
    for (let i = 0; i < load.idCount; i++) {
      const b = ids[i] as number,
        end = from[b + 1] as number
      let j = from[b] as number
      while (j < end && (left[kind[j] as number] as number) >= (takes[j] as number)) j++
      if (j === end) ids[kept++] = b
    }
    load.idCount = kept
  }

  private readonly one = new Int32Array(1)
  private readonly value = new Float64Array(1)
  /** Fills up with the best block each time. */
  fillUp(load: Load): void {
    while (this.next(load, 1, this.one, this.value) > 0) this.place(load, this.one[0] as number)
  }
}
