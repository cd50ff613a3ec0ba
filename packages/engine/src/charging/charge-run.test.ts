import { describe, expect, it } from 'vitest'
import { proven } from '../../../../tests/proof.ts'
import { curve } from '../numerics/index.ts'
import { type ChargePlan, chargeRun } from './charge-run.ts'

const ONE = curve([0, 1000], [1, 1])
const WORKED = 'closed form of a source with a straight open-circuit line, recomputed'
/** A source of 100 Ah: U = base + rise·Ah. */
const source = (base: number, rise: number, resistance: number, more: Partial<ChargePlan>): ChargePlan => ({
  openCircuit: curve([0, 2], [base, base + 200 * rise]),
  resistance: curve([0, 1], [resistance, resistance]),
  resistanceFactor: 1,
  branchResistance: 1e-12,
  branchTime: 60,
  coldFactor: ONE,
  capacity: 360e3,
  cellCurrent: 1e4,
  temperatureShare: ONE,
  chargeTaper: ONE,
  lowestTemperature: 0,
  power: 1e9,
  current: 1e9,
  voltage: 1e4,
  heaterPower: 0,
  heaterTo: 0,
  heatCapacity: 1e9,
  conductance: 1,
  outside: 298,
  startTemperature: 298,
  from: 0.1,
  to: 1,
  fullCurrent: 0.03,
  most: 2e5,
  ...more,
})
const near = (check: string, expected: number, obtained: number, tolerance: number, unit: string): void => {
  expect(
    proven({ domain: 'charging', check, source: WORKED, mark: 'derived', expected, obtained, tolerance, unit }),
    `${check}: expected ${expected}, found ${obtained}`,
  ).toBe(true)
}

describe('a charge in steps against closed forms', () => {
  it('constant current, then constant voltage: 40 A from 10 Ah to 4.2 V, then to 3 A', () => {
    const { totals: t } = chargeRun(source(3.45, 0.012, 0.0015, { current: 40, voltage: 4.2 }), 1)
    near('charge by current and voltage: time', 4275 + 1165.62, t.time, 3, 's')
    near('charge by current and voltage: charge reached', 62.125, t.charge * 100, 0.01, 'Ah')
    near('charge by current and voltage: energy in', 205.3875, t.taken / 3600, 0.02, 'Wh')
    // Heat of the whole charge: that at constant current, and 2.99916 Wh less it at constant voltage.
    near(
      'charge by current and voltage: heat',
      (40 * 40 * 0.0015 * 4275) / 3600 + (0.0015 * 450 * (1600 - 9)) / 2 / 3600,
      (t.taken - t.stored) / 3600,
      0.005,
      'Wh',
    )
  })
  it('one RC branch at constant voltage: 0.9 mΩ, 0.6 mΩ and 60 s from 40 A, branch at 24 mV', () => {
    // Long constant current brings the branch to 24 mV; the voltage is set so that it is met there.
    const plan = source(3.45, 0.012, 0.0009, { branchResistance: 0.0006, branchTime: 60, current: 40, voltage: 4.2, from: 0.1 }),
      { traces } = chargeRun(plan, 0.5)
    const start = traces.currents.findIndex((i, k) => k > 10 && i < 40 - 1e-9),
      at = (seconds: number): number => traces.currents[start + Math.round(seconds / 0.5)]!
    near('current 60 s into constant voltage with a branch', 33.59394, at(60), 0.15, 'A')
    near('current 300 s into constant voltage with a branch', 20.04639, at(300), 0.1, 'A')
    near('current 1200 s into constant voltage with a branch', 3.02567, at(1200), 0.03, 'A')
  })
  it('constant power: 3300 W from 10.92 to 98 Ah', () =>
    near(
      'charge at constant power: time',
      34539.27,
      chargeRun(source(330, 0.6, 0.1, { power: 3300, from: 0.1092, to: 0.98 }), 10).totals.time,
      10,
      's',
    ))
  // Two hundred ampere-hours, so that the charge ends by its current and not by its charge.
  const wide = (power: number, endsAt: number): ChargePlan => ({
    ...source(330, 0.66, 0.1, { power, voltage: 403.2, from: 0.0546, fullCurrent: endsAt / 200 }),
    capacity: 720e3,
    openCircuit: curve([0, 1], [330, 330 + 0.66 * 200]),
  })
  it('constant power, then constant voltage: 3272.4 W from 10.92 Ah to 403.2 V, then to 2 A', () => {
    const { totals: t, traces } = chargeRun(wide(3272.4, 2), 2)
    near('charge by power and voltage: time', (11.187 + 0.2122) * 3600, t.time, 20, 's')
    near('charge by power and voltage: energy in', 36.6084 + 0.3736, t.taken / 3.6e6, 0.01, 'kWh')
    near('charge by power and voltage: heat', 87.9, (t.taken - t.stored) / 3600, 0.1, 'Wh')
    const met = traces.voltages.findIndex(u => u >= 403.2 - 1e-9)
    near('charge by power and voltage: current where the voltage is met', 8.1161, traces.currents[met]!, 0.02, 'A')
    near('charge by power and voltage: charge where the voltage is met', 109.6794, traces.charges[met]! * 200, 0.03, 'Ah')
    near('charge by power and voltage: time at the voltage', 0.2122 * 3600, t.time - traces.times[met]!, 20, 's')
  })
  it('the same at a post of 20 kW, then to 5 A', () => {
    const { totals: t, traces } = chargeRun(wide(20e3, 5), 2)
    near('charge at 20 kW: time', (1.7251 + 0.3477) * 3600, t.time, 10, 's')
    near('charge at 20 kW: energy in', 34.501 + 2.725, t.taken / 3.6e6, 0.01, 'kWh')
    near('charge at 20 kW: heat', 515.2, (t.taken - t.stored) / 3600, 0.5, 'Wh')
    const met = traces.voltages.findIndex(u => u >= 403.2 - 1e-9)
    near('charge at 20 kW: time at constant power', 1.7251 * 3600, traces.times[met]!, 5, 's')
  })
})

describe('cold', () => {
  const cold = source(330, 0.66, 0.1, {
    power: 3000,
    startTemperature: 268.15,
    outside: 268.15,
    from: 0.2,
    to: 0.5,
    heatCapacity: 240e3,
    conductance: 5,
    temperatureShare: curve([273.15, 278.15, 298.15], [0, 0.1, 1]),
    cellCurrent: 100,
  })
  it('without a heater nothing flows into frozen cells, and the charge never ends', () => {
    const { totals } = chargeRun(cold)
    expect(totals.time).toBe(Number.POSITIVE_INFINITY)
    expect(totals.taken).toBe(0)
  })
  it('warms first: 240 kJ/K from −5 to +5 °C with 1 kW takes 2462 s', () => {
    const shut = {
        ...cold,
        heaterPower: 1000,
        heaterTo: 278.65,
        to: 0.2005,
        temperatureShare: curve([200, 278.149, 278.15, 300], [0, 0, 1, 1]),
      },
      { totals } = chargeRun(shut, 1)
    near('warming a pack of 240 kJ/K by 10 K with 1 kW', 2462.1, totals.warming, 3, 's')
    near('energy of warming it', 0.684, totals.heater / 3.6e6, 0.002, 'kWh')
    expect(totals.time).toBeLessThan(cold.most)
  })
  it('takes what the table allows while warming, and tells how long the cells held it back', () => {
    const { totals } = chargeRun({ ...cold, heaterPower: 1000, heaterTo: 283.15 })
    expect(totals.heldBack).toBeGreaterThan(0)
    expect(totals.heldBack).toBeLessThan(totals.time)
    expect(totals.highestCurrent).toBeLessThan(100)
  })
})

describe('properties', () => {
  const plan = source(330, 0.66, 0.1, {
    power: 6000,
    voltage: 403,
    from: 0.1,
    to: 0.9,
    cellCurrent: 40,
    chargeTaper: curve([0, 0.5, 1], [1, 1, 0.2]),
  })
  it('energy in is energy stored and the heat of the resistance', () => {
    const { totals: t, traces } = chargeRun({ ...plan, branchResistance: 1e-12 }, 10)
    let heat = 0
    for (let k = 0; k + 1 < traces.times.length; k++) heat += 0.1 * traces.currents[k]! ** 2 * (traces.times[k + 1]! - traces.times[k]!)
    expect(Math.abs(t.taken - t.stored - heat)).toBeLessThan(1e-6 * t.taken)
  })
  it('more power, more current, a warmer pack never take longer', () => {
    const time = (more: Partial<ChargePlan>): number => chargeRun({ ...plan, ...more }).totals.time,
      here = time({})
    for (const more of [{ power: 9000 }, { cellCurrent: 60 }, { voltage: 410 }, { from: 0.2 }]) expect(time(more)).toBeLessThanOrEqual(here)
  })
  it('ends smoothly: a little less charge wanted takes a little less time', () => {
    const times = Array.from({ length: 30 }, (_, i) => chargeRun({ ...plan, to: 0.8 + i * 1e-4 }).totals.time),
      steps = times.slice(1).map((t, i) => t - times[i]!)
    for (const s of steps) {
      expect(s).toBeGreaterThan(0.5 * steps[0]!)
      expect(s).toBeLessThan(2 * steps[0]!)
    }
  })
  it('a charge that is there already takes no time', () => expect(chargeRun({ ...plan, from: 0.95 }).totals.time).toBe(0))
})

describe('a charge that never comes to its end', () => {
  const cold = {
    temperatureShare: curve([273, 274], [0, 1]),
    outside: 270,
    startTemperature: 270,
    current: 20,
    heatCapacity: 1e5,
    conductance: 5,
  }
  it('has no time and takes nothing where the cells are too cold and nothing warms them', () => {
    const { totals: t, stopped } = chargeRun(source(3.45, 0.012, 0.0015, { ...cold, voltage: 5 }))
    expect(stopped).toBe('cold')
    expect(t).toMatchObject({ time: Number.POSITIVE_INFINITY, taken: 0, stored: 0, heater: 0, charge: 0.1 })
  })
  it('nor where the heater is too weak, while a stronger one gets there', () => {
    const with_ = (heaterPower: number) =>
      chargeRun(source(3.45, 0.012, 0.0015, { ...cold, voltage: 5, power: 400, heaterPower, heaterTo: 280, most: 5e5 }))
    expect(with_(10).totals).toMatchObject({ time: Number.POSITIVE_INFINITY, heater: 0 })
    expect(with_(200).stopped).toBeUndefined()
    expect(with_(200).totals.time).toBeLessThan(5e5)
  })
  it('nor where the charger is set below what the pack has, full or part charge wanted', () => {
    for (const to of [1, 0.8]) {
      const { totals: t, stopped } = chargeRun(source(3.45, 0.012, 0.0015, { voltage: 3.5, to, current: 40 }))
      expect(stopped).toBe('voltage')
      expect(t).toMatchObject({ time: Number.POSITIVE_INFINITY, taken: 0 })
    }
  })
  it('nor where the voltage is reached before a part charge is', () => {
    const { totals: t, stopped } = chargeRun(source(3.45, 0.012, 0.0015, { voltage: 4, to: 0.8, current: 40 }))
    expect(stopped).toBe('voltage')
    expect(t.charge).toBeCloseTo((4 - 3.45) / 0.012 / 100, 2)
  })
  it('takes no time where it is there from the start', () =>
    expect(chargeRun(source(3.45, 0.012, 0.0015, { from: 0.9, to: 0.8 })).totals).toMatchObject({ time: 0, taken: 0 }))
})
