import { type Fact, isGap } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { isUsable, readConversion, settingText } from './conversion.ts'
import { formatIssue } from './issue.ts'
import { readQuantity } from './quantities/read.ts'
import { fieldAt } from './schema/field-at.ts'

const read = (text: string, options = {}) => readConversion(`schema: 1\n${text}`, options)
const faults = (text: string): string[] => read(text).issues.map(formatIssue)

describe('a value of the file', () => {
  it('comes in any unit of its kind, with spread and origin, as SI', () => {
    const { model } = read('donor:\n  wheelbase: 94.5 ± 0.1 in (measured, tape)\n')
    expect(model.donor.wheelbase).toMatchObject({
      path: 'donor.wheelbase',
      unit: 'm',
      origin: { how: 'measured', note: 'tape' },
      text: '94.5 ± 0.1 in (measured, tape)',
    })
    expect((model.donor.wheelbase as Fact).value).toBeCloseTo(2.4003, 12)
    expect((model.donor.wheelbase as Fact).half).toBeCloseTo(0.00254, 12)
  })
  it('is a gap where it is missing or left empty, with how and until when to measure it', () => {
    for (const text of ['', 'donor:\n', 'donor:\n  drag-area:\n']) {
      const gap = read(text).model.donor.dragArea
      expect(isGap(gap)).toBe(true)
      expect(gap).toMatchObject({
        path: 'donor.drag-area',
        until: 'before the engine comes out',
        measure: { tool: expect.stringContaining('in neutral, both directions') },
      })
    }
  })
  it('of another dimension is refused and named', () => expect(faults('donor:\n  wheelbase: 94 kg\n')[0]).toMatch(/^2:14|^3:14/))
  it('outside what is possible is refused with the bounds', () =>
    expect(faults('donor:\n  wheelbase: 40 m\n')[0]).toMatch(/outside what is possible.*at most 6\u202fm/))
})

describe('a class value', () => {
  const body = 'donor:\n  body: hatchback\n'
  it('stands in where the schema allows it and the class is known, marked as assumed', () => {
    expect(read(body).model.donor.rollingResistance).toMatchObject({ value: 0.0117, origin: { how: 'assumed', note: 'class hatchback' } })
  })
  it('does not stand in while the class is unknown, nor when told to be strict', () => {
    expect(isGap(read('donor: {}\n').model.donor.rollingResistance)).toBe(true)
    expect(isGap(read(body, { strict: true }).model.donor.rollingResistance)).toBe(true)
  })
  it('gives way to what somebody typed', () =>
    expect(read(`${body}  rolling-resistance: 0.01\n`).model.donor.rollingResistance).toMatchObject({ value: 0.01 }))
})

describe('a part', () => {
  const lookUps = {
    parts: (id: string) =>
      id === 'motor-x@1'
        ? { id, how: 'datasheet' as const, fields: { 'peak-torque': { text: '250 ± 10 Nm' }, mass: { text: '48 kg' } } }
        : undefined,
  }
  const unit = (more: string) => `drive:\n  units:\n    main:\n      motor:\n        part: motor-x@1\n${more}`
  it('fills the fields that are left out and says so', () => {
    const { motor } = read(unit(''), { lookUps }).model.drive.units['main'] as { motor: { peakTorque: Fact; topSpeed: object } }
    expect(motor.peakTorque).toMatchObject({
      value: 250,
      half: 10,
      path: 'drive.units.main.motor.peak-torque',
      origin: { how: 'datasheet', note: 'part motor-x@1' },
    })
    expect(isGap(motor.topSpeed)).toBe(true)
  })
  it('gives way to what the file says', () =>
    expect(
      (read(unit('        mass: 50 kg\n'), { lookUps }).model.drive.units['main'] as unknown as { motor: { mass: Fact } }).motor.mass.value,
    ).toBe(50))
  it('that is not in the catalogue leaves gaps that say so', () => {
    const { motor } = read(unit('').replace('motor-x@1', 'motor-y@1'), { lookUps }).model.drive.units['main'] as unknown as {
      motor: { mass: object }
    }
    expect(motor.mass).toMatchObject({ gap: true, why: 'not in the catalogue' })
  })
  describe('named for one thing in a group of several', () => {
    const both = {
      parts: (id: string) =>
        id === 'hv-fuse-x@1' || id === 'contactor-x@1'
          ? {
              id,
              how: 'datasheet' as const,
              fields: { current: { text: id === 'hv-fuse-x@1' ? '200 A' : '300 A' }, voltage: { text: '500 V' }, mass: { text: '1 kg' } },
            }
          : undefined,
    }
    const limits = (text: string) => read(`pack:\n  limits: { ${text} }\n`, { lookUps: both }).model.pack.limits
    it('fills that alone, and says which part it was', () => {
      expect(limits('fuse-part: hv-fuse-x@1, contactor-part: contactor-x@1')).toMatchObject({
        fuse: { value: 200, path: 'pack.limits.fuse', origin: { how: 'datasheet', note: 'part hv-fuse-x@1' } },
        fuseVoltage: { value: 500 },
        contactor: { value: 300, origin: { note: 'part contactor-x@1' } },
        stringFuse: { gap: true, why: 'missing' },
        contactorPeak: { gap: true, why: 'missing' },
      })
      expect(limits('string-fuse-part: hv-fuse-x@1')).toMatchObject({ stringFuse: { value: 200 }, fuse: { gap: true } })
    })
    it('gives way to what the file says, and leaves gaps that say so where the catalogue has none', () =>
      expect(limits('fuse-part: hv-fuse-y@1, contactor-part: contactor-x@1, contactor: 250 A')).toMatchObject({
        fuse: { gap: true, why: 'not in the catalogue' },
        contactor: { value: 250 },
        contactorVoltage: { value: 500 },
      }))
  })
})

describe('a name that points at something', () => {
  it('must be there, and the nearest is offered', () => {
    expect(faults('brief:\n  loads:\n    driver: { people: 1 }\n  conditions: { load: drivr }\n')[0]).toMatch(
      /names something in brief\.loads; found «drivr»; accepted driver; did you mean driver\?/,
    )
  })
  it('is a problem too when there is nothing to point at', () =>
    expect(faults('brief:\n  conditions: { load: driver }\n')[0]).toContain('nothing is there yet'))
  it('is not sought where a line of that section could not be read: it may stand there', () => {
    const torn = 'brief:\n  loads:\n\tdriver: { people: 1 }\n  conditions: { load: driver }\n  seats: many\n'
    expect(faults(torn)).toEqual([expect.stringContaining('a tab is used'), expect.stringContaining('brief.seats')])
  })
})

describe('a tyre marking', () => {
  it('becomes facts that stand at its path', () => {
    const { tyre } = read('donor:\n  tyre: 205/55 R16 91V\n').model.donor
    expect(tyre.diameter).toMatchObject({ path: 'donor.tyre#diameter', unit: 'm' })
    expect((tyre.diameter as Fact).value).toBeCloseTo(0.6319, 10)
    expect((tyre.loadEach as Fact).value).toBe(615)
    expect((tyre.topSpeed as Fact).value).toBeCloseTo(240 / 3.6, 10)
  })
  it('that cannot be read is one problem, and all its facts are gaps', () => {
    const c = read('donor:\n  tyre: 205-55-16\n')
    expect(c.issues).toHaveLength(1)
    expect(isGap(c.model.donor.tyre.diameter)).toBe(true)
  })
})

describe('the file as a whole', () => {
  it('must say its schema, and a newer one gets one clear message', () => {
    expect(readConversion('car: x\n').issues.map(formatIssue)).toEqual([
      '1:1 schema: the file does not say which schema it is written in; accepted a first line `schema: 1`',
    ])
    const newer = readConversion('schema: 7\nsomething-new: 1\n')
    expect(isUsable(newer)).toBe(false)
    expect(newer.issues.map(i => i.what).join()).toBe('this file is schema 7; this Ampwright reads up to 1: update Ampwright')
  })
  it('reports every problem, in the order of the file', () => {
    const lines = read('donor:\n  wheelbse: 2 m\n  tyre: x\nbrief:\n  seats: 2.5 kg\n').issues.map(i => i.line)
    expect(lines).toEqual([...lines].sort((a, b) => a - b))
    expect(lines).toHaveLength(3)
  })
  it('takes a group where a value belongs, and a value where a group belongs, as problems', () => {
    expect(faults('donor:\n  wheelbase: { a: 1 m }\n')[0]).toContain('one value')
    expect(faults('donor: 5 kg\n')[0]).toContain('group of lines')
  })
})

it('what a remedy sets reads back as exactly that number', () => {
  for (const [value, kind] of [
    [250 / 3, 'torque'],
    [92_000, 'power'],
    [0.1 + 0.2, 'mass'],
    [5.33, 'ratio'],
  ] as const) {
    const read = readQuantity(settingText({ value, kind }) as string, kind)
    expect(read.ok && read.quantity.value).toBe(value)
  }
  expect(settingText({ word: 'third' })).toBe('third')
  expect(settingText(null)).toBeNull()
})

it('the schema is found by path, through maps and variants', () => {
  expect(fieldAt('drive.units.main.motor.peak-torque')).toMatchObject({ is: 'quantity', kind: 'torque' })
  expect(fieldAt('brief.goals.sprint.within')).toMatchObject({ is: 'quantity', kind: 'time' })
  expect(fieldAt('donor.tyre#diameter')).toMatchObject({ is: 'tyre' })
  expect(fieldAt('donor.nothing')).toBeUndefined()
})
