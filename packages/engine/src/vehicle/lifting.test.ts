import { describe, expect, it } from 'vitest'
import { padsOfLift, pullThatTips } from './lifting.ts'
import { centreOfMassX, rearAxleByLedger } from './mass-and-axles.ts'

const WHEELBASE = 2.45
type Part = readonly [mass: number, x: number]
const OUT_FIRST: readonly Part[] = [
  [125, -0.05],
  [14, -0.45],
]
const OUT_NEXT: readonly Part[] = [
  [22, 1.6],
  [48, 2.2],
]
const IN_REAR: readonly Part[] = [
  [170, 2.3],
  [14, 2.6],
]
const IN_FRONT: readonly Part[] = [
  [55, 0.1],
  [12, 0.05],
  [110, -0.1],
]
/** The car of the ledger, 620 kg in front and 480 kg behind, with parts out and in. */
function hanging(removed: readonly Part[], added: readonly Part[]): { mass: number; centre: number } {
  const column = (parts: readonly Part[], i: 0 | 1): number[] => parts.map(p => p[i])
  const total = 1100 + column(added, 0).reduce((a, b) => a + b, 0) - column(removed, 0).reduce((a, b) => a + b, 0)
  const rear = rearAxleByLedger({
    rear: 480,
    wheelbase: WHEELBASE,
    added: column(added, 0),
    addedX: column(added, 1),
    removed: column(removed, 0),
    removedX: column(removed, 1),
  })
  return { mass: total, centre: centreOfMassX({ rear, total, wheelbase: WHEELBASE }) }
}

describe('a car on a lift, step by step through its conversion', () => {
  const out = [...OUT_FIRST, ...OUT_NEXT]
  const steps = [
    { step: 'as weighed', car: hanging([], []), mass: 1100, centre: 1.0691, front: 0.524 },
    { step: 'engine and radiator out', car: hanging(OUT_FIRST, []), mass: 961, centre: 1.2368, front: 0.395 },
    { step: 'exhaust and tank out', car: hanging(out, []), mass: 891, centre: 1.1759, front: 0.442 },
    { step: 'rear battery and charger in first', car: hanging(out, IN_REAR), mass: 1075, centre: 1.3722, front: 0.291 },
    { step: 'front units in', car: hanging(out, [...IN_REAR, ...IN_FRONT]), mass: 1252, centre: 1.1743, front: 0.443 },
  ]
  for (const { step, car, mass, centre, front } of steps)
    it(`${step}: the front pads carry ${Math.round(front * 1000) / 10} %, the arms the whole car`, () => {
      expect(car.mass).toBe(mass)
      expect(car.centre).toBeCloseTo(centre, 4)
      const found = padsOfLift({ ...car, front: 0.45, rear: 1.75 })
      expect(Math.abs(found.share - front)).toBeLessThan(0.0005)
      expect(2 * (found.frontArm + found.rearArm)).toBeCloseTo(mass, 9)
    })
  it('is nearest to tipping with the rear battery in first', () => {
    const moments = steps.map(({ car }) => pullThatTips({ ...car, front: 0.45, rear: 1.75, height: 1.2 }).moment)
    expect(Math.min(...moments)).toBe(moments[3])
    expect(moments[3]).toBeCloseTo(3983, -1)
  })
})
