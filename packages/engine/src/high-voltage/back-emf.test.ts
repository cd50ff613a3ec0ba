import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { backEmf, backEmfPeak, backEmfSpeed } from './back-emf.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** Peak and rms between two phases over a turn of the field, from the flux itself: its rate of change, sampled by differences. */
function turned(flux: number, pairs: number, speed: number): { peak: number; rms: number } {
  const N = 3600,
    step = 1e-6,
    linked = (angle: number, phase: number): number => flux * Math.cos(angle - (phase * 2 * Math.PI) / 3)
  let peak = 0,
    sum = 0
  for (let k = 0; k < N; k++) {
    const angle = (2 * Math.PI * k) / N,
      rate = (phase: number): number => ((linked(angle + step, phase) - linked(angle - step, phase)) / (2 * step)) * pairs * speed
    const between = rate(0) - rate(1)
    peak = Math.max(peak, Math.abs(between))
    sum += between ** 2
  }
  return { peak, rms: Math.sqrt(sum / N) }
}

describe('the back-EMF of a motor with magnets', () => {
  it('is what its flux gives at another speed, from the rms read at one', () => {
    fc.assert(
      fc.property(real(0.01, 0.3), fc.integer({ min: 1, max: 8 }), real(20, 500), real(0, 1500), (flux, pairs, stated, speed) => {
        const peak = backEmfPeak({ rms: turned(flux, pairs, stated).rms })
        const said = backEmf({ peak, stated, speed })
        expect(Math.abs(said - turned(flux, pairs, speed).peak)).toBeLessThan(1e-5 * (1 + said))
      }),
      { numRuns: runs(400) },
    )
  })
  it('reaches a bus voltage at the speed said, and not below', () => {
    fc.assert(
      fc.property(real(1, 500), real(10, 1000), real(60, 900), real(0, 0.999), (peak, stated, bus, part) => {
        const speed = backEmfSpeed({ peak, stated, bus })
        expect(backEmf({ peak, stated, speed }) / bus).toBeCloseTo(1, 12)
        expect(backEmf({ peak, stated, speed: part * speed })).toBeLessThan(bus)
      }),
      { numRuns: runs(1000) },
    )
  })
})
