import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Rates } from './dormand-prince.ts'
import { type OdeSettings, solveOde } from './ode.ts'

const fine: OdeSettings = { relative: 1e-10, absolute: 1e-10 }
const swing: Rates = (_, y, rates) => {
  rates[0] = y[1]!
  rates[1] = -y[0]!
}

describe('an initial-value problem', () => {
  test('comes out as its closed form: swing, growth to a ceiling, decay under a moving load', () => {
    const swung = solveOde(swing, 0, [0, 1], 2 * Math.PI, fine)!
    expect(swung.states.at(-1)![0]).toBeCloseTo(0, 8)
    expect(swung.states.at(-1)![1]).toBeCloseTo(1, 8)
    const grown = solveOde((_, y, r) => void (r[0] = y[0]! * (1 - y[0]!)), 0, [0.1], 5, fine)!
    expect(grown.states.at(-1)![0]).toBeCloseTo(1 / (1 + 9 * Math.exp(-5)), 9)
    const pulled = solveOde((t, y, r) => void (r[0] = -y[0]! + Math.sin(t)), 0, [0.5], 3, fine)!
    expect(pulled.states.at(-1)![0]).toBeCloseTo(Math.exp(-3) + (Math.sin(3) - Math.cos(3)) / 2, 9)
  })

  test('gives the coast-down times of a car with steady and square drag', () => {
    // t = m/√(f₀f₂)·(atan(v₁√(f₂/f₀)) − atan(v₂√(f₂/f₀))): mass 1442 kg with rotating parts, f₀ 150 N, f₂ 0.42 N/(m/s)².
    const stops = Array.from({ length: 10 }, (_, i) => (110 - 10 * i) / 3.6)
    const run = solveOde((_, y, r) => void (r[0] = -(150 + 0.42 * y[0]! ** 2) / 1442), 0, [120 / 3.6], 1000, {
      ...fine,
      watch: stops.map((v, i) => ({ of: (_, y) => y[0]! - v, stop: i === 9 })),
    })!
    expect(run.stoppedBy).toBe(9)
    const w = Math.sqrt(0.42 / 150)
    const times = stops.map(v => (1442 / Math.sqrt(150 * 0.42)) * (Math.atan((120 / 3.6) * w) - Math.atan(v * w)))
    expect(run.crossings.map(c => c.watch)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9])
    for (const [i, c] of run.crossings.entries()) expect(c.time).toBeCloseTo(times[i]!, 6)
    // The same as a hand calculation printed it, to its last digit.
    expect(run.crossings[0]!.time).toBeCloseTo(6.929, 3)
    expect(run.times.at(-1)).toBeCloseTo(139.729, 3)
  })

  test('holds the famous three-body orbit for its period', () => {
    // Arenstorf orbit: Hairer, Nørsett and Wanner, Solving Ordinary Differential Equations I, II.0, eq. (0.1) and (0.2) (from memory).
    const mu = 0.012277471
    const orbit: Rates = (_, y, r) => {
      const [x, z, vx, vz] = y as unknown as [number, number, number, number]
      const d1 = ((x + mu) ** 2 + z * z) ** 1.5
      const d2 = ((x - 1 + mu) ** 2 + z * z) ** 1.5
      r.set([vx, vz, x + 2 * vz - ((1 - mu) * (x + mu)) / d1 - (mu * (x - 1 + mu)) / d2, z - 2 * vx - ((1 - mu) * z) / d1 - (mu * z) / d2])
    }
    const start = [0.994, 0, 0, -2.0015851063790824]
    const end = solveOde(orbit, 0, start, 17.065216560157964, { relative: 1e-12, absolute: 1e-12 })!.states.at(-1)!
    expect(end[0]).toBeCloseTo(0.994, 5)
    expect(end[1]).toBeCloseTo(0, 5)
  })

  test('gains five orders with the step at the steps, four between them', () => {
    const error = (h: number, at: 'ends' | 'between'): number => {
      // A wide tolerance leaves the largest step as the only limit.
      const s = solveOde(swing, 0, [0, 1], 8, { relative: 1e9, absolute: 1e9, firstStep: h, largestStep: h })!
      const times = at === 'ends' ? [...s.times] : Array.from({ length: 801 }, (_, i) => i / 100)
      return Math.max(...times.map(t => Math.abs(s.at(t)[0]! - Math.sin(t))))
    }
    expect(Math.log2(error(0.2, 'ends') / error(0.1, 'ends'))).toBeGreaterThan(4.8)
    expect(Math.log2(error(0.2, 'between') / error(0.1, 'between'))).toBeGreaterThan(3.8)
  })

  test('is the better the tighter the tolerance', () => {
    const errors = [1e-4, 1e-6, 1e-8, 1e-10].map(tolerance => {
      const s = solveOde(swing, 0, [0, 1], 20, { relative: tolerance, absolute: tolerance })!
      const [x, v] = s.states.at(-1)!
      return Math.hypot(x! - Math.sin(20), v! - Math.cos(20))
    })
    for (let i = 1; i < errors.length; i++) expect(errors[i]!).toBeLessThan(errors[i - 1]! / 10)
    expect(errors[3]!).toBeLessThan(1e-8)
  })

  test('is known at every moment between start and end, and nowhere else', () => {
    const s = solveOde(swing, 1, [Math.sin(1), Math.cos(1)], 4, fine)!
    fc.assert(
      fc.property(fc.double({ min: 1, max: 4, noNaN: true }), t => {
        expect(s.at(t)[0]).toBeCloseTo(Math.sin(t), 7)
      }),
    )
    expect(() => s.at(0.999)).toThrow(RangeError('solution is known from 1 to 4, asked at 0.999'))
  })
})

describe('a watched moment', () => {
  test('is met each time, in order, with the state then', () => {
    const s = solveOde(swing, 0, [0, 1], 10, { ...fine, largestStep: 0.5, watch: [{ of: (_, y) => y[0]! - 0.5 }, { of: t => t - 7 }] })!
    const expected = [Math.PI / 6, (5 * Math.PI) / 6, (13 * Math.PI) / 6, 7, (17 * Math.PI) / 6]
    expect(s.crossings).toHaveLength(5)
    for (const [i, c] of s.crossings.entries()) expect(c.time).toBeCloseTo(expected[i]!, 7)
    expect(s.crossings[2]!.state[0]).toBeCloseTo(0.5, 9)
    expect(s.stoppedBy).toBeUndefined()
  })

  test('ends the run, and later ones of the same step are not reported', () => {
    const s = solveOde((_, __, r) => void (r[0] = 1), 0, [0], 100, {
      ...fine,
      firstStep: 50,
      watch: [{ of: (_, y) => y[0]! - 30 }, { of: (_, y) => y[0]! - 20, stop: true }],
    })!
    expect(s.stoppedBy).toBe(1)
    expect(s.crossings).toHaveLength(1)
    expect(s.times.at(-1)).toBeCloseTo(20, 9)
    expect(s.at(s.times.at(-1)!)[0]).toBeCloseTo(20, 9)
    expect(s.at(19)[0]).toBeCloseTo(19, 9)
  })

  test('does not count where it starts', () => {
    const s = solveOde(swing, 0, [0, 1], 4, { ...fine, largestStep: 0.5, watch: [{ of: (_, y) => y[0]! }] })!
    expect(s.crossings.map(c => c.time)).toHaveLength(1)
    expect(s.crossings[0]!.time).toBeCloseTo(Math.PI, 8)
  })
})

describe('no answer', () => {
  test('past a pole, or when the steps are used up', () => {
    expect(solveOde((_, y, r) => void (r[0] = y[0]! ** 2), 0, [1], 2, fine)).toBeUndefined()
    expect(solveOde(swing, 0, [0, 1], 100, { ...fine, mostSteps: 10 })).toBeUndefined()
    expect(solveOde((_, __, r) => void (r[0] = Number.NaN), 0, [1], 2, fine)).toBeUndefined()
  })

  test('to senseless questions, and says why', () => {
    expect(() => solveOde(swing, 1, [0, 1], 1, fine)).toThrow(RangeError('solveOde: end must lie behind start, found 1 to 1'))
    expect(() => solveOde(swing, 0, [], 1, fine)).toThrow(RangeError('solveOde: the state needs at least one value, found none'))
    expect(() => solveOde(swing, 0, [0, Infinity], 1, fine)).toThrow(RangeError('solveOde: state[1] must be finite, found Infinity'))
    expect(() => solveOde(swing, 0, [0, 1], 1, { relative: 0, absolute: 1 })).toThrow(
      RangeError('solveOde: relative must be above zero, found 0'),
    )
    expect(() => solveOde(swing, 0, [0, 1], 1, { relative: 1, absolute: [1] })).toThrow(
      RangeError('solveOde: absolute must hold one value for each of 2, found 1'),
    )
  })
})
