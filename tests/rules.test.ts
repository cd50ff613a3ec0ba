import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { applyEdits, type Edit, settingText } from '@ampwright/conversion'
import { Answers, type Finding, findings, HAZARDS, type Remedy, RULES, type Rule } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, type Car, conversionOf, root, textOf } from './cars.ts'

function edited(text: string, edits: readonly Edit[]): string {
  const done = applyEdits(text, edits)
  if (!done.ok) throw new Error(`${done.problem.path}: ${done.problem.what}`)
  return done.text
}
/** What one rule finds in a text; only the studies it asks are answered, without bands. */
const found = (rule: Rule, text: string): readonly Finding[] => findings(rule, answersOf(text))
/** What was answered of a text is kept: most rules ask the same of the same four. */
const answered = new Map<string, Answers>()
function answersOf(text: string): Answers {
  const before = answered.get(text)
  if (before) return before
  const now = new Answers(conversionOf(text).model)
  if (answered.size > 12) answered.delete([...answered.keys()].find(t => !CLEAN.has(t)) ?? text)
  answered.set(text, now)
  return now
}
const CLEAN: ReadonlySet<string> = new Set(CARS.map(textOf))
const ofItem = (list: readonly Finding[], item: string | undefined): Finding | undefined => list.find(f => f.item === item)
const settingsOf = (remedies: readonly Remedy[]): readonly Edit[] | undefined => {
  const first = remedies.find(r => r.do === 'set')
  return first?.sets.map(({ path, to }) => ({ path, now: settingText(to) }))
}
const heard = (list: readonly Finding[]): string =>
  list
    .map(
      f =>
        `${f.item ?? '(no item)'}: ${f.outcome}${f.gaps.length ? ` without ${f.gaps.map(g => g.path).join(', ')}` : ''}${f.reason ? `, ${f.reason}` : ''}`,
    )
    .join('; ')

describe.each(RULES.map(rule => ({ id: rule.id, rule })))('rule $id', ({ rule }) => {
  const { sample, edits, item, turns = 'failing' } = rule.spoil,
    clean = textOf(sample as Car)

  it('can turn out badly: its spoil does it, and nothing else did before', () => {
    const before = found(rule, clean),
      spoiled = found(rule, edited(clean, edits))
    expect(ofItem(spoiled, item)?.outcome, heard(spoiled)).toBe(turns)
    // A spoil without edits says that the sample itself is wrong on purpose.
    if (edits.length) expect(ofItem(before, item)?.outcome, 'the sample is as bad without the spoil').not.toBe(turns)
  })
  it('is cured by the first value it offers', () => {
    const text = edited(clean, edits),
      cure = settingsOf(ofItem(found(rule, text), item)?.remedies ?? [])
    if (!cure) return
    const after = found(rule, edited(text, cure))
    expect(ofItem(after, item)?.outcome ?? 'gone', `${JSON.stringify(cure)}: ${heard(after)}`).not.toBe(turns)
    expect(after.filter(f => f.outcome === 'failing' && f.item === item).map(f => f.item)).toEqual([])
  })
  it('leaves no slot of its sentences open', () => {
    for (const text of [clean, edited(clean, edits)])
      for (const f of found(rule, text)) {
        if (f.outcome === 'unanswered' && f.gaps.length) continue
        const known = new Set([
          'item',
          ...(f.found ? ['found', 'limit'] : []),
          ...Object.entries(f.slots).flatMap(([k, v]) => (v ? [k] : [])),
        ])
        for (const says of [f.says, ...f.remedies.map(r => r.says)]) {
          const open = [...says.matchAll(/\{([\w-]+)\}/g)].map(m => m[1] as string).filter(name => !known.has(name))
          expect(open, says).toEqual([])
        }
      }
  })
  it('says what it is about, in words that do not approve', () => {
    expect(rule.title).toMatch(/^[A-Z0-9]/)
    expect(`${rule.title} ${rule.caution ?? ''}`).not.toMatch(/\bsafe\b|\bapproved by Ampwright\b/i)
    if (rule.harm === 'S3') expect(rule.caution?.length ?? 0, 'a rule that protects people says how they can be hurt').toBeGreaterThan(20)
    for (const id of rule.hazards)
      expect(
        HAZARDS.some(h => h.id === id),
        id,
      ).toBe(true)
  })
})

describe('the list of rules', () => {
  it('names each rule once', () => {
    const ids = RULES.map(r => r.id)
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([])
  })
  it('misses no rule that is written', async () => {
    const folder = join(root, 'packages/engine/src/rules'),
      missing: string[] = []
    for (const entry of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
      if (!entry.endsWith('.ts') || entry.endsWith('.test.ts') || entry.startsWith('sets/') || entry.startsWith('hazards')) continue
      for (const [name, value] of Object.entries((await import(join(folder, entry))) as object))
        if (typeof value === 'object' && value !== null && 'judgements' in value && !RULES.includes(value as Rule))
          missing.push(`${entry} ${name}`)
    }
    expect(missing).toEqual([])
  })
  it('answers an empty file without an exception, and finds nothing failing there', () => {
    for (const rule of RULES)
      expect(
        found(rule, 'schema: 1\n')
          .filter(f => f.outcome === 'failing')
          .map(f => f.rule),
      ).toEqual([])
  })
})

describe('a rule that protects people', () => {
  const laden = RULES.find(r => r.id === 'laden-masses') as Rule
  const outcome = (mass: string): string | undefined => {
    const answers = new Answers(conversionOf(edited(textOf('lapwing'), [{ path: 'pack.module.mass', now: mass }])).model)
    return ofItem(findings(laden, answers, new Map()), 'two-up, rear axle')?.outcome
  }
  it('calls nothing good that rests on an assumed value, and says so where no end of its ± would do', () => {
    expect(outcome('5 ± 0.5 kg (measured)')).toBe('sound')
    expect(outcome('5 ± 0.5 kg (assumed, like others)')).toBe('unanswered')
    expect(outcome('12.6 ± 9 kg (assumed, like others)')).toBe('unanswered')
    expect(outcome('25 ± 0.5 kg (assumed, like others)')).toBe('failing')
  })
  it.each(CARS)('is never sound or marginal on an assumption: %s', car => {
    for (const f of assessText(textOf(car), { bands: true }).assessment.findings)
      if (f.harm === 'S3' && f.assumed.length) expect(['unanswered', 'failing', 'does not apply', 'accepted'], f.rule).toContain(f.outcome)
  })
})
