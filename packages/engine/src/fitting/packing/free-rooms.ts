import type { AlignedBox } from '../box.ts'
import type { Vector } from '../vector.ts'

const HAIR = 1e-9
const meets = (a: AlignedBox, b: AlignedBox): boolean =>
  a.low.every((c, i) => c < (b.high[i] as number) - HAIR && (b.low[i] as number) < (a.high[i] as number) - HAIR)
const holds = (outer: AlignedBox, inner: AlignedBox): boolean =>
  outer.low.every((c, i) => c <= (inner.low[i] as number) + HAIR && (inner.high[i] as number) <= (outer.high[i] as number) + HAIR)
const volume = ({ low, high }: AlignedBox): number => low.reduce((v, c, i) => v * ((high[i] as number) - c), 1)
const withSide = (v: Vector, axis: number, to: number): Vector => v.map((c, i) => (i === axis ? to : c)) as unknown as Vector

/** Most rooms kept while a space is cut up: past that the smallest are let go. */
const MANY = 400

/** Every largest empty cuboid of a space: none can grow on any side without leaving it or meeting something. */
function emptyRooms(space: AlignedBox, taken: readonly AlignedBox[]): readonly AlignedBox[] {
  let rooms: readonly AlignedBox[] = space.low.every((c, i) => c < (space.high[i] as number) - HAIR) ? [space] : []
  for (const one of taken) {
    const whole = rooms.filter(r => !meets(r, one)),
      parts = rooms.filter(r => meets(r, one)).flatMap(r => beside(r, one))
    const all = [...whole, ...parts].sort((a, b) => volume(b) - volume(a)),
      kept: AlignedBox[] = []
    for (const room of all) if (kept.length < MANY && !kept.some(k => holds(k, room))) kept.push(room)
    rooms = kept
  }
  return rooms
}

/** What is left of a room on each of the six sides of something in it. */
function beside({ low, high }: AlignedBox, taken: AlignedBox): readonly AlignedBox[] {
  return ([0, 1, 2] as const).flatMap(axis => [
    ...(taken.low[axis] > low[axis] + HAIR ? [{ low, high: withSide(high, axis, taken.low[axis]) }] : []),
    ...(taken.high[axis] < high[axis] - HAIR ? [{ low: withSide(low, axis, taken.high[axis]), high }] : []),
  ])
}

/**
 * Empty cuboids of a space that stand clear of what is in it and of each other by `apart`: the one that is worth most first, then what is worth most of the rest. At most `most`, none
 * that is worth nothing; of equal worth, the larger.
 */
export function freeRooms(
  space: AlignedBox,
  taken: readonly AlignedBox[],
  { worth, most, apart }: { readonly worth: (room: AlignedBox) => number; readonly most: number; readonly apart: number },
): readonly AlignedBox[] {
  const out: AlignedBox[] = []
  while (out.length < most) {
    const own = out.map(r => ({
      low: r.low.map(c => c - apart) as unknown as Vector,
      high: r.high.map(c => c + apart) as unknown as Vector,
    }))
    const best = emptyRooms(space, [...taken, ...own])
      .map(room => ({ room, worth: worth(room) }))
      .reduce<{ room: AlignedBox; worth: number } | undefined>((a, b) => (a && a.worth >= b.worth ? a : b), undefined)
    if (!best || best.worth <= 0) break
    out.push(best.room)
  }
  return out
}
