import { fieldAt, formatIssue, readConversion } from '@ampwright/conversion'
import type { Fact } from '@ampwright/engine'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { SALOON } from '../../../../tests/saloon.ts'
import { lookUps } from '../look-ups.ts'
import { answerProblems, conversionText, kindAsked } from './conversion-text.ts'
import { hint } from './hint.ts'
import { layouts } from './layouts.ts'
import { questionViews } from './question-views.ts'
import { DRIVEN, ENGINE, QUESTIONS, questionsFor } from './questions.ts'

const paths = Object.keys(SALOON)
const some = fc.subarray(paths).map(list => Object.fromEntries(list.map(path => [path, SALOON[path] as string])))

describe('the questions', () => {
  it('call no two fields of one question the same', () => {
    const given = { [ENGINE]: 'longitudinal front', [DRIVEN]: 'all' },
      views = questionViews(given)
    expect(views.find(q => q.id === 'transfer-case')).toBeDefined()
    for (const q of views) expect(new Set(q.fields.map(f => f.label)).size, q.asks).toBe(q.fields.length)
    for (const q of QUESTIONS) expect(q.called?.length ?? q.paths.length, q.asks).toBe(q.paths.length)
  })
  it('go to fields of the file, each only once', () => {
    const all = QUESTIONS.flatMap(q => q.paths)
    for (const path of all) if (path !== 'car') expect(fieldAt(path), path).toBeDefined()
    expect(new Set(all).size).toBe(all.length)
  })

  it('begin with the layout, and leave out what a car of that layout has not', () => {
    expect(QUESTIONS.slice(0, 2).map(q => q.paths)).toEqual([[ENGINE], [DRIVEN]])
    const ids = (engine: string, driven: string): readonly string[] => questionsFor({ [ENGINE]: engine, [DRIVEN]: driven }).map(q => q.id)
    expect(ids('transverse front', 'all')).not.toContain('gears')
    expect(ids('longitudinal front', 'rear')).toContain('gears')
    expect(ids('longitudinal front', 'rear')).not.toContain('transfer-case')
    expect(ids('longitudinal front', 'part-time 4x4')).toContain('transfer-case')
  })

  it('offer for the driven wheels only what is built with an engine there', () => {
    const driven = QUESTIONS.find(q => q.id === 'driven')
    for (const [engine, wheels] of Object.entries(layouts)) expect(driven?.choices?.({ [ENGINE]: engine })).toEqual(wheels)
    expect(layouts['transverse front']).toEqual(['front', 'all'])
    expect(layouts['longitudinal front']).toEqual(['front', 'rear', 'part-time 4x4', 'all'])
  })

  it('show how an answer is typed, unit and all, as the file accepts it', () => {
    for (const q of QUESTIONS)
      for (const path of q.paths) {
        const such = hint(path),
          leaf = fieldAt(path, kindAsked)
        if (leaf?.is === 'quantity') expect(such, path).toBeTruthy()
        // A steady speed stands in place of a cycle.
        const steady = /usual\.(speed|slope)$/.test(path) ? { 'trips.named.usual.cycle': '' } : {}
        if (such !== undefined)
          expect(
            answerProblems({ ...SALOON, ...steady, [path]: such }).filter(p => p.path === path),
            path,
          ).toEqual([])
      }
  })
  it('know which kind of goal an answer belongs to', () => {
    expect(fieldAt('brief.goals.charging.from', kindAsked)?.label).toBe('from charge')
    expect(fieldAt('brief.goals.sprint.from', kindAsked)?.label).toBe('speed the run starts at')
  })

  it('offer only what the file accepts', () => {
    for (const q of QUESTIONS)
      for (const [path, text] of Object.entries(q.offers ?? {})) expect(answerProblems({ ...SALOON, [path]: text }), path).toEqual([])
  })

  it('say what stays unanswered while they do', () => {
    for (const q of QUESTIONS.slice(2)) expect(q.open ?? q.left, q.id).toBeTruthy()
    expect(questionViews({}).find(q => q.id === 'sprint')?.open).toBe('Left open, the car has no such goal to meet.')
    expect(questionViews({}).find(q => q.id === 'axles')?.open).toMatch(/^Left open, this stays unanswered: kerb mass/)
  })
})

describe('the text of a conversion from answers', () => {
  it('is a file without an issue, whatever was left open', () => {
    fc.assert(
      fc.property(some, given => {
        expect(answerProblems(given)).toEqual([])
        const { issues } = readConversion(conversionText(given), { lookUps: lookUps() })
        expect(issues.map(formatIssue)).toEqual([])
      }),
      { numRuns: runs(400) },
    )
  })

  it('holds every answer as it was typed, and nothing nobody said', () => {
    const links =
      /^(brief\.goals\.(range\.trip|charging\.place)|(brief\.conditions|trips\.named\.usual)\.load|brief\.loads\.full\.(people|luggage))$/
    fc.assert(
      fc.property(some, given => {
        const { facts } = readConversion(conversionText(given), { lookUps: lookUps() })
        const typed = new Map(
          (facts as readonly Fact[]).flatMap(f => (f.text === undefined ? [] : [[f.path.replace(/#.*/, ''), f.text] as const])),
        )
        for (const [path, text] of Object.entries(given)) expect(typed.get(path), path).toBe(text)
        for (const path of typed.keys()) if (given[path] === undefined) expect(path).toMatch(links)
      }),
      { numRuns: runs(400) },
    )
  })

  it('is the bare start without any answer', () => {
    expect(conversionText({})).toContain('schema: 1')
    expect(conversionText({ 'donor.wheelbase': '  ' })).toBe(conversionText({}))
  })
})

describe('a wrong answer', () => {
  it('is named with its place, what was found and what is accepted', () => {
    expect(answerProblems({ 'donor.wheelbase': '2520' })).toMatchObject([
      { path: 'donor.wheelbase', found: expect.stringContaining('2520') as string },
    ])
    expect(answerProblems({ [ENGINE]: 'transverse frontt' })).toMatchObject([{ path: ENGINE, nearest: 'transverse front' }])
    expect(answerProblems({ 'donor.wheelbase': '25.2 km' })).toMatchObject([{ path: 'donor.wheelbase' }])
    expect(answerProblems({ 'donor.weelbase': '2520 mm' })).toMatchObject([{ path: 'donor.weelbase', nearest: 'donor.wheelbase' }])
    expect(answerProblems({ 'brief.rules': '' })).toEqual([])
  })

  it('of a trip that is a cycle and a steady speed at once is one of the two', () => {
    expect(answerProblems({ ...SALOON, 'trips.named.usual.speed': '90 km/h' })).toMatchObject([{ accepted: 'one of the two' }])
    const { 'trips.named.usual.cycle': _, ...steady } = SALOON
    expect(answerProblems({ ...steady, 'trips.named.usual.speed': '90 km/h', 'trips.named.usual.slope': '0 %' })).toEqual([])
  })

  it('lets no file be written, with every problem in one refusal', () => {
    expect(() => conversionText({ 'donor.wheelbase': '2520', 'donor.tyre': 'round' })).toThrow(
      /donor\.wheelbase[\s\S]*\n[\s\S]*donor\.tyre/,
    )
  })
})
