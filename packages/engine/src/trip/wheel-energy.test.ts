import { expect, it } from 'vitest'
import { proven } from '../../../../tests/proof.ts'
import { roadOnly } from '../../../../tests/road-only.ts'
import { type CycleId, cycleTrace } from '../../../../tests/trip-plans.ts'
import { simulateTotals } from './simulate.ts'

// 1200 kg, rolling 0.010, 1.2 kg/m³, drag area 0.35 × 2.0 m²; 1500 kg that weigh 1560 against speeding up, 0.012, 0.32 × 2.2 m²; g 9.81 m/s².
const LIGHT = { mass: 1200, f0: 117.72, f2: 0.42 }
const HEAVY = { mass: 1560, f0: 176.58, f2: 0.4224 }
/** Wh/km: light car driving and braking, heavy car driving and braking. Two programs apart from this one agree on them within 0.03 Wh/km. */
const EXPECTED: readonly (readonly [CycleId, readonly number[]])[] = [
  ['wltc-3b', [121.26, 28.51, 147.1, 37.65]],
  ['wltc-3a', [120.34, 27.6, 145.87, 36.43]],
  ['udds', [98.74, 40.47, 127.05, 52.27]],
  ['hwfet', [101.15, 8.09, 120.73, 10.98]],
  ['us06', [161.34, 38.81, 192.14, 52.75]],
  ['nedc', [101.54, 26.58, 126.76, 35.2]],
  ['artemis-urban', [130.8, 86.29, 171.76, 110.83]],
  ['artemis-rural', [110.48, 32.67, 138.08, 43.67]],
  ['artemis-motorway-130', [163.95, 18.31, 188.28, 25.64]],
  ['artemis-motorway-150', [172.92, 17.51, 197.04, 24.58]],
]

it.each(EXPECTED)('wheel energy of two cars on %s, the trip reduced to the road, within 0.1 % or 0.05 Wh/km', (id, expected) => {
  const trace = cycleTrace(id),
    perKm = (joules: number, metres: number): number => joules / 3.6 / metres
  const found = [LIGHT, HEAVY].flatMap(car => {
    const t = simulateTotals(roadOnly(trace, car))
    return [perKm(t.wheelDrive, t.distance), perKm(t.wheelBrake, t.distance)]
  })
  for (const [i, value] of expected.entries()) {
    const holds = proven({
      domain: 'trips',
      check: `wheel energy ${i % 2 ? 'braking' : 'driving'}, ${i < 2 ? 'light' : 'heavy'} car, ${id}`,
      source: 'recomputed by two programs, one midpoint step and 200 sub-steps a second',
      mark: 'independent program',
      expected: value,
      obtained: found[i] as number,
      tolerance: Math.max(0.05, value / 1000),
      unit: 'Wh/km',
    })
    expect(holds, `expected ${value}, found ${found[i]}`).toBe(true)
  }
})
