import { describe, expect, it } from 'vitest'
import { assessText, textOf } from './cars.ts'

const findings = (text: string, rule: string) => assessText(text).assessment.findings.filter(f => f.rule === rule)

describe('bringing parts in', () => {
  it('names what a tank box would strike from below, the worst of it', () => {
    const text = textOf('lapwing').replace(/(tank-box: .*way-in: )from above/, '$1from below'),
      found = findings(text, 'can-be-brought-in').find(f => f.item === 'tank-box')
    expect(found?.outcome).toBe('failing')
    expect(found?.slots['what']?.value).toBe('brake-line')
  })
  it('lets the motor in before the inverter that stands over it', () => {
    const row = assessText(textOf('lapwing'))
      .assessment.tables.get('way-in.ways')
      ?.rows.find(r => r.name === 'motor')
    expect(row?.cells['before']).toContain('inverter')
    expect(row?.cells['order']).toBe(1)
  })
  it('says who may lift what: by hand up to 25 kg each, by hoist beyond', () => {
    const of = (item: string) => findings(textOf('lapwing'), 'can-be-lifted').find(f => f.item === item)
    expect(of('charger')?.required?.limit.value).toBe(50)
    expect(of('front-box')?.required?.limit.value).toBe(300)
    const alone = textOf('lapwing').replace('lifting: { people: 2, hoist: 300 kg }', 'lifting: { people: 2 }')
    expect(findings(alone, 'can-be-lifted').find(f => f.item === 'front-box')?.outcome).toBe('failing')
  })
  it('asks nothing of a car in which no part says its way', () => {
    const text = textOf('wren').replaceAll(/, way-in: from \w+/g, '')
    expect(findings(text, 'can-be-brought-in').map(f => f.outcome)).toEqual(['does not apply'])
  })
})

describe('the finished car on the scales', () => {
  it('holds whole car and axles against the ledger, and names what nobody has weighed', () => {
    const found = findings(textOf('otter'), 'weighs-as-reckoned')
    expect(found.map(f => f.item)).toEqual(['whole car', 'front axle', 'rear axle'])
    expect(found.every(f => f.outcome !== 'failing')).toBe(true)
    expect(found[0]?.slots['unsure']?.value).toMatch(/, in/)
  })
  it('is not asked for while the car is not on its wheels', () =>
    expect(findings(textOf('lapwing'), 'weighs-as-reckoned').map(f => f.outcome)).toEqual(['does not apply']))
})

describe('what is done to the body', () => {
  it('is listed part by part, what stays in the car left out', () => {
    const rows = assessText(textOf('lapwing')).assessment.tables.get('fixing.fixings')?.rows ?? []
    expect(rows.map(r => r.name)).not.toContain('booster')
    expect(rows.find(r => r.name === 'boot-box')?.cells['fixing']).toMatchObject({ value: 'new holes' })
  })
})

describe('sheet of the boxes', () => {
  it('weighs, piece by piece, a little more than the box: edges where two meet count twice', () => {
    const { figures } = assessText(textOf('lapwing')).assessment,
      box = figures.get('shell.sheet@front-box')?.value as number
    const pieces = ['floor and lid', 'long sides', 'ends'].reduce(
      (sum, p) => sum + 2 * (figures.get(`shell.piece@front-box, ${p}`)?.value as number),
      0,
    )
    expect(pieces).toBeGreaterThan(box)
    expect(pieces).toBeLessThan(1.05 * box)
  })
})
