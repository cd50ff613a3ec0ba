import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { solveOde } from '../numerics/ode.ts'
import { closingAfter, closingPeak, faultReaches } from './bus-transient.ts'
import { faultCurrent, faultIntegral, timeToMelt } from './prospective-current.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const decades = (low: number, high: number) => real(low, high).map(x => 10 ** x)
/** Loops by their damping, so that swinging, creeping and the border between all come up. */
const loop = fc
  .record({
    apart: real(1, 500),
    damping: fc.oneof(real(0.02, 0.95), real(0.9, 1.1), real(1, 20)),
    inductance: decades(-6, -4),
    capacitance: decades(-5, -2),
  })
  .map(({ damping, ...l }) => ({ ...l, resistance: 2 * damping * Math.sqrt(l.inductance / l.capacitance) }))
type Loop = { apart: number; resistance: number; inductance: number; capacitance: number }
/** Current, voltage gained, energy given and energy lost, followed in time. */
const followed = (l: Loop, end: number) =>
  solveOde(
    (_, [i, u], rate) => {
      rate[0] = (l.apart - l.resistance * i! - u!) / l.inductance
      rate[1] = i! / l.capacitance
      rate[2] = l.apart * i!
      rate[3] = l.resistance * i! ** 2
    },
    0,
    [0, 0, 0, 0],
    end,
    {
      relative: 1e-10,
      absolute: 1e-10,
      watch: [{ of: (_, [i, u]) => l.apart - l.resistance * i! - u! }, { of: (_, [i]) => i! }],
    },
  )!

describe('a contactor that closes onto a bus', () => {
  it('sees the peak that a solver of the circuit finds, at the same moment', () => {
    fc.assert(
      fc.property(loop, l => {
        const said = closingPeak({ ...l, before: 0 }),
          solved = followed(l, 12 * said.time),
          top = solved.crossings.find(c => c.watch === 0)!
        expect(top.time / said.time).toBeCloseTo(1, 4)
        expect(top.state[0]! / said.current).toBeCloseTo(1, 6)
        const swing = solved.crossings.find(c => c.watch === 1)
        if (said.damping < 0.9) expect(swing!.state[1]! / said.voltage).toBeCloseTo(1, 6)
        if (said.damping > 1) expect(said.voltage).toBe(l.apart)
      }),
      { numRuns: runs(600) },
    )
  })
  it('has at every moment the current and voltage of the solver, and loses no energy', () => {
    fc.assert(
      fc.property(loop, real(0.05, 8), (l, over) => {
        const scale = Math.sqrt(l.inductance * l.capacitance),
          time = over * scale,
          [i, u, given, lost] = followed(l, time).at(time) as unknown as [number, number, number, number],
          said = closingAfter({ ...l, time })
        const most = l.apart * Math.sqrt(l.capacitance / l.inductance)
        expect(Math.abs(said.current - i) / most).toBeLessThan(3e-6)
        expect(Math.abs(said.gained - u) / l.apart).toBeLessThan(3e-6)
        const kept = 0.5 * l.inductance * said.current ** 2 + 0.5 * l.capacitance * said.gained ** 2
        expect(Math.abs(kept + lost - given) / (l.capacitance * l.apart ** 2)).toBeLessThan(1e-5)
      }),
      { numRuns: runs(600) },
    )
  })
  it('goes over from swinging to creeping without a jump', () => {
    const l = { apart: 20, inductance: 4e-6, capacitance: 1e-3 },
      at = (damping: number) => {
        const resistance = 2 * damping * Math.sqrt(l.inductance / l.capacitance),
          peak = closingPeak({ ...l, resistance, before: 380 })
        return [peak.current, peak.time * 1e6, peak.voltage, closingAfter({ ...l, resistance, time: 1e-4 }).current]
      }
    const border = at(1)
    for (const damping of [1 - 5e-6, 1 - 5e-7, 1 + 5e-7, 1 + 5e-6])
      for (const [k, v] of at(damping).entries()) expect(v / border[k]!).toBeCloseTo(1, 5)
  })
  it('without precharge lifts the bus to 1.64 times the pack', () => {
    expect(closingPeak({ apart: 400, resistance: 0.02, inductance: 5e-6, capacitance: 1e-3, before: 0 }).voltage / 400).toBeCloseTo(1.64, 2)
  })
})

describe('a short circuit of 360 V through 30 mΩ and 15 µH', () => {
  const fault = { prospective: 12e3, constant: 0.5e-3 }
  it('rises as a circuit simulator found', () => {
    for (const [time, current] of [
      [100e-6, 2175.2],
      [500e-6, 7585.4],
      [1e-3, 10376],
    ] as const)
      expect(Math.abs(faultCurrent({ ...fault, time }) - current)).toBeLessThan(0.5)
    expect(Math.abs(faultIntegral({ ...fault, time: 1e-3 }) - 54829)).toBeLessThan(1)
    const time = timeToMelt({ ...fault, melting: 20e3 })
    expect(time * 1e6).toBeCloseTo(620.87, 1)
    expect(Math.abs(faultCurrent({ ...fault, time }) - 8533)).toBeLessThan(0.5)
  })
  it('reaches 5000 A when a solver of the circuit says', () => {
    const solved = solveOde(
      (_, [i], rate) => {
        rate[0] = (360 - 0.03 * i!) / 15e-6
      },
      0,
      [0],
      1e-3,
      { relative: 1e-10, absolute: 1e-9, watch: [{ of: (_, [i]) => i! - 5000 }] },
    )!
    expect(solved.crossings[0]!.time).toBeCloseTo(faultReaches({ ...fault, current: 5000 }), 9)
  })
  it('is at a current at the time it reaches it, and never at what the resistance forbids', () => {
    fc.assert(
      fc.property(real(1, 11.9e3), current => {
        expect(faultCurrent({ ...fault, time: faultReaches({ ...fault, current }) }) / current).toBeCloseTo(1, 8)
      }),
      { numRuns: runs(1000) },
    )
    expect(faultReaches({ ...fault, current: 12e3 })).toBe(Number.POSITIVE_INFINITY)
  })
})
