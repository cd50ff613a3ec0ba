import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { gridAt } from '../numerics/grid.ts'
import { type ClassOfMotor, classEfficiencyTogether } from './class-values.ts'
import { lossesOfMap, mapProblem } from './loss-map.ts'
import { classDrag, classLosses, lossFactor, motorLoss, SHAPES } from './motor-loss.ts'

const KINDS = Object.keys(SHAPES) as ClassOfMotor[]
const motor = { peakTorque: 250, baseSpeed: 400, topSpeed: 942 }
const losses = (kind: ClassOfMotor) =>
  classLosses(kind, classEfficiencyTogether(kind).value, motor.peakTorque, motor.baseSpeed, motor.topSpeed)
/** Best efficiency within the envelope, looked for point by point in the map. */
function best(kind: ClassOfMotor): { efficiency: number; torque: number; speed: number } {
  const map = losses(kind)
  let found = { efficiency: 0, torque: 0, speed: 0 }
  for (let w = 20; w <= motor.topSpeed; w += 4)
    for (let m = 5; m <= Math.min(motor.peakTorque, (motor.peakTorque * motor.baseSpeed) / w); m += 2) {
      const efficiency = (m * w) / (m * w + gridAt(map, w, m))
      if (efficiency > found.efficiency) found = { efficiency, torque: m, speed: w }
    }
  return found
}

describe('losses by the shape of a class', () => {
  it.each(KINDS)('%s: the best efficiency within the envelope is that of the class', kind => {
    const wanted = classEfficiencyTogether(kind).value,
      { efficiency, torque, speed } = best(kind)
    expect(efficiency).toBeGreaterThan(wanted - 0.002)
    expect(efficiency).toBeLessThan(wanted + 0.001)
    // Traction motors are at their best at part torque, around or above base speed.
    expect(torque / motor.peakTorque).toBeLessThan(0.7)
    expect(speed / motor.baseSpeed).toBeGreaterThan(0.5)
  })
  it.each(KINDS)('%s: loss rises with torque, and with speed below base speed', kind => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 240, noNaN: true }), fc.double({ min: 10, max: 390, noNaN: true }), (m, w) => {
        const map = losses(kind)
        expect(gridAt(map, w, m + 5)).toBeGreaterThan(gridAt(map, w, m))
        expect(gridAt(map, w + 5, m)).toBeGreaterThanOrEqual(gridAt(map, w, m))
      }),
      { numRuns: runs(1000) },
    )
  })
  it.each(KINDS)('%s: towing it round takes power, but less than its losses without torque', kind => {
    const drag = classDrag(kind, classEfficiencyTogether(kind).value, motor.peakTorque, motor.baseSpeed, motor.topSpeed),
      map = losses(kind)
    for (const [i, w] of drag.x.entries()) {
      expect(drag.y[i]).toBeGreaterThanOrEqual(0)
      expect((drag.y[i] as number) * w).toBeLessThanOrEqual(gridAt(map, w, 0) + 1e-6)
    }
  })
  it('a permanent-magnet motor spins harder than an induction motor that needs no magnets', () => {
    const drag = (kind: ClassOfMotor): number => classDrag(kind, 0.94, 250, 400, 942).y.at(-1) as number
    expect(drag('permanent-magnet')).toBeGreaterThan(drag('induction'))
  })
  it('the textbook’s best torque at 600 rad/s is where the copper loss equals all others', () => {
    // Larminie and Lowry: k_c 0.3, k_i 0.01, k_w 5e-6, C 600: best torque √((k_i·ω + k_w·ω³ + C)/k_c) = 74.97 N·m, efficiency 0.93026 (recomputed).
    const set = {
      peakTorque: 140,
      baseSpeed: 733,
      scale: 5880,
      weakened: 0,
      constant: 600 / 5880,
      linear: 7.33 / 5880,
      square: 0,
      cube: (5e-6 * 733 ** 3) / 5880,
      field: 0,
    }
    const efficiency = (m: number): number => (m * 600) / (m * 600 + motorLoss({ ...set, torque: m, speed: 600 }))
    expect(efficiency(74.97)).toBeCloseTo(0.93026, 5)
    for (const m of [60, 70, 80, 90]) expect(efficiency(m)).toBeLessThan(efficiency(74.97))
  })
  it('the factor is 1 for a motor of its class and doubles where the loss does', () => {
    const of = (motor: number): number => lossFactor({ own: 1, motor, inverter: 0.98, efficiency: 0.96 * 0.98 })
    expect(of(0.96)).toBeCloseTo(1, 12)
    const twice = 1 / (1 + 2 * (1 / (0.96 * 0.98) - 1)) / 0.98
    expect(of(twice)).toBeCloseTo(2, 12)
  })
})

describe('losses behind a measured map', () => {
  const x = Float64Array.of(0, 100, 400, 900),
    y = Float64Array.of(0, 50, 100, 200)
  const truth = (w: number, m: number): number => 200 + 0.3 * m * m + 1.5 * w
  const z = Float64Array.from({ length: 16 }, (_, k) => {
    const w = x[Math.floor(k / 4)] as number,
      m = y[k % 4] as number
    return w * m === 0 ? 0 : (w * m) / (w * m + truth(w, m))
  })

  it('come back where the map says something, and are carried on to no torque', () => {
    const back = lossesOfMap({ x, y, z })
    for (const w of [100, 400, 900]) for (const m of [0, 50, 100, 200]) expect(gridAt(back, w, m)).toBeCloseTo(truth(w, m), 6)
  })
  it('never make a loss below zero, nor a number that is none', () => {
    const odd = lossesOfMap({ x, y, z: z.map((e, i) => (i === 13 ? 0.2 : i === 14 ? 0.99 : e)) })
    for (const v of odd.z) expect(v).toBeGreaterThanOrEqual(0)
  })
  it('are refused with words where the map cannot be one', () => {
    expect(mapProblem({ x, y, z: z.map(e => e * 100) }, 'efficiency')).toMatchObject({ found: expect.stringContaining('an efficiency of') })
    expect(mapProblem({ x: x.map(v => v - 10), y, z }, 'efficiency')).toMatchObject({ found: expect.stringContaining('motor speed') })
    expect(mapProblem({ x, y, z: z.map(() => 0) }, 'efficiency')).toMatchObject({
      found: expect.stringContaining('fewer than two torques'),
    })
    expect(mapProblem({ x, y, z: z.map(() => -1) }, 'loss')).toMatchObject({ found: expect.stringContaining('a loss of') })
    expect(mapProblem({ x, y, z }, 'efficiency')).toBeUndefined()
    expect(() => lossesOfMap({ x, y, z: z.map(() => 2) })).toThrow(RangeError)
  })
})
