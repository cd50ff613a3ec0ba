import { applyEdits, type Edit } from '@ampwright/conversion'
import { type Finding, findingId, fingerprint } from '@ampwright/engine'
import { acceptance, asideText, countedAs, enquiryLetter, Refusal, settingAside, takingBack, unheededText } from '@ampwright/workbench'
import { describe, expect, it } from 'vitest'
import { assessText, textOf } from './cars.ts'

const SAID = { by: 'Noor', reason: 'the pump is electric already.', date: '2026-11-25' }
const edited = (text: string, ...edits: readonly Edit[]): string => {
  const done = applyEdits(text, edits)
  if (!done.ok) throw new Error(`${done.problem.path}: ${done.problem.what}`)
  return done.text
}
const found = (text: string, id: string): Finding => {
  const f = assessText(text).assessment.findings.find(x => findingId(x) === id)
  if (!f) throw new RangeError(`no finding ${id}`)
  return f
}
const bare = textOf('lapwing'),
  PUMP = 'steering-assist',
  AXLE = 'laden-masses@two-up, rear axle',
  COLD = 'no-charging-below-freezing'
const aside = (id: string, text = bare): string => edited(text, settingAside(found(text, id), SAID))

describe('what somebody says does not apply', () => {
  it('tells who, when, why, how it would come out otherwise and when it lapses; its harm to people changes nothing of that', () => {
    const f = found(aside(PUMP), PUMP)
    expect(f).toMatchObject({ outcome: 'does not apply', harm: 'S3', byHand: { by: 'Noor', date: '2026-11-25', otherwise: 'failing' } })
    expect(asideText(f)).toBe(
      'Does not apply because the pump is electric already, said by Noor on 2026-11-25. It would be failing otherwise. Lapses as soon as anything it rests on changes.',
    )
    expect(countedAs(f)).toBe('said not to apply')
  })
  it('may be about a finding whose name holds a comma, on a path without one', () => {
    expect(found(aside(AXLE), AXLE).byHand).toBeDefined()
    expect(aside(AXLE)).toContain('laden-masses@two-up rear axle:')
  })
  it('asks for nothing more where it was unanswered, and lapses once what it waited for is known', () => {
    const text = aside(COLD)
    expect(found(text, COLD)).toMatchObject({ outcome: 'does not apply', gaps: [], byHand: { otherwise: 'unanswered' } })
    expect(asideText(found(text, COLD))).toMatch(/as soon as what it waits for changes/)
    const known = found(edited(text, { path: 'pack.bms.lowest-charge-temperature', now: '-10 degC' }), COLD)
    expect(known).toMatchObject({ outcome: 'failing', lapsed: true })
  })
  it('gives back the finding’s own outcome when it lapses, and says that it lapsed and why', () => {
    const heavier = found(edited(aside(AXLE), { path: 'donor.ratings.rear-axle', now: '709 kg' }), AXLE)
    expect(heavier).toMatchObject({ outcome: 'failing', lapsed: true })
    expect(unheededText(heavier)).toBe(
      'A word that this does not apply has lapsed: what it rested on has changed since Noor said on 2026-11-25: the pump is electric already.',
    )
  })
  it('does not count without name, reason and day, and the finding says what is not stated', () => {
    const f = found(edited(aside(PUMP), { path: ['does-not-apply', PUMP, 'reason'], now: null }), PUMP)
    expect(f).toMatchObject({ outcome: 'failing', unheeded: { lacks: ['reason'] } })
    expect(f.lapsed).toBeUndefined()
    expect(unheededText(f)).toMatch(/does not count: not stated is reason/)
  })
  it('stands behind an acceptance that holds', () => {
    const accepted = acceptance(found(bare, PUMP), { ...SAID, scope: 'this season' })
    expect(found(edited(aside(PUMP), accepted), PUMP).outcome).toBe('accepted')
  })
  it('is taken back to the byte', () => {
    for (const id of [PUMP, AXLE]) {
      const more = aside(COLD)
      expect(edited(aside(id, more), ...takingBack(found(aside(id, more), id)))).toBe(more)
    }
  })
  it.each([
    ['sound', found(bare, 'range@weekend'), SAID, /only what is failing, marginal or unanswered/],
    ['without a reason', found(bare, PUMP), { ...SAID, reason: ' ' }, /--reason is empty/],
    ['without a name', found(bare, PUMP), { ...SAID, by: '' }, /--by is empty/],
    ['without a day', found(bare, PUMP), { ...SAID, date: 'today' }, /found «today»/],
  ])('is refused where it is %s', (_, f, said, words) => {
    expect(() => settingAside(f, said)).toThrow(Refusal)
    expect(() => settingAside(f, said)).toThrow(words)
  })
  it('cannot be taken back where nothing was said', () => expect(() => takingBack(found(bare, PUMP))).toThrow(/nothing was said/))
  it('is put to the inspector in the letter, who may see it otherwise', () => {
    const { assessment, conversion } = assessText(aside(PUMP))
    expect(JSON.stringify(enquiryLetter(assessment, conversion, 'inspector'))).toMatch(
      /held not to apply, because .*the pump is electric already.*Do you see it so too/,
    )
  })
})

it('a curve counts in what a finding rests on, number by number', () => {
  const curve = (y: number) => ({ path: 'a', label: 'a', symbol: 'a', unit: '', value: { x: [0, 1], y: [0, y] } }) as never
  expect(fingerprint([curve(1)])).toBe(fingerprint([curve(1)]))
  expect(fingerprint([curve(1)])).not.toBe(fingerprint([curve(2)]))
})
