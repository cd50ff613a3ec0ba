import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { solveLinear } from '../numerics/linear.ts'
import { faultPlace, faultResistance, faultResistanceByMeter } from './insulation-fault-place.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const decades = (low: number, high: number) => real(low, high).map(x => 10 ** x)
type Leak = { readonly at: number; readonly resistance: number }

/**
 * A string of cells with leaks to the body, solved node by node: taps 1 to n over the negative pole, the body, and the current of each cell are unknown, so
 * nothing of the closed form is used. Gives what a meter shows between a pole and the body.
 */
function reads(cells: readonly number[], leaks: readonly Leak[], pole: 'negative' | 'positive', across: readonly number[]): number {
  const n = cells.length,
    body = n,
    size = 2 * n + 1,
    a = new Float64Array(size * size),
    b = new Float64Array(size)
  const add = (row: number, column: number, v: number): void => {
    a[row * size + column]! += v
  }
  const all = [...leaks, ...across.map(resistance => ({ at: pole === 'negative' ? 0 : n, resistance }))]
  for (const { at, resistance } of all) {
    const g = 1 / resistance
    add(body, body, g)
    if (at === 0) continue
    add(at - 1, at - 1, g)
    add(at - 1, body, -g)
    add(body, at - 1, -g)
  }
  for (let k = 0; k < n; k++) {
    const current = n + 1 + k
    add(k, current, -1)
    if (k > 0) add(k - 1, current, 1)
    add(current, k, 1)
    if (k > 0) add(current, k - 1, -1)
    b[current] = cells[k]!
  }
  const u = solveLinear(a, b) as Float64Array
  return pole === 'negative' ? u[body]! : u[n - 1]! - u[body]!
}
const string = fc.record({
  n: fc.integer({ min: 2, max: 24 }),
  volts: real(2.5, 4.2),
  meter: decades(6, 7.5),
  resistor: decades(4.5, 6),
})

describe('an insulation fault in a string', () => {
  it('is found where it was put, with its resistance, by a circuit built the other way', () => {
    fc.assert(
      fc.property(string, real(0, 1), decades(3, 6), ({ n, volts, meter, resistor }, where, resistance) => {
        const at = Math.round(where * n),
          cells = Array<number>(n).fill(volts),
          leaks = [{ at, resistance }]
        const low = reads(cells, leaks, 'negative', [meter]),
          high = reads(cells, leaks, 'positive', [meter])
        expect(faultPlace({ low, high, cells: n }).cells).toBeCloseTo(at, 6)
        const pole = low > high ? 'negative' : 'positive',
          [read, other] = low > high ? [low, high] : [high, low]
        const found = faultResistance({ bus: n * volts, read, other, with: reads(cells, leaks, pole, [meter, resistor]), resistor })
        expect(found / resistance).toBeCloseTo(1, 5)
        expect(Math.abs(faultResistanceByMeter({ bus: n * volts, low, high, meter }) - resistance)).toBeLessThan(1e-6 * meter)
      }),
      { numRuns: runs(2000) },
    )
  })
  it('two faults show their mean place by conductance, and both side by side', () => {
    fc.assert(
      fc.property(string, decades(4, 6), decades(4, 6), ({ n, volts, meter, resistor }, one, two) => {
        const cells = Array<number>(n).fill(volts),
          leaks = [
            { at: 1, resistance: one },
            { at: n, resistance: two },
          ]
        const low = reads(cells, leaks, 'negative', [meter]),
          high = reads(cells, leaks, 'positive', [meter]),
          mean = (1 / one + n / two) / (1 / one + 1 / two)
        expect(faultPlace({ low, high, cells: n }).cells).toBeCloseTo(mean, 6)
        const pole = low > high ? 'negative' : 'positive',
          [read, other] = low > high ? [low, high] : [high, low]
        const both = faultResistance({ bus: n * volts, read, other, with: reads(cells, leaks, pole, [meter, resistor]), resistor })
        expect(both * (1 / one + 1 / two)).toBeCloseTo(1, 5)
      }),
      { numRuns: runs(1000) },
    )
  })
})
