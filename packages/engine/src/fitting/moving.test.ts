import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { ackermann } from './ackermann.ts'
import { halfShaftAtTravel, leastOverTravel } from './shaft-over-travel.ts'
import { angleOfFurthestReach, wheelEnvelope, wheelReach } from './turning-wheel.ts'

const DEGREE = Math.PI / 180
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const size = fc.record({ radius: number(0.25, 0.4), width: number(0.14, 0.3), offset: number(-0.05, 0.1) })

describe('a shaft over its travel', () => {
  const shaft = { innerY: 0.2, innerZ: 0.3, outerY: 0.62, outerZ: 0.29, radius: 0.014, obstacleY: 0.45, obstacleZ: 0.42 }
  it('has its least room under an edge at full bump: 63.3 mm', () => {
    const found = leastOverTravel(0.09, 0.08, travel => halfShaftAtTravel({ ...shaft, travel }).room)
    expect(found.least).toBeCloseTo(0.0633, 4)
    expect(found.at).toBeCloseTo(0.08, 5)
  })
  it('touches an edge it passes on the way', () => {
    const found = leastOverTravel(0.09, 0.08, travel => halfShaftAtTravel({ ...shaft, travel, obstacleZ: 0.3 }).room)
    expect(found.least).toBeCloseTo(-0.014, 6)
    expect(found.at).toBeCloseTo(0.01, 6)
  })
  it('is looked at where it stands level with a thin edge', () =>
    expect(leastOverTravel(0.1, 0.1, t => (t === 0.0123 ? -1 : 1), 0.0123)).toEqual({ least: -1, at: 0.0123 }))
  it('needs a travel', () => {
    expect(() => leastOverTravel(-0.1, 0.1, () => 0)).toThrow('droop and bump must be at least 0, found -0.1 and 0.1')
    expect(leastOverTravel(0, 0, t => 1 + t)).toEqual({ least: 1, at: 0 })
  })
})

describe('a turning wheel', () => {
  const wheel = { radius: 0.305, width: 0.205, offset: 0.03 }
  it('reaches furthest ahead at 23.5 degrees', () => {
    expect(angleOfFurthestReach(wheel) / DEGREE).toBeCloseTo(23.5, 1)
    expect(wheelReach({ ...wheel, angle: angleOfFurthestReach(wheel), height: 0 }).fore).toBeCloseTo(0.3325, 4)
  })
  it('takes the room that its corners sweep, angle by angle and height by height', () => {
    fc.assert(
      fc.property(size, number(0, 0.9), number(-0.5, 0.5), number(0, 0.12), number(0, 0.12), (w, lock, height, droop, bump) => {
        const found = wheelEnvelope(w, lock, height, droop, bump)
        let inboard = -Infinity,
          outboard = -Infinity,
          fore = -Infinity
        for (let j = 0; j <= 60; j++) {
          const up = height - (-droop + ((droop + bump) * j) / 60)
          if (Math.abs(up) > w.radius) continue
          const r = Math.sqrt(w.radius ** 2 - up ** 2)
          for (let i = 0; i <= 60; i++) {
            const d = (lock * i) / 60
            // Corners of the tyre in plan, turned about the steering axis: x ahead, y outboard.
            for (const along of [-r, r])
              for (const across of [w.offset - w.width / 2, w.offset + w.width / 2]) {
                const x = along * Math.cos(d) + across * Math.sin(d),
                  y = -along * Math.sin(d) + across * Math.cos(d)
                inboard = Math.max(inboard, -y)
                outboard = Math.max(outboard, y)
                fore = Math.max(fore, Math.abs(x))
              }
          }
        }
        if (!found) {
          expect(inboard).toBe(-Infinity)
          return
        }
        // The net of angles and heights may miss a little, never find more; inner corners may reach further ahead only with much offset inwards.
        expect(inboard).toBeLessThan(found.inboard + 1e-9)
        expect(outboard).toBeLessThan(found.outboard + 1e-9)
        if (Math.abs(Math.abs(height) - w.radius) < 0.1) return
        expect(found.inboard - inboard).toBeLessThan(0.002)
        expect(found.outboard - outboard).toBeLessThan(0.002)
        if (w.offset >= 0) expect(Math.abs(found.fore - fore)).toBeLessThan(0.002)
      }),
      { numRuns: runs(2000) },
    )
  })
  it('is not there far over or under its travel', () => expect(wheelEnvelope(wheel, 0.6, 0.5, 0.1, 0.08)).toBeUndefined())
  it('refuses a lock or a travel that is none', () => {
    expect(() => wheelEnvelope(wheel, 2, 0, 0, 0)).toThrow('steering lock: from 0 to below a quarter turn, found 2')
    expect(() => wheelEnvelope(wheel, 0.5, 0, -1, 0)).toThrow('droop and bump must be at least 0')
  })
})

describe('the outer wheel', () => {
  it('aims at the point the inner one aims at, on the line of the rear axle', () => {
    fc.assert(
      fc.property(number(0.05, 0.9), number(1.8, 3.5), number(1, 1.7), (inner, wheelbase, track) => {
        const { outer } = ackermann({ inner, wheelbase, track, offset: 0 })
        expect(Math.abs(wheelbase / Math.tan(inner) + track - wheelbase / Math.tan(outer))).toBeLessThan(
          1e-9 * (1 + wheelbase / Math.tan(inner)),
        )
        expect(outer).toBeLessThan(inner)
      }),
      { numRuns: runs(2000) },
    )
  })
})
