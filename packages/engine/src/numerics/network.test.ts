import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { type Branch, solveNetwork } from './network.ts'

describe('a network of resistances', () => {
  it('divides a voltage and a current as by hand', () => {
    // 12 V on 1 Ω and then 2 Ω beside 3 Ω.
    const { potentials, currents } = solveNetwork(3, [
      { from: 0, to: 1, resistance: 1e-9, lifts: 12 },
      { from: 1, to: 2, resistance: 1 },
      { from: 2, to: 0, resistance: 2 },
      { from: 2, to: 0, resistance: 3 },
    ])!
    expect(potentials[1]).toBeCloseTo(12, 6)
    expect(currents[1]).toBeCloseTo(12 / 2.2, 6)
    expect(currents[2]! / currents[3]!).toBeCloseTo(1.5, 9)
  })
  it('is balanced in a bridge', () => {
    const { currents } = solveNetwork(4, [
      { from: 0, to: 3, resistance: 1, lifts: 10 },
      { from: 3, to: 1, resistance: 10 },
      { from: 3, to: 2, resistance: 20 },
      { from: 1, to: 0, resistance: 30 },
      { from: 2, to: 0, resistance: 60 },
      { from: 1, to: 2, resistance: 5 },
    ])!
    expect(Math.abs(currents[5]!)).toBeLessThan(1e-12)
  })
  it('has no answer where a source of current finds no way back', () => {
    expect(solveNetwork(2, [{ from: 0, to: 1, current: 1 }])).toBeUndefined()
    expect(solveNetwork(2, [])?.potentials).toEqual(Float64Array.of(0, 0))
  })
  it('keeps the law of currents at every node, and that of power over the whole', () => {
    const branch = (nodes: number): fc.Arbitrary<Branch> =>
      fc.oneof(
        fc.record({
          from: fc.nat(nodes - 1),
          to: fc.nat(nodes - 1),
          resistance: fc.double({ min: 1e-4, max: 1e6, noNaN: true }),
          lifts: fc.double({ min: -500, max: 500, noNaN: true }),
        }),
        fc.record({ from: fc.nat(nodes - 1), to: fc.nat(nodes - 1), current: fc.double({ min: -400, max: 400, noNaN: true }) }),
      )
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }).chain(n => fc.tuple(fc.constant(n), fc.array(branch(n), { maxLength: 30 }))),
        ([nodes, branches]) => {
          const solved = solveNetwork(nodes, branches)
          if (!solved) return
          const sum = new Float64Array(nodes),
            scale = new Float64Array(nodes).fill(1e-9)
          branches.forEach(({ from, to }, i) => {
            sum[from]! -= solved.currents[i]!
            sum[to]! += solved.currents[i]!
            scale[from]! += Math.abs(solved.currents[i]!)
            scale[to]! += Math.abs(solved.currents[i]!)
          })
          for (let i = 0; i < nodes; i++) expect(Math.abs(sum[i]!) / Math.max(scale[i]!, 1)).toBeLessThan(1e-6)
        },
      ),
      { numRuns: runs(10_000) },
    )
  })
})
