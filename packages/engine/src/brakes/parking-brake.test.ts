import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { cableEfficiency, forceToHold, leverForce, parkingBrakeHold } from './parking-brake.ts'
import { parkingGrip, trailerGoverns } from './parking-grip.ts'
import { pressureForRegeneration, regenerationForce } from './regeneration-force.ts'
import { efficiencyAtMass, rollerPrint } from './roller-print.ts'
import { stopLampTorque } from './stop-lamp.ts'
import { drivenAxleInertia, lowSpeedFade, timeToSlip } from './wheel-slip.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('a parked car', () => {
  it.each([
    [0.12, 0.1191],
    [0.16, 0.158],
    [0.18, 0.1772],
    [0.2, 0.1961],
  ])('on a slope of %f takes %f of its weight to hold', (slope, part) => {
    expect(forceToHold({ mass: 1000, slope }) / 9806.65).toBeCloseTo(part, 4)
  })
  it('with a trailer of 0.646 of its mass needs the same force on 12 % as alone on 20 %', () => {
    const trailer = trailerGoverns({ car: 0.2, train: 0.12 })
    expect(forceToHold({ mass: 1700 * (1 + trailer), slope: 0.12 })).toBeCloseTo(forceToHold({ mass: 1700, slope: 0.2 }), 6)
  })
  it('is held by the lever force that its hold asks for', () => {
    fc.assert(
      fc.property(real(100, 8000), real(3, 10), real(0.5, 1), real(2, 8), real(0.5, 6), (hold, lever, cable, shoe, factor) => {
        const rig = { lever, cable, shoe, factor, radius: 0.1, wheel: 0.3 }
        expect(parkingBrakeHold({ hand: leverForce({ hold, ...rig }), branches: 2, ...rig }).hold).toBeCloseTo(hold, 6)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('slides at the slope where weight down it exceeds the grip under the braked axle', () => {
    fc.assert(
      fc.property(real(0.2, 1), real(0.35, 0.65), real(0.4, 0.8), real(2, 3), (grip, rearShare, height, wheelbase) => {
        const limit = parkingGrip({ grip, rearShare, height, wheelbase })
        // Nose down, load moves from the rear axle; nose up, onto it.
        const held = (slope: number, share: number, moves: number): number =>
          grip * (share * Math.cos(Math.atan(slope)) + (moves * Math.sin(Math.atan(slope)) * height) / wheelbase) -
          Math.sin(Math.atan(slope))
        expect(held(limit.rearDown, rearShare, -1)).toBeCloseTo(0, 9)
        expect(held(limit.rearUp, rearShare, 1)).toBeCloseTo(0, 9)
        expect(held(limit.frontDown, 1 - rearShare, 1)).toBeCloseTo(0, 9)
        expect(held(limit.frontUp, 1 - rearShare, -1)).toBeCloseTo(0, 9)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('loses in two bends what it loses in each, one after the other', () => {
    const whole = cableEfficiency({ friction: 0.15, bends: 2 }),
      each = cableEfficiency({ friction: 0.15, bends: 1 })
    expect(whole).toBeCloseTo(each ** 2, 12)
  })
})

describe('a roller print', () => {
  it('at the new mass is what the print itself would say there', () => {
    const wheels = { frontLeft: 2350, frontRight: 2200, rearLeft: 1100, rearRight: 980 },
      before = rollerPrint({ ...wheels, mass: 1180 }).efficiency
    expect(efficiencyAtMass({ before, massBefore: 1180, mass: 1385, asked: 0.58 }).efficiency).toBeCloseTo(
      rollerPrint({ ...wheels, mass: 1385 }).efficiency,
      12,
    )
    expect(before).toBeGreaterThan(0.5)
    expect(before).toBeLessThan(0.58)
  })
})

describe('motors that brake', () => {
  it('light the lamps at the torque that slows the car by 0.7 and 1.3 m/s²', () => {
    const car = { mass: 1252, ratio: 9, efficiency: 0.95, radius: 0.303 },
      { may, must } = stopLampTorque(car)
    expect(regenerationForce({ ...car, torque: may }).deceleration).toBeCloseTo(0.7, 9)
    expect(regenerationForce({ ...car, torque: must }).deceleration).toBeCloseTo(1.3, 9)
  })
  it('are replaced by the pressure that makes up their force', () => {
    const p = pressureForRegeneration({ mass: 1420, lost: 1, front: 92e-5, rear: 52e-5 })
    expect(p * (92e-5 + 52e-5)).toBeCloseTo(1420, 6)
  })
  it('turn a wheel to 20 % slip in 0.187 s when it is followed step by step', () => {
    const inertia = drivenAxleInertia({ motor: 0.05, ratio: 9, wheels: 2 }),
      v = 50 / 3.6
    let spin = v / 0.3,
      t = 0
    while (1 - (spin * 0.3) / v < 0.2) {
      spin -= (300 / inertia) * 1e-5
      t += 1e-5
    }
    expect(t).toBeCloseTo(timeToSlip({ slip: 0.2, speed: v, radius: 0.3, inertia, excess: 300 }), 4)
    expect(t).toBeCloseTo(0.187, 3)
  })
  it('fade out as an even fall with speed: jerk and time constant are one deceleration apart', () => {
    const { time, jerk } = lowSpeedFade({ from: 12 / 3.6, to: 4 / 3.6, deceleration: 1.5 })
    expect(time * jerk).toBeCloseTo(1.5, 12)
    // After one time constant 1/e of the speed to lose is left, followed step by step.
    let v = 12 / 3.6
    for (let i = 0; i < 1e5; i++) v -= (1.5 * (v - 4 / 3.6) * 3.6) / 8 / (1e5 / time)
    expect((v - 4 / 3.6) / (8 / 3.6)).toBeCloseTo(Math.exp(-1), 4)
  })
})
