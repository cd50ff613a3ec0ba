import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { proven } from '../../../../tests/proof.ts'
import { cableHeatCapacity, type WarmingCable, warming } from './cable-warming.ts'
import { COPPER } from './conductor-metals.ts'
import { celsius, MM2 } from './conductor-symbols.ts'
import { flexibleResistance, usualDiameters } from './conductor-sizes.ts'
import { clearedAt, protectedFrom, unproven } from './fuse-against-cable.ts'
import { fuseCurve, meltingIntegral, meltingTime } from './fuse-curve.ts'
import { cableWithstand, faultTemperature } from './short-circuit-withstand.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const fuse = fuseCurve([
  [800, 1000],
  [1000, 100],
  [1400, 10],
  [2400, 1],
  [4000, 0.1],
  [6500, 0.01],
])
const stands = (mm2: number) => cableWithstand({ constant: 143e6, section: mm2 * MM2 })
const cable = (mm2: number): WarmingCable => {
  const [conductor, outside] = [usualDiameters(mm2 * MM2)?.conductor.value as number, usualDiameters(mm2 * MM2)?.outside.value as number]
  return {
    resistance: flexibleResistance(mm2 * MM2)?.value as number,
    coefficient: 0.00393,
    conductor,
    outside,
    insulation: 0.25,
    emissivity: 0.9,
    pressure: 101325,
    heatCapacity: cableHeatCapacity({ section: mm2 * MM2, conductor, outside, insulation: 2e6 }),
  }
}
const BEFORE = { start: celsius(90), ambient: celsius(40) }
const near = (check: string, expected: number, obtained: number, tolerance: number, unit: string): void => {
  expect(
    proven({
      domain: 'high-voltage',
      check,
      source: 'Melting curve of a fuse against a cable; recomputed',
      mark: 'derived',
      expected,
      obtained,
      tolerance,
      unit,
    }),
    `${check}: expected ${expected}, got ${obtained}`,
  ).toBe(true)
}

describe('fuse against cable', () => {
  it('proves 35 mm² at 2000 A', () => {
    const fault = meltingIntegral({ current: 2000, time: meltingTime(fuse, 2000) as number })
    near('fuse lets through at 2000 A', 8.72e6, fault, 0.005e6, 'A²·s')
    const after = faultTemperature({
      constant: COPPER.constant.value,
      reciprocal: COPPER.reciprocal.value,
      before: celsius(90),
      section: 35 * MM2,
      fault,
    })
    near('35 mm² after 2000 A', 138.5, after - 273.15, 0.1, '°C')
    expect(unproven(fuse, stands(35), 2000, 8294, 0)).toEqual({ fails: [], slow: [], unknown: [] })
  })
  it('does not prove it below 1331 A, where it melts too slowly for the sum without loss', () => {
    const { fails, slow, unknown } = unproven(fuse, stands(35), 500, 8294, 0)
    expect(fails).toEqual([])
    expect(unknown).toEqual([{ from: 500, to: 800 }])
    expect(slow).toHaveLength(1)
    expect(slow[0]?.from).toBe(800)
    near('fuse lets through more than 35 mm² stands below', 1331, slow[0]?.to as number, 0.5, 'A')
    near('fuse melts there after', 14.1, meltingTime(fuse, slow[0]?.to as number) as number, 0.05, 's')
  })
  it('heats it in slow faults as one body', () => {
    for (const [mm2, current, degrees] of [
      [35, 1400, 146],
      [35, 1200, 215],
      [35, 1000, 427],
      [70, 1000, 157],
    ] as const)
      near(
        `${mm2} mm² when its fuse clears ${current} A`,
        degrees,
        (clearedAt(fuse, cable(mm2), current, BEFORE) as number) - 273.15,
        2,
        '°C',
      )
    const opened = warming(cable(35), [{ current: 1000, time: 10.67 }], BEFORE.start, BEFORE.ambient)?.temperatures[1] as number
    near('35 mm² opened by the contactor after 10.67 s of 1000 A', 119, opened - 273.15, 0.6, '°C')
    near('fuse keeps 35 mm² below 250 °C from', 1146, protectedFrom(fuse, cable(35), celsius(250), BEFORE) as number, 0.03 * 1146, 'A')
  })
  it('finds the currents that a look at each in turn finds', () => {
    fc.assert(
      fc.property(real(4, 100), real(0, 0.2), real(0, 0.7), (mm2, tolerance, arcs) => {
        const arcing = arcs * stands(mm2)
        const { fails, slow, unknown } = unproven(fuse, stands(mm2), 600, 12e3, tolerance, arcing)
        for (let k = 1; k < 300; k++) {
          const current = 600 * 20 ** (k / 300),
            time = meltingTime(fuse, current / (1 + tolerance)),
            within = (bands: typeof fails) => bands.some(b => current > b.from && current < b.to)
          const much = time !== undefined && current ** 2 * time + arcing > stands(mm2)
          expect([within(fails), within(slow), within(unknown)], `at ${current}`).toEqual([
            much && (time as number) < 5,
            much && (time as number) > 5,
            time === undefined,
          ])
        }
      }),
      { numRuns: runs(200) },
    )
  })
  it('leaves a larger cable never less proven', () => {
    const width = (mm2: number) => {
      const { fails, slow } = unproven(fuse, stands(mm2), 800, 12e3, 0.1)
      return [...fails, ...slow].reduce((sum, b) => sum + b.to - b.from, 0)
    }
    fc.assert(
      fc.property(real(2, 120), real(0, 20), (mm2, more) => {
        expect(width(mm2 + more)).toBeLessThanOrEqual(width(mm2) + 1e-6)
      }),
      { numRuns: runs(300) },
    )
  })
  it('knows nothing below the curve, everything where the cable is large, and no protection where the cable is thin', () => {
    expect(clearedAt(fuse, cable(35), 700, BEFORE)).toBeUndefined()
    expect(clearedAt(fuse, cable(16), 800, BEFORE)).toBe(Number.POSITIVE_INFINITY)
    expect(protectedFrom(fuse, cable(70), celsius(2000), BEFORE)).toBe(800)
    expect(protectedFrom(fuse, cable(16), celsius(95), BEFORE)).toBeUndefined()
    expect(() => unproven(fuse, 1, 0, 5, 0)).toThrow(RangeError)
  })
})
