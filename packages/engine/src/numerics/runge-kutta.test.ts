import { describe, expect, test } from 'vitest'
import type { Rates } from './dormand-prince.ts'
import { solveOde } from './ode.ts'
import { rungeKutta, rungeKuttaStepper } from './runge-kutta.ts'

const forced: Rates = (t, y, r) => {
  r[0] = y[1]!
  r[1] = -0.3 * y[1]! - 2 * y[0]! + Math.cos(t)
}

describe('the classical Runge–Kutta method', () => {
  test('multiplies by the series of e^h up to the fourth power in one step of y′ = y', () => {
    const y = Float64Array.of(1)
    rungeKuttaStepper((_, v, r) => void (r[0] = v[0]!), 1)(0, y, 0.5)
    expect(y[0]).toBeCloseTo(1 + 0.5 + 0.5 ** 2 / 2 + 0.5 ** 3 / 6 + 0.5 ** 4 / 24, 15)
  })

  test('gains four orders with the step', () => {
    const error = (n: number): number =>
      Math.abs(rungeKutta((t, y, r) => void (r[0] = -2 * t * y[0]!), 0, [1], 1.5, n).states.at(-1)![0]! - Math.exp(-2.25))
    expect(Math.log2(error(50) / error(100))).toBeCloseTo(4, 0)
    expect(Math.log2(error(200) / error(400))).toBeCloseTo(4, 0)
  })

  test('agrees with the adaptive method', () => {
    const fixed = rungeKutta(forced, 0, [1, 0], 10, 5000).states.at(-1)!
    const adaptive = solveOde(forced, 0, [1, 0], 10, { relative: 1e-11, absolute: 1e-11 })!.states.at(-1)!
    expect(fixed[0]).toBeCloseTo(adaptive[0]!, 8)
    expect(fixed[1]).toBeCloseTo(adaptive[1]!, 8)
  })

  test('keeps the start and every step, and leaves the given state alone', () => {
    const start = Float64Array.of(1, 0)
    const { times, states } = rungeKutta(forced, 2, start, 3, 4)
    expect([...times]).toEqual([2, 2.25, 2.5, 2.75, 3])
    expect(states).toHaveLength(5)
    expect([...start]).toEqual([1, 0])
    expect([...states[0]!]).toEqual([1, 0])
  })

  test('refuses no steps and no state', () => {
    expect(() => rungeKutta(forced, 0, [1, 0], 1, 0)).toThrow(RangeError('rungeKutta: steps must be a whole number of at least 1, found 0'))
    expect(() => rungeKuttaStepper(forced, 0)).toThrow(RangeError('rungeKuttaStepper: n must be a whole number of at least 1, found 0'))
  })
})
