import { type BayModule, type ModuleFace, MODULE_FACES, type VoxelField } from '../packages/engine/src/index.ts'
import { type Random, random } from '../packages/engine/src/numerics/random.ts'

/** An irregular bay whose best number of modules is known because it was made round them. */
export type MadeBay = { readonly name: string; readonly field: VoxelField; readonly module: BayModule; readonly best: number }

type Plan = {
  readonly name: string
  readonly seed: number
  /** Sides of a module, in cubes of the field. */
  readonly sides: Cells
  readonly edge: number
  readonly down: readonly ModuleFace[]
  readonly room: Cells
  readonly modules: number
}
type Cells = readonly [number, number, number]
type Stood = { readonly at: Cells; readonly sides: Cells }

const UPRIGHT: readonly ModuleFace[] = ['bottom']
const PLANS: readonly Plan[] = [
  { name: 'small bulkhead', seed: 1, sides: [18, 8, 6], edge: 0.02, down: MODULE_FACES, room: [50, 40, 22], modules: 14 },
  { name: 'tank space', seed: 2, sides: [18, 8, 6], edge: 0.02, down: UPRIGHT, room: [52, 44, 20], modules: 20 },
  { name: 'engine bay low', seed: 3, sides: [15, 9, 7], edge: 0.02, down: ['bottom', 'left', 'right'], room: [56, 46, 24], modules: 24 },
  { name: 'engine bay high', seed: 4, sides: [14, 10, 5], edge: 0.025, down: MODULE_FACES, room: [60, 60, 36], modules: 60 },
  { name: 'floor, two sills', seed: 5, sides: [20, 8, 6], edge: 0.02, down: UPRIGHT, room: [90, 60, 7], modules: 18 },
  { name: 'floor, two layers', seed: 6, sides: [16, 9, 5], edge: 0.02, down: UPRIGHT, room: [90, 60, 12], modules: 36 },
  { name: 'boot well', seed: 7, sides: [12, 8, 7], edge: 0.025, down: MODULE_FACES, room: [40, 40, 24], modules: 26 },
  { name: 'tunnel', seed: 8, sides: [18, 7, 5], edge: 0.02, down: MODULE_FACES, room: [96, 20, 16], modules: 20 },
  { name: 'whole front', seed: 9, sides: [18, 8, 6], edge: 0.02, down: MODULE_FACES, room: [90, 70, 36], modules: 90 },
  {
    name: 'rear, three layers',
    seed: 10,
    sides: [20, 11, 6],
    edge: 0.015,
    down: ['bottom', 'front', 'back'],
    room: [70, 70, 30],
    modules: 32,
  },
]

/**
 * Ten bays like scanned ones, each made round its modules: they are dropped into a room one after another in mixed orientations and pushed together; what they fill is the free
 * space, its outline as ragged as they lie. Then the walls are made rough: single cubes beside the modules, and a slit one cube deep, are set free.
 *
 * The number placed is the best there is, by volume: all that was set free besides is less than one more module.
 */
export const MADE_BAYS: readonly { readonly name: string; readonly make: () => MadeBay }[] = PLANS.map(plan => ({
  name: plan.name,
  make: () => made(plan),
}))

function made(plan: Plan): MadeBay {
  const chance = random(plan.seed),
    stood: Stood[] = [],
    cells = plan.sides[0] * plan.sides[1] * plan.sides[2]
  const taken = new Uint8Array(plan.room[0] * plan.room[1] * plan.room[2])
  for (let n = 0; n < plan.modules; n++) {
    const one = dropped(plan, chance, taken, n === 0)
    if (!one) break
    stood.push(one)
    eachCell(plan.room, one, i => {
      taken[i] = 1
    })
  }
  roughen(plan, chance, taken, Math.floor(cells * 0.9))
  const field: VoxelField = { low: [-0.3, -0.6, 0.2], edge: plan.edge, counts: plan.room, free: taken }
  const size = plan.sides.map(s => s * plan.edge) as unknown as Cells
  return { name: plan.name, field, module: { size, clearance: 0, down: plan.down }, best: stood.length }
}

function sidesOf({ sides: [a, b, c], down }: Plan): readonly Cells[] {
  const all: Cells[] = []
  if (down.includes('bottom') || down.includes('top')) all.push([a, b, c], [b, a, c])
  if (down.includes('left') || down.includes('right')) all.push([a, c, b], [c, a, b])
  if (down.includes('front') || down.includes('back')) all.push([b, c, a], [c, b, a])
  return all
}

function clear(room: Cells, taken: Uint8Array, { at, sides }: Stood): boolean {
  if (at.some((c, i) => c < 0 || c + (sides[i] as number) > (room[i] as number))) return false
  for (let z = at[2]; z < at[2] + sides[2]; z++)
    for (let y = at[1]; y < at[1] + sides[1]; y++)
      for (let x = at[0], i = x + room[0] * (y + room[1] * z); x < at[0] + sides[0]; x++, i++) if (taken[i]) return false
  return true
}

function eachCell([nx, ny]: Cells, { at, sides }: Stood, use: (i: number) => void): void {
  for (let z = at[2]; z < at[2] + sides[2]; z++)
    for (let y = at[1]; y < at[1] + sides[1]; y++) for (let x = at[0]; x < at[0] + sides[0]; x++) use(x + nx * (y + ny * z))
}

/** The best of some modules dropped from above and pushed to one side and the other: the one with most contact, by chance a little less. */
function dropped(plan: Plan, chance: Random, taken: Uint8Array, first: boolean): Stood | undefined {
  const ways = sidesOf(plan)
  let best: Stood | undefined,
    most = -1
  for (let k = 0; k < 60; k++) {
    if (first && best) break
    const sides = ways[chance.below(ways.length)] as Cells
    const at = plan.room.map((r, i) =>
      i === 2 ? r - (sides[2] as number) : chance.below(Math.max(1, r - (sides[i] as number) + 1)),
    ) as unknown as Cells
    let one: Stood = { at, sides }
    if (!clear(plan.room, taken, one)) continue
    const ways3: Cells[] = [
      [0, 0, -1],
      [chance.below(2) * 2 - 1, 0, 0],
      [0, chance.below(2) * 2 - 1, 0],
      [0, 0, -1],
    ]
    for (const way of ways3) one = pushed(plan.room, taken, one, way, first)
    const score = contact(plan.room, taken, one) * (0.8 + 0.2 * chance.uniform())
    if (score > most) {
      most = score
      best = one
    }
  }
  return best
}

/** Pushed until something is in the way; sideways it stays where it would meet only the wall of the room, so that outlines stay ragged. */
function pushed(room: Cells, taken: Uint8Array, from: Stood, way: Cells, first: boolean): Stood {
  const axis = way.findIndex(w => w !== 0) as 0 | 1 | 2,
    { sides } = from
  let at = from.at
  for (;;) {
    const ahead = way[axis] === 1 ? at[axis] + sides[axis] : at[axis] - 1
    const slab: Stood = {
      at: at.map((c, i) => (i === axis ? ahead : c)) as unknown as Cells,
      sides: sides.map((s, i) => (i === axis ? 1 : s)) as unknown as Cells,
    }
    if (!clear(room, taken, slab)) return axis !== 2 && !first && (ahead < 0 || ahead >= room[axis]) ? from : { at, sides }
    at = at.map((c, i) => c + (way[i] as number)) as unknown as Cells
  }
}

/** Faces of cubes a module shares with those that stand, or with the floor. */
function contact(room: Cells, taken: Uint8Array, { at, sides }: Stood): number {
  let faces = at[2] === 0 ? sides[0] * sides[1] : 0
  for (const axis of [0, 1, 2] as const)
    for (const beyond of [at[axis] - 1, at[axis] + sides[axis]]) {
      if (beyond < 0 || beyond >= room[axis]) continue
      const slab: Stood = {
        at: at.map((c, i) => (i === axis ? beyond : c)) as unknown as Cells,
        sides: sides.map((s, i) => (i === axis ? 1 : s)) as unknown as Cells,
      }
      eachCell(room, slab, i => {
        if (taken[i]) faces++
      })
    }
  return faces
}

/** Sets cubes free beside free ones, so many at most: two thirds of them strewn, the rest in one slit. */
function roughen({ room: [nx, ny, nz] }: Plan, chance: Random, taken: Uint8Array, cubes: number): void {
  const walls: number[] = []
  for (let i = 0; i < taken.length; i++) {
    const x = i % nx,
      y = Math.floor(i / nx) % ny,
      z = Math.floor(i / (nx * ny))
    if (taken[i]) continue
    if ((x > 0 && taken[i - 1]) || (x < nx - 1 && taken[i + 1]) || (y > 0 && taken[i - nx]) || (y < ny - 1 && taken[i + nx])) walls.push(i)
    else if ((z > 0 && taken[i - nx * ny]) || (z < nz - 1 && taken[i + nx * ny])) walls.push(i)
  }
  const strewn = Math.floor((cubes * 2) / 3)
  for (let n = 0; n < strewn && walls.length > 0; n++) {
    const k = chance.below(walls.length)
    taken[walls[k] as number] = 1
    walls[k] = walls.at(-1) as number
    walls.pop()
  }
  walls.sort((a, b) => a - b)
  for (const i of walls.slice(0, cubes - strewn)) taken[i] = 1
}
