import { describe, expect, it } from 'vitest'
import { findParts, part, parts } from './catalogue.ts'
import { fieldKinds } from './field-kinds.ts'
import { partClasses } from './part-classes.ts'

const FIGURE = /^(\d+(?:\.\d+)?)(?: ± (\d+(?:\.\d+)?))?(?: (.+))?$/
const figure = (text: string) => {
  const [, value, half = '0', unit = ''] = FIGURE.exec(text) ?? []
  return { value: Number(value), half: Number(half), unit }
}
const fieldsOf = parts.flatMap(({ id, fields }) => Object.entries(fields).map(([key, field]) => ({ id, key, ...field })))

describe('the catalogue', () => {
  it('holds at least 150 parts in at least 25 classes', () => {
    expect(parts.length).toBeGreaterThanOrEqual(150)
    expect(partClasses.length).toBeGreaterThanOrEqual(25)
  })

  it('names every part once, after its class and with a revision', () => {
    expect(new Set(parts.map(({ id }) => id)).size).toBe(parts.length)
    expect(new Set(partClasses.map(({ class: name }) => name)).size).toBe(partClasses.length)
    for (const { id } of parts) expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*@[1-9]\d*$/)
    for (const of of partClasses)
      for (const one of of.parts) {
        expect(one.class).toBe(of.class)
        expect(one.id.startsWith(`${of.class}-`), one.id).toBe(true)
      }
  })

  it('gives every field a mark, and a source exactly where the mark says published', () => {
    for (const { id, key, mark, source } of fieldsOf) {
      expect(['from memory', 'common practice', 'published'], `${id} ${key}`).toContain(mark)
      expect(source !== undefined && source !== '', `${id} ${key}`).toBe(mark === 'published')
    }
  })

  it('knows what each field is read as, and has no kind without a field', () => {
    for (const { id, key } of fieldsOf) {
      expect(key).toMatch(/^[a-z]+(-[a-z]+)*$/)
      expect(Object.hasOwn(fieldKinds, key), `${id} ${key}`).toBe(true)
    }
    const used = new Set(fieldsOf.map(({ key }) => key))
    expect(Object.keys(fieldKinds).filter(key => !used.has(key))).toEqual([])
  })

  it('writes quantities as number, spread and unit, the spread smaller than the number', () => {
    for (const { id, key, text } of fieldsOf.filter(({ key }) => fieldKinds[key] !== 'word')) {
      expect(text, `${id} ${key}`).toMatch(FIGURE)
      expect(figure(text).half, `${id} ${key}`).toBeLessThan(figure(text).value)
    }
  })

  it('uses the words the conversion file knows for kinds of motor and chemistries', () => {
    const words = (key: string) => [...new Set(fieldsOf.filter(field => field.key === key).map(({ text }) => text))].sort()
    expect(words('kind')).toEqual(['induction', 'permanent-magnet', 'series-dc'])
    expect(words('chemistry')).toEqual(['LFP', 'LTO', 'NCA', 'NMC'])
  })

  it('keeps every figure, spread included, inside the range of its class', () => {
    for (const { ranges, parts: members } of partClasses)
      for (const [key, [low, high, unit]] of Object.entries(ranges)) {
        const stated = members.filter(({ fields }) => fields[key])
        expect(stated.length, `${members[0]?.class} ${key}`).toBeGreaterThan(0)
        for (const { id, fields } of stated) {
          const { value, half, unit: own } = figure(fields[key]?.text ?? '')
          expect(own, `${id} ${key}`).toBe(unit)
          expect(value - half, `${id} ${key}`).toBeGreaterThanOrEqual(low - 1e-9)
          expect(value + half, `${id} ${key}`).toBeLessThanOrEqual(high + 1e-9)
        }
      }
  })

  it('covers the whole range of the leading figure of every class of machines', () => {
    for (const { class: name, ranges, parts: members } of partClasses) {
      const power = ranges['peak-power']
      if (!power) continue
      const bands = members.map(({ fields }) => figure(fields['peak-power']?.text ?? ''))
      expect(Math.min(...bands.map(({ value, half }) => value - half)), name).toBe(power[0])
      expect(Math.max(...bands.map(({ value, half }) => value + half)), name).toBe(power[1])
    }
  })

  it('has base speed as peak power over peak torque and continuous torque in the ratio of the powers, rounded within their spread', () => {
    const machines = parts.filter(({ fields }) => fields['base-speed'])
    expect(machines.length).toBeGreaterThan(30)
    for (const { id, fields } of machines) {
      const of = (key: string) => figure(fields[key]?.text ?? '')
      const power = of('peak-power').value * 1000,
        torque = of('peak-torque').value
      const rpm = (power / torque) * (30 / Math.PI)
      const rounded = (key: string, exact: number) => Math.abs(of(key).value - exact) / of(key).half
      expect(rounded('base-speed', rpm), id).toBeLessThanOrEqual(1 / 6)
      expect(of('base-speed').value, id).toBeLessThan(of('top-speed').value)
      if (!fields['continuous-torque']) continue
      expect(rounded('continuous-torque', (torque * of('continuous-power').value * 1000) / power), id).toBeLessThanOrEqual(1 / 6)
    }
  })

  it('calls single cells what has one in series and one in parallel, and nothing else', () => {
    for (const { defines = [], fills, parts: members } of partClasses) {
      for (const { id, fields } of members) for (const key of defines) expect(fields[key]?.text, `${id} ${key}`).toBe('1')
      if (fills === 'module' && defines.length === 0)
        for (const { id, fields } of members) expect(fields['cells-in-series']?.text, id).not.toBe('1')
    }
  })

  it('gives price bands low to high, inside the band of the class where it has one', () => {
    for (const { prices, parts: members } of partClasses)
      for (const { id, price } of members) {
        if (!price) continue
        expect(price.low, id).toBeLessThanOrEqual(price.high)
        expect(price.low, id).toBeGreaterThanOrEqual(prices?.[0] ?? 0)
        expect(price.high, id).toBeLessThanOrEqual(prices?.[1] ?? Number.POSITIVE_INFINITY)
        expect(price.currency).toBe('EUR')
        expect(price.when, id).toMatch(/^(new|used), \d{4}s$/)
      }
  })

  it('prices salvaged modules between 80 and 250 € per kWh', () => {
    const modules = parts.filter(({ class: name, price }) => name.startsWith('module-') && price)
    expect(modules.length).toBeGreaterThan(20)
    for (const { id, fields, price } of modules) {
      const of = (key: string) => figure(fields[key]?.text ?? '')
      const kWh = (of('cells-in-series').value * of('cells-in-parallel').value * of('cell-capacity').value * 3.7) / 1000
      expect((price?.low ?? 0) / kWh, id).toBeLessThan(90)
      expect((price?.low ?? 0) / kWh, id).toBeGreaterThan(60)
      expect((price?.high ?? 0) / kWh, id).toBeGreaterThan(225)
      expect((price?.high ?? 0) / kWh, id).toBeLessThan(300)
    }
  })
})

describe('looking parts up', () => {
  it('finds each part under its own id, and nothing under an id without revision, of another revision or inherited', () => {
    for (const one of parts) expect(part(one.id)).toBe(one)
    for (const id of ['motor-pm-100kw', 'motor-pm-100kw@2', 'constructor', '']) expect(part(id)).toBeUndefined()
  })

  it('finds parts by words in any order and case, all of which must occur', () => {
    expect(findParts('100 KW Permanent-Magnet bare').map(({ id }) => id)).toEqual(['motor-pm-100kw@1'])
    expect(findParts('bare permanent magnet 100 kw')).toEqual(findParts('KW 100 magnet permanent bare'))
    expect(findParts('nca tray 24s').map(({ id }) => id)).toEqual(['module-tray-long-24s@1'])
    expect(findParts('contactor walnut')).toEqual([])
    expect(findParts('  ')).toEqual([])
  })

  it('finds every part by its id and by its label', () => {
    for (const one of parts) {
      expect(findParts(one.id)).toContain(one)
      expect(findParts(one.label)).toContain(one)
    }
  })
})
