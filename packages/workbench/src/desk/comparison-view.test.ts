import { applyEdits, type Edit } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, textOf } from '../../../../tests/cars.ts'
import { turned } from '../differences.ts'
import { comparisonView, type Side } from './comparison-view.ts'

const side = (text: string): Side => ({ text, assessment: assessText(text).assessment })
const edited = (text: string, edits: readonly Edit[]): string => {
  const made = applyEdits(text, edits)
  if (!made.ok) throw new Error(made.problem.what)
  return made.text
}

describe('two conversions side by side', () => {
  it.each(CARS)('finds no difference between %s and itself, and every figure and finding the same', car => {
    const one = side(textOf(car)),
      view = comparisonView(one, one, 'metric')
    expect(view.headline.filter(r => r.differs)).toEqual([])
    expect([view.findings.differ, view.figures.differ, view.stated]).toEqual([[], [], []])
    expect(view.findings.same).toHaveLength(one.assessment.findings.length)
    const numbers = [...one.assessment.figures.values()].filter(f => typeof f.value === 'number')
    expect(view.headline.length + view.figures.same.length).toBe(numbers.length)
    expect(structuredClone(view)).toEqual(view)
  })
  it('tells of another gear what it gains and what was written, differences first', () => {
    const text = textOf('lapwing'),
      [a, b] = [side(text), side(edited(text, [{ path: 'drive.units.main.gear', now: 'third' }]))]
    const view = comparisonView(a, b, 'metric')
    expect(view.stated).toEqual([{ path: 'drive.units.main.gear', before: 'fourth', after: 'third' }])
    const differs = view.headline.map(r => r.differs)
    expect(differs).toEqual(differs.toSorted((x, y) => Number(y) - Number(x)))
    expect(view.headline.find(r => r.id === 'acceleration.time@sprint')).toMatchObject({ before: '11.39\u202fs', after: '8.79\u202fs' })
    expect(view.findings.differ).toContainEqual({
      id: 'acceleration@sprint',
      title: 'Gathers speed as quickly as wanted (sprint)',
      harm: 'S1',
      before: 'failing',
      after: 'sound',
    })
    expect(view.findings.differ).toHaveLength(turned(a.assessment, b.assessment).length)
    // No row differs that reads the same, and none is the same that reads otherwise.
    for (const r of [...view.headline, ...view.figures.differ, ...view.figures.same]) expect(r.differs, r.id).toBe(r.before !== r.after)
  })
  it('turned round, tells the same the other way', () => {
    const text = textOf('wren'),
      [a, b] = [side(text), side(edited(text, [{ path: 'brief.budget', now: '1000 €' }]))]
    const there = comparisonView(a, b, 'metric'),
      back = comparisonView(b, a, 'metric')
    expect(back.stated.map(s => [s.after, s.before])).toEqual(there.stated.map(s => [s.before, s.after]))
    expect(back.findings.differ.map(f => [f.id, f.after, f.before]).toSorted()).toEqual(
      there.findings.differ.map(f => [f.id, f.before, f.after]).toSorted(),
    )
  })
  it('sets two different cars beside each other, and a car beside nothing', () => {
    const view = comparisonView(side(textOf('lapwing')), side(textOf('otter')), 'us')
    expect(view.headline.some(r => r.before === '–' || r.after === '–')).toBe(true)
    const alone = comparisonView(side('schema: 1\n'), side(textOf('lapwing')), 'metric')
    expect(alone.headline.every(r => r.before === '–')).toBe(true)
    expect(alone.stated.every(s => s.before === undefined)).toBe(true)
    expect(comparisonView(side('schema: 1\n'), side('schema: 1\n'), 'metric').headline).toEqual([])
  })
})
