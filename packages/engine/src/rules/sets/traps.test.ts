import { describe, expect, test } from 'vitest'
import type { Answer, Comparison } from './feasibility.ts'
import * as gateB from './feasibility.ts'
import { limitsFor } from './sets.ts'

const be = limitsFor('be')
const it = limitsFor('it')
const nl = limitsFor('nl')
const ch = limitsFor('ch')

const comparisons = (answers: readonly Answer[]) => answers.filter((answer): answer is Comparison => answer.kind === 'compared')
const broken = (answers: readonly Answer[]) =>
  comparisons(answers)
    .filter(({ found, low = -Infinity, high = Infinity }) => found < low || found > high)
    .map(({ key, item }) => (item ? `${key} ${item}` : key))
const keys = (answers: readonly Answer[]) => answers.map(({ key }) => key)

describe('power and torque', () => {
  test('European sets compare net maximum power, and the limited figure only if it is below what the motors give', () => {
    expect(be('power.measure')?.requirement.value).toBe('net maximum power')
    const plan = { donorPower: 92e3, motorPowers: [80e3], limitedPower: 92e3, drivelineKept: false }
    expect(gateB.powerRatio(be, plan)).toMatchObject({ quantity: { found: 80e3 }, caveats: [] })
  })

  test('a gearbox locked in one gear may count as a change: the power comparison comes along and torque carries the caveat', () => {
    const plan = { drivelineKept: true, gearLocked: true }
    const power = gateB.powerRatio(it, { ...plan, donorPower: 92e3, motorPowers: [100e3] })
    expect(power).toMatchObject({ kind: 'not compared', otherReading: { found: expect.closeTo(1.087, 3) } })
    expect(gateB.torqueRatio(it, { ...plan, donorTorque: 168, motorTorques: [160] })).toMatchObject({
      caveats: ['locked-gear-may-count-as-change'],
    })
    expect(gateB.powerRatio(it, { drivelineKept: true, donorPower: 92e3, motorPowers: [100e3] })).not.toHaveProperty('otherReading')
  })

  test('a kept driveline changes nothing where the law does not speak of it', () => {
    expect(gateB.powerRatio(be, { donorPower: 92e3, motorPowers: [100e3], drivelineKept: true })?.kind).toBe('compared')
    expect(gateB.torqueRatio(be, { donorTorque: 168, motorTorques: [250], drivelineKept: true })).toBeUndefined()
  })

  test('a fifth more or a fifth less power starts a Dutch approval, and the register entries start one anyway', () => {
    const change = (power: number) => broken([gateB.powerChange(nl, { donorPower: 100e3, motorPowers: [power] })!])
    expect([79e3, 80e3, 120e3, 121e3].map(change)).toEqual([['power.change.trigger'], [], [], ['power.change.trigger']])
    expect(gateB.registerTriggers(nl)?.requirement.value).toEqual(expect.arrayContaining(['motor code or type', 'fuel']))
    expect(gateB.registerTriggers(limitsFor('de'))).toBeUndefined()
  })

  test('a British historic car keeps its privilege up to 15 per cent more power to weight', () => {
    const rise = (power: number) => gateB.powerToWeightRise(limitsFor('gb'), { donorPower: 50e3, donorMass: 1000, power, mass: 1100 })
    expect(rise(63e3)?.found).toBeCloseTo(14.545, 3)
    expect(broken([rise(63e3)!])).toEqual([])
    expect(broken([rise(64e3)!])).toEqual(['power.historic.trigger'])
    expect(broken([rise(20e3)!])).toEqual([])
  })

  test('in Switzerland the design top speed may not fall', () => {
    expect(broken([gateB.topSpeedDrop(ch, { donor: 50, converted: 49.9 })!])).toEqual(['speed.max.drop'])
    expect(broken([gateB.topSpeedDrop(ch, { donor: 50, converted: 50 })!])).toEqual([])
    expect(gateB.topSpeedDrop(nl, { donor: 50, converted: 40 })).toBeUndefined()
  })

  test('a figure nobody can divide by stops at once', () => {
    expect(() => gateB.powerRatio(be, { donorPower: 0, motorPowers: [1e5], drivelineKept: false })).toThrow(/donorPower/)
    expect(() => gateB.powerRatio(be, { donorPower: 1e5, motorPowers: [Number.NaN], drivelineKept: false })).toThrow(RangeError)
  })
})

describe('mass', () => {
  test('an owner’s weighing becomes mass in running order: fuel out, nine tenths of a tank and the driver in', () => {
    expect(gateB.massInRunningOrder({ weighed: 959, fuelWeighed: 15, fuelFull: 33 })).toBeCloseTo(959 - 15 + 29.7 + 75, 9)
  })

  test('a shift between the two readings of a tenth of the share is marginal, beyond both it is out', () => {
    const donor = { front: 497, rear: 462 }
    const front = (share: number) => comparisons(gateB.axleShare(be, { donor, converted: { front: share, rear: 1 - share } }))[0]
    expect(front(0.56)).not.toHaveProperty('marginalReason')
    expect(front(0.6)).toMatchObject({ marginalReason: 'within-wider-reading' })
    expect(front(0.63)).not.toHaveProperty('marginalReason')
    expect(broken([front(0.63)!])).toEqual(['axle.share.shift front axle'])
    expect(front(0.6)?.caveats).toEqual(['share-has-two-readings'])
  })

  test('the lighter axle has the narrower band, so both are compared', () => {
    const donor = { front: 850, rear: 150 }
    const answers = gateB.axleShare(be, { donor, converted: { front: 830, rear: 170 } })
    expect(broken(answers)).toEqual(['axle.share.shift rear axle'])
  })

  test('Québec asks for the share in words, which stay words', () => {
    const answers = gateB.axleShare(limitsFor('ca-qc'), { donor: { front: 1, rear: 1 }, converted: { front: 2, rear: 1 } })
    expect(answers).toMatchObject([{ kind: 'stated', requirement: { value: 'near the original' } }])
  })

  test('in Italy axle band and total hold together', () => {
    const donor = { front: 500, rear: 500 }
    expect(broken(gateB.axleMassBand(it, { donor, converted: { front: 590, rear: 480 } }))).toEqual([])
    expect(broken(gateB.axleMassBand(it, { donor, converted: { front: 590, rear: 500 } }))).toEqual(['mass.total.crash-equivalence total'])
    expect(broken(gateB.axleMassBand(it, { donor, converted: { front: 610, rear: 395 } }))).toEqual([
      'axle.share.crash-equivalence front axle',
      'axle.share.crash-equivalence rear axle',
    ])
    expect(gateB.axleMassBand(be, { donor, converted: donor })).toEqual([])
  })

  test('an Indian goods vehicle has its own rows: a formula in words, and a tenth on the front axle', () => {
    const india = limitsFor('in')
    const masses = { basis: 'unladen', donor: 1585, converted: 1900, goods: true } as const
    expect(gateB.kerbMassRatio(india, masses)).toMatchObject({ kind: 'stated', requirement: { variant: 'goods' } })
    const rise = (front: number) => gateB.frontAxleRise(india, { donor: { front: 870, rear: 715 }, converted: { front, rear: 800 } })!
    expect(rise(957)).toMatchObject({ role: 'limit', quantity: { high: expect.closeTo(957, 9) } })
    expect(broken([rise(958)])).toEqual(['axle.front.rise front axle'])
  })
})

describe('permitted and laden masses', () => {
  const donor = { gross: 1360, front: 690, rear: 710 }
  const heavier = { gross: 1400, front: 690, rear: 750 }
  const lighter = { gross: 1300, front: 690, rear: 650 }

  test('Belgium lets neither gross mass nor axle loads change', () => {
    expect(broken(gateB.permittedMasses(be, { donor, planned: donor }))).toEqual([])
    expect(broken(gateB.permittedMasses(be, { donor, planned: heavier }))).toEqual([
      'mass.gross.change total',
      'mass.axle-limit.change rear axle',
    ])
  })

  test('Switzerland forbids lowering, and asks for a guarantee to raise; common practice does not stand in', () => {
    expect(broken(gateB.permittedMasses(ch, { donor, planned: lighter }))).toEqual(['mass.gross.lower total'])
    const raised = gateB.permittedMasses(ch, { donor, planned: heavier })
    expect(broken(raised)).toEqual(['mass.gross.raise.trigger total', 'mass.gross.raise.trigger rear axle'])
    expect(keys(raised)).not.toContain('mass.gross.change')
    expect(raised).toContainEqual(expect.objectContaining({ kind: 'stated', key: 'mass.gross.guarantee' }))
  })

  test('in Italy a change of permitted mass needs the consent of the car maker', () => {
    const answers = gateB.permittedMasses(it, { donor, planned: lighter })
    expect(comparisons(answers).every(({ role }) => role === 'trigger')).toBe(true)
    expect(broken(answers)).toEqual(['mass.gross.guarantee total', 'mass.gross.guarantee rear axle'])
  })

  test('elsewhere common practice leaves permitted masses alone, and says it is only that', () => {
    const answers = gateB.permittedMasses(limitsFor('de'), { donor, planned: heavier })
    expect(broken(answers)).toEqual(['mass.gross.change total', 'mass.gross.change rear axle'])
    expect(answers.every(({ fellBack }) => fellBack)).toBe(true)
  })

  test('Québec holds the laden car to the ratings of its maker, Australia starts a further code above them', () => {
    const laden = { total: 1390, front: 657, rear: 733 }
    expect(broken(gateB.ladenMasses(limitsFor('ca-qc'), { laden, ratings: donor }))).toEqual([
      'mass.gross.max total',
      'mass.axle.max rear axle',
    ])
    const australia = gateB.ladenMasses(limitsFor('au'), { laden, ratings: donor })
    expect(australia).toMatchObject([{ key: 'mass.gross.exceed.trigger', role: 'trigger', found: 1390, high: 1360 }])
    expect(gateB.ladenMasses(limitsFor('in'), { laden, ratings: donor })).toMatchObject([{ kind: 'stated', key: 'mass.axle.max' }])
  })
})

describe('donor', () => {
  const fr = limitsFor('fr')

  test('France asks for five full years; a day short is too young', () => {
    const conversion = { year: 2026, month: 3, day: 10 }
    const age = (day: number) => gateB.donorAge(fr, { firstRegistered: { year: 2021, month: 3, day }, conversion })!
    expect(age(10).found).toBe(5)
    expect(broken([age(10)])).toEqual([])
    expect(broken([age(11)])).toEqual(['donor.age.min'])
  })

  test('a year alone is taken against the car, and marked where the day would decide', () => {
    const age = (year: number) => gateB.donorAge(fr, { firstRegistered: { year }, conversion: { year: 2026, month: 3, day: 10 } })!
    expect(age(2021)).toMatchObject({ marginalReason: 'date-too-coarse' })
    expect(age(2020)).not.toHaveProperty('marginalReason')
    expect(broken([age(2020)])).toEqual([])
    expect(age(2022)).not.toHaveProperty('marginalReason')
    expect(broken([age(2022)])).toEqual(['donor.age.min'])
  })

  test('India takes cars built from 1 January 1990, Québec those before September 1997', () => {
    const india = (year: number, month: number, day: number) => broken(gateB.donorBuilt(limitsFor('in'), { year, month, day }))
    expect([india(1989, 12, 31), india(1990, 1, 1)]).toEqual([['donor.built.from'], []])
    const quebec = (month: number) => broken(gateB.donorBuilt(limitsFor('ca-qc'), { year: 1997, month }))
    expect([quebec(8), quebec(9)]).toEqual([[], ['donor.built.to']])
    expect(gateB.donorBuilt(limitsFor('ca-qc'), { year: 1997 })).toMatchObject([{ marginalReason: 'date-too-coarse' }])
    expect(gateB.donorBuilt(be, { year: 1997 })).toEqual([])
  })

  test('what is no date stops at once', () => {
    expect(() => gateB.donorBuilt(be, { year: 1997, month: 13 })).toThrow(RangeError)
    expect(() => gateB.donorBuilt(be, { year: 1997, day: 3 })).toThrow(RangeError)
  })

  test('more seats start a Dutch approval, fewer do not', () => {
    const planned = (count: number) => broken([gateB.seats(nl, { registered: 2, planned: count })!])
    expect([planned(1), planned(2), planned(3)]).toEqual([[], [], ['seats.change']])
    expect(gateB.seats(be, { registered: 2, planned: 4 })).toBeUndefined()
  })

  test('the Victorian sheet holds up to 4.5 t', () => {
    expect(broken([gateB.donorGross(limitsFor('au'), 4500)!])).toEqual([])
    expect(broken([gateB.donorGross(limitsFor('au'), 4501)!])).toEqual(['donor.gross.max'])
  })

  test('the papers of the donor count: Italy tests the whole car to R10 if the donor was not approved to it', () => {
    const emc = gateB.donorConditions(it).find(({ key }) => key === 'emc.donor')
    expect(emc?.requirement.remark).toMatch(/whole converted car is tested/)
    expect(keys(gateB.donorConditions(fr))).toEqual(['donor.category', 'donor.registered', 'donor.excluded'])
  })
})

describe('route, signatures and time', () => {
  test('where kits and types are approved, a plan for one car stops unless an approved kit exists', () => {
    for (const id of ['fr', 'it', 'in'] as const) {
      expect(gateB.singleCar(id, { approvedKit: false })).toMatchObject({ answer: 'kit only', open: false })
      expect(gateB.singleCar(id, { approvedKit: true })).toMatchObject({ answer: 'kit only', open: true })
      expect(limitsFor(id)('route.kit')?.requirement.test).toBe('must')
    }
    expect(gateB.singleCar('de', { approvedKit: false })).toMatchObject({ open: true, row: { requirement: { key: 'route.single-car' } } })
    expect(gateB.singleCar('es', { approvedKit: false })).toMatchObject({ open: true, row: { requirement: { key: 'route.allowed' } } })
  })

  test('where divisions decide or nothing was read, the answer stays open', () => {
    for (const id of ['be', 'us', 'ca', 'ie', 'za'] as const) expect(gateB.singleCar(id, { approvedKit: false })).not.toHaveProperty('open')
    expect(gateB.singleCar('za', { approvedKit: false })).not.toHaveProperty('row')
  })

  test('every set says at least whom to ask, and names its own signatories first', () => {
    expect(keys(gateB.signatures(limitsFor('za')))).toEqual(['ask.before', 'sign.approval'])
    expect(gateB.signatures(limitsFor('jp')).map(({ key, fellBack }) => [key, fellBack])).toEqual([
      ['ask.before', false],
      ['sign.install', false],
    ])
    expect(keys(gateB.signatures(it))).toEqual(['ask.before', 'sign.install', 'sign.technical', 'sign.approval'])
  })

  test('two days of law are kept: one for the electric part, one for the rest', () => {
    const german = gateB.lawInTime(limitsFor('de'))
    expect(german.electric?.requirement).toMatchObject({ variant: 'electric', read: 'Q' })
    expect(german.rest?.requirement.value).toMatch(/first registration/)
    for (const limits of [nl, ch, it]) expect(gateB.lawInTime(limits).electric?.requirement.test).toBe('must')
    expect(gateB.lawInTime(be)).toEqual({})
  })

  test('the American rule on disabling safety equipment binds a workshop, not an owner on the own car', () => {
    const us = limitsFor('us')
    expect(gateB.makeInoperative(us, 'business')?.kind).toBe('stated')
    expect(gateB.makeInoperative(us, 'owner')).toMatchObject({ kind: 'not compared', because: 'owner-on-own-car' })
    expect(gateB.makeInoperative(be, 'business')).toBeUndefined()
  })

  test('after approval there is no way back: Italy forbids it, Britain does not take undoing for an answer', () => {
    expect(it('engine.refit')?.requirement).toMatchObject({ test: 'must-not', value: true })
    expect(limitsFor('gb')('structure.body', 'holes')?.requirement.value).toMatch(/undoing them did not help/)
  })
})
