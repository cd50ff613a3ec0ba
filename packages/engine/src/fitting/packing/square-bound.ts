import type { Vector } from '../vector.ts'
import { type BayModule, turnsOfModule } from './bay-module.ts'
import { rectangleBound } from './rectangle-bound.ts'

const HAIR = 1e-9
const MILLIMETRE = 1e-3
/** Longest side in millimetres that the bound of a layer is worked out for. */
const LONGEST = 20_000

/**
 * The most modules a square interior can hold, wherever they stand square to it: by volume, by the planes across each axis, by a net of points, and, where all ways round are of one
 * height, by whole layers. Everything with the clearance added once to each side of the interior and of the module.
 */
export function squareBound(interior: Vector, module: BayModule): number {
  const { clearance } = module,
    room = interior.map(s => s + clearance) as unknown as Vector,
    size = module.size.map(s => s + clearance) as unknown as Vector,
    turns = turnsOfModule(module).map(t => t.sides.map(s => s + clearance) as unknown as Vector)
  if (!turns.some(t => t.every((s, i) => s <= (room[i] as number) + HAIR))) return 0
  const volume = size[0] * size[1] * size[2],
    whole = (x: number): number => Math.floor(x + HAIR)
  const sides = ([0, 1, 2] as const).map(axis => turns.map(t => t[axis])),
    points = sides.reduce((n, s, axis) => n * whole((room[axis] as number) / Math.min(...s)), 1)
  const reach = sides.map((s, axis) => {
    const area = (room[0] * room[1] * room[2]) / (room[axis] as number)
    return (room[axis] as number) * whole((area * Math.max(...s)) / volume)
  })
  const planes = Math.min(...reach.map((r, axis) => whole(r / Math.min(...(sides[axis] as number[])))))
  const together = whole(reach.reduce((a, b) => a + b, 0) / (size[0] + size[1] + size[2]))
  return Math.min(whole((room[0] * room[1] * room[2]) / volume), points, planes, together, layersBound(room, turns))
}

/** With one height all modules are met by planes that height apart, each of which cuts no more than a layer holds. */
function layersBound(room: Vector, turns: readonly Vector[]): number {
  const [first] = turns as readonly [Vector],
    up = (x: number): number => Math.ceil(x / MILLIMETRE - 1e-6),
    down = (x: number): number => Math.floor(x / MILLIMETRE + 1e-6)
  if (turns.some(t => Math.abs(t[2] - first[2]) > HAIR)) return Infinity
  const [l, w] = [up(room[0]), up(room[1])],
    [a, b] = [down(first[0]), down(first[1])]
  if (Math.max(l, w) > LONGEST || Math.min(a, b) < 1) return Infinity
  return Math.floor(room[2] / first[2] + HAIR) * rectangleBound(l, w, a, b)
}
