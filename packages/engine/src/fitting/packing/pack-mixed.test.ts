import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../../tests/counts.ts'
import type { Vector } from '../vector.ts'
import { MODULE_FACES } from './bay-module.ts'
import { type PackMixedTask, waysToMix } from './pack-mixed.ts'
import { packSearch, packWithin } from './pack-search.ts'
import type { BoxBuild, PackAnswer, PackArrangement, PackModule, PackSpace, PackTask } from './pack-types.ts'

const BUILD: BoxBuild = { wall: 0.004, plate: 0.012, lid: 0.02, busbar: 0.05, sheet: 12 }
const BARE: BoxBuild = { wall: 0, plate: 0, lid: 0, busbar: 0, sheet: 0 }
const box = (name: string, low: Vector, size: Vector): PackSpace => ({
  name,
  kind: 'box',
  low,
  high: low.map((c, i) => c + (size[i] as number)) as unknown as Vector,
})
/** Long modules of twelve groups and short ones of eight. */
const LONG: PackModule = { size: [0.54, 0.15, 0.11], clearance: 0.003, down: ['bottom'], mass: 18, energy: 12 * 0.9e6 }
const SHORT: PackModule = { ...LONG, size: [0.36, 0.15, 0.11], mass: 12.1, energy: 8 * 0.9e6 }
const TASK: PackMixedTask = {
  spaces: [box('engine bay', [-0.3, -0.4, 0.35], [0.7, 0.8, 0.3]), box('tank space', [2.1, -0.5, 0.3], [0.6, 1, 0.26])],
  module: LONG,
  have: 6,
  mix: { other: SHORT, groups: { main: 12, other: 8, string: 96 }, have: 9 },
  box: BUILD,
  series: 8,
  strings: { least: 1, most: 4 },
  splitGroups: false,
  wheelbase: 2.45,
  front: { mass: 560, limit: 780 },
  rear: { mass: 520, limit: 760 },
}
const best = (task: PackTask, steps = 300, seed = 4): PackAnswer => packWithin(packSearch(task, { seed }), steps)
const strings = ({ arrangements }: PackAnswer): number => Math.max(0, ...arrangements.map(a => a.strings))
const countOf = (one: PackArrangement, other: boolean): number =>
  one.boxes.flatMap(b => b.modules).filter(m => (m.other === true) === other).length

/** What is wrong with an arrangement of two forms, from the coordinates of its modules and the task alone. */
function faults(task: PackMixedTask, one: PackArrangement): string[] {
  const out: string[] = [],
    hair = 1e-6,
    { wall, plate, lid, busbar } = task.box,
    { groups, have } = task.mix,
    inString = one.inString ?? { main: Number.NaN, other: Number.NaN }
  if (inString.main * groups.main + inString.other * groups.other !== groups.string) out.push('no whole string')
  if (countOf(one, false) !== inString.main * one.strings || countOf(one, true) !== inString.other * one.strings)
    out.push('no whole strings')
  if (countOf(one, false) > (task.have ?? Infinity) || countOf(one, true) > have) out.push('more than there are')
  let mass = 0
  for (const b of one.boxes) {
    const space = task.spaces.find(s => s.name === b.space) as PackSpace & { kind: 'box' },
      others = b.modules.filter(m => m.other).length
    if (!task.splitGroups && (others % one.strings !== 0 || b.modules.length % one.strings !== 0)) out.push(`${b.space} breaks a group`)
    const strip = (side: string): number => wall + (side === b.busbars ? busbar : 0),
      low: Vector = [strip('front'), strip('left'), wall + plate],
      high: Vector = [strip('back'), strip('right'), wall + lid]
    for (const { box: m, other, strip: before } of b.modules) {
      for (const room of before ? [m, before] : [m])
        if (
          room.low.some((c, i) => c - (low[i] as number) < Math.max(space.low[i] as number, b.outer.low[i] as number) - hair) ||
          room.high.some((c, i) => c + (high[i] as number) > Math.min(space.high[i] as number, b.outer.high[i] as number) + hair)
        )
          out.push(`${b.space}: out of its box`)
      const sides = m.high.map((c, i) => c - (m.low[i] as number)).sort((x, y) => x - y),
        wanted = [...(other ? task.mix.other : task.module).size].sort((x, y) => x - y)
      if (sides.some((s, i) => Math.abs(s - (wanted[i] as number)) > hair)) out.push(`${b.space}: another size`)
    }
    const away = (a: { low: Vector; high: Vector }, c: { low: Vector; high: Vector }): number =>
      Math.max(...[0, 1, 2].map(i => Math.max((a.low[i] as number) - (c.high[i] as number), (c.low[i] as number) - (a.high[i] as number))))
    b.modules.forEach(({ box: m, strip: before }, n) => {
      b.modules.forEach(({ box: o }, k) => {
        if (k < n && away(m, o) < task.module.clearance - hair) out.push(`${b.space}: two modules too close`)
        if (k !== n && before && away(before, o) < -hair) out.push(`${b.space}: a module before a face`)
      })
    })
    const [l, w, h] = b.outer.high.map((c, i) => c - (b.outer.low[i] as number)) as [number, number, number]
    const own = (b.modules.length - others) * task.module.mass + others * task.mix.other.mass + task.box.sheet * 2 * (l * w + l * h + w * h)
    if (Math.abs(own - b.mass) > 1e-9) out.push(`${b.space}: another mass`)
    mass += b.mass
  }
  if (Math.abs(mass - one.mass) > 1e-9) out.push('another mass')
  return out
}

type Pair = readonly [mains: number, others: number]
/** Every pair of numbers of two forms that a space of whole cells holds and no other pair passes, by trying every way at every cell. */
function pairsByTrying([l, w, h]: readonly [number, number, number], turns: readonly (readonly (readonly number[])[])[]): readonly Pair[] {
  const cells = l * w * h,
    known = new Map<string, readonly Pair[]>()
  const maskOf = (at: number, sides: readonly number[]): number => {
    const [x, y, z] = [at % l, Math.floor(at / l) % w, Math.floor(at / (l * w))]
    const [a, b, c] = sides as [number, number, number]
    if (x + a > l || y + b > w || z + c > h) return 0
    let mask = 0
    for (let k = z; k < z + c; k++) for (let j = y; j < y + b; j++) for (let i = x; i < x + a; i++) mask |= 1 << (i + l * (j + w * k))
    return mask
  }
  const from = (at: number, taken: number): readonly Pair[] => {
    if (at === cells) return [[0, 0]]
    if (taken & (1 << at)) return from(at + 1, taken)
    const key = `${at} ${taken >>> at}`,
      before = known.get(key)
    if (before) return before
    const all: Pair[] = [...from(at + 1, taken)]
    turns.forEach((ways, form) => {
      for (const sides of ways) {
        const mask = maskOf(at, sides)
        if (mask === 0 || mask & taken) continue
        for (const [a, b] of from(at + 1, taken | mask)) all.push(form === 0 ? [a + 1, b] : [a, b + 1])
      }
    })
    const front = all.filter(
      (p, i) => !all.some((o, k) => k !== i && o[0] >= p[0] && o[1] >= p[1] && (o[0] > p[0] || o[1] > p[1] || k < i)),
    )
    known.set(key, front)
    return front
  }
  return from(0, 0)
}
/** Most strings by trying every way to make one and every number of groups of each form in each space. */
function mostStringsByTrying(task: PackMixedTask, spaces: readonly (readonly Pair[])[]): number {
  const hold = (i: number, p: number, main: number, other: number): boolean => {
    if (main === 0 && other === 0) return true
    if (i === spaces.length) return false
    for (let a = 0; a <= main; a++)
      for (let b = 0; b <= other; b++)
        if ((spaces[i] as readonly Pair[]).some(([x, y]) => x >= a * p && y >= b * p) && hold(i + 1, p, main - a, other - b)) return true
    return false
  }
  let most = 0
  for (let p = task.strings.least; p <= task.strings.most; p++)
    if (waysToMix(task, p).some(w => (task.splitGroups ? hold(0, 1, w.main * p, w.other * p) : hold(0, p, w.main, w.other)))) most = p
  return most
}

describe('a string of two forms of module', () => {
  it('is made in every way there are modules for, worked by hand', () => {
    // 96 groups: 8·12, 6·12 + 3·8, 4·12 + 6·8, 2·12 + 9·8; twelve short ones alone are a pack of short ones.
    const all: PackMixedTask = { ...TASK, have: 99, mix: { ...TASK.mix, have: 99 } }
    expect(waysToMix(all, 1)).toEqual([
      { main: 8, other: 0 },
      { main: 6, other: 3 },
      { main: 4, other: 6 },
      { main: 2, other: 9 },
    ])
    expect(waysToMix(TASK, 1).map(w => w.main)).toEqual([6, 4, 2])
    expect(waysToMix({ ...TASK, have: 7, mix: { ...TASK.mix, have: 7 } }, 2)).toEqual([])
  })
  it('goes into a shelf where neither form alone does, worked by hand', () => {
    // 1.45 m by 0.2 m: three of 0.4 m leave 0.25 m; a 0.6 m one and two of 0.4 m take 1.4 m. Groups: 6 + 2 · 4 = 14; 3 · 4 = 12; 2 · 6 = 12.
    const flat = { ...TASK.module, clearance: 0, size: [0.6, 0.2, 0.1] as Vector, mass: 9, energy: 6e6 },
      short = { ...flat, size: [0.4, 0.2, 0.1] as Vector, mass: 6.5, energy: 4e6 }
    const task: PackMixedTask = {
      ...TASK,
      box: BARE,
      have: 9,
      module: flat,
      mix: { other: short, groups: { main: 6, other: 4, string: 14 }, have: 9 },
      strings: { least: 1, most: 3 },
      spaces: [box('shelf', [0.5, 0, 0.3], [1.45, 0.2, 0.1])],
    }
    const { arrangements, bound, gap, counts } = best(task)
    expect(arrangements).toHaveLength(1)
    expect(arrangements[0]).toMatchObject({ strings: 1, modules: 3, inString: { main: 1, other: 2 }, mass: 9 + 2 * 6.5 })
    expect(arrangements[0]?.energy).toBeCloseTo(14e6, 3)
    expect({ bound, gap, counts }).toEqual({ bound: 14, gap: 0, counts: 'cell groups' })
    // Without the long ones 14 is no multiple of four, and with one short one alone a long one is wanting.
    expect(best({ ...task, have: 0 }).arrangements).toEqual([])
    expect(best({ ...task, mix: { ...task.mix, have: 1 } }).arrangements).toEqual([])
  })
  it('has as many strings as trying every way finds, in small spaces', () => {
    const side = fc.integer({ min: 1, max: 4 })
    const size = fc.constantFrom<Vector>([0.2, 0.1, 0.1], [0.3, 0.1, 0.1], [0.2, 0.2, 0.1], [0.3, 0.2, 0.1], [0.1, 0.1, 0.1])
    fc.assert(
      fc.property(
        fc.array(fc.tuple(side, fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 2 })), { minLength: 1, maxLength: 2 }),
        size,
        size,
        fc.boolean(),
        fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 3 }), fc.integer({ min: 2, max: 9 })),
        fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 })),
        fc.boolean(),
        (sizes, one, two, onAnySide, [main, other, string], [have, haveOther], splitGroups) => {
          const module: PackModule = {
            ...LONG,
            size: one,
            clearance: 0,
            down: onAnySide ? [...MODULE_FACES] : ['bottom'],
            energy: main * 1e6,
          }
          const task: PackMixedTask = {
            ...TASK,
            box: BARE,
            splitGroups,
            strings: { least: 1, most: 4 },
            module,
            have,
            mix: { other: { ...module, size: two, mass: 13, energy: other * 1e6 }, groups: { main, other, string }, have: haveOther },
            spaces: sizes.map((s, i) => box(`space ${i}`, [i, 0, 0.3], s.map(n => n / 10) as unknown as Vector)),
          }
          const turnsOf = (s: Vector): readonly (readonly number[])[] => {
            const [a, b, c] = s.map(x => Math.round(x * 10)) as [number, number, number]
            return [
              [a, b, c],
              [b, a, c],
              ...(onAnySide
                ? [
                    [a, c, b],
                    [c, a, b],
                    [b, c, a],
                    [c, b, a],
                  ]
                : []),
            ]
          }
          const answer = best(task, 3000, 1),
            most = strings(answer)
          expect(most).toBe(
            mostStringsByTrying(
              task,
              sizes.map(s => pairsByTrying(s, [turnsOf(one), turnsOf(two)])),
            ),
          )
          for (const a of answer.arrangements) expect(faults(task, a)).toEqual([])
          const counted = answer.counts ? most * string : most * (string / main)
          expect(answer.gap).toBe(answer.bound - counted)
          expect(answer.gap).toBeGreaterThanOrEqual(0)
        },
      ),
      { numRuns: runs(600) },
    )
  })
  it('stands whole in its boxes, no more than there are, never past the bound', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 30, max: 90 }), fc.integer({ min: 16, max: 50 }), fc.integer({ min: 12, max: 30 })), {
          minLength: 1,
          maxLength: 3,
        }),
        fc.integer({ min: 2, max: 8 }),
        fc.integer({ min: 0, max: 9 }),
        fc.integer({ min: 0, max: 9 }),
        fc.boolean(),
        fc.nat(99),
        (sizes, fourths, have, haveOther, splitGroups, seed) => {
          const service = seed % 3 === 0 ? { service: { face: 'front' as const, strip: 0.03 } } : {},
            lies = seed % 2 === 0 ? { down: ['bottom', 'left'] as const } : {}
          const task: PackMixedTask = {
            ...TASK,
            splitGroups,
            have,
            box: { ...BUILD, busbar: seed % 4 === 0 ? 0.05 : 0 },
            module: { ...LONG, ...service, ...lies },
            mix: { other: { ...SHORT, ...service, ...lies }, groups: { main: 12, other: 8, string: 4 * fourths }, have: haveOther },
            spaces: sizes.map((s, i) => box(`space ${i}`, [i, 0, 0.3], s.map(c => c / 100) as unknown as Vector)),
          }
          const answer = best(task, 1, seed)
          for (const one of answer.arrangements)
            expect(faults(task, { inString: { main: one.modules / one.strings, other: 0 }, ...one })).toEqual([])
          expect(answer.gap).toBeGreaterThanOrEqual(0)
          for (const s of answer.spaces) expect(s.found).toBeLessThanOrEqual(s.bound)
        },
      ),
      { numRuns: runs(200) },
    )
  }, 900_000)
  it('fills a space of cubes too', () => {
    const free = new Uint8Array(40 * 30 * 20).fill(1),
      task: PackMixedTask = {
        ...TASK,
        mix: { ...TASK.mix, groups: { main: 12, other: 8, string: 44 } },
        spaces: [{ name: 'scan', kind: 'field', field: { low: [0, 0, 0.3], edge: 0.02, counts: [40, 30, 20], free } }],
      }
    const { arrangements, gap } = best(task, 100)
    expect(arrangements.some(a => countOf(a, true) > 0 && countOf(a, false) > 0)).toBe(true)
    expect(gap).toBeGreaterThanOrEqual(0)
  })
  it('goes into a room of a van any way round, in cubes few enough to search', () => {
    const any = { down: [...MODULE_FACES], service: { face: 'front' as const, strip: 0.03 } },
      task: PackMixedTask = {
        ...TASK,
        module: { ...TASK.module, ...any },
        mix: { ...TASK.mix, other: { ...TASK.mix.other, ...any } },
        box: BARE,
        rear: { mass: 520, limit: 1100 },
        spaces: [{ name: 'load bay', kind: 'box', low: [0.8, -0.75, 0.5], high: [2.4, 0.75, 1.6] }],
      }
    const { arrangements } = best(task, 3000)
    expect(arrangements.length).toBeGreaterThan(0)
    expect(arrangements.flatMap(one => faults(task, one))).toEqual([])
  })
  it('is what one form alone gives where the other is not there, is never taken, or is the same', () => {
    const alone: PackTask = { ...TASK, module: SHORT, series: 6, strings: { least: 1, most: 3 } },
      { mix: _, have: __, ...plain } = { ...alone, mix: undefined, have: undefined },
      wanted = best(plain)
    const mixed = (mix: Partial<PackMixedTask['mix']>, have: number): PackAnswer =>
      best({ ...plain, have, mix: { ...TASK.mix, groups: { main: 8, other: 12, string: 48 }, other: LONG, ...mix } })
    const { inString: ___, ...first } = mixed({ have: 0 }, 99).arrangements[0] as PackArrangement
    expect(first).toEqual(wanted.arrangements[0])
    expect(mixed({ have: 0 }, 99)).toMatchObject({ bound: wanted.bound, gap: wanted.gap, spaces: wanted.spaces })
    // 48 groups are no sum of 8 and 56.
    expect(mixed({ groups: { main: 8, other: 56, string: 48 } }, 99)).toMatchObject({ bound: wanted.bound, spaces: wanted.spaces })
    const same = mixed({ other: SHORT, groups: { main: 8, other: 8, string: 48 }, have: 30 }, 5),
      figures = ({ energy, mass, height, cable, frontMargin, rearMargin }: PackArrangement) => [
        energy,
        mass,
        height,
        cable,
        frontMargin,
        rearMargin,
      ]
    expect(same.arrangements.map(figures)).toEqual(wanted.arrangements.map(figures))
    for (const a of same.arrangements) {
      expect(countOf(a, false)).toBe((a.inString?.main as number) * a.strings)
      expect(countOf(a, false)).toBeLessThanOrEqual(5)
      expect(countOf(a, true)).toBeLessThanOrEqual(30)
    }
  })
  it('has no more strings than there are modules, of one form too', () => {
    const { mix: _, ...plain } = { ...TASK, module: SHORT, series: 3, mix: undefined }
    expect(strings(best({ ...plain, have: 5 }))).toBe(1)
    expect(best({ ...plain, have: 2 })).toMatchObject({ arrangements: [], bound: 0 })
    expect(strings(best({ ...plain, have: 99 }))).toBeGreaterThan(1)
  })
  it('gives the same answers for the same seed, in whatever order the spaces are named', () => {
    expect(best(TASK, 400, 3)).toEqual(best({ ...TASK, spaces: [...TASK.spaces].reverse() }, 400, 3))
  })
  it('is refused with numbers that are none, by name', () => {
    const first = (change: Partial<PackTask>) => () => packSearch({ ...TASK, ...change }, { seed: 1 }).next()
    expect(first({ have: 1.5 })).toThrow('packing: modules there are must be a whole number of at least 0, found 1.5')
    expect(first({ mix: { ...TASK.mix, groups: { ...TASK.mix.groups, other: 0 } } })).toThrow('cell groups of a module of the other form')
    expect(first({ mix: { ...TASK.mix, other: { ...SHORT, mass: 0 } } })).toThrow('packing: the mass of a module of the other form')
  })
})
