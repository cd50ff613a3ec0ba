import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { clearanceInAir, creepageDistance, creepageRow, ratedImpulse } from './creepage.ts'
import { altitudeTable, boardCreepageTable, clearanceTable, creepageTable, type MaterialGroup, type Pollution } from './creepage-tables.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const DEGREES: readonly Pollution[] = [1, 2, 3]
const GROUPS: readonly MaterialGroup[] = ['I', 'II', 'III']
const ORDER = DEGREES.flatMap(d => GROUPS.map(g => [d, g] as const))

describe('creepage', () => {
  it('the copied table sums to what the printed columns sum to', () => {
    const sum = (c: { y: Float64Array }): number => c.y.reduce((a, b) => a + b, 0) * 1e3
    const columns = [12.88, 24.71, 34.85, 49.25, 62, 69.3, 78.1]
    expect(sum(creepageTable(1, 'II'))).toBeCloseTo(columns[0]!, 9)
    for (const [k, [d, g]] of ORDER.slice(3).entries()) expect(sum(creepageTable(d, g))).toBeCloseTo(columns[k + 1]!, 9)
    expect(sum(boardCreepageTable(1))).toBeCloseTo(11.535, 9)
    expect(sum(boardCreepageTable(2))).toBeCloseTo(20.13, 9)
    expect(DEGREES.map(d => sum(clearanceTable(d)))).toEqual([32.65, 33.1, 35.2].map(v => expect.closeTo(v, 9)))
  })
  it('never shrinks with voltage, pollution or a poorer material', () => {
    fc.assert(
      fc.property(real(1, 1000), real(1, 1000), (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)],
          way = (voltage: number, d: Pollution, g: MaterialGroup): number =>
            creepageDistance({ table: creepageTable(d, g), row: creepageRow({ voltage }), times: 1 })
        for (const d of DEGREES)
          for (const g of GROUPS) {
            expect(way(low, d, g)).toBeLessThanOrEqual(way(high, d, g))
            if (d < 3) expect(way(low, d, g)).toBeLessThan(way(low, (d + 1) as Pollution, g))
            if (g !== 'III') expect(way(low, d, g)).toBeLessThanOrEqual(way(low, d, GROUPS[GROUPS.indexOf(g) + 1]!))
          }
      }),
      { numRuns: runs(1000) },
    )
  })
  it('the next row up is never less than functional insulation between two rows', () => {
    fc.assert(
      fc.property(real(50, 1000), voltage => {
        const table = creepageTable(2, 'III')
        expect(creepageDistance({ table, row: creepageRow({ voltage }), times: 1 })).toBeGreaterThanOrEqual(
          creepageDistance({ table, row: voltage, times: 1 }),
        )
      }),
      { numRuns: runs(1000) },
    )
  })
  it('beyond the table there is no distance that is enough', () => {
    expect(creepageDistance({ table: creepageTable(2, 'I'), row: creepageRow({ voltage: 1001 }), times: 1 })).toBe(Number.POSITIVE_INFINITY)
    expect(ratedImpulse({ voltage: 1000, category: 4, steps: 1 })).toBe(Number.POSITIVE_INFINITY)
    expect(ratedImpulse({ voltage: 1001, category: 1, steps: 0 })).toBe(Number.POSITIVE_INFINITY)
    const factor = altitudeTable()
    expect(clearanceInAir({ table: clearanceTable(2), impulse: Number.POSITIVE_INFINITY, factor, altitude: 0 })).toBe(
      Number.POSITIVE_INFINITY,
    )
  })
})

describe('the rated impulse', () => {
  it('is that of the printed table, cell by cell', () => {
    const printed: readonly (readonly [number, ...number[]])[] = [
      [50, 330, 500, 800, 1500],
      [100, 500, 800, 1500, 2500],
      [150, 800, 1500, 2500, 4000],
      [300, 1500, 2500, 4000, 6000],
      [600, 2500, 4000, 6000, 8000],
      [1000, 4000, 6000, 8000, 12000],
    ]
    for (const [voltage, ...row] of printed)
      expect([1, 2, 3, 4].map(category => ratedImpulse({ voltage, category, steps: 0 }))).toEqual(row)
  })
})
