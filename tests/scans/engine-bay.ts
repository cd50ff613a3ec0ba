import type { AlignedBox, TriangleMesh, Vector } from '@ampwright/engine'
import { inFile, type Placement, placed } from '@ampwright/geometry'
import { turned } from '../../packages/engine/src/fitting/box.ts'
import { type Random, random } from '../../packages/engine/src/numerics/random.ts'
import { type Skin, skinMesh } from './surface-nets.ts'

/** A bay as a phone would scan it, and what is known of it because it was made. */
export type BayScan = {
  /** As it lies in its file: millimetres, turned and shifted. */
  readonly scan: TriangleMesh
  /** From the file to the car. */
  readonly placement: Placement
  /** Places that are easy to find on the scan and to measure in the car, read with two millimetres. */
  readonly picks: readonly { readonly onScan: Vector; readonly inCar: Vector }[]
  /** Distance to the true skin, m, above 0 in the open; and limits that shut the open top. */
  readonly skin: Skin
  readonly within: AlignedBox
  /** Somewhere in the open. */
  readonly inside: Vector
}
export type BayOptions = {
  readonly seed: number
  /** About how many triangles. */
  readonly triangles: number
  /** Standard deviation of the skin, m. */
  readonly noise?: number
  readonly holes?: number
  /** Radius of the widest hole, m. */
  readonly widest?: number
}

const WITHIN: AlignedBox = { low: [-0.62, -0.74, 0.14], high: [0.72, 0.74, 0.86] }
const box =
  (centre: Vector, half: Vector): Skin =>
  (x, y, z) => {
    const [dx, dy, dz] = [Math.abs(x - centre[0]) - half[0], Math.abs(y - centre[1]) - half[1], Math.abs(z - centre[2]) - half[2]]
    return Math.hypot(Math.max(dx, 0), Math.max(dy, 0), Math.max(dz, 0)) + Math.min(0, Math.max(dx, dy, dz))
  }

/** Front panel, leaning bulkhead, slanted floor, side walls, two wheel arches, two rails, a crossmember, and brackets wherever chance puts them. */
function bay(chance: Random): Skin {
  const lean = Math.atan(0.18),
    slant = Math.atan(0.12),
    brackets = Array.from({ length: 24 }, () => {
      const side = chance.below(3),
        along = (from: number, to: number): number => from + (to - from) * chance.uniform()
      const centre: Vector =
        side === 2 ? [along(0.5, 0.6), along(-0.6, 0.6), along(0.35, 0.75)] : [along(-0.5, 0.5), side ? 0.68 : -0.68, along(0.4, 0.8)]
      return box(centre, [along(0.01, 0.06), along(0.01, 0.06), along(0.01, 0.05)])
    })
  const solids: readonly Skin[] = [
    x => x + 0.55,
    (x, _, z) => (0.62 - x) * Math.cos(lean) - (z - 0.5) * Math.sin(lean),
    (x, _, z) => (z - 0.25) * Math.cos(slant) - x * Math.sin(slant),
    (_, y) => 0.68 - Math.abs(y),
    (x, y, z) => Math.max(Math.hypot(x, z - 0.3) - 0.36, 0.46 - Math.abs(y)),
    (x, y, z) => box([0, 0.36, 0.3], [0.6, 0.035, 0.05])(x, Math.abs(y), z),
    box([-0.2, 0, 0.24], [0.04, 0.5, 0.05]),
    ...brackets,
  ]
  return (x, y, z) => {
    let nearest = Infinity
    for (const solid of solids) nearest = Math.min(nearest, solid(x, y, z))
    return nearest
  }
}

/** An engine bay as a phone scans it: noisy, with holes, in millimetres, lying somehow in its file. The same from the same seed. */
export function engineBay({ seed, triangles, noise = 0.0015, holes = 60, widest = 0.009 }: BayOptions): BayScan {
  const chance = random(seed),
    skin = bay(chance)
  const coarse = 0.02,
    few = skinMesh(skin, WITHIN, coarse).triangles.length / 3,
    clean = skinMesh(skin, WITHIN, coarse * Math.sqrt(few / triangles)),
    rough = holed(shaken(clean, skin, noise, chance), holes, widest, chance)
  const angle = (): number => Math.PI * (2 * chance.uniform() - 1),
    placement: Placement = {
      scale: 0.001,
      turn: turned(2, angle(), turned(1, angle(), turned(0, angle()))),
      shift: [0.4 * chance.normal(), 0.4 * chance.normal(), 0.4 * chance.normal()],
    }
  const read = (place: Vector): Vector => place.map(x => x + 0.001 * Math.max(-2, Math.min(2, chance.normal()))) as unknown as Vector
  const known: readonly Vector[] = [
    [0, -0.46, 0.66],
    [0, 0.46, 0.66],
    [0.6, 0, 0.6],
    [-0.55, 0.2, 0.5],
  ]
  return {
    scan: backInFile(rough, placement),
    placement,
    picks: known.map(place => ({ inCar: place, onScan: inFile(placement, read(place)) })),
    skin,
    within: { ...WITHIN, high: [WITHIN.high[0], WITHIN.high[1], 0.82] },
    inside: [0.3, 0, 0.6],
  }
}

/** Each corner moved along the steepest way off the skin. */
function shaken({ positions, triangles }: TriangleMesh, skin: Skin, noise: number, chance: Random): TriangleMesh {
  const out = positions.slice(),
    h = 1e-4
  for (let i = 0; i < out.length; i += 3) {
    const [x, y, z] = [positions[i], positions[i + 1], positions[i + 2]] as [number, number, number],
      steep = [skin(x + h, y, z) - skin(x - h, y, z), skin(x, y + h, z) - skin(x, y - h, z), skin(x, y, z + h) - skin(x, y, z - h)],
      size = Math.hypot(...steep) || 1,
      off = noise * Math.max(-2, Math.min(2, chance.normal()))
    for (let axis = 0; axis < 3; axis++) out[i + axis] = (out[i + axis] as number) + ((steep[axis] as number) / size) * off
  }
  return { positions: out, triangles }
}

/** Without the triangles near some of the corners, as where a scan saw nothing. */
function holed({ positions, triangles }: TriangleMesh, holes: number, widest: number, chance: Random): TriangleMesh {
  const where = Array.from({ length: holes }, () => 3 * chance.below(positions.length / 3)),
    sizes = where.map(() => widest * (0.3 + 0.7 * chance.uniform()))
  const away = (corner: number): boolean =>
    where.every((w, n) => {
      const [dx, dy, dz] = [0, 1, 2].map(axis => (positions[3 * corner + axis] as number) - (positions[w + axis] as number)) as [
        number,
        number,
        number,
      ]
      return dx * dx + dy * dy + dz * dz > (sizes[n] as number) ** 2
    })
  const stays = Uint8Array.from({ length: positions.length / 3 }, (_, corner) => (away(corner) ? 1 : 0))
  return { positions, triangles: triangles.filter((_, i) => [0, 1, 2].every(k => stays[triangles[i - (i % 3) + k] as number])) }
}

/** A mesh in the car as it lies in the file: the placement the other way about. */
function backInFile(mesh: TriangleMesh, { scale, turn, shift }: Placement): TriangleMesh {
  const back = [0, 1, 2].map(i => turn.map(row => row[i as 0])) as unknown as Placement['turn'],
    moved = back.map(row => -(row[0] * shift[0] + row[1] * shift[1] + row[2] * shift[2]) / scale) as unknown as Vector
  return placed(mesh, { scale: 1 / scale, turn: back, shift: moved })
}
