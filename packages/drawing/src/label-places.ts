import type { Box, Pixel } from './clip.ts'

const CELL = 4
/** Of a line of text, for keeping labels apart [px]. */
export const TEXT_HEIGHT = 15

/** Which lines pass where, in cells of a few pixels, and which places already hold a text. */
export class Ground {
  private readonly columns: number
  private readonly cells: Uint32Array
  private readonly taken: Box[] = []
  readonly box: Box
  constructor(box: Box) {
    this.box = box
    this.columns = Math.ceil((box.right - box.left) / CELL) + 1
    this.cells = new Uint32Array(this.columns * (Math.ceil((box.bottom - box.top) / CELL) + 1))
  }
  /** Notes a line; more than thirty-one share the last mark. */
  draw(line: number, pieces: readonly (readonly Pixel[])[]): void {
    const bit = 1 << Math.min(line, 30)
    for (const piece of pieces)
      for (let i = 0; i < piece.length; i++) {
        const [x0, y0] = piece[Math.max(0, i - 1)] as Pixel,
          [x1, y1] = piece[i] as Pixel,
          steps = Math.max(1, Math.ceil(Math.max(Math.abs(x1 - x0), Math.abs(y1 - y0)) / (CELL / 2)))
        for (let s = 0; s <= steps; s++) {
          const at = this.cell(x0 + ((x1 - x0) * s) / steps, y0 + ((y1 - y0) * s) / steps)
          this.cells[at] = (this.cells[at] as number) | bit
        }
      }
  }
  private cell(x: number, y: number): number {
    return Math.floor((y - this.box.top) / CELL) * this.columns + Math.floor((x - this.box.left) / CELL)
  }
  /** Marks of the lines that pass through a box. */
  through(b: Box): number {
    let bits = 0
    const column = (x: number): number => Math.floor((x - this.box.left) / CELL),
      row = (y: number): number => Math.floor((y - this.box.top) / CELL)
    for (let r = Math.max(0, row(b.top)); r <= row(Math.min(b.bottom, this.box.bottom)); r++)
      for (let c = Math.max(0, column(b.left)); c <= column(Math.min(b.right, this.box.right)); c++)
        bits |= this.cells[r * this.columns + c] as number
    return bits
  }
  /** How many lines pass through a box. */
  lines(b: Box): number {
    return count(this.through(b))
  }
  fits(b: Box): boolean {
    const { left, top, right, bottom } = this.box
    return b.left >= left && b.top >= top && b.right <= right && b.bottom <= bottom && !this.taken.some(t => overlap(t, b))
  }
  take(b: Box): void {
    this.taken.push(b)
  }
}
export const overlap = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom

export type Size = { readonly width: number; readonly height: number }
/** Which end of a line its label belongs to. */
export type End = 'start' | 'end'
const LOOKS = 28
const GAP = 3
const REACH = 7

/**
 * A place beside a line for its label: near the end it belongs to, above or below, where it covers no other label and as few lines as
 * can be, and where the line is not hidden among others. Undefined where there is no room, or no `clear` place where one is wanted.
 */
export function placeBeside(
  ground: Ground,
  line: number,
  pieces: readonly (readonly Pixel[])[],
  size: Size,
  end: End,
  clear: boolean,
): Box | undefined {
  const points = evenly(pieces, LOOKS),
    own = 1 << Math.min(line, 30)
  let best: { box: Box; cost: number } | undefined
  for (const [i, [x, y]] of points.entries()) {
    const away = (end === 'start' ? i : points.length - 1 - i) / Math.max(1, points.length - 1),
      crowd = count(ground.through({ left: x - REACH, right: x + REACH, top: y - REACH, bottom: y + REACH }) & ~own)
    for (const box of around(x, y, size)) {
      if (!ground.fits(box)) continue
      const through = ground.through({ ...box, top: box.top - GAP, bottom: box.bottom + GAP }),
        cost = 4 * count(through & ~own) + (ground.through(box) & own ? 1.5 : 0) + 2 * crowd + 2.5 * away
      if (!best || cost < best.cost) best = { box, cost }
    }
  }
  return best && (best.cost < 7 || !clear) ? best.box : undefined
}
/** Boxes of a size above and below a point, to its right, its left and over it. */
function around(x: number, y: number, { width, height }: Size): readonly Box[] {
  return [y - GAP - height, y + GAP].flatMap(top =>
    [x + GAP, x - GAP - width, x - width / 2].map(left => ({ left, top, right: left + width, bottom: top + height })),
  )
}
/** Some points along a line, evenly across the picture; between two points far apart the line is followed. */
function evenly(pieces: readonly (readonly Pixel[])[], about: number): readonly Pixel[] {
  const all = pieces.flat(),
    first = all[0]?.[0] ?? 0,
    step = ((all.at(-1)?.[0] ?? 0) - first) / about || 1,
    out: Pixel[] = []
  for (const piece of pieces)
    for (const [i, [x, y]] of piece.entries()) {
      const [x0, y0] = piece[i - 1] ?? [x, y]
      for (let at = first + out.length * step; at <= x; at += step)
        out.push([Math.max(at, x0), x > x0 ? y0 + ((Math.max(at, x0) - x0) / (x - x0)) * (y - y0) : y])
    }
  return out.length > 0 ? out : all.slice(0, 1)
}
const count = (bits: number): number => {
  let n = 0
  for (let b = bits >>> 0; b; b &= b - 1) n++
  return n
}
