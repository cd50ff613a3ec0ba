import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../../tests/counts.ts'
import { BOXES, LAYERS } from '../../../../../tests/packing-cases.ts'
import { proven } from '../../../../../tests/proof.ts'
import { type Answer, answerWithin, type Placed, type Whole } from './answer.ts'
import { packBox } from './box.ts'
import { boxBound, colouringWaste, planeBound } from './box-bound.ts'
import { fiveBlocks } from './five-blocks.ts'
import { type PlacedRectangle, packRectangle } from './rectangle.ts'
import { rectangleBound } from './rectangle-bound.ts'

const LONG = process.env['AMPWRIGHT_LONG'] === '1'
const SEED = 4
const rectangle = ([length, width]: readonly [number, number]) => ({ length, width })
const flat = (p: PlacedRectangle): Placed => ({ at: [p.x, p.y, 0], sides: [p.length, p.width, 1] })
const sorted = (x: readonly number[]): string => [...x].sort((a, b) => a - b).join()

/** What is wrong with a packing, found cell by cell; shares nothing with the search. */
function faults(space: Whole, box: Whole, placed: readonly Placed[]): string[] {
  const out: string[] = []
  const taken = new Uint8Array(space[0] * space[1] * space[2])
  placed.forEach(({ at, sides }, n) => {
    if (sorted(sides) !== sorted(box)) out.push(`box ${n} has sides ${sides}`)
    if (at.some((c, i) => c < 0 || !Number.isInteger(c) || c + (sides[i] as number) > (space[i] as number))) {
      out.push(`box ${n} sticks out at ${at}`)
      return
    }
    for (let x = at[0]; x < at[0] + sides[0]; x++)
      for (let y = at[1]; y < at[1] + sides[1]; y++)
        for (let z = at[2]; z < at[2] + sides[2]; z++) {
          const cell = (x * space[1] + y) * space[2] + z
          if (taken[cell]) out.push(`box ${n} overlaps at ${x}, ${y}, ${z}`)
          taken[cell] = 1
        }
  })
  return out
}
/** The best packing by trying everything, cell after cell: for small spaces. */
function bestByTrying(space: Whole, turns: readonly Whole[]): number {
  const [L, W, H] = space,
    taken = new Uint8Array(L * W * H),
    volume = (turns[0] as Whole).reduce((a, b) => a * b, 1)
  let best = 0
  const go = (cell: number, free: number, n: number): void => {
    if (n > best) best = n
    if (n + Math.floor(free / volume) <= best) return
    while (cell < taken.length && taken[cell]) cell++
    if (cell >= taken.length) return
    const x = Math.floor(cell / (W * H)),
      y = Math.floor(cell / H) % W,
      z = cell % H
    for (const [a, b, c] of turns) {
      if (x + a > L || y + b > W || z + c > H) continue
      const cells: number[] = []
      for (let i = x; i < x + a; i++) for (let j = y; j < y + b; j++) for (let k = z; k < z + c; k++) cells.push((i * W + j) * H + k)
      if (cells.some(i => taken[i])) continue
      for (const i of cells) taken[i] = 1
      go(cell + 1, free - volume, n + 1)
      for (const i of cells) taken[i] = 0
    }
    go(cell + 1, free - 1, n)
  }
  go(0, taken.length, 0)
  return best
}

/** What takes seconds belongs to the long count alone: it is tried and counted there. */
const inTime = (long: boolean | undefined): typeof it => (long && !LONG ? ((() => {}) as unknown as typeof it) : it)

describe('boxes of one kind in one layer', () => {
  const table: string[] = []
  for (const { space, box, best, published, long } of LAYERS) {
    const name = `${box.join(' × ')} in ${space.join(' × ')}: ${best}`
    inTime(long)(
      `${name} are reached, and proven best`,
      () => {
        const answer = answerWithin(packRectangle(rectangle(space), rectangle(box), SEED), 5e6)
        table.push(`${name}, reached ${answer.placed.length}, bound ${answer.bound}, ${answer.steps} steps`)
        proven({
          domain: 'fitting',
          check: `boxes in one layer: ${box.join(' × ')} in ${space.join(' × ')}`,
          source: published ? 'Birgin, Lobato and Morabito (2010)' : 'best number worked out again by bound or exhaustive search',
          mark: published ? 'published' : 'independent program',
          expected: best,
          obtained: answer.placed.length,
          tolerance: 0,
          unit: '1',
        })
        expect(faults([...space, 1], [...box, 1], answer.placed.map(flat))).toEqual([])
        expect(answer.placed.length).toBe(best)
        expect(answer.bound).toBe(best)
      },
      120_000,
    )
    it(`${name} by no bound less`, () => {
      expect(rectangleBound(...space, ...box)).toBeGreaterThanOrEqual(best)
      const blocks = fiveBlocks(...space, ...box)
      expect(faults([...space, 1], [...box, 1], blocks)).toEqual([])
      expect(blocks.length).toBeGreaterThanOrEqual(best - 1)
      expect(blocks.length).toBeLessThanOrEqual(best)
    })
  }
  it('the table of what was reached', () => {
    console.info(table.join('\n'))
    expect(table.length).toBe(LAYERS.filter(c => LONG || !c.long).length)
  })
})

describe('boxes of one kind in a space, six turns', () => {
  for (const { space, box, best, bound, long } of BOXES)
    inTime(long)(
      `${box.join(' × ')} in ${space.join(' × ')}: ${best} are reached, never more than ${bound}`,
      () => {
        const answer = answerWithin(packBox(space, box, SEED), best === bound ? 4e6 : 2e4)
        proven({
          domain: 'fitting',
          check: `boxes in a space: ${box.join(' × ')} in ${space.join(' × ')}`,
          source: 'best number worked out again by an integer program',
          mark: 'independent program',
          expected: best,
          obtained: answer.placed.length,
          tolerance: 0,
          unit: '1',
        })
        expect(faults(space, box, answer.placed)).toEqual([])
        expect(answer.placed.length).toBe(best)
        expect(answer.bound).toBe(bound)
      },
      180_000,
    )
  it('27 of 1 × 2 × 4 do not go into 6 × 6 × 6, by colour', () => expect(colouringWaste([6, 6, 6], [1, 2, 4])).toBe(8))
  it('28 of 4 × 5 × 6 do not go into 15 × 15 × 15, by planes, where the volume would allow them', () => {
    expect(planeBound([15, 15, 15], [4, 5, 6])).toBe(27)
    expect(Math.floor(15 ** 3 / 120)).toBe(28)
  })
})

const side = (max: number) => fc.integer({ min: 1, max })
const all = <P>(search: Generator<Answer<P>, void>, steps: number): Answer<P>[] => {
  const out: Answer<P>[] = []
  for (const answer of search) {
    out.push(answer)
    if (answer.placed.length === answer.bound || answer.steps >= steps) break
  }
  return out
}

describe('a packing search', () => {
  it('never lets boxes overlap or stick out, and each answer is no worse than the one before', () => {
    fc.assert(
      fc.property(side(40), side(40), side(12), side(12), fc.nat(1000), (length, width, l, w, seed) => {
        const answers = all(packRectangle({ length, width }, { length: l, width: w }, seed), 4000)
        answers.forEach(({ placed, bound }, i) => {
          expect(faults([length, width, 1], [l, w, 1], placed.map(flat))).toEqual([])
          expect(placed.length).toBeLessThanOrEqual(bound)
          const before = answers[i - 1]
          if (!before) return
          expect(placed.length).toBeGreaterThanOrEqual(before.placed.length)
          expect(bound).toBeLessThanOrEqual(before.bound)
        })
      }),
      { numRuns: runs(4000) },
    )
  })
  it('gives the best number that trying everything finds, in one layer', () => {
    fc.assert(
      fc.property(side(9), side(8), side(5), side(4), (length, width, l, w) => {
        fc.pre(l * w > 2)
        const { placed, bound } = answerWithin(packRectangle({ length, width }, { length: l, width: w }, 1), 1e6)
        expect(placed.length).toBe(
          bestByTrying(
            [length, width, 1],
            [
              [l, w, 1],
              [w, l, 1],
            ],
          ),
        )
        expect(bound).toBe(placed.length)
      }),
      { numRuns: runs(2000) },
    )
  })
  it('gives the best number that trying everything finds, in a space', () => {
    fc.assert(
      fc.property(side(4), side(4), side(4), side(3), side(3), side(4), (a, b, c, l, w, h) => {
        fc.pre(l * w * h > 3)
        const space: Whole = [a, b, c],
          { placed, bound } = answerWithin(packBox(space, [l, w, h], 1), 2e5)
        expect(faults(space, [l, w, h], placed)).toEqual([])
        const best = bestByTrying(space, [
          [l, w, h],
          [l, h, w],
          [w, l, h],
          [w, h, l],
          [h, l, w],
          [h, w, l],
        ])
        expect(boxBound(space, [l, w, h])).toBeGreaterThanOrEqual(best)
        expect(placed.length).toBe(best)
        expect(bound).toBe(best)
      }),
      { numRuns: runs(1000), examples: [[3, 3, 3, 3, 2, 4]] },
    )
  })
  it('gives the same answers for the same seed', () => {
    const once = (): unknown => all(packRectangle({ length: 46, width: 34 }, { length: 11, width: 4 }, 7), 5000)
    expect(once()).toEqual(once())
  })
  it('holds nothing where the box is larger than the space', () => {
    expect(answerWithin(packRectangle({ length: 5, width: 5 }, { length: 6, width: 1 }, 1), 10)).toMatchObject({ placed: [], bound: 0 })
    expect(answerWithin(packBox([5, 5, 5], [6, 1, 1], 1), 10)).toMatchObject({ placed: [], bound: 0 })
  })
  it('refuses more boxes than it could lay out, and comes back from the finest of rasters', () => {
    expect(() => packRectangle({ length: 100, width: 100 }, { length: 2, width: 1 }, 1).next()).toThrow(
      'packing: at most 2000 boxes are laid out, the space may hold 5000',
    )
    expect(() => packBox([50, 50, 50], [1, 1, 1], 1).next()).toThrow('packing: at most 2000 boxes')
    const { placed } = answerWithin(packRectangle({ length: 331, width: 167 }, { length: 13, width: 11 }, 1), 3e4)
    expect(faults([331, 167, 1], [13, 11, 1], placed.map(flat))).toEqual([])
    expect(placed.length).toBeGreaterThan(375)
  })
  it('refuses sides that are no whole numbers, naming the side', () => {
    expect(() => packRectangle({ length: 5.5, width: 5 }, { length: 2, width: 1 }, 1).next()).toThrow(
      'packing: space length must be a whole number from 1 to 20000, found 5.5',
    )
    expect(() => packBox([5, 5, 5], [2, 0, 1], 1).next()).toThrow('packing: box width must be a whole number')
  })
})
