import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { proven } from '../../../../tests/proof.ts'
import { at, curve } from '../numerics/curve.ts'
import { simpson } from '../numerics/integrate.ts'
import { CLASS_CELLS } from './class-cells.ts'
import { coldFactor } from './cold-resistance.ts'
import { dischargeLimit } from './power-limit.ts'
import { chargeLeft, energyAtCurrent, storedEnergy } from './usable-energy.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const openCircuit = CLASS_CELLS.NMC.openCircuit.value,
  resistance = curve([0, 1], [1e-3, 1e-3])
const law = curve(
  Float64Array.from({ length: 131 }, (_, i) => 233.15 + i),
  Float64Array.from({ length: 131 }, (_, i) => coldFactor({ coefficient: 2600, temperature: 233.15 + i })),
)
const cell = { openCircuit, resistance, branch: 0, factor: 1, capacity: 60 * 3600, cold: law }
const cold = (celsius: number): number => coldFactor({ coefficient: 2600, temperature: celsius + 273.15 })
const check = (what: string, expected: number, obtained: number, tolerance: number, unit: string): void =>
  expect(
    proven({
      domain: 'battery',
      check: what,
      source: 'NMC111 parameter set of the BPX standard, as a 60 Ah cell',
      mark: 'published',
      expected,
      obtained,
      tolerance,
      unit,
    }),
    `${what}: expected ${expected}, got ${obtained}`,
  ).toBe(true)

describe('usable energy', () => {
  it('of a 60 Ah cell in the cold comes out as recomputed elsewhere', () => {
    const rows = [
      [25, 0.0183, 212.26, 216.73],
      [0, 0.0368, 200.38, 211.24],
      [-10, 0.0577, 189.98, 206.61],
      [-20, 0.2426, 147.17, 199.02],
    ] as const
    for (const [t, left, hard, soft] of rows) {
      const load = { ...cell, temperature: t + 273.15, floor: 3 }
      check(`charge left at 3.0 V and 120 A, ${t} °C`, left, chargeLeft({ ...load, current: 120 }), 5e-4, '1')
      check(`energy at 120 A, ${t} °C`, hard, energyAtCurrent({ ...load, current: 120 }) / 3600, 0.002 * hard, 'Wh')
      check(`energy at 60 A, ${t} °C`, soft, energyAtCurrent({ ...load, current: 60 }) / 3600, 0.002 * soft, 'Wh')
    }
  })
  it('power of 96 such cells at a floor of 3.0 V falls with charge and cold as recomputed elsewhere', () => {
    for (const [t, z, kw] of [
      [25, 0.5, 193.8],
      [0, 0.5, 87.24],
      [-20, 0.5, 41.13],
      [25, 0.2, 152.89],
      [0, 0.2, 68.83],
      [-20, 0.2, 32.45],
    ] as const)
      check(
        `power at ${100 * z} % and ${t} °C`,
        kw,
        dischargeLimit({ voltage: 96 * at(openCircuit, z), resistance: 96e-3 * cold(t), floor: 288, most: Infinity }).power / 1000,
        0.001 * kw,
        'kW',
      )
  })
  it('is the area found by another quadrature, and never more than at no load', () => {
    fc.assert(
      fc.property(real(0, 200), real(-20, 40), real(2.5, 3.4), (current, t, floor) => {
        const load = { ...cell, temperature: t + 273.15, current, floor },
          left = chargeLeft(load),
          energy = energyAtCurrent(load)
        const voltage = (z: number): number => at(openCircuit, z) - current * 1e-3 * at(law, t + 273.15)
        expect(energy).toBeLessThanOrEqual(storedEnergy({ openCircuit, capacity: cell.capacity }) + 1e-6)
        // Halving may stop early beside a corner of the curve: some 3e-5 V were seen.
        if (left < 1) expect(Math.abs(energy / cell.capacity - (simpson(voltage, left, 1, 1e-7) ?? Infinity))).toBeLessThan(1e-4)
        if (left > 0 && left < 1) expect(voltage(left)).toBeCloseTo(floor, 6)
      }),
    )
  })
  it('shrinks with current, with cold and with a higher floor', () => {
    fc.assert(
      fc.property(real(1, 150), real(-20, 24), real(2.5, 3.4), real(1, 1.3), (current, t, floor, more) => {
        const load = { ...cell, temperature: t + 273.15, current, floor },
          base = energyAtCurrent(load)
        expect(energyAtCurrent({ ...load, current: current * more })).toBeLessThanOrEqual(base + 1e-6)
        expect(energyAtCurrent({ ...load, factor: more })).toBeLessThanOrEqual(base + 1e-6)
        expect(energyAtCurrent({ ...load, floor: floor * more })).toBeLessThanOrEqual(base + 1e-6)
      }),
    )
  })
  it('the curves of a chemistry keep the published mean voltages', () => {
    const mean = (c: 'NMC' | 'LFP' | 'LTO'): number => storedEnergy({ openCircuit: CLASS_CELLS[c].openCircuit.value, capacity: 1 })
    check('mean open-circuit voltage, NMC111', 3.71, mean('NMC'), 5e-4, 'V')
    check('mean open-circuit voltage, LFP', 3.2605, mean('LFP'), 1.5e-3, 'V')
    // 150 titanate cells: 225 to 405 V, 345 V nominal.
    check('mean open-circuit voltage, LTO estimate', 2.3, mean('LTO'), 0.05, 'V')
  })
})

describe('energy in the cold by class', () => {
  it.each([
    [10, 0.938],
    [0, 0.879],
    [-10, 0.812],
    [-20, 0.728],
  ])('at %s °C lies near what one cell gave', (celsius, measured) => {
    const table = CLASS_CELLS.NCA.coldEnergy?.value
    if (!table) throw new Error('NCA has no table of energy in the cold')
    expect(
      proven({
        domain: 'battery',
        check: `energy of an NCA cell at ${celsius} °C against 25 °C`,
        source: 'Kollmeyer, cell test data of an NCA-type 18650 (2018): 0.3C steps with rests; recomputed',
        mark: 'published',
        expected: measured,
        obtained: at(table, celsius + 273.15),
        tolerance: 0.02,
      }),
    ).toBe(true)
  })
})
