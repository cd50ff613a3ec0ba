import type { Points } from './thin.ts'

export type Box = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number }
export type Pixel = readonly [x: number, y: number]

/** A line in pixels cut to a box: pieces that lie inside, each with the points where it enters and leaves. Points that are no numbers break it. */
export function clipped({ x, y }: Points, box: Box): readonly (readonly Pixel[])[] {
  const pieces: Pixel[][] = []
  let piece: Pixel[] | undefined
  for (let i = 0; i + 1 < x.length; i++) {
    const part = inside([x[i] as number, y[i] as number], [x[i + 1] as number, y[i + 1] as number], box)
    if (!part) piece = undefined
    else {
      const [from, to] = part,
        last = piece?.at(-1)
      if (!piece || !last || last[0] !== from[0] || last[1] !== from[1]) pieces.push((piece = [from]))
      piece.push(to)
    }
  }
  if (x.length === 1 && inside([x[0] as number, y[0] as number], [x[0] as number, y[0] as number], box))
    pieces.push([[x[0] as number, y[0] as number]])
  return pieces
}

/** The part of a stretch inside a box: Liang and Barsky's way, one edge after the other narrows what is left. */
function inside(a: Pixel, b: Pixel, box: Box): readonly [Pixel, Pixel] | undefined {
  const dx = b[0] - a[0],
    dy = b[1] - a[1]
  if (!Number.isFinite(a[0] + a[1] + dx + dy)) return undefined
  let enter = 0,
    leave = 1
  for (const [rise, room] of [
    [-dx, a[0] - box.left],
    [dx, box.right - a[0]],
    [-dy, a[1] - box.top],
    [dy, box.bottom - a[1]],
  ] as const) {
    if (rise === 0) {
      if (room < 0) return undefined
    } else if (rise < 0) enter = Math.max(enter, room / rise)
    else leave = Math.min(leave, room / rise)
  }
  if (enter > leave) return undefined
  const at = (t: number): Pixel => (t === 0 ? a : t === 1 ? b : [a[0] + t * dx, a[1] + t * dy])
  return [at(enter), at(leave)]
}
