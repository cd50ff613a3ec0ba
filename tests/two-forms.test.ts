import { applyEdits, type Edit, formatIssue } from '@ampwright/conversion'
import type { Assessment } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, textOf } from './cars.ts'

const edited = (text: string, edits: readonly Edit[]): string => {
  const done = applyEdits(text, edits)
  if (!done.ok) throw new Error(formatIssue(done.problem))
  return done.text
}
const of = (text: string): Assessment => assessText(text).assessment
const value = (a: Assessment, id: string): number => a.figures.get(id)?.value as number
const outcomes = (a: Assessment, rule: string): readonly string[] => a.findings.filter(f => f.rule === rule).map(f => f.outcome)
const numbers = (a: Assessment): ReadonlyMap<string, number> =>
  new Map([...a.figures].flatMap(([id, f]) => (typeof f.value === 'number' ? [[id, f.value]] : [])))

const OTTER = textOf('otter')
/** The estate as it would be with short modules alone: 24 of four groups, six of them in the tunnel. */
const ALIKE = edited(OTTER, [
  { path: 'pack.other-module', now: null },
  { path: 'pack.module.have', now: null },
  { path: 'pack.modules-in-series', now: '24' },
  { path: 'pack.boxes.tunnel.other-modules', now: null },
  { path: 'pack.boxes.tunnel.modules', now: '6' },
])
/** Figures that speak of modules one by one, or of ways to put alike ones together. */
const OF_MODULES =
  /^(arrangement|box-room|module-stock|module-voltage|pack-mass|salvage)\.|^cost\.(other-)?modules$|^pack\.other-resistance$/

describe('modules of two forms', () => {
  it.each(CARS)('change no figure of the %s by a bit while none of the other form is in it', car => {
    const text = edited(car === 'otter' ? ALIKE : textOf(car), []),
      before = of(text),
      boxes = [...text.matchAll(/^ {4}([\w-]+): \{ modules:/gm)].map(m => m[1] as string)
    expect(boxes.length).toBeGreaterThan(1)
    const there = {
      'same-cells': 'yes',
      'cells-in-series': '12',
      'in-series': '0',
      have: '5',
      mass: '30 kg',
      length: '500 mm',
      width: '150 mm',
      height: '100 mm',
      price: '300 €',
    }
    const after = of(
      edited(text, [{ path: 'pack.other-module', now: there }, ...boxes.map(b => ({ path: `pack.boxes.${b}.other-modules`, now: '0' }))]),
    )
    const now = numbers(after)
    expect([...numbers(before)].filter(([id, v]) => !Object.is(now.get(id), v))).toEqual([])
    const outcome = new Map(after.findings.map(f => [`${f.rule} ${f.item ?? ''}`, f.outcome]))
    expect(before.findings.filter(f => outcome.get(`${f.rule} ${f.item ?? ''}`) !== f.outcome)).toEqual([])
  })
  it('make the same pack where a long one is two short ones: 20 of four groups and two of eight', () => {
    const mixed = numbers(of(OTTER)),
      alike = numbers(of(ALIKE))
    const apart = [...alike].filter(
      ([id, v]) => !OF_MODULES.test(id) && Math.abs((mixed.get(id) as number) / v - 1) > 1e-9 && mixed.get(id) !== v,
    )
    expect(apart).toEqual([])
    expect(alike.size).toBeGreaterThan(300)
    expect(mixed.get('pack.cells-in-series')).toBe(96)
  })
  it('weigh, cost and resist each by their own', () => {
    const base = of(OTTER),
      heavier = of(edited(OTTER, [{ path: 'pack.other-module.mass', now: '27.8 kg' }])),
      dearer = of(edited(OTTER, [{ path: 'pack.other-module.price', now: '780 €' }])),
      longer = of(edited(OTTER, [{ path: 'pack.other-module.cells-in-series', now: '10' }]))
    // Two of them in the tunnel, 1250 mm behind the front axle of a wheelbase of 2640 mm.
    expect(value(heavier, 'ledger.parts-kerb') - value(base, 'ledger.parts-kerb')).toBeCloseTo(6, 9)
    expect(value(heavier, 'ledger.parts-rear') - value(base, 'ledger.parts-rear')).toBeCloseTo((6 * 1250) / 2640, 9)
    // It was weighed when it was finished: what was written down then is good to some grams.
    expect(value(heavier, 'ledger.kerb') - value(base, 'ledger.kerb')).toBeCloseTo(6, 1)
    expect(value(heavier, 'pack.mass') - value(base, 'pack.mass')).toBeCloseTo(6, 9)
    expect(value(dearer, 'cost.parts') - value(base, 'cost.parts')).toBeCloseTo(200, 9)
    expect(value(longer, 'pack.cells-in-series')).toBe(100)
    expect(value(longer, 'pack.cells') / value(base, 'pack.cells')).toBeCloseTo(100 / 96, 9)
    expect(value(longer, 'pack-mass.stored') / value(base, 'pack-mass.stored')).toBeCloseTo(100 / 96, 9)
  })
  it('that stand in no box yet weigh too, and their place is asked for', () => {
    const a = of(
      edited(OTTER, [
        { path: 'pack.boxes.tunnel.other-modules', now: '1' },
        { path: 'pack.unboxed', now: { 'box-share': '25 %', x: '1000 mm', y: '0 mm', z: '400 mm' } },
      ]),
    )
    expect(value(a, 'ledger.unboxed')).toBeCloseTo(24.8 * 1.25, 9)
    expect(outcomes(a, 'every-module-placed')).toEqual(['failing', 'sound'])
  })
  it('of other cells are never called good', () => {
    expect(outcomes(of(OTTER), 'one-kind-of-cell-in-a-string')).toEqual(['sound'])
    const unsaid = of(edited(OTTER, [{ path: 'pack.other-module.same-cells', now: null }]))
    expect(outcomes(unsaid, 'one-kind-of-cell-in-a-string')).toEqual(['unanswered'])
    expect(outcomes(of(ALIKE), 'one-kind-of-cell-in-a-string')).toEqual(['does not apply'])
  })
  it('ask for what a sum needs of them, by name', () => {
    const a = of(edited(OTTER, [{ path: 'pack.other-module.mass', now: null }]))
    expect(a.gaps.map(g => g.path)).toContain('pack.other-module.mass')
    expect(a.figures.has('ledger.kerb')).toBe(false)
    expect(value(of(edited(OTTER, [{ path: 'pack.other-module.length', now: null }])), 'ledger.kerb')).toBeGreaterThan(1000)
  })
  it('are no more than there are', () => {
    expect(outcomes(of(OTTER), 'enough-modules')).toEqual(['sound', 'sound'])
    expect(outcomes(of(edited(OTTER, [{ path: 'pack.other-module.have', now: '1' }])), 'enough-modules')).toEqual(['failing', 'sound'])
  })
  it('have room in a box, each form in a slice of its own, or may have, or have none', () => {
    const found = (others: string, mains: string) =>
      of(
        edited(OTTER, [
          { path: 'pack.boxes.tunnel.other-modules', now: others },
          { path: 'pack.boxes.tunnel.modules', now: mains },
        ]),
      ).findings.find(f => f.rule === 'modules-fit-their-box' && f.item === 'tunnel-box')?.outcome
    // 1215 mm inside: two long ones on each other take 762 mm, two short ones 390 mm of the 453 left. By volume 50.1 l: 12.5 l for a long one, 6.4 l for a short one.
    expect(found('2', '2')).toBe('sound')
    expect(found('2', '3')).toBe('marginal')
    expect(found('2', '4')).toBe('failing')
    expect(found('3', '0')).toBe('marginal')
    expect(found('5', '0')).toBe('failing')
  })
})

describe('salvaged modules of two forms', () => {
  const BADGER = textOf('badger')
  /** The last two modules of the pickup as one of sixteen groups: what both showed in series. */
  const long = (change: Readonly<Record<string, string>> = {}): string =>
    edited(BADGER, [
      { path: 'pack.modules-in-series', now: '10' },
      {
        path: 'pack.other-module',
        now: {
          'same-cells': 'yes',
          'cells-in-series': '16',
          'in-series': '1',
          mass: '62 kg',
          length: '1180 mm',
          width: '225 mm',
          height: '108 mm',
        },
      },
      { path: 'pack.boxes.bed.modules', now: '2' },
      { path: 'pack.boxes.bed.other-modules', now: '1' },
      { path: 'pack.salvage.b12', now: null },
      ...Object.entries({
        form: 'other',
        resistance: '3.88 ± 0.06 mΩ (measured)',
        'rest-voltage': '58.812 V',
        'rest-voltage-later': '58.802 V',
        ...change,
      }).map(([key, now]) => ({ path: `pack.salvage.b11.${key}`, now })),
    ])
  const b = of(BADGER),
    a = of(long())
  it('make the same resistance, whoever holds the cells', () => {
    // 1.96 and 1.92 mΩ, as one.
    expect(value(a, 'pack.cells')).toBeCloseTo(value(b, 'pack.cells'), 12)
    expect(value(a, 'pack.capacity')).toBe(221.2 * 3600)
  })
  it('are held against each other cell by cell', () => {
    expect(value(a, 'salvage.as-main@b11 rest')).toBeCloseTo(29.406, 9)
    expect(value(a, 'salvage.as-main@b11 resistance')).toBeCloseTo(1.94e-3, 12)
    expect(value(a, 'salvage.apart')).toBeCloseTo((29.419 - 29.401) / 8, 9)
    expect(value(a, 'salvage.fall@b11')).toBeCloseTo(0.01 / 14 / 16, 12)
    for (const rule of [
      'salvaged-resistance-matched',
      'salvaged-voltage-matched',
      'salvaged-module-holds-charge',
      'salvaged-modules-recorded',
    ])
      expect(outcomes(a, rule), rule).toEqual(outcomes(b, rule))
    const bad = of(long({ 'rest-voltage-later': '58.640 V' }))
    expect(outcomes(bad, 'salvaged-module-holds-charge')).toContain('failing')
  })
  it('are asked for where one form lacks records', () => {
    const unsaid = of(edited(long(), [{ path: 'pack.salvage.b11.form', now: null }]))
    expect(outcomes(unsaid, 'salvaged-modules-recorded')).toEqual(['failing'])
    const fewer = of(edited(long(), [{ path: 'pack.salvage.b10', now: null }]))
    expect(outcomes(fewer, 'salvaged-modules-recorded')).toEqual(['unanswered'])
  })
})
