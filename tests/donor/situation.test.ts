import { applyEdits } from '@ampwright/conversion'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Conditions } from '../../packages/engine/src/model/brief.ts'
import type { Model } from '../../packages/engine/src/model/model.ts'
import { fingerprint } from '../../packages/engine/src/rules/find.ts'
import { Answers } from '../../packages/engine/src/studies/answers.ts'
import { situation, situationReads } from '../../packages/engine/src/studies/donor/situation.ts'
import type { Situation } from '../../packages/engine/src/studies/donor/situation-figures.ts'
import { isGaps, study } from '../../packages/engine/src/studies/study.ts'
import type { Fact, Field } from '../../packages/engine/src/working/value.ts'
import { type Car, conversionOf, textOf } from '../cars.ts'

const fact = <V extends number | string>(value: V, unit = ''): Fact<V> =>
  ({ path: `test.${value}`, label: 'test', symbol: 'x', unit, value }) as Fact<V>
const none: Field<string> = { gap: true, path: 'test.trailer', label: 'trailer', until: 'any time' }
type Day = { load: string; surface?: 'dry' | 'wet' | 'gravel' | 'snow'; celsius?: number; altitude?: number; trailer?: string }
const conditions = ({ load, surface = 'dry', celsius = 20, altitude = 0, trailer }: Day): Conditions => ({
  load: fact(load),
  surface: fact(surface),
  temperature: fact(celsius + 273.15, 'K'),
  altitude: fact(altitude, 'm'),
  headWind: fact(0, 'm/s'),
  trailer: trailer === undefined ? none : fact(trailer),
})
function situationOf(model: Model, day: Day): Situation | { gaps: readonly { path: string }[] } {
  const asked = study({
    id: 'test',
    stage: 'donor',
    asks: 'test',
    reads: (m, ask) => situationReads(m, ask, conditions(day)),
    answer: (known, make) => situation(make, known, 'now'),
  })
  return new Answers(model).ask(asked)
}
const at = (car: Car, day: Day): Situation => {
  const s = situationOf(conversionOf(textOf(car)).model, day)
  if (isGaps(s)) throw new Error(`gaps: ${s.gaps.map(g => g.path).join(', ')}`)
  return s as Situation
}

describe('the car on the road', () => {
  it('takes drag area and rolling resistance where there is no coast-down', () => {
    const s = at('wren', { load: 'driver' })
    // Typed in the sample: drag area 0.66 m²; class of hatchbacks 0.0117; ISO 2533 pressure at sea level, 20 °C.
    const density = 101325 / (287.05287 * 293.15)
    expect(s.f2.value).toBeCloseTo(0.5 * density * 0.66, 9)
    expect(s.f0.value).toBeCloseTo(0.0117 * s.mass.value * 9.80665, 9)
    expect(s.f1.value).toBe(0)
    expect(s.rolling.value).toBeCloseTo(0.0117, 12)
    expect(s.wheelsInertia.value).toBeCloseTo(4 * 1.15, 12)
  })

  it('lets a coast-down govern, brought to the load and the air of the day', () => {
    const driver = at('lapwing', { load: 'driver' }),
      laden = at('lapwing', { load: 'two-up' })
    expect(laden.f0.value / driver.f0.value).toBeCloseTo(laden.mass.value / driver.mass.value, 12)
    expect(laden.f1.value).toBe(driver.f1.value)
    const high = at('lapwing', { load: 'driver', altitude: 2000 })
    expect(high.f2.value / driver.f2.value).toBeCloseTo(high.density.value / driver.density.value, 12)
    expect(high.f0.value).toBe(driver.f0.value)
  })

  it('rolls harder in the cold by the factor of the test procedure', () => {
    const mild = at('lapwing', { load: 'driver' }),
      cold = at('lapwing', { load: 'driver', celsius: 5 })
    expect(mild.f0.value / cold.f0.value).toBeCloseTo(1 + 8.6e-3 * (5 - 20), 12)
  })

  it('rolls harder on gravel and snow, and grips less', () => {
    for (const car of ['lapwing', 'wren', 'badger', 'otter'] as const) {
      const dry = at(car, { load: 'driver' })
      for (const surface of ['gravel', 'snow'] as const) {
        const other = at(car, { load: 'driver', surface })
        expect(other.f0.value).toBeGreaterThan(dry.f0.value)
        expect(other.grip.value).toBeLessThan(dry.grip.value)
        expect(other.f2.value).toBe(dry.f2.value)
      }
    }
  })

  it('counts the nose load of a trailer once, and its drag and rolling resistance', () => {
    const s = at('badger', { load: 'towing' }),
      alone = at('badger', { load: 'driver' })
    const driver = alone.carMass.value
    // Typed in the sample: trailer 1500 kg, 75 kg of it on the coupling, 1.1 m², 0.015; one person and 50 kg aboard.
    expect(s.carMass.value).toBeCloseTo(driver + 50 + 75, 9)
    expect(s.mass.value).toBeCloseTo(driver + 50 + 1500, 9)
    expect(s.f2.value - alone.f2.value).toBeCloseTo(0.5 * s.density.value * 1.1, 9)
    expect(s.f0.value - (alone.f0.value * s.carMass.value) / driver).toBeCloseTo(0.015 * 1425 * 9.80665, 6)
    expect(s.front.value + s.rear.value).toBeCloseTo(s.carMass.value, 9)
  })

  it('asks for the trailer in the load case, where only the conditions name one', () => {
    const s = situationOf(conversionOf(textOf('badger')).model, { load: 'driver', trailer: 'stock' })
    expect(isGaps(s) && s.gaps.map(g => g.path)).toEqual(['brief.loads.driver.trailer'])
  })

  it('works the drag area out of width and height, and where those are missing takes that of the class', () => {
    const without = (...edits: { path: string; now: string | null }[]): Situation => {
      const done = applyEdits(textOf('wren'), [
        ...['drag-area', 'width', 'height'].map(key => ({ path: `donor.${key}`, now: null })),
        ...edits,
      ])
      if (!done.ok) throw new Error(done.problem.what)
      return situationOf(conversionOf(done.text).model, { load: 'driver' }) as Situation
    }
    const half = 0.5 * at('wren', { load: 'driver' }).density.value
    const sized = without({ path: 'donor.width', now: '1560 mm' }, { path: 'donor.height', now: '1410 mm' })
    // Hatchbacks 0.32 to 0.40 of a frontal area of 0.81 times width and height.
    expect(sized.f2.value / half).toBeCloseTo(0.81 * 1.56 * 1.41 * 0.36, 9)
    expect(without().f2.value / half).toBeCloseTo(0.79, 9)
  })

  it('says what is missing on an empty file, and makes up nothing', () => {
    const s = situationOf(conversionOf('schema: 1\n').model, { load: 'driver' })
    expect(isGaps(s)).toBe(true)
  })

  it('depends on nothing but what it names: the same day twice is the same, to the last bit', () => {
    fc.assert(
      fc.property(fc.double({ min: -15, max: 40, noNaN: true }), fc.double({ min: 0, max: 2500, noNaN: true }), (celsius, altitude) => {
        const [a, b] = [at('otter', { load: 'full', celsius, altitude }), at('otter', { load: 'full', celsius, altitude })]
        expect(fingerprint([a.f0, a.f1, a.f2, a.mass])).toBe(fingerprint([b.f0, b.f1, b.f2, b.mass]))
        expect([a.f0.value, a.f2.value, a.density.value]).toEqual([b.f0.value, b.f2.value, b.density.value])
      }),
      { numRuns: 20 },
    )
  })
})
