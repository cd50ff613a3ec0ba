import { describe, expect, it } from 'vitest'
import { proven } from '../../../../tests/proof.ts'
import { naumannCycling, naumannStanding, schmalstiegCycling, schmalstiegStanding, standingLoss } from './ageing.ts'
import { rootLawOnTop, standingOnTop, standingThroughSeasons } from './ageing-of-years.ts'

const AIR = [2, 3, 6, 9, 14, 17, 19, 19, 15, 11, 6, 3],
  DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
const check = (what: string, expected: number, obtained: number, tolerance: number, source: string): void =>
  expect(
    proven({ domain: 'battery', check: what, source, mark: 'published', expected, obtained, tolerance, unit: '1' }),
    `${what}: expected ${expected}, got ${obtained}`,
  ).toBe(true)
const SCHMALSTIEG = 'Schmalstieg et al. 2014',
  NAUMANN = 'Naumann et al. 2018, 2020'

const seasons = (voltage: number, years: number, warmer = 3, key: 'capacity' | 'resistance' = 'capacity'): number =>
  standingThroughSeasons({
    perDay: AIR.map(t => schmalstiegStanding({ voltage, temperature: t + warmer + 273.15 })[key]),
    times: DAYS.map(d => d * 86400 * years),
  })
const cycling = (years: number, cycles = 46.753) =>
  schmalstiegCycling({ voltage: 3.8, depth: 0.4, throughput: cycles * years * 2 * 2.05 * 3600 })

describe('ageing over years', () => {
  it('of a roadster’s NMC pack through the seasons comes out as recomputed elsewhere', () => {
    for (const [years, standing, cycled, total, r1, r2] of [
      [1, 0.014821, 0.034923, 0.049744, 0.03361, 0.01877],
      [5, 0.049559, 0.07809, 0.127648, 0.11239, 0.09385],
      [10, 0.083347, 0.110435, 0.193783, 0.18902, 0.1877],
    ] as const) {
      check(`standing, ${years} years`, standing, seasons(3.9, years), 1e-6, SCHMALSTIEG)
      check(`cycling, ${years} years`, cycled, cycling(years).capacity, 1e-6, SCHMALSTIEG)
      check(`capacity lost, ${years} years`, total, seasons(3.9, years) + cycling(years).capacity, 2e-6, SCHMALSTIEG)
      check(`resistance by standing, ${years} years`, r1, seasons(3.9, years, 3, 'resistance'), 1e-5, SCHMALSTIEG)
      check(`resistance by cycling, ${years} years`, r2, cycling(years).resistance, 1e-5, SCHMALSTIEG)
    }
    check('ten years parked at 3.60 V', 0.05007, seasons(3.6, 10), 1e-5, SCHMALSTIEG)
    check('ten years parked at 4.15 V', 0.11108, seasons(4.15, 10), 1e-5, SCHMALSTIEG)
    check('five hot years with a small pack', 0.2346, seasons(3.9, 5, 15) + cycling(5, 85.714).capacity, 1e-4, SCHMALSTIEG)
  })
  it('is not what the mean temperature, or adding up the months, would give', () => {
    const mean = AIR.reduce((s, t, k) => s + (t + 3) * DAYS[k]!, 0) / 365
    check('mean temperature of that pack', 13.378, mean, 5e-4, SCHMALSTIEG)
    check(
      'ten years at the mean temperature: too low',
      0.071041,
      standingLoss({ perDay: schmalstiegStanding({ voltage: 3.9, temperature: mean + 273.15 }).capacity, time: 3650 * 86400 }),
      1e-6,
      SCHMALSTIEG,
    )
    const months = AIR.map((t, k) =>
      standingLoss({ perDay: schmalstiegStanding({ voltage: 3.9, temperature: t + 276.15 }).capacity, time: DAYS[k]! * 86400 }),
    ).reduce((a, b) => a + b, 0)
    check('adding twelve monthly losses: far too high', 0.02648, months, 1e-5, SCHMALSTIEG)
  })
  it('of a pack bought at 91 % depends on how it lost its first nine', () => {
    const standing = seasons(3.9, 5),
      cycled = cycling(5).capacity
    for (const [share, health] of [
      [1, 0.8029],
      [0.5, 0.8303],
      [0, 0.8313],
    ] as const) {
      const t = share > 0 ? standingOnTop({ before: 0.09 * share, added: standing }) : standing,
        c = rootLawOnTop({ before: 0.09 * (1 - share), added: cycled })
      check(`bought at 91 %, ${100 * share} % of the loss by standing, five more years`, health, 1 - t - c, 1e-4, SCHMALSTIEG)
    }
  })
  it('of a town car’s LFP pack comes out as recomputed elsewhere', () => {
    // Half-power law: within one mechanism squares of the seasons’ losses add.
    const standing = (z: number, years: number): number =>
      Math.sqrt(
        AIR.reduce((s, t, k) => s + naumannStanding({ charge: z, temperature: t + 276.15, time: DAYS[k]! * 86400 * years }) ** 2, 0),
      )
    for (const [years, t, c] of [
      [1, 0.036972, 0.007118],
      [5, 0.082672, 0.015916],
      [10, 0.116916, 0.022509],
    ] as const) {
      check(`LFP standing, ${years} years`, t, standing(0.8, years), 1e-6, NAUMANN)
      check(`LFP cycling, ${years} years`, c, naumannCycling({ rate: 0.3 / 3600, depth: 0.4, cycles: 33.505 * years }), 1e-6, NAUMANN)
    }
    check('LFP parked at half charge, ten years', 0.103639, standing(0.5, 10), 1e-6, NAUMANN)
  })
  it('standing never adds capacity, however low the voltage', () => {
    expect(schmalstiegStanding({ voltage: 3.0, temperature: 298.15 })).toEqual({ capacity: 0, resistance: 0 })
    check(
      'year at 3.7 V and 25 °C: resistance',
      0.05065,
      standingLoss({ perDay: schmalstiegStanding({ voltage: 3.7, temperature: 298.15 }).resistance, time: 365 * 86400 }),
      5e-6,
      SCHMALSTIEG,
    )
    check(
      'year at 4.1 V and 40 °C: capacity',
      0.12674,
      standingLoss({ perDay: schmalstiegStanding({ voltage: 4.1, temperature: 313.15 }).capacity, time: 365 * 86400 }),
      5e-6,
      SCHMALSTIEG,
    )
    check(
      'year at 4.1 V and 40 °C: resistance',
      0.22039,
      standingLoss({ perDay: schmalstiegStanding({ voltage: 4.1, temperature: 313.15 }).resistance, time: 365 * 86400 }),
      5e-6,
      SCHMALSTIEG,
    )
  })
})
