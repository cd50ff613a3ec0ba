import { expect, it } from 'vitest'
import { type CycleId, cycles } from './cycles.ts'

/** A car as force `f0 + f2·v² + m·a`: N, N/(m/s)², kg with rotating parts. */
type Car = { f0: number; f2: number; m: number }
// 1200 kg, rolling 0.010, 1.2 kg/m³, drag area 0.35 × 2.0 m²; 1500 (1560) kg, rolling 0.012, drag area 0.32 × 2.2 m²; g 9.81 m/s²
const LIGHT: Car = { f0: 117.72, f2: 0.42, m: 1200 }
const HEAVY: Car = { f0: 176.58, f2: 0.4224, m: 1560 }

/** Wh/km at the wheel: driving, braking and their difference, by one midpoint step a second. */
function wheelEnergy(id: CycleId, { f0, f2, m }: Car): [drive: number, brake: number, net: number] {
  const { speeds } = cycles[id]()
  let drive = 0,
    brake = 0,
    distance = 0
  for (let i = 1; i < speeds.length; i++) {
    const before = speeds[i - 1] ?? Number.NaN,
      after = speeds[i] ?? Number.NaN
    const v = (before + after) / 2
    const work = v > 0 ? (f0 + f2 * v * v + m * (after - before)) * v : 0
    if (work > 0) drive += work
    else brake -= work
    distance += v
  }
  const perKm = 3.6 * distance
  return [drive / perKm, brake / perKm, (drive - brake) / perKm]
}

// Recomputed by two programs apart from this one: one midpoint step a second, and 200 steps a second.
it.each<[CycleId, number[], number[]]>([
  ['wltc-3b', [121.26, 28.51, 92.75], [147.1, 37.65, 109.44]],
  ['wltc-3a', [120.34, 27.6, 92.74], [145.87, 36.43, 109.43]],
  ['udds', [98.74, 40.47, 58.28], [127.05, 52.27, 74.77]],
  ['hwfet', [101.15, 8.09, 93.06], [120.73, 10.98, 109.75]],
  ['us06', [161.34, 38.81, 122.53], [192.14, 52.75, 139.39]],
  ['nedc', [101.54, 26.58, 74.96], [126.76, 35.2, 91.56]],
  ['artemis-urban', [130.8, 86.29, 44.51], [171.76, 110.83, 60.93]],
  ['artemis-rural', [110.48, 32.67, 77.81], [138.08, 43.67, 94.42]],
  ['artemis-motorway-130', [163.95, 18.31, 145.64], [188.28, 25.64, 162.64]],
  ['artemis-motorway-150', [172.92, 17.51, 155.41], [197.04, 24.58, 172.46]],
])('wheel energy on %s for two cars agrees within 0.1 % or 0.05 Wh/km', (id, light, heavy) => {
  for (const [car, expected] of [
    [LIGHT, light],
    [HEAVY, heavy],
  ] as const) {
    const found = wheelEnergy(id, car)
    for (const [index, value] of expected.entries()) {
      expect(Math.abs((found[index] ?? Number.NaN) - value)).toBeLessThanOrEqual(Math.max(0.05, value / 1000))
    }
  }
})
