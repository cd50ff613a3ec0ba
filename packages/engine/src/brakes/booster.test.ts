import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { boosterOutput } from './booster.ts'
import { discAxleForce } from './disc.ts'
import { pumpDownPressure, pumpDownTime } from './pump-down.ts'
import { linePressure, unassistedBraking } from './unassisted-braking.ts'
import { vacuumReserve } from './vacuum-reserve.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const rig = fc.record({
  ratio: real(3, 5),
  efficiency: real(0.6, 1),
  gain: real(1.5, 12),
  area: real(0.015, 0.06),
  depression: real(0, 9e4),
  master: real(0.015, 0.03),
})

describe('a booster', () => {
  it('never gives less for a harder foot or more vacuum, and never less than the foot alone', () => {
    fc.assert(
      fc.property(rig, real(0, 800), real(0, 800), real(0, 9e4), (r, a, b, more) => {
        const [soft, hard] = [Math.min(a, b), Math.max(a, b)]
        const give = (pedal: number, depression = r.depression): number => boosterOutput({ ...r, depression, pedal }).pressure
        expect(give(hard)).toBeGreaterThanOrEqual(give(soft) - 1e-6)
        expect(give(soft, r.depression + more)).toBeGreaterThanOrEqual(give(soft) - 1e-6)
        expect(give(soft)).toBeGreaterThanOrEqual(linePressure({ pedal: soft, ...r }) * (1 - 1e-12))
      }),
      { numRuns: runs(2000) },
    )
  })
  it('meets at its knee from both sides', () => {
    fc.assert(
      fc.property(rig, r => {
        const { knee } = boosterOutput({ ...r, pedal: 100 }),
          { output } = boosterOutput({ ...r, pedal: knee })
        expect(output).toBeCloseTo(r.gain * knee * r.ratio * r.efficiency, 6)
        expect(output).toBeCloseTo(knee * r.ratio * r.efficiency + r.area * r.depression, 6)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('that is dead leaves 5.37 m/s² at 500 N to the case car, from pedal to road', () => {
    const pedal = { pedal: 500, ratio: 4, efficiency: 0.8, master: 0.0222 },
      pressure = linePressure(pedal)
    const axle = (piston: number, radius: number): number => discAxleForce({ friction: 0.38, pressure, piston, radius, wheel: 0.298 })
    const front = axle(0.054, 0.11),
      rear = axle(0.034, 0.115)
    const { deceleration, pedal: needed } = unassistedBraking({
      ...pedal,
      front: front / pressure,
      rear: rear / pressure,
      mass: 1400,
      wanted: 2.44,
    })
    expect(deceleration).toBeCloseTo((front + rear) / 1400, 12)
    expect(deceleration).toBeCloseTo(5.37, 2)
    expect(Math.round(needed)).toBe(227)
  })
})

describe('the vacuum in store', () => {
  it('after several applications is what letting in the air each time leaves, counted as gas', () => {
    const [R, T] = [287.05, 293.15]
    fc.assert(
      fc.property(
        real(2e-3, 12e-3),
        real(1e-4, 2e-3),
        real(2e-5, 5e-4),
        real(1.5e4, 6e4),
        fc.integer({ min: 1, max: 10 }),
        (V, swept, dead, start, n) => {
          const air = 1e5
          let pressure = start
          for (let i = 0; i < n; i++) {
            // Behind the diaphragm, which fills with the air outside; on release that air joins what stayed in front of it.
            const stayed = (pressure * (V - dead)) / (R * T),
              came = (air * (dead + swept)) / (R * T)
            pressure = Math.min(air, ((stayed + came) * R * T) / V)
          }
          expect(vacuumReserve({ applications: n, volume: V, swept, dead, start, atmosphere: air })).toBeCloseTo(pressure, 3)
        },
      ),
      { numRuns: runs(1000) },
    )
  })
  it('pumped down and read back is the pressure asked for', () => {
    fc.assert(
      fc.property(
        real(1e-3, 2e-2),
        real(1e-4, 2e-3),
        real(5e3, 2e4),
        real(0.1, 1),
        real(0.1, 0.99),
        (volume, speed, ultimate, above, part) => {
          const from = ultimate + above * 8e4,
            to = ultimate + part * (from - ultimate),
            time = pumpDownTime({ volume, speed, ultimate, from, to })
          expect(time).toBeGreaterThanOrEqual(0)
          expect(pumpDownPressure({ volume, speed, ultimate, from, time })).toBeCloseTo(to, 3)
        },
      ),
      { numRuns: runs(1000) },
    )
  })
  it('comes in 17.46 s when the pump is followed stroke by stroke', () => {
    // A stroke of 0.1 cm³ takes its share of what lies above the lowest pressure the pump reaches.
    const [volume, speed, ultimate, stroke] = [5.5e-3, 0.5e-3, 12e3, 1e-7]
    let pressure = 100e3,
      strokes = 0
    while (pressure > 30e3) {
      pressure -= ((pressure - ultimate) * stroke) / (volume + stroke)
      strokes++
    }
    expect((strokes * stroke) / speed).toBeCloseTo(pumpDownTime({ volume, speed, ultimate, from: 100e3, to: 30e3 }), 2)
    expect((strokes * stroke) / speed).toBeCloseTo(17.46, 2)
  })
})
