import { applyEdit, applyEdits, type Edit, readQuantity, spellQuantity } from '@ampwright/conversion'
import { type Answers, chosenLimits, type Fact, type Finding, findingId, isGap, isGaps, kindOf, leaves, RULES } from '@ampwright/engine'
import { settingAside } from '@ampwright/workbench'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, type Car, textOf, typedFacts } from '../cars.ts'
import { Looking } from '../looking.ts'
import { sampled } from './sampled.ts'

/*
 * No sample says of a finding that it does not apply, as none accepts one: the scenario has nobody set a rule aside. So the sweep says it itself, of every finding of
 * every sample that is failing, marginal or unanswered, and moves and removes the facts of the file.
 */

const SAID = { by: 'Noor', reason: 'said by the sweep', date: '2026-11-25' }
/** Values that break or loosen something in every car, so that there is enough to set aside. */
const MORE: Readonly<Record<Car, readonly Edit[]>> = {
  lapwing: [],
  wren: [
    { path: 'donor.ratings.total', now: '900 kg' },
    { path: 'drive.units.main.motor.peak-torque', now: '90 Nm' },
  ],
  badger: [{ path: 'donor.ratings.total', now: '2000 kg' }],
  otter: [{ path: 'donor.ratings.total', now: '1800 kg' }],
}

/**
 * Paths of all a finding rests on, by the judgement behind it; what it waits for with a question mark. A limit of a rule set may be set by the donor car, such as a share
 * of the mass near that of before: of it the value counts.
 */
function restsOn(answers: Answers, wanted: ReadonlySet<string>): ReadonlyMap<string, string> {
  const model = answers.current(),
    out = new Map<string, string>()
  for (const rule of RULES) {
    if (![...wanted].some(id => id.split('@')[0] === rule.id)) continue
    for (const j of rule.judgements(model, answers.ask, chosenLimits(model))) {
      const values = 'holds' in j ? j.rests : 'missing' in j ? [j.missing] : 'doesNotApply' in j ? [] : [j.found, j.limit]
      const paths = values.flatMap(v => (isGap(v) ? [`${v.path}?`] : isGaps(v) ? v.gaps.map(g => `${g.path}?`) : pathsOf(v)))
      if ('limit' in j && 'value' in j.limit && !('because' in j.limit)) paths.push(`${j.limit.path} = ${j.limit.value}`)
      out.set(findingId(j.item === undefined ? { rule: rule.id } : { rule: rule.id, item: j.item }), [...new Set(paths)].sort().join('\n'))
    }
  }
  return out
}
const pathsOf = (v: Parameters<typeof leaves>[0]): readonly string[] => leaves(v).map(f => f.path.replace(/#.*/, ''))

const edited = (text: string, edits: readonly Edit[]): string => {
  const done = applyEdits(text, edits)
  if (!done.ok) throw new Error(`${done.problem.path}: ${done.problem.what}`)
  return done.text
}
/** The file with one number moved by one per cent, or without it; undefined where such a file would be none. */
function moved(looking: Looking, text: string, fact: Fact): string | undefined {
  const kind = fact.shows ?? kindOf(fact.unit)
  if (typeof fact.value !== 'number' || kind === undefined || kind === 'count')
    return changed(looking, text, { path: fact.path, now: null })
  const now = (factor: number): string =>
    spellQuantity(Number((fact.value === 0 ? factor - 1 : (fact.value as number) * factor).toPrecision(6)), kind)
  return [now(1.01), now(0.99)].flatMap(to =>
    readQuantity(to, kind).ok ? (changed(looking, text, { path: fact.path, now: to }) ?? []) : [],
  )[0]
}
function changed(looking: Looking, text: string, edit: Edit): string | undefined {
  const done = applyEdit(text, edit)
  return done.ok && looking.usable(done.text) ? done.text : undefined
}

describe.each(CARS)('sweep “lapse” over %s', car => {
  const bare = edited(textOf(car), MORE[car]),
    found = assessText(bare).assessment.findings.filter(f => ['failing', 'marginal', 'unanswered'].includes(f.outcome))
  const text = edited(
      bare,
      found.map(f => settingAside(f, SAID)),
    ),
    looking = new Looking(text),
    { conversion, assessment, answers } = looking.at(text),
    aside = new Map(assessment.findings.filter(f => f.byHand).map(f => [findingId(f), f] as const)),
    ids = new Set(aside.keys()),
    before = restsOn(answers, ids)

  it('every finding that is not sound can be said not to apply, and none is counted as sound then', () => {
    expect(found.length).toBeGreaterThan(0)
    expect([...ids].toSorted()).toEqual(found.map(findingId).toSorted())
    for (const [id, f] of aside)
      expect(f, id).toMatchObject({ outcome: 'does not apply', byHand: { by: 'Noor', otherwise: outcomeOf(found, id) } })
  })

  const facts = sampled(
    typedFacts(conversion).filter(f => !f.path.startsWith('does-not-apply.')),
    car,
  ).filter(f => moved(looking, text, f) !== undefined)
  it.each(facts.map(fact => ({ path: fact.path, fact })))('moving $path lapses what rests on it, and nothing else', ({ path, fact }) => {
    const now = looking.at(moved(looking, text, fact) as string),
      after = restsOn(now.answers, ids),
      findings = new Map(now.assessment.findings.map(f => [findingId(f), f]))
    for (const id of ids) {
      const f = findings.get(id),
        rests = before.get(id) as string
      // What is no longer there, holds by itself or does not apply by itself needs no word of anybody.
      if (!f || f.outcome === 'sound' || (f.outcome === 'does not apply' && !f.byHand)) continue
      if (rests.split('\n').includes(path)) expect([f.lapsed, f.unheeded?.lacks], `${id} rests on ${path}`).toEqual([true, []])
      else if (after.get(id) === rests) expect(f.byHand, `${id} does not rest on ${path}`).toBeDefined()
      else expect(f.lapsed, `${id} rests on something else without ${path}`).toBe(true)
    }
  })
})
const outcomeOf = (found: readonly Finding[], id: string): string | undefined => found.find(f => findingId(f) === id)?.outcome
