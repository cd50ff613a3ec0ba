import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { curve } from '../numerics/curve.ts'
import { solveOde } from '../numerics/ode.ts'
import { branchVoltage, constantPowerCurrent, mostPower, resistanceAfter, terminalVoltage } from './cell-circuit.ts'
import { type CellTable, cellRun } from './cell-run.ts'
import { chenRinconMora } from './chen-rincon-mora.ts'
import { chargeLimit, dischargeLimit } from './power-limit.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const flat = (y: number) => curve([0, 1e9], [y, y])
const level = (r1: number, t1: number, r2: number, t2: number): CellTable => ({
  openCircuit: curve([0, 1e5], [4.2, 3.2]),
  ohmic: flat(0.03),
  branches: [
    { resistance: flat(r1), time: flat(t1) },
    { resistance: flat(r2), time: flat(t2) },
  ],
})

describe('the circuit of a cell', () => {
  it('answers a step of 0.85 A as the published 850 mAh cell does, with its elements held at half charge', () => {
    const c = chenRinconMora({ charge: 0.5 }),
      I = 0.85
    const at = (step: number): number => {
      const branch = (resistance: number, capacitance: number): number =>
        branchVoltage({ before: 0, resistance, current: I, time: resistance * capacitance, step })
      return terminalVoltage({
        openCircuit: c.openCircuit,
        resistance: c.series,
        current: I,
        branches: [branch(c.short, c.shortCapacitance), branch(c.long, c.longCapacitance)],
      })
    }
    for (const [t, u] of [
      [0, 3.74007],
      [10, 3.72779],
      [60, 3.69677],
    ] as const)
      expect(at(t)).toBeCloseTo(u, 4)
  })
  it('gives the same in one step as in many: the update is exact', () => {
    fc.assert(
      fc.property(
        real(0.001, 0.1),
        real(-200, 200),
        real(0.5, 300),
        real(0.01, 600),
        fc.integer({ min: 1, max: 60 }),
        (resistance, current, time, step, n) => {
          const once = branchVoltage({ before: 0, resistance, current, time, step })
          let u = 0
          for (let k = 0; k < n; k++) u = branchVoltage({ before: u, resistance, current, time, step: step / n })
          expect(Math.abs(u - once)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(resistance * current)))
          expect(once).toBeCloseTo(resistance * current * (1 - Math.exp(-step / time)), 10)
        },
      ),
    )
  })
  it('agrees with a general solver of differential equations under a swinging current', () => {
    const cell = level(0.02, 20, 0.03, 130),
      step = 0.5,
      n = 1200
    const current = (t: number): number => 5 + 4 * Math.sin(t / 17)
    // The loop holds the current over each step: at the middle of the step that is a second-order picture of the swing.
    const currents = Float64Array.from({ length: n }, (_, k) => current((k + 0.5) * step))
    const removed = new Float64Array(n)
    for (let k = 0, q = 0; k < n; k++) removed[k] = q += currents[k]! * step
    const run = cellRun(cell, currents, removed, step)
    const solved = solveOde(
      (t, y, rate) => {
        rate[0] = (0.02 * current(t) - y[0]!) / 20
        rate[1] = (0.03 * current(t) - y[1]!) / 130
      },
      0,
      [0, 0],
      n * step,
      { relative: 1e-10, absolute: 1e-12 },
    )
    for (const k of [99, 599, 1199]) {
      const y = solved?.at((k + 1) * step) as Float64Array
      const wanted = 4.2 - removed[k]! / 1e5 - 0.03 * currents[k]! - y[0]! - y[1]!
      expect(Math.abs(run.voltages[k]! - wanted)).toBeLessThan(2e-5)
    }
  })
  it('closes the energy balance: what the open-circuit voltage gives leaves at the terminals, turns to heat or stays in the branches', () => {
    fc.assert(
      fc.property(
        real(0.001, 0.05),
        real(2, 100),
        real(0.001, 0.05),
        real(2, 300),
        fc.array(real(-20, 20), { minLength: 5, maxLength: 60 }),
        (r1, t1, r2, t2, load) => {
          // Equal steps short against both time constants: the terminal energy is then counted with the mean of the exact voltage over the step.
          const cell = level(r1, t1, r2, t2),
            step = 1
          let q = 0,
            u1 = 0,
            u2 = 0,
            source = 0,
            terminals = 0
          const removed = Float64Array.from(load, i => (q += i * step))
          for (const [k, i] of load.entries()) {
            const mean = (u: number, r: number, t: number): number => r * i + ((u - r * i) * t * (1 - Math.exp(-step / t))) / step
            const open = 4.2 - (removed[k] as number) / 1e5
            const m1 = mean(u1, r1, t1),
              m2 = mean(u2, r2, t2)
            u1 = branchVoltage({ before: u1, resistance: r1, current: i, time: t1, step })
            u2 = branchVoltage({ before: u2, resistance: r2, current: i, time: t2, step })
            source += open * i * step
            terminals += (open - 0.03 * i - m1 - m2) * i * step
          }
          const { heat } = cellRun({ ...cell, openCircuit: curve([-1e5, 1e5], [5.2, 3.2]) }, load, removed, step)
          const stored = (u1 * u1 * t1) / r1 / 2 + (u2 * u2 * t2) / r2 / 2
          expect(Math.abs(source - terminals - heat - stored)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(source)))
        },
      ),
      { numRuns: runs(2000) },
    )
  })
  it('counts resistance after a time as the voltage lost after that time of constant current', () => {
    fc.assert(
      fc.property(real(0.01, 0.1), real(0.001, 0.1), real(1, 200), real(0.1, 300), real(1, 50), (ohmic, branch, time, after, current) => {
        const u = branchVoltage({ before: 0, resistance: branch, current, time, step: after })
        const lost = 4 - terminalVoltage({ openCircuit: 4 - 1e-6 * current * after, resistance: ohmic, current, branches: [u] })
        expect(resistanceAfter({ ohmic, branch, time, after, slope: 1e-6 }) * current).toBeCloseTo(lost, 9)
      }),
    )
  })
})

describe('current and power', () => {
  it('a constant power of 20 W from the tested cell runs at 3.44709 V, loses 1.2556 W and is 94.093 % efficient', () => {
    const I = constantPowerCurrent({ voltage: 3.6635, resistance: 0.0373, power: 20 }),
      U = 3.6635 - 0.0373 * I
    expect(U).toBeCloseTo(3.44709, 5)
    expect(I * I * 0.0373).toBeCloseTo(1.2556, 4)
    expect(20 / (20 + I * I * 0.0373)).toBeCloseTo(0.94093, 5)
  })
  it('a power the source cannot give has no current: 100 W of that cell', () => {
    expect(constantPowerCurrent({ voltage: 3.6635, resistance: 0.0373, power: 100 })).toBeNaN()
  })
  it('the current at a power gives that power back, in either direction, and is the smaller of the two', () => {
    fc.assert(
      fc.property(real(2, 800), real(1e-6, 2), real(-1, 0.999), (voltage, resistance, share) => {
        const power = share * mostPower({ voltage, resistance }),
          I = constantPowerCurrent({ voltage, resistance, power })
        expect(Math.abs(I * (voltage - resistance * I) - power)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(power)))
        expect(I).toBeLessThanOrEqual(voltage / (2 * resistance) + 1e-9)
      }),
    )
  })
  it('a limit never passes its floor, its ceiling or its current, and grows with voltage and against resistance', () => {
    fc.assert(
      fc.property(real(3, 4.2), real(0.001, 0.1), real(2, 4.2), real(0, 200), real(1, 1.2), (voltage, resistance, bound, most, better) => {
        const out = dischargeLimit({ voltage, resistance, floor: bound, most })
        expect(out.current).toBeGreaterThanOrEqual(0)
        expect(out.current).toBeLessThanOrEqual(most)
        if (out.current > 0) expect(voltage - resistance * out.current).toBeGreaterThanOrEqual(Math.min(bound, voltage / 2) - 1e-9)
        expect(dischargeLimit({ voltage, resistance: resistance / better, floor: bound, most }).power).toBeGreaterThanOrEqual(
          out.power - 1e-9,
        )
        expect(dischargeLimit({ voltage: voltage * better, resistance, floor: bound, most }).power).toBeGreaterThanOrEqual(out.power - 1e-9)
        const into = chargeLimit({ voltage, resistance, ceiling: bound, most })
        expect(into.current).toBeLessThanOrEqual(0)
        expect(into.current).toBeGreaterThanOrEqual(-most)
        if (into.current < 0) expect(voltage - resistance * into.current).toBeLessThanOrEqual(bound + 1e-9)
      }),
    )
  })
})
