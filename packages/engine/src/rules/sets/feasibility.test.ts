import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Answer, Comparison } from './feasibility.ts'
import * as gateB from './feasibility.ts'
import { limitsFor } from './sets.ts'

const fr = limitsFor('fr')
const be = limitsFor('be')
const it = limitsFor('it')
const nl = limitsFor('nl')
const ch = limitsFor('ch')
const india = limitsFor('in')

function comparison(answer: Answer | undefined): Comparison {
  if (answer?.kind !== 'compared') throw new Error(`expected a comparison, got ${answer?.kind}`)
  return answer
}

/** Plain verdict on the figures, apart from the judge of the rules. */
const holds = ({ found, low = -Infinity, high = Infinity }: Comparison) => low <= found && found <= high

/** Powers of the four sample cars [W]; old engine, then each motor. */
const lapwing = { donorPower: 92e3, motorPowers: [100e3], drivelineKept: true }
const wren = { donorPower: 44e3, motorPowers: [70e3], drivelineKept: false }
const badger = { donorPower: 85e3, motorPowers: [150e3], drivelineKept: false }
const otter = { donorPower: 110e3, motorPowers: [110e3, 80e3], drivelineKept: false }

describe('check cases on the sample cars', () => {
  test('R1: 100 kW in a car of 92 kW breaks the French and Belgian band; limited to 92 kW it keeps it', () => {
    for (const limits of [fr, be]) {
      const free = comparison(gateB.powerRatio(limits, lapwing))
      expect(free.found).toBeCloseTo(1.087, 3)
      expect(free.quantity).toMatchObject({ found: 100e3, low: expect.closeTo(59.8e3, 6), high: 92e3, unit: 'W' })
      expect(holds(free)).toBe(false)
      const limited = comparison(gateB.powerRatio(limits, { ...lapwing, limitedPower: 92e3 }))
      expect(limited.found).toBe(1)
      expect(holds(limited)).toBe(true)
      expect(limited.caveats).toContain('limited-figure')
      expect(free.caveats).not.toContain('limited-figure')
    }
  })

  test('R2: with the gearbox kept Italy compares torque, and power not at all', () => {
    const torque = { donorTorque: 168, motorTorques: [250], drivelineKept: true }
    const free = comparison(gateB.torqueRatio(it, torque))
    expect(free.found).toBeCloseTo(1.488, 3)
    expect(free.quantity).toMatchObject({ low: expect.closeTo(109.2, 9), high: 168, unit: 'N·m' })
    expect(holds(free)).toBe(false)
    expect(holds(comparison(gateB.torqueRatio(it, { ...torque, limitedTorque: 168 })))).toBe(true)
    expect(gateB.powerRatio(it, lapwing)).toMatchObject({ kind: 'not compared', because: 'driveline-kept' })
  })

  test('R3: 959 to 1130 kg as weighed stays within the French and Indian limits and starts no Dutch approval by mass', () => {
    const masses = { basis: 'weighed', donor: 959, converted: 1130 } as const
    const french = comparison(gateB.kerbMassRatio(fr, masses))
    expect(french.found).toBeCloseTo(1.1783, 4)
    expect(french.quantity?.high).toBeCloseTo(1150.8, 6)
    expect(holds(french)).toBe(true)
    const indian = comparison(gateB.kerbMassRatio(india, masses))
    expect(indian.quantity?.high).toBeCloseTo(1198.75, 6)
    expect(holds(indian)).toBe(true)
    const dutch = comparison(gateB.kerbMassChange(nl, masses))
    expect(dutch.quantity?.high).toBeCloseTo(1150.8, 6)
    expect(dutch.role).toBe('trigger')
    expect(holds(dutch)).toBe(true)
  })

  test('R4: a driver of 75 kg on both sides moves the ratio by 0.013', () => {
    const withDriver = (weighed: number) => gateB.massInRunningOrder({ weighed, fuelWeighed: 0, fuelFull: 0 })
    expect([withDriver(959), withDriver(1130)]).toEqual([1034, 1205])
    const ordered = comparison(gateB.kerbMassRatio(fr, { basis: 'running order', donor: 1034, converted: 1205 }))
    const weighed = comparison(gateB.kerbMassRatio(fr, { basis: 'weighed', donor: 959, converted: 1130 }))
    expect(ordered.found).toBeCloseTo(1.1654, 4)
    expect(weighed.found - ordered.found).toBeCloseTo(0.013, 3)
    expect(weighed.caveats).toContain('mass-as-weighed')
    expect(ordered.caveats).toEqual([])
  })

  const axles = { front: 497, rear: 462 }

  test('R5: a rise to 1130 kg is above the 8 per cent up to which Italy takes crash proof over', () => {
    const total = gateB.axleMassBand(it, { donor: axles, converted: { front: 560, rear: 570 } }).find(({ item }) => item === 'total')
    expect(total?.quantity?.high).toBeCloseTo(1035.72, 6)
    expect(total?.role).toBe('equivalence')
    expect(holds(comparison(total))).toBe(false)
  })

  test('R6: Italy gives each axle a band in kilograms', () => {
    const [front, rear] = gateB.axleMassBand(it, { donor: axles, converted: { front: 596, rear: 555 } })
    expect(front?.quantity).toMatchObject({ low: expect.closeTo(397.6, 6), high: expect.closeTo(596.4, 6), unit: 'kg' })
    expect(rear?.quantity).toMatchObject({ low: expect.closeTo(369.6, 6), high: expect.closeTo(554.4, 6) })
    expect([holds(comparison(front)), holds(comparison(rear))]).toEqual([true, false])
  })

  test('R7: the stricter reading of a tenth of the share gives the front axle 0.4664 to 0.5701', () => {
    const [front] = gateB.axleShare(be, { donor: axles, converted: axles })
    expect(front).toMatchObject({ item: 'front axle', low: expect.closeTo(0.4664, 4), high: expect.closeTo(0.5701, 4) })
    expect(comparison(front).found).toBeCloseTo(0.5182, 4)
  })

  test('R8: 110 N·m continuous at 3 820 rpm is far below the Australian dividing line of 110.4 kW', () => {
    const continuous = 110 * 3820 * ((2 * Math.PI) / 60)
    expect(continuous / 1000).toBeCloseTo(44, 1)
    const answer = comparison(gateB.continuousPowerRatio(limitsFor('au'), { strongestEnginePower: 92e3, continuousPowers: [continuous] }))
    expect(answer).toMatchObject({ role: 'trigger', quantity: { high: expect.closeTo(110.4e3, 6) } })
    expect(holds(answer)).toBe(true)
  })

  test('R9: 70 kW in a car of 44 kW breaks both bands; limited to 52.8 kW it keeps the Belgian one for small donors', () => {
    const french = comparison(gateB.powerRatio(fr, wren))
    expect(french.found).toBeCloseTo(1.591, 3)
    expect(french.quantity).toMatchObject({ low: expect.closeTo(28.6e3, 6), high: 44e3 })
    const belgian = comparison(gateB.powerRatio(be, wren))
    expect(belgian.quantity?.high).toBeCloseTo(52.8e3, 6)
    expect([holds(french), holds(belgian)]).toEqual([false, false])
    const limited = { ...wren, limitedPower: 52.8e3 }
    expect(holds(comparison(gateB.powerRatio(be, limited)))).toBe(true)
    expect(holds(comparison(gateB.powerRatio(fr, limited)))).toBe(false)
  })

  test('R10: with the driveline changed Italy compares power and torque, and this car breaks both', () => {
    const power = comparison(gateB.powerRatio(it, wren))
    expect(power.quantity).toMatchObject({ low: expect.closeTo(28.6e3, 6), high: 44e3 })
    const torque = comparison(gateB.torqueRatio(it, { donorTorque: 94, motorTorques: [200], drivelineKept: false }))
    expect(torque.quantity).toEqual({ found: 200, high: 94, unit: 'N·m' })
    expect([holds(power), holds(torque)]).toEqual([false, false])
  })

  test('R11: 150 kW in a car of 85 kW breaks the band of 55.25 to 85 kW', () => {
    for (const limits of [fr, be]) {
      const answer = comparison(gateB.powerRatio(limits, badger))
      expect(answer.found).toBeCloseTo(1.765, 3)
      expect(answer.quantity).toMatchObject({ low: expect.closeTo(55.25e3, 6), high: 85e3 })
      expect(holds(answer)).toBe(false)
    }
  })

  test('R12: two motors that pull together add up', () => {
    for (const limits of [fr, be]) {
      const answer = comparison(gateB.powerRatio(limits, otter))
      expect(answer.found).toBeCloseTo(1.727, 3)
      expect(answer.quantity).toMatchObject({ found: 190e3, low: expect.closeTo(71.5e3, 6), high: 110e3 })
      expect(holds(answer)).toBe(false)
      expect(holds(comparison(gateB.powerRatio(limits, { ...otter, motorPowers: [110e3] })))).toBe(true)
    }
  })

  test('R13: India gives a car of 812 kg up to 1015 kg', () => {
    const answer = comparison(gateB.kerbMassRatio(india, { basis: 'unladen', donor: 812, converted: 1015 }))
    expect(answer.quantity?.high).toBe(1015)
    expect(holds(answer)).toBe(true)
  })

  test('R14: 60 kW still counts as a small donor in Belgium, 60.1 kW no longer', () => {
    const top = (donorPower: number) => comparison(gateB.powerRatio(be, { ...wren, donorPower })).quantity?.high
    expect(top(60e3)).toBeCloseTo(72e3, 6)
    expect(top(60.1e3)).toBeCloseTo(60.1e3, 6)
  })

  test('R15: at a true 100 km/h a Swiss speedometer shows 100 to 116 km/h', () => {
    const answer = gateB.speedometerReading(ch, { actual: 100 / 3.6, shown: 117 / 3.6 })
    expect(comparison(answer).low).toBeCloseTo(100 / 3.6, 9)
    expect(comparison(answer).high).toBeCloseTo(116 / 3.6, 9)
    expect(holds(comparison(answer))).toBe(false)
    expect(gateB.speedometerReading(ch, { actual: 130 / 3.6, shown: 140 / 3.6 })).toBeUndefined()
    expect(gateB.speedometerReading(fr, { actual: 100 / 3.6, shown: 117 / 3.6 })).toBeUndefined()
  })

  test('all four sample cars break the French and Belgian power band, and the Italian band of power or torque', () => {
    for (const car of [lapwing, wren, badger, otter])
      for (const limits of [fr, be]) expect(holds(comparison(gateB.powerRatio(limits, car)))).toBe(false)
    for (const car of [wren, badger, otter]) expect(holds(comparison(gateB.powerRatio(it, car)))).toBe(false)
    const kept = { donorTorque: 168, motorTorques: [250], drivelineKept: true }
    expect(holds(comparison(gateB.torqueRatio(it, kept)))).toBe(false)
  })
})

describe('properties of the comparisons', () => {
  const power = fc.double({ min: 1e3, max: 1e6, noNaN: true })
  const mass = fc.double({ min: 100, max: 3000, noNaN: true })

  test('scaling donor and motors together changes no ratio', () => {
    fc.assert(
      fc.property(power, power, fc.double({ min: 0.5, max: 2, noNaN: true }), (donorPower, motor, k) => {
        const found = (scale: number) =>
          comparison(gateB.powerRatio(fr, { donorPower: donorPower * scale, motorPowers: [motor * scale], drivelineKept: false })).found
        expect(found(k) / found(1)).toBeCloseTo(1, 12)
      }),
    )
  })

  test('figure and quantity always lie on the same side of their bands', () => {
    fc.assert(
      fc.property(power, power, (donorPower, motor) => {
        const answer = comparison(gateB.powerRatio(fr, { donorPower, motorPowers: [motor], drivelineKept: false }))
        const { found, low = 0, high = 0 } = answer.quantity!
        fc.pre(Math.abs(found / low - 1) > 1e-9 && Math.abs(found / high - 1) > 1e-9)
        expect(low <= found && found <= high).toBe(holds(answer))
      }),
    )
  })

  test('both shares add up to one, and what the stricter reading allows the milder one allows too', () => {
    const axles = fc.record({ front: mass, rear: mass })
    fc.assert(
      fc.property(axles, axles, (donor, converted) => {
        const [front, rear] = gateB.axleShare(be, { donor, converted }).map(comparison) as [Comparison, Comparison]
        expect(front.found + rear.found).toBeCloseTo(1, 12)
        for (const axle of [front, rear]) {
          expect(axle.wider!.low!).toBeLessThanOrEqual(axle.low!)
          expect(axle.wider!.high!).toBeGreaterThanOrEqual(axle.high!)
          if (holds(axle)) expect(axle.marginalReason).toBeUndefined()
        }
      }),
    )
  })
})
