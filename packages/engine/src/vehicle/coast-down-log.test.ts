import { describe, expect, it } from 'vitest'
import { random } from '../numerics/index.ts'
import { coastDownFit, coastTime, stepForce } from './coast-down.ts'
import { coastingRuns, passing, type SpeedLog, stepTime } from './coast-down-log.ts'

const kmh = (v: number): number => v / 3.6
const CAR = { mass: 1442, f0: 150, f2: 0.42 }

/** A drive up the road and back: away, up to 120 km/h, in neutral down to 20, braked, and the same again. */
function drive(rate: number, runs: number, noise: () => number): SpeedLog {
  const times: number[] = [],
    speeds: number[] = []
  let t = 0,
    v = 0
  const until = (done: () => boolean, slower: () => number): void => {
    while (!done()) {
      times.push(t)
      speeds.push(Math.max(0, v + noise()))
      for (let k = 0; k < 10; k++) v = Math.max(0, v - slower() / rate / 10)
      t += 1 / rate
    }
  }
  for (let run = 0; run < runs; run++) {
    until(
      () => v >= kmh(120),
      () => -2,
    )
    until(
      () => v <= kmh(20),
      () => (CAR.f0 + CAR.f2 * v ** 2) / CAR.mass,
    )
    until(
      () => v <= 0,
      () => 3,
    )
  }
  return { times: Float64Array.from(times), speeds: Float64Array.from(speeds) }
}
const steps = [110, 100, 90, 80, 70, 60, 50, 40].map(v => ({ from: kmh(v), to: kmh(v - 10) }))

describe('a logged coast-down', () => {
  it.each([1, 10])('gives the times of the car that ran, logged %s times a second', rate => {
    const runs = coastingRuns(drive(rate, 2, () => 0))
    expect(runs).toHaveLength(2)
    for (const run of runs)
      for (const { from, to } of steps) expect(Math.abs(stepTime(run, from, to) / coastTime({ ...CAR, from, to }) - 1)).toBeLessThan(0.003)
  })
  it('gives back the road load of the car through the noise of a logger', () => {
    const draw = random(7),
      runs = coastingRuns(drive(10, 6, () => 0.1 * draw.normal()))
    expect(runs).toHaveLength(6)
    const forces = steps.map(({ from, to }) => {
      const times = runs.map(run => stepTime(run, from, to))
      return stepForce({ mass: CAR.mass, from, to, out: times.slice(0, 3), back: times.slice(3), scatter: 0 })
    })
    const fit = coastDownFit({ from: steps.map(s => s.from), to: steps.map(s => s.to), forces })
    for (const v of [45, 70, 100].map(kmh))
      expect(Math.abs((fit.f0 + fit.f1 * v + fit.f2 * v ** 2) / (CAR.f0 + CAR.f2 * v ** 2) - 1)).toBeLessThan(0.02)
  })
  it('takes neither driving nor braking nor a broken log for a run', () => {
    const speeds = Float64Array.from({ length: 100 }, (_, i) => kmh(120) - i * 0.3),
      times = Float64Array.from(speeds, (_, i) => i)
    expect(coastingRuns({ times, speeds })).toHaveLength(1)
    expect(coastingRuns({ times, speeds: speeds.slice().reverse() })).toHaveLength(0)
    expect(coastingRuns({ times: times.map(t => t / 10), speeds })).toHaveLength(0)
    expect(coastingRuns({ times: times.map(t => 4 * t), speeds })).toHaveLength(0)
    expect(coastingRuns({ times: new Float64Array(), speeds: new Float64Array() })).toHaveLength(0)
  })
  it('has no time for a step it did not pass', () => {
    const run = { times: Float64Array.of(0, 1, 2), speeds: Float64Array.of(30, 20, 10) }
    expect(stepTime(run, 25, 15)).toBeCloseTo(1, 12)
    expect(stepTime(run, 35, 15)).toBeNaN()
    expect(stepTime(run, 25, 5)).toBeNaN()
    expect(passing({ times: Float64Array.of(0, 1, 2, 3), speeds: Float64Array.of(21, 19, 21, 19) }, 20)).toBeCloseTo(1.5, 12)
  })
})
