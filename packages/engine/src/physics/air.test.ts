import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  dryAirDensity,
  moistAirFactor,
  pressureAtAltitude,
  STANDARD_PRESSURE,
  STANDARD_TEMPERATURE,
  saturationPressure,
  standardTemperature,
} from './air.ts'

const standardDensity = (altitude: number): number => dryAirDensity(pressureAtAltitude(altitude), standardTemperature(altitude))

describe('air', () => {
  test('has the densities of the standard atmosphere', () => {
    // ISO 2533 (from memory), four decimals.
    for (const [altitude, density] of [
      [0, 1.225],
      [500, 1.1673],
      [1000, 1.1116],
      [1500, 1.0581],
      [2000, 1.0065],
    ] as const) {
      expect(Math.abs(standardDensity(altitude) - density)).toBeLessThanOrEqual(0.000051)
    }
  })

  test('has the pressures of the standard atmosphere', () => {
    // ISO 2533 (from memory): 1000 m 89 874.6 Pa, 2000 m 79 495.2 Pa; and the printed form of the formula.
    expect(pressureAtAltitude(1000)).toBeCloseTo(89874.6, 0)
    expect(pressureAtAltitude(2000)).toBeCloseTo(79495.2, 0)
    for (const h of [-300, 0, 750, 2600]) expect(pressureAtAltitude(h) / (101325 * (1 - 2.25577e-5 * h) ** 5.25588)).toBeCloseTo(1, 6)
  })

  test('is as heavy as the reference states of coast-down rules say', () => {
    // UN GTR No. 15 (from memory): 293 K, 100 kPa, 1.189 kg/m³. 40 CFR 1066.310: 20 °C, 98.21 kPa, 1.17 kg/m³.
    expect(dryAirDensity(100e3, 293)).toBeCloseTo(1.189, 3)
    expect(dryAirDensity(98.21e3, 293.15)).toBeCloseTo(1.167, 3)
  })

  test('is 1.6 % lighter when saturated at 30 °C, and less than 1 % up to 20 °C or at 60 % humidity', () => {
    const lighter = (celsius: number, humidity: number): number =>
      1 - moistAirFactor(humidity * saturationPressure(celsius + 273.15), STANDARD_PRESSURE)
    expect(lighter(30, 1)).toBeCloseTo(0.016, 3)
    expect(lighter(20, 1)).toBeLessThan(0.01)
    expect(lighter(30, 0.6)).toBeLessThan(0.01)
  })

  test('holds water vapour as steam tables say', () => {
    // Saturation over water, any steam table: 0.01 °C 611.7 Pa, 20 °C 2339 Pa, 30 °C 4247 Pa, 40 °C 7385 Pa; the formula is good to 0.4 % there.
    for (const [celsius, pressure] of [
      [0.01, 611.7],
      [20, 2339],
      [30, 4247],
      [40, 7385],
    ] as const) {
      expect(Math.abs(saturationPressure(celsius + 273.15) / pressure - 1)).toBeLessThan(0.004)
    }
  })

  test('is thinner higher up, warmer or moister', () => {
    const altitude = fc.double({ min: -400, max: 5000, noNaN: true })
    fc.assert(
      fc.property(altitude, altitude, (a, b) => {
        if (Math.abs(a - b) > 1e-6) expect(standardDensity(Math.max(a, b))).toBeLessThan(standardDensity(Math.min(a, b)))
      }),
    )
    expect(dryAirDensity(1e5, STANDARD_TEMPERATURE + 10)).toBeLessThan(dryAirDensity(1e5, STANDARD_TEMPERATURE))
    expect(moistAirFactor(0, 1e5)).toBe(1)
  })

  test('carries its own weight: pressure falls with height by density times gravity', () => {
    for (const h of [0, 1000, 3000]) {
      const slope = (pressureAtAltitude(h + 0.5) - pressureAtAltitude(h - 0.5)) / 1
      expect(slope / (-standardDensity(h) * 9.80665)).toBeCloseTo(1, 6)
    }
  })
})
