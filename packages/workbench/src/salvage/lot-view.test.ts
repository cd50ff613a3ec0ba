import { applyEdits, type Edit } from '@ampwright/conversion'
import type { Finding } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { assessText, type Car, textOf } from '../../../../tests/cars.ts'
import { acceptance } from '../said-by-hand.ts'
import { type LotView, lotView } from './lot-view.ts'

function edited(car: Car, edits: readonly Edit[]): string {
  const done = applyEdits(textOf(car), edits)
  if (!done.ok) throw new Error(done.problem.what)
  return done.text
}
function lotOf(car: Car, edits: readonly Edit[] = []): LotView {
  const { conversion, assessment } = assessText(edited(car, edits), { bands: true })
  return lotView(conversion.model, assessment, 'metric')
}
const verdicts = (lot: LotView): Record<string, string> =>
  Object.fromEntries(lot.modules.filter(m => m.outcome !== 'sound').map(m => [m.name, m.verdict]))

describe('a lot of salvaged modules', () => {
  it('says which readings are missing and keeps the others’ verdicts', () => {
    const lot = lotOf('lapwing')
    expect(verdicts(lot)).toEqual({ m14: 'still to be measured', m15: 'still to be measured', m16: 'still to be measured' })
    expect(lot.modules.find(m => m.name === 'm14')?.missing.map(g => g.path)).toEqual(
      ['capacity', 'resistance', 'rest-voltage', 'rest-voltage-later', 'days-apart', 'insulation'].map(k => `pack.salvage.m14.${k}`),
    )
    expect(lot).toMatchObject({ recorded: 16, places: 16, sorting: [], wanted: ['capacity of m14, m15, m16'] })
    expect(structuredClone(lot)).toEqual(lot)
  })
  it('rejects every bad module by its own reading, not the worst alone', () => {
    const lot = lotOf('badger', [
      { path: 'pack.salvage.b05.rest-voltage-later', now: '29.3 V' },
      { path: 'pack.salvage.b02.capacity', now: '200 Ah' },
      { path: 'pack.salvage.b03.capacity', now: '190 Ah' },
      { path: 'pack.salvage.b07.insulation', now: '4 MΩ' },
      { path: 'pack.salvage.b09.use', now: 'spare' },
    ])
    expect(verdicts(lot)).toEqual({ b02: 'rejected', b03: 'rejected', b05: 'rejected', b07: 'rejected', b09: 'spare' })
    expect(lot.modules.find(m => m.name === 'b02')?.because).toEqual([
      expect.stringMatching(/^Module b02 \(TR-7133\) lies .* off the median capacity; from 6.% on it is rejected/),
    ])
    expect(lot.modules.find(m => m.name === 'b05')?.because.length).toBeGreaterThan(0)
  })
  it('doubts a module whose ± reaches over the limit, and keeps what somebody accepted', () => {
    const near = { path: 'pack.salvage.b02.capacity', now: '209 ± 3 Ah (measured)' }
    expect(verdicts(lotOf('badger', [near]))).toEqual({ b02: 'in doubt' })
    const { assessment } = assessText(edited('badger', [near]), { bands: true }),
      finding = assessment.findings.find(f => f.rule === 'salvaged-capacity-matched') as Finding
    const given = { by: 'Ines', reason: 'kept as a spare', scope: 'this pack', date: '2026-11-25' }
    expect(verdicts(lotOf('badger', [near, acceptance(finding, given)]))).toEqual({ b02: 'accepted' })
  })
  it('judges a module by itself on what it is not yet known of the whole', () => {
    const lot = lotOf('lapwing', [{ path: 'pack.module.chemistry', now: null }])
    expect(lot.modules[0]).toMatchObject({ outcome: 'unanswered', verdict: 'not judged yet' })
    expect(lot.modules[0]?.because).toContain('chemistry')
    expect(lot.modules[0]?.because.join(' ')).not.toContain('m14')
  })
  it('sorts modules into strings and side by side, and tells the pack by its weakest', () => {
    const lot = lotOf('badger', [
      { path: 'pack.modules-in-series', now: '6' },
      { path: 'pack.strings', now: '2' },
    ])
    expect(lot.sorting.map(s => s.name)).toEqual(['string 1', 'string 2', ...[1, 2, 3, 4, 5, 6].map(n => `place ${n}`)])
    expect(
      lot.sorting
        .filter(s => s.name.startsWith('place'))
        .flatMap(s => s.modules.split(' + '))
        .sort((a, b) => a.localeCompare(b)),
    ).toEqual(lot.modules.map(m => m.name))
    expect(lot.figures.map(f => f.name)).toEqual(expect.arrayContaining(['pack.weakest', 'pack.capacity', 'sorting.sorted']))
  })
  it('asks for more records where the pack has more places', () => {
    expect(lotOf('badger', [{ path: 'pack.modules-in-series', now: '14' }]).wanted).toEqual(['2 more module records'])
    expect(lotOf('wren').modules).toEqual([])
  })
})
