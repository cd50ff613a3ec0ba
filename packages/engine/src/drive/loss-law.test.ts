import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { solveLinear } from '../numerics/index.ts'
import { type EfficiencyPoints, lawOfPoints, pointsProblem } from './loss-fit.ts'
import { efficiencyByLaw, lawLosses, lossByLaw, lossFactorByPoints } from './loss-law.ts'

/** Three points whose exact solution has a windage below nothing. */
const TRAP: EfficiencyPoints = { torque: [100, 200, 60], speed: [200, 200, 900], efficiency: [0.9, 0.87, 0.93] }
const PLACES = { torque: [40, 100, 200, 330, 120, 100], speed: [209, 314, 419, 419, 733, 1047] }
const laid = (k: { copper: number; iron: number; windage: number; constant: number }): EfficiencyPoints => ({
  ...PLACES,
  efficiency: PLACES.torque.map((torque, i) => efficiencyByLaw({ ...k, torque, speed: PLACES.speed[i] as number })),
})

describe('a law of losses from a few points', () => {
  it('holds at zero what solving the points exactly would put below nothing', () => {
    const a = TRAP.torque.flatMap((m, i) => [m ** 2, TRAP.speed[i] as number, (TRAP.speed[i] as number) ** 3]),
      b = TRAP.torque.map((m, i) => m * (TRAP.speed[i] as number) * (1 / (TRAP.efficiency[i] as number) - 1))
    const [copper, iron, windage] = solveLinear(a, b) as unknown as [number, number, number]
    expect(copper).toBeCloseTo(0.12516, 5)
    expect(iron).toBeCloseTo(4.897, 3)
    expect(windage * 1e6).toBeCloseTo(-1.088, 3)
    const held = lawOfPoints(TRAP)
    expect(held).toMatchObject({ windage: 0, constant: 0, free: 2 })
    // What is left of the misfit is a quarter of a point of efficiency.
    for (const [i, torque] of TRAP.torque.entries()) {
      const e = efficiencyByLaw({ ...held, torque, speed: TRAP.speed[i] as number })
      expect(Math.abs(e - (TRAP.efficiency[i] as number))).toBeLessThan(0.004)
    }
  })
  it('should always come back from points that lie on it', () => {
    const k = fc.record({
      copper: fc.double({ min: 0.05, max: 0.6, noNaN: true }),
      iron: fc.double({ min: 0, max: 8, noNaN: true }),
      windage: fc.double({ min: 0, max: 8e-6, noNaN: true }),
      constant: fc.double({ min: 0, max: 900, noNaN: true }),
    })
    fc.assert(
      fc.property(k, law => {
        const found = lawOfPoints(laid(law))
        for (const speed of [100, 500, 1000]) {
          const at = { torque: 80, speed }
          expect(lossByLaw({ ...found, ...at })).toBeCloseTo(lossByLaw({ ...law, ...at }), 4)
        }
      }),
      { numRuns: runs(500) },
    )
  })
  it('leaves out the constant loss where the points stand at two speeds only', () => {
    const speed = [200, 200, 600, 600],
      torque = [50, 150, 50, 150]
    const efficiency = torque.map((m, i) =>
      efficiencyByLaw({ torque: m, speed: speed[i] as number, copper: 0.2, iron: 1, windage: 1e-6, constant: 300 }),
    )
    expect(lawOfPoints({ torque, speed, efficiency }).constant).toBe(0)
  })
  it('takes speeds that differ by rounding as one speed', () => {
    expect(pointsProblem({ torque: [50, 100, 200], speed: [400, 401, 399], efficiency: [0.9, 0.91, 0.9] })?.found).toBe(
      'points at one speed only',
    )
  })
  it('is refused with words where there is none', () => {
    const p = (torque: number[], speed: number[], efficiency: number[]) => pointsProblem({ torque, speed, efficiency })
    expect(p([100, 200], [200, 300], [0.9, 0.9])).toEqual({
      found: 'two points',
      accepted: expect.stringContaining('at least three points'),
    })
    expect(p([100, 200, 60], [200, 200, 900], [90, 87, 93])?.found).toBe('an efficiency of 90')
    expect(p([100, 200, 60], [200, 200, 900], [0.9, 1, 0.93])?.found).toBe('an efficiency of 1')
    expect(p([100, 100, 101], [200, 300, 900], [0.9, 0.9, 0.9])?.found).toBe('points at one torque only')
    expect(p([0, 100, 200], [200, 300, 900], [0.9, 0.9, 0.9])?.found).toContain('a torque')
    expect(p([100, 100, 200], [200, 200, 400], [0.9, 0.9, 0.9])?.found).toContain('do not tell')
    expect(pointsProblem(TRAP)).toBeUndefined()
  })
  it('makes the factor that of the motor itself, and a point that says more loss raises it', () => {
    const points = { ...laid({ copper: 0.3, iron: 4, windage: 4e-6, constant: 200 }), efficiency: [0.845, 0.87, 0.85, 0.79, 0.9, 0.885] }
    const losses = lawLosses(lawOfPoints(points), 330, 1257, points),
      factor = lossFactorByPoints({ own: 1.1, scatter: 0, losses, ...points })
    expect(factor).toBeCloseTo(1.1, 2)
    const worse = points.efficiency.map((e, i) => (i === 1 ? e - 0.01 : e))
    expect(lossFactorByPoints({ own: 1.1, scatter: 0, losses, ...points, efficiency: worse })).toBeGreaterThan(factor)
  })
  it('reaches as far as its farthest point', () => {
    const map = lawLosses(lawOfPoints(TRAP), 150, 700, TRAP)
    expect([map.x.at(-1), map.y.at(-1)]).toEqual([900, 200])
  })
})
