import { describe, expect, it } from 'vitest'
import { chargerInput, chargerLoss, chargerLossByPoint, chargerLossByPoints, chargerLossParts, classChargerLoss } from './charger-loss.ts'
import { powerToPack, wallEnergy } from './power-to-pack.ts'

const { fixed, square } = classChargerLoss
const efficiencyAt = (parts: { fixed: number; linear: number; square: number }, power: number): number =>
  1 - chargerLoss({ ...parts, power }) / power

describe('a charger below its full power', () => {
  it('of the class gives 0.88 to 0.90 at 1.4 kW where it gives 0.92 to 0.95 at full power, within the spread of the split', () => {
    for (const [full, part] of [
      [0.92, 0.88],
      [0.935, 0.89],
      [0.95, 0.9],
    ] as const) {
      const input = chargerInput({ power: 6600, efficiency: full }),
        at = (s: number): number => efficiencyAt(chargerLossParts({ input, efficiency: full, fixed: s, square: square.value }), 1400)
      expect(at(fixed.value + fixed.half)).toBeLessThan(part)
      expect(at(fixed.value - fixed.half)).toBeGreaterThan(part)
    }
  })
  it('loses at full power what its efficiency says, whatever the split', () => {
    for (const s of [0, 0.2, 0.5])
      expect(efficiencyAt(chargerLossParts({ input: 7000, efficiency: 0.93, fixed: s, square: 0.3 }), 7000)).toBeCloseTo(0.93, 12)
  })
  it('goes through every point it was measured at, also one that is better than full power', () => {
    const full = { input: 7000, efficiency: 0.92 }
    for (const partly of [0.85, 0.91, 0.94]) {
      const one = chargerLossByPoint({ ...full, power: 2300, partly, square: square.value })
      expect(efficiencyAt(one, 2300)).toBeCloseTo(partly, 12)
      expect(efficiencyAt(one, 7000)).toBeCloseTo(0.92, 12)
      expect(one.fixed).toBeGreaterThanOrEqual(0)
      const two = chargerLossByPoints({ ...full, power: 2300, partly, otherPower: 4000, otherwise: 0.93 })
      for (const [power, efficiency] of [
        [2300, partly],
        [4000, 0.93],
        [7000, 0.92],
      ] as const)
        expect(efficiencyAt(two, power)).toBeCloseTo(efficiency, 12)
    }
  })
  it('takes at the wall what brought the energy out: loss law forth and back', () => {
    const parts = { fixed: 100, linear: 0.035, square: 3.5e-6 }
    for (const outlet of [1400, 2300, 3680, 6600]) {
      const power = powerToPack({ outlet, efficiency: efficiencyAt(parts, outlet), charger: 1e5, standing: 150 })
      expect(wallEnergy({ ...parts, taken: power * 7200, heater: 0, standing: 150, time: 7200 }) / 7200).toBeCloseTo(outlet, 6)
    }
  })
})
