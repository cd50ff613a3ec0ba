import { readFileSync } from 'node:fs'
import { applyEdits } from '@ampwright/conversion'
import { Desk } from '@ampwright/workbench'
import { describe, expect, it } from 'vitest'
import { isDemo, NOTES, nextPage, stands } from './notes.ts'

const TEXT = readFileSync(new URL('../../../../samples/lapwing.conversion.yaml', import.meta.url), 'utf8')
const findingsOf = (text: string) => {
  const last = [...new Desk(text).assess()].at(-1)
  if (last?.is !== 'told') throw new Error('nothing was told')
  return last.told.findings
}
const first = findingsOf(TEXT)

describe('the notes on the demo', () => {
  it.each(NOTES)('$title: every finding it names fails or is unanswered at the start', ({ findings }) => {
    expect(findings.length).toBeGreaterThan(0)
    for (const id of findings) expect(first.find(f => f.id === id)?.outcome, id).toMatch(/^(failing|unanswered)$/)
  })
  it('name between them every finding that fails', () => {
    const named = new Set(NOTES.flatMap(n => n.findings))
    expect(first.filter(f => f.outcome === 'failing' && !named.has(f.id)).map(f => f.id)).toEqual([])
  })
  it('are all done once what they say is done', () => {
    const made = applyEdits(TEXT, [
      { path: ['donor', 'brakes', 'assist-after'], now: 'vacuum pump' },
      { path: ['donor', 'steering', 'assist-after'], now: 'electro-hydraulic' },
      { path: ['donor', 'gearbox', 'input-torque'], now: '260 Nm (datasheet)' },
      { path: ['drive', 'units', 'main', 'gear'], now: 'third' },
      { path: ['pack', 'boxes', 'boot', 'modules'], now: '1' },
      { path: ['pack', 'boxes', 'front', 'modules'], now: '9' },
      { path: ['pack', 'bms', 'lowest-charge-temperature'], now: '2 °C' },
    ])
    if (!made.ok) throw new Error(JSON.stringify(made.issues))
    const now = findingsOf(made.text)
    expect(NOTES.filter(n => stands(n, now) === 'open').map(n => n.title)).toEqual([])
    expect(isDemo(made.text)).toBe(true)
  })
  it('show a rating below the motor as failing, as the gearbox note says', () => {
    const made = applyEdits(TEXT, [{ path: ['donor', 'gearbox', 'input-torque'], now: '200 Nm (datasheet)' }])
    if (!made.ok) throw new Error('not made')
    expect(findingsOf(made.text).find(f => f.id === 'gearbox-torque@main')?.outcome).toBe('failing')
  })
  it('lead from page to page until none is left', () => {
    const all = (): boolean => true
    expect(nextPage('brief', all)).toBe('donor')
    expect(nextPage('donor', all)).toBe('drive')
    expect(nextPage('findings', all)).toBe('brief')
    expect(nextPage('brief', n => n.page === 'pack')).toBe('pack')
    expect(nextPage('pack', n => n.page === 'pack')).toBeUndefined()
  })
  it('are shown for the Lapwing alone', () => {
    expect(isDemo(TEXT)).toBe(true)
    for (const car of ['wren', 'badger', 'otter'])
      expect(isDemo(readFileSync(new URL(`../../../../samples/${car}.conversion.yaml`, import.meta.url), 'utf8')), car).toBe(false)
    expect(isDemo('schema: 1\ncar: Lapwing roadster\n')).toBe(false)
  })
})
