import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { proven } from '../../../../tests/proof.ts'
import { type CableInAir, heatAtSurface, temperatureInAir } from './cable-heat.ts'
import { cableHeatCapacity, hottest, repeatedLoad, rmsCurrent, type Stretch, type WarmingCable, warming } from './cable-warming.ts'
import { celsius, MM2 } from './conductor-symbols.ts'
import { flexibleResistance, usualDiameters } from './conductor-sizes.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
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
const AIR = celsius(40)
const near = (check: string, expected: number, obtained: number, tolerance: number): void => {
  expect(
    proven({
      domain: 'high-voltage',
      check,
      source: 'Elementary heat balance and conduction, one body; recomputed',
      mark: 'derived',
      expected,
      obtained,
      tolerance,
      unit: '°C',
    }),
    `${check}: expected ${expected}, got ${obtained}`,
  ).toBe(true)
}

/** Loss at a conductor temperature by halving, so that nothing is shared with the curve the function looks up. */
function lossByHalving(c: CableInAir, conductor: number, ambient: number): number {
  let [low, high] = conductor > ambient ? [ambient, conductor] : [conductor, ambient]
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (heatAtSurface(c, middle, ambient).conductor < conductor) low = middle
    else high = middle
  }
  return heatAtSurface(c, (low + high) / 2, ambient).heat
}
/** The same warming once more by the plainest method: Euler, steps of a fixed length. */
function euler(c: WarmingCable, load: readonly Stretch[], start: number, ambient: number, step: number): number {
  let t = start
  for (const { current, time } of load) {
    const n = Math.max(1, Math.round(time / step))
    for (let i = 0; i < n; i++)
      t += ((time / n) * (current ** 2 * c.resistance * (1 + c.coefficient * (t - 293.15)) - lossByHalving(c, t, ambient))) / c.heatCapacity
  }
  return t
}

describe('a cable warming as one body', () => {
  it('follows a step of 200 A as the published sums do', () => {
    const run = warming(
      cable(35),
      [60, 60, 180, 300, 600].map(time => ({ current: 200, time })),
      AIR,
      AIR,
    )
    for (const [i, degrees] of [45.3, 50.2, 62.4, 75.8, 87.4].entries())
      near(`warming, 35 mm², 200 A after ${run?.times[i + 1]} s`, degrees, (run?.temperatures[i + 1] as number) - 273.15, 1)
    expect(run?.times).toEqual([0, 60, 120, 300, 600, 1200])
    // 63 % of the way at 520 s, and at rest where the steady sum says.
    const rest = temperatureInAir({ ...cable(35), current: 200, ambient: AIR }).conductor
    near('warming, 35 mm², 200 A at rest', 92.1, rest - 273.15, 0.05)
    const after = warming(cable(35), [{ current: 200, time: 520 }], AIR, AIR)?.temperatures[1] as number
    expect((after - AIR) / (rest - AIR)).toBeCloseTo(1 - 1 / Math.E, 2)
    expect(warming(cable(35), [{ current: 200, time: 20_000 }], AIR, AIR)?.temperatures[1]).toBeCloseTo(rest, 3)
  })
  it('swings about the mean of a short load repeated', () => {
    const load = [
        { current: 400, time: 10 },
        { current: 150, time: 50 },
      ],
      run = repeatedLoad(cable(35), load, AIR)
    near('repeated load, 400 A 10 s, 150 A 50 s, lowest', 97.5, Math.min(...(run?.temperatures ?? [])) - 273.15, 0.3)
    near('repeated load, 400 A 10 s, 150 A 50 s, highest', 100.7, hottest(run as never) - 273.15, 0.3)
    const mean = rmsCurrent({ currents: load.map(s => s.current), times: load.map(s => s.time) })
    near(
      'steady at the mean of 400 A 10 s, 150 A 50 s',
      99.1,
      temperatureInAir({ ...cable(35), current: mean, ambient: AIR }).conductor - 273.15,
      0.3,
    )
  })
  it('gets hotter than the mean says where the load is long', () => {
    const load = [
      { current: 500, time: 10 },
      { current: 350, time: 100 },
      { current: 200, time: 490 },
    ]
    for (const [mm2, steady, peak] of [
      [35, 114.5, 128.0],
      [50, 86.0, 92.0],
      [70, 69.3, 72.4],
    ] as const) {
      near(
        `steady at 239.27 A, ${mm2} mm²`,
        steady,
        temperatureInAir({ ...cable(mm2), current: 239.27, ambient: AIR }).conductor - 273.15,
        1,
      )
      near(`repeated load of 600 s, ${mm2} mm², highest`, peak, hottest(repeatedLoad(cable(mm2), load, AIR) as never) - 273.15, 1)
    }
  })
  it('is what Euler’s method makes of it, ever closer with shorter steps', () => {
    const load = [
        { current: 400, time: 40 },
        { current: 50, time: 120 },
        { current: 250, time: 200 },
      ],
      got = warming(cable(50), load, celsius(0), celsius(60))?.temperatures.at(-1) as number,
      coarse = Math.abs(euler(cable(50), load, celsius(0), celsius(60), 4) - got),
      fine = Math.abs(euler(cable(50), load, celsius(0), celsius(60), 1) - got)
    expect(fine).toBeLessThan(0.05)
    expect(coarse / fine).toBeGreaterThan(3.5)
    expect(coarse / fine).toBeLessThan(4.5)
  })
  it('repeats as sixty rounds run one after the other do', () => {
    const load = [
      { current: 400, time: 10 },
      { current: 150, time: 50 },
    ]
    const rounds = warming(cable(35), Array.from({ length: 60 }, () => load).flat(), AIR, AIR)?.temperatures.slice(-3) as number[]
    const found = repeatedLoad(cable(35), load, AIR)?.temperatures as number[]
    for (const [i, t] of found.entries()) expect(Math.abs(t - (rounds[i] as number))).toBeLessThan(0.1)
    expect(found.at(-1)).toBeCloseTo(found[0] as number, 4)
  })
  it('is never hotter with a larger section, and never cooler with more current or a warmer start', () => {
    fc.assert(
      fc.property(real(20, 500), real(1, 600), real(-20, 80), real(0, 60), (current, time, air, above) => {
        const ambient = celsius(air),
          end = (mm2: number, i: number, start: number) =>
            warming(cable(mm2), [{ current: i, time }], start, ambient)?.temperatures[1] as number,
          now = end(35, current, ambient + above)
        // From the air's temperature, for a larger cable that starts hot also cools more slowly.
        expect(end(50, current, ambient)).toBeLessThan(end(35, current, ambient))
        expect(end(35, 1.05 * current, ambient + above)).toBeGreaterThan(now)
        expect(end(35, current, ambient + above + 1)).toBeGreaterThan(now)
      }),
      { numRuns: runs(40) },
    )
  })
  it('gives no answer above 1000 °C, and stands still in a stretch of no time', () => {
    expect(warming(cable(35), [{ current: 8000, time: 5 }], AIR, AIR)).toBeUndefined()
    expect(repeatedLoad(cable(35), [{ current: 3000, time: 60 }], AIR)).toBeUndefined()
    expect(warming(cable(35), [{ current: 8000, time: 0 }], AIR, AIR)?.temperatures).toEqual([AIR, AIR])
    expect(() => warming(cable(35), [{ current: 1, time: -1 }], AIR, AIR)).toThrow(RangeError)
    expect(() => repeatedLoad(cable(35), [{ current: 1, time: 0 }], AIR)).toThrow(RangeError)
  })
})
