/**
 * Places of a line that are enough to draw it: every other point lies within `tolerance` of the piece drawn in its stead. The first and last always stay.
 * Source: Douglas and Peucker, Algorithms for the reduction of the number of points required to represent a digitized line, The Canadian Cartographer 10
 * no. 2 (1973) 112–122 (from memory).
 */
export function thinned(x: ArrayLike<number>, y: ArrayLike<number>, tolerance: number): readonly number[] {
  const last = x.length - 1
  if (last < 1) return last < 0 ? [] : [0]
  const keep = new Uint8Array(x.length),
    pieces: [number, number][] = [[0, last]]
  keep[0] = keep[last] = 1
  for (let piece = pieces.pop(); piece; piece = pieces.pop()) {
    const [a, b] = piece,
      far = farthest(x, y, a, b)
    if (far.apart <= tolerance) continue
    keep[far.at] = 1
    pieces.push([a, far.at], [far.at, b])
  }
  const out: number[] = []
  for (let i = 0; i <= last; i++) if (keep[i]) out.push(i)
  return out
}

function farthest(x: ArrayLike<number>, y: ArrayLike<number>, a: number, b: number): { at: number; apart: number } {
  let at = a,
    most = 0
  for (let i = a + 1; i < b; i++) {
    const apart = distanceToPiece(x[i]!, y[i]!, x[a]!, y[a]!, x[b]!, y[b]!)
    if (apart > most) {
      most = apart
      at = i
    }
  }
  return { at, apart: most }
}

/** From a point to the nearest place of a straight piece. */
export function distanceToPiece(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const [dx, dy] = [bx - ax, by - ay],
    length = dx * dx + dy * dy,
    share = length === 0 ? 0 : Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / length))
  return Math.hypot(px - ax - share * dx, py - ay - share * dy)
}
