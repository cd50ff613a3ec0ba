import type { Vector } from '../vector.ts'
import { turnsOfModule } from './bay-module.ts'
import type { Interior } from './pack-interior.ts'
import { type PackMixedTask, waysToMix } from './pack-mixed.ts'
import type { PackModule } from './pack-types.ts'

const HAIR = 1e-9

/** What no filling with two forms passes: so many of each alone, and weighed sums of both. */
export type Region = {
  readonly main: number
  readonly other: number
  readonly sums: readonly { readonly main: number; readonly other: number; readonly most: number }[]
}

/**
 * The region of the numbers of two forms that fit into the room for modules of one box, wherever they stand square to it: each by itself, both by volume, and both by planes
 * across each axis, no further apart than the shortest side along it, so that one at least meets every module, with its smallest face or more. In a square room everything with
 * the clearance added once to each side.
 */
export function regionOf(
  { field, low, high }: Interior,
  main: PackModule,
  other: PackModule,
  alone: Pick<Region, 'main' | 'other'>,
): Region {
  if (!low || !high) {
    let cubes = 0
    for (const c of field.free) cubes += c
    return { ...alone, sums: [{ main: product(main.size), other: product(other.size), most: cubes * field.edge ** 3 }] }
  }
  const { clearance } = main,
    room = high.map((c, i) => c - (low[i] as number) + clearance) as unknown as Vector,
    grown = (m: PackModule): Vector => m.size.map(s => s + clearance) as unknown as Vector,
    turns = (m: PackModule): readonly Vector[] => turnsOfModule(m).map(t => t.sides.map(s => s + clearance) as unknown as Vector)
  const volumes = { main: product(grown(main)), other: product(grown(other)) },
    ways = { main: turns(main), other: turns(other) }
  const planes = ([0, 1, 2] as const).map(axis => {
    const sides = [...ways.main, ...ways.other].map(t => t[axis]),
      face = (form: 'main' | 'other'): number => volumes[form] / Math.max(...ways[form].map(t => t[axis])),
      count = Math.floor(room[axis] / Math.min(...sides) + HAIR)
    return { main: face('main'), other: face('other'), most: (count * product(room)) / room[axis] }
  })
  return { ...alone, sums: [{ ...volumes, most: product(room) }, ...planes] }
}
const product = (sides: readonly number[]): number => sides.reduce((a, b) => a * b, 1)

/** Most of the other form that a region leaves room for beside so many of the main one; −1 where not even those have room. */
export function othersBeside({ main, other, sums }: Region, mains: number): number {
  if (mains > main) return -1
  return Math.max(-1, Math.min(other, ...sums.map(s => Math.floor((s.most - mains * s.main) / s.other + HAIR))))
}

/** Most cell groups in a region. */
export function groupsIn(region: Region, { main, other }: PackMixedTask['mix']['groups']): number {
  let most = 0
  for (let a = 0; a <= region.main; a++) {
    const b = othersBeside(region, a)
    if (b >= 0) most = Math.max(most, a * main + b * other)
  }
  return most
}

/** Most cell groups in whole strings that spaces with such regions, one for each side of the busbars, can take. */
export function mixedBound(task: PackMixedTask, spaces: readonly (readonly Region[])[]): number {
  const { string } = task.mix.groups
  const most = Math.min(
    task.strings.most,
    Math.floor(spaces.reduce((n, s) => n + Math.max(0, ...s.map(r => groupsIn(r, task.mix.groups))), 0) / string),
  )
  for (let p = most; p >= Math.max(1, task.strings.least); p--) {
    const unit = task.splitGroups ? 1 : p,
      times = task.splitGroups ? p : 1
    const ways = waysToMix(task, p).map(w => ({ main: w.main * times, other: w.other * times }))
    const mains = Math.max(0, ...ways.map(w => w.main)),
      reach = together(
        spaces.map(sides => (a: number) => Math.max(-1, ...sides.map(r => Math.floor(othersBeside(r, a * unit) / unit)))),
        mains,
      )
    if (ways.some(w => (reach[0]?.[w.main] as number) >= w.other)) return p * string
  }
  return 0
}

/**
 * For each space, and for it with all after it: most of the other form for each number of the main form, in whole groups; −Infinity where so many of the main form have no room.
 * The first row holds all spaces, the last none.
 */
export function together(spaces: readonly ((mains: number) => number)[], mains: number): readonly Float64Array[] {
  const rows: Float64Array[] = [Float64Array.from({ length: mains + 1 }, (_, a) => (a === 0 ? 0 : -Infinity))]
  for (const space of [...spaces].reverse()) {
    const after = rows[0] as Float64Array,
      own = Float64Array.from({ length: mains + 1 }, (_, a) => (space(a) < 0 ? -Infinity : space(a))),
      now = new Float64Array(mains + 1).fill(-Infinity)
    for (let all = 0; all <= mains; all++)
      for (let a = 0; a <= all; a++) now[all] = Math.max(now[all] as number, (own[a] as number) + (after[all - a] as number))
    rows.unshift(now)
  }
  return rows
}
