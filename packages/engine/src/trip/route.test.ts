import { describe, expect, it } from 'vitest'
import { at, curve, integral } from '../numerics/index.ts'
import { random } from '../numerics/random.ts'
import { slopeFitted } from './journey.ts'
import { routeSlope, routeTrace, SLOPE_REACH, SLOWS_DOWN, SPEEDS_UP, STANDS } from './route.ts'

const every = (n: number, step: number, f: (x: number) => number) =>
  curve(
    Float64Array.from({ length: n }, (_, i) => i * step),
    Float64Array.from({ length: n }, (_, i) => f(i * step)),
  )

describe('slope from heights', () => {
  it('is exact on a straight hill and on a parabola', () => {
    const straight = routeSlope(every(301, 10, x => 100 + 0.06 * x))
    for (const p of straight.y) expect(p).toBeCloseTo(0.06, 12)
    const bowl = routeSlope(every(301, 10, x => 1e-5 * x * x))
    for (let k = SLOPE_REACH; k < 301 - SLOPE_REACH; k++) expect(bowl.y[k]).toBeCloseTo(2e-5 * bowl.x[k]!, 12)
  })
  it('keeps a hill of 2 km within 4 % and most of one of 1 km', () => {
    const hill = (length: number): number =>
      Math.max(...routeSlope(every(601, 10, x => (0.08 * length * Math.sin((2 * Math.PI * x) / length)) / (2 * Math.PI))).y) / 0.08
    expect(hill(2000)).toBeGreaterThan(0.96)
    expect(hill(1000)).toBeGreaterThan(0.85)
  })
  it('quiets noise of 2 m to under 1 % of slope', () => {
    const { normal } = random(7),
      noisy = routeSlope(every(1001, 10, () => 2 * normal())),
      inside = noisy.y.slice(SLOPE_REACH, -SLOPE_REACH)
    // Least squares over 21 heights: σ/(Δs·√Σi²) = 2/(10·√770) = 0.72 %.
    const rms = Math.sqrt(inside.reduce((s, p) => s + p * p, 0) / inside.length)
    expect(rms).toBeGreaterThan(0.006)
    expect(rms).toBeLessThan(0.0085)
  })
  it('climbs as high as the road does', () => {
    const heights = every(801, 25, x => 150 * Math.sin(x / 3000) + 0.01 * x),
      slope = routeSlope(heights),
      { x } = heights,
      length = x.at(-1)!
    expect(integral(slope, 0, length)).toBeCloseTo(heights.y.at(-1)! - heights.y[0]!, 0)
  })
  it('is at each place what its card says', () => {
    const heights = every(60, 10, x => 30 * Math.sin(x / 90)),
      places = Array.from({ length: 21 }, (_, i) => i - 10)
    const card = slopeFitted({ places, heights: places.map(k => heights.y[30 + k]!), step: 10 })
    expect(routeSlope(heights).y[30]).toBeCloseTo(card, 12)
  })
})

describe('speed on a route', () => {
  it('goes from a stand to a stand within the accelerations of an unhurried driver', () => {
    const trace = routeTrace(every(401, 10, x => (x < 1500 ? 14 : x < 2500 ? 28 : 8)))
    expect(trace.y[0]).toBe(0)
    expect(trace.y.at(-1)).toBe(0)
    for (let k = 1; k < trace.x.length; k++) {
      const a = (trace.y[k]! - trace.y[k - 1]!) / (trace.x[k]! - trace.x[k - 1]!)
      expect(a).toBeLessThan(SPEEDS_UP + 1e-9)
      expect(a).toBeGreaterThan(-SLOWS_DOWN - 1e-9)
    }
    expect(at(trace, trace.x.at(-1)! / 3)).toBeGreaterThan(5)
  })
  it('covers the length of the route', () => {
    const trace = routeTrace(every(301, 10, () => 20))
    expect(integral(trace, 0, trace.x.at(-1)!)).toBeCloseTo(3000, 6)
  })
  it('never reads a stop as a standstill without end', () => {
    const trace = routeTrace(every(101, 10, x => (x > 400 && x < 450 ? 0 : 15)))
    expect(trace.x.at(-1)).toBeLessThan(300)
    expect(Math.min(...trace.y.slice(1, -1))).toBeGreaterThanOrEqual(STANDS)
  })
})
