import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { airPressure, applicationsLeft } from './vacuum-left.ts'
import { vacuumReserve } from './vacuum-reserve.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('assisted stops left without the pump', () => {
  it('end where stop after stop, followed one by one, has let in the last of the vacuum', () =>
    fc.assert(
      fc.property(real(2e-3, 1e-2), real(2e-4, 1e-3), real(5e-5, 3e-4), real(2e4, 7e4), (volume, swept, dead, start) => {
        const n = applicationsLeft({ volume, swept, dead, start, atmosphere: 1e5 })
        let pressure = start,
          stops = 0
        for (; ; stops++) {
          const next = (pressure * (volume - dead) + 1e5 * (dead + swept)) / volume
          if (next >= 1e5) break
          pressure = next
        }
        expect(Math.floor(n + 1e-9)).toBe(stops)
        expect(vacuumReserve({ applications: stops, volume, swept, dead, start, atmosphere: 1e5 })).toBeCloseTo(pressure, 3)
      }),
      { numRuns: runs(1000) },
    ))
  it('are fewer on a pass from the same absolute pressure, for the air is thinner there', () => {
    const takes = { volume: 5e-3, swept: 5e-4, dead: 1e-4, start: 4e4 },
      at = (altitude: number) => applicationsLeft({ ...takes, atmosphere: airPressure({ altitude }) })
    expect(at(2000)).toBeLessThan(at(0))
  })
})
