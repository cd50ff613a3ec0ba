import type { Vector } from '../vector.ts'
import type { BayLattice } from './bay-lattice.ts'
import type { BayModule } from './bay-module.ts'

/** The most modules a bay can hold, and by which of the counts. */
export type BayBound = { readonly most: number; readonly by: 'volume' | 'planes' | 'points' | 'searched through' }

/**
 * The most modules a field can hold, wherever they stand square to the axes, the least of three counts over the room that some module can cover at all:
 *
 * by volume, whole modules in it; by planes, what the layers of steps across each axis can cut, as many as faces fit by area, added up over the sides of the modules;
 * by points, those of a net closer than the shortest sides, one of which lies in every module, with the net put where it meets least room. Each is counted with the bodies
 * alone, and once more with half the clearance drawn about them.
 */
export function bayBound(lattice: BayLattice, module: BayModule): BayBound {
  const plain = boundOf(lattice, module.size, 0)
  const wide =
    module.clearance > 0 ? boundOf(lattice, module.size.map(s => s + module.clearance) as unknown as Vector, module.clearance) : plain
  return wide.most < plain.most ? wide : plain
}

function boundOf(lattice: BayLattice, size: Vector, clearance: number): BayBound {
  const room = coverable(lattice, clearance),
    { step } = lattice
  const volume = Math.floor((room.cells * step ** 3) / (size[0] * size[1] * size[2]) + 1e-9)
  const planes = planeCount(lattice, room, size, clearance),
    points = pointCount(lattice, room, clearance)
  const most = Math.min(volume, planes, points)
  return { most, by: most === volume ? 'volume' : most === planes ? 'planes' : 'points' }
}

type Room = { readonly taken: Uint8Array; readonly counts: readonly [number, number, number]; readonly cells: number }

/** Cells of the lattice that a module, with clearance on its high sides, can cover from any of its places. */
function coverable({ counts, turns, reach, step }: BayLattice, clearance: number): Room {
  // A module between two steps reaches one step further with its clearance.
  const grown = clearance > 0 ? Math.ceil(clearance / step) + 1 : 0,
    [nx, ny, nz] = counts.map(n => n + grown) as [number, number, number],
    cover = new Uint8Array(nx * ny * nz)
  turns.forEach(({ body, pitch }, t) => {
    const sides = grown ? pitch.map(p => p + 1) : body,
      places = reach[t] as Uint8Array,
      far = new Uint8Array(nx * ny * nz)
    for (let z = 0, i = 0; z < counts[2]; z++)
      for (let y = 0; y < counts[1]; y++) for (let x = 0; x < counts[0]; x++, i++) if (places[i]) far[x + nx * (y + ny * z)] = 1
    swept(far, [nx, ny, nz], 0, sides[0] as number)
    swept(far, [nx, ny, nz], 1, sides[1] as number)
    swept(far, [nx, ny, nz], 2, sides[2] as number)
    for (let i = 0; i < cover.length; i++) if (far[i]) cover[i] = 1
  })
  let cells = 0
  for (const c of cover) cells += c
  return { taken: cover, counts: [nx, ny, nz], cells }
}

/** Draws every mark out along an axis over so many cells. */
function swept(marks: Uint8Array, [nx, ny, nz]: readonly [number, number, number], axis: 0 | 1 | 2, length: number): void {
  const stride = axis === 0 ? 1 : axis === 1 ? nx : nx * ny,
    n = [nx, ny, nz][axis] as number,
    others = axis === 0 ? [ny, nz, nx, nx * ny] : axis === 1 ? [nx, nz, 1, nx * ny] : [nx, ny, 1, nx]
  const [m1, m2, s1, s2] = others as [number, number, number, number]
  for (let b = 0; b < m2; b++)
    for (let a = 0; a < m1; a++) {
      let until = 0
      for (let k = 0, i = a * s1 + b * s2; k < n; k++, i += stride) {
        if (marks[i]) until = k + length
        if (k < until) marks[i] = 1
      }
    }
}

/** How many modules the planes across the axes can cut, added up. */
function planeCount({ turns, step }: BayLattice, { taken, counts }: Room, size: Vector, clearance: number): number {
  const [nx, ny] = counts,
    volume = size[0] * size[1] * size[2],
    sum = size[0] + size[1] + size[2]
  let all = 0,
    least = Infinity
  for (const axis of [0, 1, 2] as const) {
    const areas = new Int32Array(counts[axis])
    for (let i = 0; i < taken.length; i++)
      if (taken[i]) {
        const k = axis === 0 ? i % nx : axis === 1 ? Math.floor(i / nx) % ny : Math.floor(i / (nx * ny))
        areas[k] = (areas[k] as number) + 1
      }
    const sides = turns.map(({ turn }) => turn.sides[axis] + clearance),
      face = volume / Math.max(...sides)
    const reach = areas.reduce((r, a) => r + Math.floor((a * step * step) / face + 1e-9), 0) * step
    all += reach
    least = Math.min(least, Math.floor(reach / Math.min(...sides) + 1e-9))
  }
  return Math.min(least, Math.floor(all / sum + 1e-9))
}

/** How many points a net must have in the room, at the best of some places for it. */
function pointCount({ turns, step }: BayLattice, { taken, counts }: Room, clearance: number): number {
  const least = [0, 1, 2].map(axis => Math.min(...turns.map(({ turn }) => turn.sides[axis] as number)) + clearance - 1e-9),
    tries = 6
  let best = Infinity
  const along = (axis: number, k: number): number[] => {
    const out: number[] = [],
      side = least[axis] as number
    for (let p = (side * (k + 0.5)) / tries; p < (counts[axis] as number) * step; p += side) out.push(Math.floor(p / step))
    return out
  }
  for (let i = 0; i < tries; i++)
    for (let j = 0; j < tries; j++)
      for (let k = 0; k < tries; k++) {
        let count = 0
        const xs = along(0, i)
        for (const z of along(2, k))
          for (const y of along(1, j)) for (const x of xs) count += taken[x + counts[0] * (y + counts[1] * z)] as number
        best = Math.min(best, count)
      }
  return best
}
