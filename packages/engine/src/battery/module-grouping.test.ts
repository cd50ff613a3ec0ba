import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { moduleGrouping, stringSorting } from './module-grouping.ts'
import { blindString } from './weakest-of-many.ts'

const TWELVE = [260, 267, 269, 271, 280, 283, 280, 275, 272, 282, 285, 280]
const TWENTY_FOUR = [276, 287, 289, 289, 288, 303, 289, 299, 291, 294, 294, 288, 285, 288, 299, 289, 292, 300, 297, 297, 296, 287, 311, 313]

/** Best smallest sum over every grouping there is. */
function exhaustive(values: readonly number[], groups: number, size: number): number {
  const left = values.map((_, i) => i)
  const go = (rest: readonly number[], count: number): number => {
    if (count === 0) return Infinity
    const [first, ...others] = rest as [number, ...number[]]
    let best = -Infinity
    const choose = (from: number, taken: readonly number[]): void => {
      if (taken.length === size) {
        const sum = taken.reduce((s, i) => s + values[i]!, 0)
        if (sum > best)
          best = Math.max(
            best,
            Math.min(
              sum,
              go(
                rest.filter(i => !taken.includes(i)),
                count - 1,
              ),
            ),
          )
        return
      }
      for (let k = from; k < others.length; k++) choose(k + 1, [...taken, others[k] as number])
    }
    choose(0, [first])
    return best
  }
  return go(left, groups)
}

describe('sorting modules into parallel groups', () => {
  it('finds the best of all 15 400 groupings of twelve cells into four times three', () => {
    const found = moduleGrouping(TWELVE, 4, 3)
    expect(found.bound).toBe(826)
    expect(exhaustive(TWELVE, 4, 3)).toBe(825)
    expect(found.weakest).toBe(825)
  })
  it('finds the optimum, 878, for twenty-four cells in eight groups of three', () => {
    expect(moduleGrouping(TWENTY_FOUR, 8, 3)).toMatchObject({ weakest: 878, bound: 7041 / 8 })
  })
  it('in threes never helps to deal the weakest and two others again, whatever their number', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 200, max: 320 }), { minLength: 12, maxLength: 18 }), values => {
        const { groups, weakest } = moduleGrouping(values, Math.floor(values.length / 3), 3),
          sum = (g: readonly number[]): number => g.reduce((s, i) => s + values[i]!, 0),
          worst = groups.findIndex(g => sum(g) === weakest)
        for (const [i, one] of groups.entries())
          for (const [j, other] of groups.entries())
            if (i < j && i !== worst && j !== worst) {
              const lot = [...groups[worst]!, ...one, ...other].map(k => values[k]!)
              expect(exhaustive(lot, 3, 3)).toBeLessThanOrEqual(Math.min(sum(one), sum(other), weakest))
            }
      }),
      { numRuns: runs(200) },
    )
  })
  it('uses every module once, the same way each time, and never beats the bound', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 200, max: 320 }), { minLength: 12, maxLength: 20 }),
        fc.integer({ min: 1, max: 4 }),
        (values, size) => {
          const groups = Math.floor(values.length / size),
            found = moduleGrouping(values, groups, size),
            used = found.groups.flat()
          expect(new Set(used).size).toBe(groups * size)
          expect(found.groups.every(g => g.length === size)).toBe(true)
          expect(Math.min(...found.groups.map(g => g.reduce((s, i) => s + values[i]!, 0)))).toBe(found.weakest)
          expect(found.weakest).toBeLessThanOrEqual(found.bound + 1e-9)
          expect(moduleGrouping(values, groups, size)).toEqual(found)
        },
      ),
    )
  })
  it('is the optimum in pairs and in three groups of three', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 200, max: 320 }), { minLength: 8, maxLength: 8 }), values => {
        expect(moduleGrouping(values, 4, 2).weakest).toBe(exhaustive(values, 4, 2))
      }),
      { numRuns: runs(1000) },
    )
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 200, max: 320 }), { minLength: 9, maxLength: 9 }), values => {
        expect(moduleGrouping(values, 3, 3).weakest).toBe(exhaustive(values, 3, 3))
      }),
      { numRuns: runs(1000) },
    )
  })
  it('into strings puts like with like: the best of every way to deal six or eight modules into two strings', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 99 }), { minLength: 6, maxLength: 8 }), lot => {
        const size = 3
        let best = 0
        const choose = (from: number, taken: readonly number[]): void => {
          if (taken.length === size) {
            const others = lot
              .filter((_, i) => !taken.includes(i))
              .sort((a, b) => b - a)
              .slice(0, size)
            best = Math.max(best, Math.min(...taken.map(i => lot[i]!)) + Math.min(...others))
            return
          }
          for (let k = from; k < lot.length; k++) choose(k + 1, [...taken, k])
        }
        choose(0, [])
        expect(stringSorting(lot, 2, size).together).toBe(best)
      }),
    )
  })
  it('takes the best where there are spares', () => {
    expect(moduleGrouping([5, 1, 4, 2, 3], 2, 1)).toEqual({ groups: [[0], [2]], weakest: 4, bound: 4.5 })
    expect(() => moduleGrouping([1, 2], 3, 1)).toThrow(RangeError)
  })
  it('a string taken blindly is as good as its mean over every draw', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 99 }), { minLength: 4, maxLength: 8 }),
        fc.integer({ min: 1, max: 4 }),
        (lot, wanted) => {
          const draws: number[] = []
          const choose = (from: number, taken: readonly number[]): void => {
            if (taken.length === wanted) return void draws.push(Math.min(...taken))
            for (let k = from; k < lot.length; k++) choose(k + 1, [...taken, lot[k] as number])
          }
          choose(0, [])
          expect(blindString({ lot, wanted })).toBeCloseTo(draws.reduce((a, b) => a + b, 0) / draws.length, 9)
        },
      ),
    )
  })
})
