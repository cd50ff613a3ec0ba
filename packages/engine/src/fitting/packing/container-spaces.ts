import type { Whole } from './answer.ts'
import type { Support } from './container-blocks.ts'

/** Numbers kept for one empty space: its low corner, its high corner, how far its nearest corner is from that of the container. */
export const WIDE = 7

/** The largest empty cuboids of a half-filled container, overlapping each other. */
export class EmptySpaces {
  count = 0
  at = new Int32Array(64 * WIDE)
  private readonly room: Whole
  private readonly standing: boolean
  private readonly least: Whole

  /** `least`: shortest side any box has along each axis; narrower spaces are not kept. */
  constructor(room: Whole, support: Support, least: Whole) {
    this.room = room
    this.standing = support === 'full'
    this.least = least
    this.add(0, 0, 0, room[0], room[1], room[2])
  }

  copyFrom(other: EmptySpaces): void {
    if (this.at.length < other.at.length) this.at = new Int32Array(other.at.length)
    this.at.set(other.at.subarray(0, other.count * WIDE))
    this.count = other.count
  }

  remove(i: number): void {
    this.count--
    if (i !== this.count) this.at.copyWithin(i * WIDE, this.count * WIDE, (this.count + 1) * WIDE)
  }

  /** The space nearest to a corner of the container, of those the largest; -1 when there is none. */
  nearest(): number {
    let best = -1,
      near = Infinity,
      large = 0
    for (let i = 0, p = 0; i < this.count; i++, p += WIDE) {
      const d = this.at[p + 6] as number
      if (d > near) continue
      const v = this.volume(i)
      if (d === near && v <= large) continue
      near = d
      large = v
      best = i
    }
    return best
  }

  volume(i: number): number {
    const { at } = this,
      p = i * WIDE
    return (
      ((at[p + 3] as number) - (at[p] as number)) *
      ((at[p + 4] as number) - (at[p + 1] as number)) *
      ((at[p + 5] as number) - (at[p + 2] as number))
    )
  }

  /** Takes a block out: spaces it reaches into are cut to what is left beside, over and (where nothing need stand) under it. `top`: end of what carries. */
  cut(x1: number, y1: number, z1: number, x2: number, y2: number, z2: number, topX: number, topY: number): void {
    const old = this.count
    let kept = 0
    const hit: number[] = []
    const { at } = this
    for (let i = 0, p = 0; i < old; i++, p += WIDE) {
      const a1 = at[p] as number,
        b1 = at[p + 1] as number,
        c1 = at[p + 2] as number,
        a2 = at[p + 3] as number,
        b2 = at[p + 4] as number,
        c2 = at[p + 5] as number
      if (a1 >= x2 || a2 <= x1 || b1 >= y2 || b2 <= y1 || c1 >= z2 || c2 <= z1) {
        if (kept !== i) at.copyWithin(kept * WIDE, p, p + WIDE)
        kept++
      } else hit.push(a1, b1, c1, a2, b2, c2)
    }
    this.count = kept
    for (let h = 0; h < hit.length; h += 6) {
      const a1 = hit[h] as number,
        b1 = hit[h + 1] as number,
        c1 = hit[h + 2] as number,
        a2 = hit[h + 3] as number,
        b2 = hit[h + 4] as number,
        c2 = hit[h + 5] as number
      if (a1 < x1) this.add(a1, b1, c1, x1, b2, c2)
      if (x2 < a2) this.add(x2, b1, c1, a2, b2, c2)
      if (b1 < y1) this.add(a1, b1, c1, a2, y1, c2)
      if (y2 < b2) this.add(a1, y2, c1, a2, b2, c2)
      if (this.standing) {
        if (z2 < c2) this.add(Math.max(a1, x1), Math.max(b1, y1), z2, Math.min(a2, topX), Math.min(b2, topY), c2)
        continue
      }
      if (z2 < c2) this.add(a1, b1, z2, a2, b2, c2)
      if (c1 < z1) this.add(a1, b1, c1, a2, b2, z1)
    }
  }

  /** Adds a space unless it is too narrow or lies in another; drops those that lie in it. */
  private add(x1: number, y1: number, z1: number, x2: number, y2: number, z2: number): void {
    const { room, least } = this
    if (x2 - x1 < least[0] || y2 - y1 < least[1] || z2 - z1 < least[2]) return
    let { at } = this
    for (let i = 0, p = 0; i < this.count; i++, p += WIDE) {
      const a1 = at[p] as number,
        b1 = at[p + 1] as number,
        c1 = at[p + 2] as number,
        a2 = at[p + 3] as number,
        b2 = at[p + 4] as number,
        c2 = at[p + 5] as number
      if (a1 <= x1 && b1 <= y1 && c1 <= z1 && a2 >= x2 && b2 >= y2 && c2 >= z2) return
      if (a1 >= x1 && b1 >= y1 && c1 >= z1 && a2 <= x2 && b2 <= y2 && c2 <= z2) {
        this.remove(i)
        i--
        p -= WIDE
      }
    }
    if ((this.count + 1) * WIDE > at.length) {
      const more = new Int32Array(at.length * 2)
      more.set(at)
      this.at = at = more
    }
    const p = this.count++ * WIDE
    at[p] = x1
    at[p + 1] = y1
    at[p + 2] = z1
    at[p + 3] = x2
    at[p + 4] = y2
    at[p + 5] = z2
    at[p + 6] = Math.min(x1, room[0] - x2) + Math.min(y1, room[1] - y2) + (this.standing ? z1 : Math.min(z1, room[2] - z2))
    if (this.standing && z1 > 0) this.join(x1, y1, z1, x2, y2, z2)
  }

  /** Where boxes must stand: floors of one height that meet carry together. Adds the spaces over both. */
  private join(x1: number, y1: number, z1: number, x2: number, y2: number, z2: number): void {
    const both: number[] = [],
      { at, least } = this
    for (let i = 0, p = 0; i < this.count; i++, p += WIDE) {
      if (at[p + 2] !== z1) continue
      const a1 = at[p] as number,
        b1 = at[p + 1] as number,
        a2 = at[p + 3] as number,
        b2 = at[p + 4] as number,
        high = Math.min(z2, at[p + 5] as number)
      if (a2 === x1 || a1 === x2) {
        const [low, end] = [Math.max(b1, y1), Math.min(b2, y2)]
        if (end - low >= least[1]) both.push(Math.min(a1, x1), low, Math.max(a2, x2), end, high)
      } else if (b2 === y1 || b1 === y2) {
        const [low, end] = [Math.max(a1, x1), Math.min(a2, x2)]
        if (end - low >= least[0]) both.push(low, Math.min(b1, y1), end, Math.max(b2, y2), high)
      }
    }
    for (let k = 0; k < both.length; k += 5)
      this.add(both[k] as number, both[k + 1] as number, z1, both[k + 2] as number, both[k + 3] as number, both[k + 4] as number)
  }
}
