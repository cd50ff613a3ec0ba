import type { Rates } from './dormand-prince.ts'

/** Takes steps of one set of equations with scratch of its own, so that a loop allocates nothing. */
export type RungeKuttaStepper = (t: number, y: Float64Array, h: number) => void

/**
 * The classical fourth-order Runge–Kutta step for a state of `n` values: moves `y` on by `h` in place.
 *
 * Why beside `solveOde`: fixed steps keep pace with a given trace and cost the same each time. It estimates no error; halve the step to see it.
 * Source: Kutta, Beitrag zur näherungsweisen Integration totaler Differentialgleichungen, Z. Math. Phys. 46 (1901) 435–453 (from memory).
 */
export function rungeKuttaStepper(rates: Rates, n: number): RungeKuttaStepper {
  if (!Number.isInteger(n) || n < 1) throw new RangeError(`rungeKuttaStepper: n must be a whole number of at least 1, found ${n}`)
  const [k1, k2, k3, k4, at] = [
    new Float64Array(n),
    new Float64Array(n),
    new Float64Array(n),
    new Float64Array(n),
    new Float64Array(n),
  ] as const
  return (t, y, h) => {
    rates(t, y, k1)
    for (let i = 0; i < n; i++) at[i] = y[i]! + (h / 2) * k1[i]!
    rates(t + h / 2, at, k2)
    for (let i = 0; i < n; i++) at[i] = y[i]! + (h / 2) * k2[i]!
    rates(t + h / 2, at, k3)
    for (let i = 0; i < n; i++) at[i] = y[i]! + h * k3[i]!
    rates(t + h, at, k4)
    for (let i = 0; i < n; i++) y[i]! += (h / 6) * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!)
  }
}

/** States at the ends of `steps` equal steps from `start` to `end`, the start included. Throws RangeError when `steps` is not a whole number of at least 1. */
export function rungeKutta(
  rates: Rates,
  start: number,
  state: ArrayLike<number>,
  end: number,
  steps: number,
): { times: Float64Array; states: Float64Array[] } {
  if (!Number.isInteger(steps) || steps < 1) throw new RangeError(`rungeKutta: steps must be a whole number of at least 1, found ${steps}`)
  const step = rungeKuttaStepper(rates, state.length)
  const h = (end - start) / steps
  const y = Float64Array.from(state)
  const times = Float64Array.from({ length: steps + 1 }, (_, i) => start + h * i)
  const states = [y.slice()]
  for (let i = 0; i < steps; i++) {
    step(times[i]!, y, h)
    states.push(y.slice())
  }
  return { times, states }
}
