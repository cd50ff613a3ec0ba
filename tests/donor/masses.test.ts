import { applyEdits } from '@ampwright/conversion'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Model } from '../../packages/engine/src/model/model.ts'
import { Answers } from '../../packages/engine/src/studies/answers.ts'
import { cost } from '../../packages/engine/src/studies/brief/cost.ts'
import { ledger } from '../../packages/engine/src/studies/donor/ledger.ts'
import { loadCases } from '../../packages/engine/src/studies/donor/load-cases.ts'
import { moves } from '../../packages/engine/src/studies/donor/moves.ts'
import { RATED } from '../../packages/engine/src/studies/donor/ratings.ts'
import { room } from '../../packages/engine/src/studies/donor/room.ts'
import { seats } from '../../packages/engine/src/studies/donor/seats.ts'
import { stance } from '../../packages/engine/src/studies/donor/stance.ts'
import { isGaps, type Study } from '../../packages/engine/src/studies/study.ts'
import { isFact } from '../../packages/engine/src/working/value.ts'
import { CARS, type Car, conversionOf, textOf } from '../cars.ts'

const modelOf = (car: Car): Model => conversionOf(textOf(car)).model
const edited = (car: Car, edits: readonly { path: string; now: string | null }[]): Model => {
  const done = applyEdits(textOf(car), edits)
  if (!done.ok) throw new Error(done.problem.what)
  return conversionOf(done.text).model
}
function answer<A>(model: Model, s: Study<A>): A {
  const a = new Answers(model).ask(s)
  if (isGaps(a)) throw new Error(a.gaps.map(g => g.path).join(', '))
  return a as A
}

/** A copy of a model with some numbers replaced, by path. */
function changed<T>(x: T, to: (path: string, value: number) => number): T {
  if (typeof x !== 'object' || x === null || ArrayBuffer.isView(x)) return x
  if (isFact(x)) return typeof x.value === 'number' ? { ...x, value: to((x as { path: string }).path, x.value) } : x
  if (Array.isArray(x)) return x.map(v => changed(v, to)) as T
  return Object.fromEntries(Object.entries(x).map(([k, v]) => [k, changed(v, to)])) as T
}

describe('modules that stand in no box', () => {
  const twice = [{ path: 'pack.strings', now: '2' }]
  it('weigh something too: a second string is in the kerb mass with the boxes it will need', () => {
    const kerb = (model: Model): number => answer(model, ledger).kerb.value,
      { value: each } = modelOf('lapwing').pack.module.mass as { value: number },
      modules = (modelOf('lapwing').pack.modulesInSeries as { value: number }).value
    expect(kerb(edited('lapwing', twice)) - kerb(modelOf('lapwing'))).toBeCloseTo(modules * each * 1.4, 6)
    expect(kerb(edited('lapwing', [...twice, { path: 'pack.unboxed.box-share', now: '25 %' }])) - kerb(modelOf('lapwing'))).toBeCloseTo(
      modules * each * 1.25,
      6,
    )
  })
  it('leave the cost open, and the height of the centre of mass', () => {
    const a = new Answers(edited('lapwing', twice))
    expect(JSON.stringify(a.ask(cost))).toContain('boxes for the other modules')
    expect(JSON.stringify(a.ask(stance))).toContain('pack.unboxed.z')
  })
  it('are not asked for where every module has its box', () =>
    expect(answer(edited('lapwing', [{ path: 'pack.unboxed.box-share', now: '200 %' }]), ledger).kerb.value).toBe(
      answer(modelOf('lapwing'), ledger).kerb.value,
    ))
})

describe('masses of the finished car', () => {
  it.each(CARS)('%s: turning the sign of x swaps the axles', car => {
    const model = modelOf(car),
      wheelbase = (model.donor.wheelbase as { value: number }).value
    const turned = changed(model, (path, value) => (/(\.x|luggage-x)$/.test(path) ? wheelbase - value : value))
    const otherWay = <W extends Omit<Model['fit']['stripped'], 'given' | 'with'>>(w: W): W => ({
      ...w,
      front: w.rear,
      rear: w.front,
      frontLeft: w.rearLeft,
      frontRight: w.rearRight,
      rearLeft: w.frontLeft,
      rearRight: w.frontRight,
    })
    const { weighed } = turned.fit
    const swapped: Model = {
      ...turned,
      donor: { ...turned.donor, weighing: otherWay(turned.donor.weighing) },
      fit: {
        ...turned.fit,
        stripped: otherWay(turned.fit.stripped),
        weighed: { ...otherWay(weighed), reckonedFront: weighed.reckonedRear, reckonedRear: weighed.reckonedFront },
      },
    }
    const [a, b] = [answer(model, ledger), answer(swapped, ledger)]
    expect(b.front.value).toBeCloseTo(a.rear.value, 9)
    expect(b.rear.value).toBeCloseTo(a.front.value, 9)
    expect(b.x.value).toBeCloseTo(wheelbase - a.x.value, 12)
    const [before, after] = [answer(model, loadCases), answer(swapped, loadCases)]
    // Rows fill from the front whichever way the car is turned: only a full car, or one with a single row, turns as a whole.
    const rows = Object.keys(model.donor.seats).length
    for (const name of (rows === 1 ? ['driver', 'two-up'] : ['full']).filter(n => n in before.cases)) {
      const [c, d] = [before.cases[name], after.cases[name]]
      if (!c || !d || isGaps(c) || isGaps(d)) throw new Error(name)
      expect(d.front.value).toBeCloseTo(c.rear.value, 9)
    }
  })

  it.each(CARS)('%s: the order of the ledger does not matter', car => {
    const model = modelOf(car)
    const backwards = <T>(named: Readonly<Record<string, T>>): Readonly<Record<string, T>> =>
      Object.fromEntries(Object.entries(named).reverse())
    const other: Model = {
      ...model,
      donor: { ...model.donor, added: backwards(model.donor.added), removed: backwards(model.donor.removed) },
      pack: { ...model.pack, boxes: backwards(model.pack.boxes) },
    }
    const [a, b] = [answer(model, ledger), answer(other, ledger)],
      [s, t] = [answer(model, stance), answer(other, stance)]
    expect(b.kerb.value).toBeCloseTo(a.kerb.value, 9)
    expect(b.rear.value).toBeCloseTo(a.rear.value, 9)
    if (isGaps(s.height) || isGaps(t.height)) throw new Error('no height')
    expect(t.height.now.value).toBeCloseTo(s.height.now.value, 12)
  })

  it('more mass between the axles never leaves more room, and never more seats', () => {
    const cars = CARS.map(car => ({
      model: modelOf(car),
      room: answer(modelOf(car), room),
      usable: answer(modelOf(car), seats).usable.value,
    }))
    fc.assert(
      fc.property(fc.nat(CARS.length - 1), fc.nat(50), fc.double({ min: 0, max: 200, noNaN: true }), (which, pick, more) => {
        const car = cars[which] as (typeof cars)[number],
          wheelbase = (car.model.donor.wheelbase as { value: number }).value
        const within = Object.entries(car.model.donor.added).filter(([, i]) => isFact(i.x) && i.x.value >= 0 && i.x.value <= wheelbase)
        const [name] = within[pick % within.length] as (typeof within)[number]
        const heavier = changed(car.model, (path, value) => (path === `donor.added.${name}.mass` ? value + more : value))
        const after = answer(heavier, room)
        for (const [item, rooms] of Object.entries(after.cases))
          for (const rated of RATED) {
            const [now, before] = [rooms[rated], car.room.cases[item]?.[rated]]
            if (!before || isGaps(now) || isGaps(before)) throw new Error(item)
            expect(now.room.value).toBeLessThanOrEqual(before.room.value + 1e-9)
          }
        expect(answer(heavier, seats).usable.value).toBeLessThanOrEqual(car.usable)
      }),
      { numRuns: 60 },
    )
  })

  it('axles carry what the car weighs, in every load case', () => {
    for (const car of CARS)
      for (const c of Object.values(answer(modelOf(car), loadCases).cases)) {
        if (isGaps(c)) throw new Error(car)
        expect(c.front.value + c.rear.value).toBeCloseTo(c.mass.value, 9)
      }
  })
})

describe('the overloaded rear axle of the Lapwing', () => {
  const rear = (model: Model): number => {
    const c = answer(model, room).cases['two-up']?.['rear axle']
    if (!c || isGaps(c)) throw new Error('no room')
    return c.room.value
  }
  it('carries about 733 of 710 kg, and one seat is lost', () => {
    expect(rear(modelOf('lapwing'))).toBeCloseTo(710 - 732.7, 1)
    const answered = answer(modelOf('lapwing'), seats)
    expect([answered.usable.value, answered.places, answered.breaks?.rated]).toEqual([1, 2, 'rear axle'])
  })
  it('is not cured by sliding the boot box, not even onto the axle', () => {
    expect(rear(edited('lapwing', [{ path: 'pack.boxes.boot.x', now: '2310 mm' }]))).toBeLessThan(0)
  })
  it('is cured by moving three modules from the boot to the engine bay, which is what is offered', () => {
    const relief = answer(modelOf('lapwing'), moves).relief['two-up, rear axle']
    expect(relief?.move).toMatchObject({ from: 'boot', to: 'front', leaves: 1, makes: 9 })
    expect(relief?.move?.modules.value).toBe(3)
    const cured = edited('lapwing', [
      { path: 'pack.boxes.boot.modules', now: '1' },
      { path: 'pack.boxes.front.modules', now: '9' },
    ])
    // 3 × 11.9 kg moved by 2.795 m on 2.31 m.
    expect(rear(cured)).toBeCloseTo(rear(modelOf('lapwing')) + (3 * 11.9 * 2.795) / 2.31, 9)
    expect(rear(cured)).toBeGreaterThan(10)
    expect(answer(cured, seats).usable.value).toBe(2)
  })
})

describe('what the ledger counts, and how often', () => {
  const kerb = (model: Model): number => answer(model, ledger).kerb.value
  const TANK = 'donor.removed.tank.fuel'

  it('takes drained fuel out at the tank’s place, by the density of that fuel', () => {
    const [inIt, out] = [modelOf('badger'), edited('badger', [{ path: TANK, now: 'drained' }])].map(m => answer(m, ledger))
    const fuel = 0.05 * 832.5
    expect(inIt!.kerb.value - out!.kerb.value).toBeCloseTo(fuel, 9)
    expect(inIt!.rear.value - out!.rear.value).toBeCloseTo((fuel * 2.1) / 2.78, 9)
  })
  it('asks whether fuel was still in a tank that came out, and of no other part', () => {
    const asked = (car: 'badger' | 'otter') => new Answers(edited(car, [{ path: TANK, now: null }])).ask(ledger),
      [open, stripped] = [asked('badger'), asked('otter')]
    expect(isGaps(open) ? open.gaps.map(g => g.path) : []).toEqual([TANK])
    // The stripped car was on the scales: whatever was in the tank is out.
    expect(isGaps(stripped)).toBe(false)
  })
  it('lowers the centre of mass of the rest by fuel that stood above it', () => {
    const [inIt, out] = [modelOf('badger'), edited('badger', [{ path: TANK, now: 'drained' }])].map(m => answer(m, stance).height)
    expect(isGaps(inIt) || isGaps(out) ? undefined : inIt!.now.value !== out!.now.value).toBe(true)
  })
  /** A shape stands for the part: without it, it goes too. */
  const noCharger = [
    { path: 'donor.added.charger', now: null },
    { path: 'fit.bodies.charger', now: null },
  ]
  it('counts the charger once: where it is put in, or else by its own group', () => {
    const own = [
      { path: 'charging.charger.mass', now: '9 kg' },
      { path: 'charging.charger.x', now: '2500 mm' },
      { path: 'charging.charger.z', now: '560 mm' },
    ]
    expect(kerb(edited('lapwing', own))).toBeCloseTo(kerb(modelOf('lapwing')), 9)
    expect(kerb(edited('lapwing', [...own, ...noCharger]))).toBeCloseTo(kerb(modelOf('lapwing')), 9)
    const none = new Answers(edited('lapwing', [...noCharger])).ask(ledger)
    expect(isGaps(none) ? none.gaps.map(g => g.path) : []).toEqual(['charging.charger.mass'])
  })
  it('takes an inverter that only adds a current to a drive unit for built in', () => {
    const unit = [
      { path: 'drive.units.front.part', now: 'drive-unit-pm-front-85kw@1' },
      { path: 'drive.units.front.inverter', now: null },
    ]
    const added = [...unit, { path: 'drive.units.front.inverter.peak-current', now: '340 A' }]
    expect(kerb(edited('wren', added))).toBeCloseTo(kerb(edited('wren', unit)), 9)
    const alone = [
      ...added,
      { path: 'drive.units.front.inverter.mass', now: '10 kg' },
      { path: 'drive.units.front.inverter.x', now: '0 mm' },
    ]
    expect(kerb(edited('wren', alone)) - kerb(edited('wren', unit))).toBeCloseTo(10, 9)
  })
})
