import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../../tests/counts.ts'
import type { Vector } from '../vector.ts'
import { MODULE_FACES } from './bay-module.ts'
import { shortestWay } from './pack-arrange.ts'
import { eroded } from './pack-interior.ts'
import { boundOf, packSearch, packWithin } from './pack-search.ts'
import { type BoxBuild, CRITERIA, type PackAnswer, type PackArrangement, type PackSpace, type PackTask } from './pack-types.ts'

const BUILD: BoxBuild = { wall: 0.004, plate: 0.012, lid: 0.02, busbar: 0.05, sheet: 12 }
const BARE: BoxBuild = { wall: 0, plate: 0, lid: 0, busbar: 0, sheet: 0 }
const box = (name: string, low: Vector, size: Vector): PackSpace => ({
  name,
  kind: 'box',
  low,
  high: low.map((c, i) => c + (size[i] as number)) as unknown as Vector,
})
const TASK: PackTask = {
  spaces: [box('engine bay', [-0.3, -0.4, 0.35], [0.7, 0.8, 0.3]), box('tank space', [2.1, -0.5, 0.3], [0.6, 1, 0.26])],
  module: { size: [0.36, 0.15, 0.11], clearance: 0.003, down: ['bottom'], mass: 12, energy: 7.2e6 },
  box: BUILD,
  series: 6,
  strings: { least: 1, most: 4 },
  splitGroups: false,
  wheelbase: 2.45,
  front: { mass: 560, limit: 780 },
  rear: { mass: 520, limit: 760 },
}
const all = (task: PackTask, steps: number, seed = 4): PackAnswer[] => {
  const out: PackAnswer[] = []
  for (const answer of packSearch(task, { seed })) {
    out.push(answer)
    if (Number.isFinite(answer.bound) && answer.steps >= steps) break
  }
  return out
}

/** What is wrong with an arrangement, from the coordinates of its modules and the task alone. */
function faults(task: PackTask, one: PackArrangement): string[] {
  const out: string[] = [],
    hair = 1e-6,
    { wall, plate, lid, busbar } = task.box
  const modules = one.boxes.flatMap(b => b.modules)
  if (modules.length !== task.series * one.strings || one.modules !== modules.length) out.push('no whole strings')
  for (const b of one.boxes) {
    const space = task.spaces.find(s => s.name === b.space) as PackSpace
    if (!task.splitGroups && b.modules.length % one.strings !== 0) out.push(`${b.space} breaks a group`)
    const strip = (side: string): number => wall + (side === b.busbars ? busbar : 0)
    const low: Vector = [strip('front'), strip('left'), wall + plate],
      high: Vector = [strip('back'), strip('right'), wall + lid]
    for (const { box: m } of b.modules) {
      if (space.kind === 'box' && m.low.some((c, i) => c - (low[i] as number) < (space.low[i] as number) - hair))
        out.push(`${b.space}: low`)
      if (space.kind === 'box' && m.high.some((c, i) => c + (high[i] as number) > (space.high[i] as number) + hair))
        out.push(`${b.space}: high`)
      if (m.low.some((c, i) => c - (low[i] as number) < (b.outer.low[i] as number) - hair)) out.push(`${b.space}: out of its box`)
      if (m.high.some((c, i) => c + (high[i] as number) > (b.outer.high[i] as number) + hair)) out.push(`${b.space}: out of its box`)
    }
    b.modules.forEach(({ box: m }, n) => {
      for (const { box: o } of b.modules.slice(0, n))
        if (
          [0, 1, 2].every(
            i =>
              Math.max((m.low[i] as number) - (o.high[i] as number), (o.low[i] as number) - (m.high[i] as number)) <
              task.module.clearance - hair,
          )
        )
          out.push(`${b.space}: two modules too close`)
    })
  }
  return out
}
const criteria = (a: PackArrangement): readonly number[] => [
  -a.energy,
  a.mass,
  -Math.min(a.frontMargin, a.rearMargin),
  a.height,
  a.boxes.length,
  a.cable,
]

/** Most boxes of such sides in a space, in whole units, by trying every way: at the first free cell each turn, or nothing. */
function mostByTrying(space: readonly number[], turns: readonly (readonly number[])[]): number {
  const [l, w, h] = space as [number, number, number],
    cells = l * w * h,
    one = (turns[0] as readonly number[]).reduce((a, b) => a * b, 1)
  const taken = new Uint8Array(cells)
  /** Takes or frees the cells of a box; false where one is taken already or lies outside. */
  const put = (at: number, sides: readonly number[], as: 0 | 1): boolean => {
    const x = at % l,
      y = Math.floor(at / l) % w,
      z = Math.floor(at / (l * w)),
      own: number[] = []
    for (let k = z; k < z + (sides[2] as number); k++)
      for (let j = y; j < y + (sides[1] as number); j++)
        for (let i = x; i < x + (sides[0] as number); i++) {
          if (i >= l || j >= w || k >= h || taken[i + l * (j + w * k)] === as) return false
          own.push(i + l * (j + w * k))
        }
    for (const c of own) taken[c] = as
    return true
  }
  let best = 0
  const go = (from: number, placed: number, left: number): void => {
    if (placed > best) best = placed
    let at = from
    while (at < cells && taken[at] === 1) at++
    if (at === cells || placed + Math.floor(left / one) <= best) return
    for (const sides of turns)
      if (put(at, sides, 1)) {
        go(at + 1, placed + 1, left - one)
        put(at, sides, 0)
      }
    go(at + 1, placed, left - 1)
  }
  go(0, 0, cells)
  return best
}
/** Most modules in whole strings, by trying every number of strings and every number of groups in each space. */
function mostInStrings({ series, strings, splitGroups }: PackTask, room: readonly number[]): number {
  const canHold = (p: number, i: number, wanted: number): boolean =>
    wanted === 0 ||
    (i < room.length &&
      Array.from({ length: wanted + 1 }, (_, n) => n).some(
        n => n * (splitGroups ? 1 : p) <= (room[i] as number) && canHold(p, i + 1, wanted - n),
      ))
  let most = 0
  for (let p = strings.least; p <= strings.most; p++) if (canHold(p, 0, splitGroups ? series * p : series)) most = p * series
  return most
}

describe('a battery in several spaces', () => {
  it('has as many modules as trying every way finds, in small spaces', () => {
    const side = fc.integer({ min: 1, max: 4 })
    fc.assert(
      fc.property(
        fc.array(fc.tuple(side, side, fc.integer({ min: 1, max: 3 })), { minLength: 1, maxLength: 2 }),
        fc.constantFrom<Vector>([0.2, 0.1, 0.1], [0.3, 0.1, 0.1], [0.2, 0.2, 0.1], [0.3, 0.2, 0.1]),
        fc.boolean(),
        fc.integer({ min: 1, max: 4 }),
        fc.boolean(),
        (sizes, size, onAnySide, series, splitGroups) => {
          const [a, b, c] = size.map(s => Math.round(s * 10)) as [number, number, number],
            upright = [
              [a, b, c],
              [b, a, c],
            ],
            turns = onAnySide ? [...upright, [a, c, b], [c, a, b], [b, c, a], [c, b, a]] : upright
          const task: PackTask = {
            ...TASK,
            box: BARE,
            series,
            splitGroups,
            strings: { least: 1, most: 12 },
            module: { ...TASK.module, size, clearance: 0, down: onAnySide ? [...MODULE_FACES] : ['bottom'] },
            spaces: sizes.map((s, i) => box(`space ${i}`, [i, 0, 0.3], s.map(n => n / 10) as unknown as Vector)),
          }
          const room = sizes.map(s => mostByTrying(s, turns)),
            { arrangements, bound } = packWithin(packSearch(task, { seed: 1 }), 4000)
          const most = Math.max(0, ...arrangements.map(one => one.modules))
          expect(most).toBe(mostInStrings(task, room))
          expect(bound).toBeGreaterThanOrEqual(most)
        },
      ),
      { numRuns: runs(1000) },
    )
  })
  it('is arranged in whole strings inside its boxes, never worse than another in every respect', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 10, max: 50 }), fc.integer({ min: 10, max: 40 }), fc.integer({ min: 8, max: 24 })), {
          minLength: 1,
          maxLength: 2,
        }),
        fc.integer({ min: 1, max: 5 }),
        fc.boolean(),
        fc.boolean(),
        fc.nat(99),
        (sizes, series, splitGroups, bare, seed) => {
          const task: PackTask = {
            ...TASK,
            series,
            splitGroups,
            box: bare ? BARE : { ...BUILD, busbar: seed % 4 === 0 ? 0.05 : 0 },
            module: { ...TASK.module, size: [0.26, 0.17, 0.1] },
            spaces: sizes.map((s, i) => box(`space ${i}`, [i, 0, 0.3], s.map(c => c / 100) as unknown as Vector)),
          }
          for (const { arrangements, bound, gap } of all(task, 1, seed)) {
            for (const one of arrangements) expect(faults(task, one)).toEqual([])
            const most = Math.max(0, ...arrangements.map(a => a.modules))
            expect(gap).toBe(bound - most)
            expect(gap).toBeGreaterThanOrEqual(0)
          }
        },
      ),
      { numRuns: runs(400) },
    )
  })
  it('comes in several different arrangements, each the best in something or a fair middle, none better in all', () => {
    const { arrangements } = all(TASK, 100).at(-1) as PackAnswer
    expect(arrangements.length).toBeGreaterThan(3)
    expect(new Set(arrangements.map(a => a.boxes.map(b => `${b.space} ${b.modules.length}`).join())).size).toBeGreaterThan(2)
    for (const c of CRITERIA) expect(arrangements.some(a => a.bestIn.includes(c))).toBe(true)
    // A hundred grams, a kilogram on an axle, a millimetre or a centimetre apart count as equal.
    const slack = [0, 0.1, 1, 1e-3, 0, 1e-2]
    for (const a of arrangements)
      for (const b of arrangements)
        if (a !== b) expect(criteria(a).every((v, c) => v < (criteria(b)[c] as number) - (slack[c] as number))).toBe(false)
    expect(arrangements.map(a => a.energy)).toEqual(arrangements.map(a => a.energy).sort((x, y) => y - x))
  })
  it('weighs on the axles as a lever does, worked by hand', () => {
    const task: PackTask = {
      ...TASK,
      series: 2,
      strings: { least: 1, most: 1 },
      box: BARE,
      spaces: [box('floor', [1, -0.075, 0.3], [0.72, 0.15, 0.11])],
      module: { ...TASK.module, clearance: 0 },
      wheelbase: 2.72,
    }
    const [one] = (all(task, 10).at(-1) as PackAnswer).arrangements as readonly [PackArrangement]
    // 24 kg at 1.36 m, half of the wheelbase; 0.355 m above the ground.
    expect(one.mass).toBeCloseTo(24, 9)
    expect(one.frontMargin).toBeCloseTo(780 - 560 - 12, 6)
    expect(one.rearMargin).toBeCloseTo(760 - 520 - 12, 6)
    expect(one.height).toBeCloseTo(0.355, 9)
    expect(one.energy).toBe(14.4e6)
    expect(one.cable).toBe(0)
  })
  it('keeps parallel groups in one box unless they may be split', () => {
    const five = box('five', [0, 0, 0.3], [0.75, 0.36, 0.11]),
      four = box('four', [1, 0, 0.3], [0.6, 0.36, 0.11])
    const task: PackTask = {
      ...TASK,
      box: BARE,
      spaces: [five, four],
      module: { ...TASK.module, clearance: 0 },
      series: 3,
      strings: { least: 1, most: 9 },
    }
    const most = (t: PackTask): number => Math.max(0, ...(all(t, 400).at(-1) as PackAnswer).arrangements.map(a => a.modules))
    // Three groups of three: five hold one group and four one. Groups of two: two and two.
    expect(most(task)).toBe(6)
    expect(most({ ...task, splitGroups: true })).toBe(9)
    expect(boundOf(task, [5, 4])).toBe(6)
    expect(boundOf({ ...task, splitGroups: true }, [5, 4])).toBe(9)
    expect(boundOf({ ...task, series: 10 }, [5, 4])).toBe(0)
  })
  it('fills a space of cubes as it does a box of the same size, less the margins in whole cubes', () => {
    const free = new Uint8Array(40 * 30 * 20).fill(1),
      inner = eroded({ low: [0, 0, 0], edge: 0.02, counts: [40, 30, 20], free }, [0.004, 0.02, 0.05], [0, 0.03, 0.02])
    expect(inner.free.reduce((a, b) => a + b, 0)).toBe((40 - 1) * (30 - 1 - 2) * (20 - 3 - 1))
    expect(inner.free[0]).toBe(0)
    const task: PackTask = {
      ...TASK,
      series: 4,
      spaces: [{ name: 'scan', kind: 'field', field: { low: [0, 0, 0.3], edge: 0.02, counts: [40, 30, 20], free } }],
    }
    const { arrangements, spaces } = all(task, 60).at(-1) as PackAnswer
    for (const one of arrangements) expect(faults(task, one)).toEqual([])
    expect(spaces[0]?.found).toBeGreaterThanOrEqual(12)
  })
  it('gives the same answers for the same seed, in whatever order the spaces are named', () => {
    const once = (task: PackTask): PackAnswer => packWithin(packSearch(task, { seed: 3 }), 100)
    expect(once(TASK)).toEqual(once({ ...TASK, spaces: [...TASK.spaces].reverse() }))
  })
  it('tells of the spaces one by one before it has an arrangement', () => {
    const [first, second] = all(TASK, 1)
    expect(first).toMatchObject({ arrangements: [], bound: Infinity, spaces: [{ name: 'engine bay' }] })
    expect(second?.spaces).toHaveLength(2)
    expect(second?.arrangements.length).toBeGreaterThan(0)
  })
  it('has the room before a service face inside the box', () => {
    const task: PackTask = {
      ...TASK,
      series: 2,
      strings: { least: 1, most: 1 },
      box: BARE,
      spaces: [box('floor', [1, -0.2, 0.3], [0.8, 0.4, 0.2])],
      module: { ...TASK.module, service: { face: 'top', strip: 0.04 } },
    }
    for (const { boxes } of (all(task, 50).at(-1) as PackAnswer).arrangements)
      for (const b of boxes) for (const m of b.modules) expect(m.strip?.high[2]).toBeLessThanOrEqual(b.outer.high[2] + 1e-9)
    expect((all(task, 50).at(-1) as PackAnswer).arrangements.length).toBeGreaterThan(0)
  })
  it('fills a room of a van with modules that may stand any way round, in cubes few enough to search', () => {
    const task: PackTask = {
        ...TASK,
        spaces: [box('load bay', [0.8, -0.75, 0.5], [1.6, 1.5, 1.1])],
        module: { ...TASK.module, down: [...MODULE_FACES], service: { face: 'front', strip: 0.05 } },
        box: BARE,
        strings: { least: 1, most: 8 },
      },
      [first] = all(task, 1).filter(a => a.arrangements.length > 0)
    expect(first?.arrangements.map(one => faults(task, one))).toEqual(first?.arrangements.map(() => []))
    expect(Math.max(...(first?.arrangements ?? []).map(one => one.strings))).toBeGreaterThan(0)
  })
  it('is none where nothing fits', () => {
    const task: PackTask = { ...TASK, spaces: [box('glove box', [1, 0, 0.6], [0.2, 0.2, 0.1])] }
    expect(packWithin(packSearch(task, { seed: 1 }), 100)).toMatchObject({ arrangements: [], bound: 0, gap: 0 })
  })
  it('is refused with strings or spaces that are none, by name', () => {
    const first = (change: Partial<PackTask>) => () => packSearch({ ...TASK, ...change }, { seed: 1 }).next()
    expect(first({ series: 0 })).toThrow('packing: modules in series must be a whole number of at least 1, found 0')
    expect(first({ strings: { least: 1, most: 1.5 } })).toThrow('packing: most strings must be a whole number')
    expect(first({ wheelbase: 0 })).toThrow('packing: the wheelbase must be a length in metres, found 0')
    expect(first({ spaces: [TASK.spaces[0] as PackSpace, TASK.spaces[0] as PackSpace] })).toThrow(
      'packing: two spaces are called engine bay',
    )
  })
  it('has its cable run the shortest way through the boxes', () => {
    expect(
      shortestWay([
        [0, 0, 0],
        [3, 0, 0],
        [1, 0, 0],
      ]),
    ).toBe(3)
    expect(shortestWay([[5, 1, 1]])).toBe(0)
  })
})
