import { afterAll, describe, expect, it } from 'vitest'
import type { TripPlan } from '../packages/engine/src/trip/plan.ts'
import { simulate } from '../packages/engine/src/trip/simulate.ts'
import { highestByWindow } from '../packages/engine/src/trip/windows.ts'
import { runs } from '../tests/counts.ts'
import { proven } from '../tests/proof.ts'
import { cycleTrace, drawn, roadster, twoUnits } from '../tests/trip-plans.ts'
import { hasCompiler, namedTotals, type Twin, twin } from './trip-twin.ts'

const here = hasCompiler()
if (!here) console.log('gcc is not on this machine: the C twin of the trip cannot be compiled, its tests are skipped')

describe.skipIf(!here)('the trip written a second time in C', () => {
  let made: Twin | undefined
  const c = (): Twin => (made ??= twin())
  afterAll(() => made?.close())

  /** Furthest apart of all results, relative to the energy drawn for energies, else to the value itself. */
  function apart(plan: TripPlan): { worst: number; where: string } {
    const { totals, traces } = simulate(plan),
      ours = namedTotals(totals, highestByWindow(traces.currents, traces.times.length - 1, plan.step)),
      theirs = c().run(plan)
    const energies = new Set([
      'charge',
      'battery',
      'cabin',
      'other',
      'motors',
      'driveline',
      'idle',
      'rolling',
      'air',
      'slope',
      'brakes',
      'motion',
      'drawn',
      'putBack',
      'wheelDrive',
      'wheelBrake',
      'recovered',
      'cutOff',
      'torque',
      'grip',
      'power',
      'full',
    ])
    let worst = 0,
      where = ''
    for (const [name, value] of Object.entries(ours)) {
      const other = theirs[name]!,
        scale = energies.has(name) ? totals.drawn : Math.max(Math.abs(value), 1e-3),
        far = Math.abs(value - other) / scale
      if (!(far <= worst)) [worst, where] = [far, `${name}: ${value} here, ${other} there`]
    }
    return { worst, where }
  }

  it.each([
    ['one unit', roadster(cycleTrace('wltc-3b'))],
    ['two units', twoUnits(roadster(cycleTrace('us06')))],
    ['one axle idle', twoUnits(roadster(cycleTrace('udds')), 0)],
  ] as const)('agrees to 1e-9 on a standard cycle: %s', (name, plan) => {
    const { worst, where } = apart(plan)
    expect(
      proven({
        domain: 'trips',
        check: `trip at 10 Hz against its twin in C, ${name}: furthest apart`,
        source: 'bench/trip.c',
        mark: 'independent program',
        expected: 0,
        obtained: worst,
        tolerance: 1e-9,
      }),
      where,
    ).toBe(true)
  })

  const seed = Number(process.env['AMPWRIGHT_SEED'] ?? Math.floor(Math.random() * 1e9))
  it(`agrees to 1e-9 on drawn cars, hills, winds and temperatures (AMPWRIGHT_SEED=${seed})`, () => {
    for (let i = 0; i < runs(400); i++) {
      const { worst, where } = apart({
        ...drawn(seed + i, cycleTrace(i % 3 === 0 ? 'us06' : i % 3 === 1 ? 'artemis-urban' : 'wltc-3b')),
        step: i % 2 ? 0.1 : 1,
      })
      expect(worst, `seed ${seed + i}: ${where}`).toBeLessThan(1e-9)
    }
  })
})
