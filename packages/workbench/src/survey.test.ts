import { fieldAt, spellQuantity } from '@ampwright/conversion'
import { type Assessment, type Fact, headlineOf } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, lookUps, textOf } from '../../../tests/cars.ts'
import { Desk } from './desk/desk.ts'
import type { SurveySheet } from './desk/survey-sheet.ts'
import { narrowed } from './narrowing.ts'
import { gain, survey } from './survey.ts'
import { halfByTool } from './tool-accuracy.ts'

const open = (text: string): Desk => {
  const desk = new Desk(text, lookUps.attachments ? { attachments: lookUps.attachments } : {})
  Array.from(desk.assess())
  return desk
}
type Wanted = ReturnType<typeof wantedAnew>
/** The samples are asked about more than once. */
const wanted = new Map<string, Wanted>()
const wantedOf = (text: string): Wanted => {
  const now = wanted.get(text) ?? wantedAnew(text)
  wanted.set(text, now)
  return now
}
const wantedAnew = (text: string) => {
  const { conversion, assessment } = assessText(text, { bands: true })
  return { conversion, assessment, list: survey(conversion, assessment, headlineOf(assessment), 'metric') }
}
const rows = (sheet: SurveySheet) => sheet.flatMap(g => g.rows)
/** Bands are printed with three digits. */
const PRINTED = 0.01
/** A secant over a narrower ± is another one, most of all where the weakest of several counts: first order holds to this share of the band. */
const SECANTS = 0.03

describe('what to measure next', () => {
  it.each(CARS)('ranks what %s has in hand by how much it narrows range, mass or cost', car => {
    const { list } = wantedOf(textOf(car)),
      inHand = list.filter(w => w.widens)
    expect(inHand.length).toBeGreaterThan(5)
    expect(inHand.map(gain)).toEqual(inHand.map(gain).toSorted((a, b) => b - a))
    // What nobody has yet stands before all that.
    expect(list.findIndex(w => w.widens)).toBe(list.filter(w => !w.widens).length)
  })
  it.each(CARS)('says of %s what is left of the band, and measuring it so leaves just that', car => {
    const { conversion, assessment, list } = wantedOf(textOf(car)),
      facts = new Map((conversion.facts as readonly Fact[]).map(f => [f.path, f])),
      desk = open(textOf(car))
    let tried = 0
    for (const w of list.filter(x => gain(x) > 0.01 && x.narrows?.some(n => n.left)).slice(0, 3)) {
      const fact = facts.get(w.path) as Fact,
        field = fieldAt(w.path)
      if (field?.is !== 'quantity') throw new Error(`${w.path} is no quantity`)
      const half = halfByTool(field.measure?.accuracy ?? '', fact.value, field.kind) as number
      const made = desk.tried([{ path: w.path, now: `${spellQuantity(fact.value, field.kind, { half })} (measured)` }])
      if (!made.ok) throw new Error(made.issues.map(i => `${i.path}: ${i.what}`).join('; '))
      const after = assessText(made.text, { bands: true }).assessment
      for (const n of w.narrows ?? []) {
        if (n.left === undefined) continue
        const found = bandOf(after, n.figure),
          stood = bandOf(assessment, n.figure)
        expect(Math.abs(found / stood - (1 - n.by)), `${car}: ${w.path}: ${narrowed(n)}`).toBeLessThan(SECANTS)
        expect(Math.abs(numberIn(n.left) / numberIn(n.now) - (1 - n.by))).toBeLessThan(PRINTED)
        tried += 1
      }
    }
    expect(tried).toBeGreaterThan(0)
  })
  it('promises no narrower band than there is, and none at all where the tool is no better than what is known', () => {
    for (const car of CARS)
      for (const w of wantedOf(textOf(car)).list)
        for (const n of w.narrows ?? []) {
          expect(n.by, w.path).toBeGreaterThanOrEqual(0)
          // Taking a value away whole takes no more than its share.
          expect(n.by, w.path).toBeLessThanOrEqual(1 - Math.sqrt(1 - n.share) + 1e-12)
          if (n.by === 0) expect(narrowed(n), w.path).toMatch(/known as well as the tool can/)
        }
  })
  it('gives only the share where the accuracy of a tool is no number', () => {
    const { list } = wantedOf(textOf('lapwing')),
      price = list.find(w => w.path === 'pack.module.price')
    expect(price?.measure?.accuracy).toBe('as stated')
    expect(price?.narrows?.map(n => [n.of, n.left])).toEqual([['cost', undefined]])
    expect(price?.narrows?.map(narrowed)[0]).toMatch(/^\d+ % of the band of Parts cost, ± /)
  })
})
const bandOf = (a: Assessment, figure: string): number => a.halves.get(figure) as number
const numberIn = (band: string): number => Number(band.replace(/[^\d.]/g, ''))

describe('the survey sheet', () => {
  it.each(CARS)('has every row of the survey of %s once, under the moment it is wanted by, with its field where it has one', car => {
    const desk = open(textOf(car)),
      sheet = desk.survey(),
      { list } = wantedOf(textOf(car))
    expect(
      rows(sheet)
        .map(r => r.path)
        .toSorted(),
    ).toEqual(list.map(w => w.path).toSorted())
    for (const g of sheet) {
      expect(g.rows.map(r => r.path)).toEqual(list.filter(w => w.until === g.until).map(w => w.path))
      for (const r of g.rows) expect(r.field?.path, r.path).toBe(fieldAt(r.path) ? r.path : undefined)
    }
    // A message between threads is copied: only plain data survives that.
    expect(structuredClone(sheet)).toEqual(sheet)
  })
  it('keeps its rows in place while it is filled in', () => {
    const desk = open(textOf('lapwing')),
      before = desk.survey(),
      path = 'donor.gearbox.input-torque'
    const made = desk.edit([{ path, now: '300 Nm (datasheet)' }])
    expect(made.ok).toBe(true)
    Array.from(desk.assess())
    const after = desk.survey(before)
    expect(rows(after).map(r => r.path)).toEqual(rows(before).map(r => r.path))
    expect(rows(after).find(r => r.path === path)).toMatchObject({ done: true, field: { text: '300 Nm (datasheet)' } })
    expect(rows(desk.survey()).map(r => r.path)).not.toContain(path)
    // Taken out again, it is asked for where it stood.
    desk.edit([{ path, now: null }])
    Array.from(desk.assess())
    expect(desk.survey(after)).toEqual(before)
  })
  it('asks of an empty file what is needed to begin, and promises nothing', () => {
    const sheet = open('').survey()
    expect(rows(sheet).length).toBeGreaterThan(10)
    expect(rows(sheet).filter(r => !r.missing || r.gains.length > 0)).toEqual([])
    expect(sheet[0]?.until).toBe('before the engine comes out')
    expect(rows(sheet).find(r => r.path === 'donor.removed')?.field).toBeUndefined()
  })
})
