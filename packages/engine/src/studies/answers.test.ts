import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Model } from '../model/model.ts'
import { RULES } from '../rules/rules.ts'
import { formula } from '../working/formula.ts'
import type { Fact, Field, Gap } from '../working/value.ts'
import { Answers } from './answers.ts'
import { reuse } from './reuse.ts'
import { HEADLINE, STUDIES } from './studies.ts'
import { either, isGaps, maybe, type Study, study } from './study.ts'

const fact = (path: string, value: number): Fact => ({ path, label: path, symbol: 'x', unit: 'm', value })
const gap = (path: string): Gap => ({ gap: true, path, label: path, until: 'any time' })
type Tiny = { a: Field; b: Field; other: Field }
const model = (a: Field, b: Field, other: Field = fact('other', 0)): Model => ({ a, b, other }) as unknown as Model
const tiny = (m: Model): Tiny => m as unknown as Tiny
const double = formula(
  {
    id: 'double',
    label: 'double',
    gives: { symbol: 'y', unit: 'm' },
    takes: { x: { symbol: 'x', unit: 'm' } },
    text: 'y = 2 · x',
    source: { work: 'definition', place: '' },
    proof: { none: 'test' },
  },
  ({ x }) => 2 * x,
)

const first = study({
  id: 'first',
  stage: 'drive',
  asks: 'first?',
  reads: m => ({ a: tiny(m).a }),
  answer: ({ a }, make) => ({ y: make.work('y', double, { x: a }) }),
})
const second = study({
  id: 'second',
  stage: 'drive',
  asks: 'second?',
  reads: (m, ask) => ({ first: ask(first), b: maybe(tiny(m).b) }),
  answer: ({ first: f, b }, make) => ({ z: make.work('z', double, { x: f.y }), b: isGaps(b) ? undefined : b.value }),
})

describe('answers', () => {
  it('carry ids made of study and figure', () => {
    const answers = new Answers(model(fact('a', 3), fact('b', 1)))
    expect(answers.ask(second)).toMatchObject({ z: { id: 'second.z', value: 12 }, b: 1 })
    expect(answers.of(first)?.figures.map(f => f.id)).toEqual(['first.y'])
  })
  it('name a gap found at any depth, and nothing else is made up', () => {
    const answers = new Answers(model(gap('a'), fact('b', 1)))
    expect(answers.ask(second)).toEqual({ gaps: [gap('a')] })
    expect(answers.of(second)?.figures).toEqual([])
  })
  it('do without what a study can do without, and still name the gap', () => {
    const answers = new Answers(model(fact('a', 3), gap('b')))
    expect(answers.ask(second)).toMatchObject({ z: { value: 12 }, b: undefined })
    expect(answers.of(second)?.missing.map(g => g.path)).toEqual(['b'])
  })
  it('run again only what read something that changed', () => {
    const answers = new Answers(model(fact('a', 3), fact('b', 1)))
    answers.ask(second)
    answers.next(model(fact('a', 3), fact('b', 1), fact('other', 9)))
    answers.ask(second)
    expect(answers.ran).toEqual([])
    answers.next(model(fact('a', 3), fact('b', 2), fact('other', 9)))
    answers.ask(second)
    expect(answers.ran).toEqual(['second'])
    answers.next(model(fact('a', 4), fact('b', 2), fact('other', 9)))
    expect(answers.ask(second)).toMatchObject({ z: { value: 16 } })
    expect(answers.ran).toEqual(['first', 'second'])
  })
  it('come back as they were after an edit and its undoing', () => {
    const answers = new Answers(model(fact('a', 3), fact('b', 1))),
      before = JSON.stringify(answers.ask(second))
    answers.next(model(gap('a'), fact('b', 1)))
    answers.ask(second)
    answers.next(model(fact('a', 3), fact('b', 1)))
    expect(JSON.stringify(answers.ask(second))).toBe(before)
  })
  it('name the chain when studies ask in a circle', () => {
    const a: Study<object> = study({ id: 'egg', stage: 'drive', asks: '', reads: (_, ask) => ({ x: ask(b) }), answer: () => ({}) })
    const b: Study<object> = study({ id: 'hen', stage: 'drive', asks: '', reads: (_, ask) => ({ x: ask(a) }), answer: () => ({}) })
    expect(() => new Answers(model(fact('a', 1), fact('b', 1))).ask(a)).toThrow('egg → hen → egg')
  })
  it('refuse a study that makes one figure twice', () => {
    const twice = study({
      id: 'twice',
      stage: 'drive',
      asks: '',
      reads: m => ({ a: tiny(m).a }),
      answer: ({ a }, make) => [make.work('y', double, { x: a }), make.work('y', double, { x: a })],
    })
    expect(() => new Answers(model(fact('a', 1), fact('b', 1))).ask(twice)).toThrow(/twice\.y twice/)
  })
})

describe('either of two ways to know something', () => {
  it('takes the first where it is there', () => expect(either(fact('a', 1), { b: gap('b') })).toMatchObject({ path: 'a' }))
  it('takes the second where the first is missing', () => expect(either(gap('a'), { b: fact('b', 1) })).toMatchObject({ b: { path: 'b' } }))
  it('names both where neither is there', () => expect(either(gap('a'), { b: gap('b') })).toEqual({ gaps: [gap('a'), gap('b')] }))
})

describe('reuse', () => {
  it('keeps what did not change and replaces what did', () => {
    const a = { x: { v: 1 }, y: { v: 2 } },
      b = reuse(a, { x: { v: 1 }, y: { v: 3 } })
    expect(b.x).toBe(a.x)
    expect(b.y).toEqual({ v: 3 })
    expect(reuse(a, { x: { v: 1 }, y: { v: 2 } })).toBe(a)
  })
  it('sees a key that is gone', () => expect(reuse({ x: 1, y: 2 } as object, { x: 1 })).toEqual({ x: 1 }))
  it('compares long series by content', () => {
    const a = { s: Float64Array.of(1, Number.NaN) }
    expect(reuse(a, { s: Float64Array.of(1, Number.NaN) })).toBe(a)
    expect(reuse(a, { s: Float64Array.of(1, 2) })).not.toBe(a)
  })
})

async function found(folder: string, is: (x: object) => boolean): Promise<string[]> {
  const root = new URL(`../${folder}/`, import.meta.url).pathname,
    out: string[] = []
  for (const file of readdirSync(root, { recursive: true, encoding: 'utf8' })) {
    if (!file.endsWith('.ts') || file.endsWith('.test.ts') || file.startsWith('sets/')) continue
    for (const value of Object.values((await import(join(root, file))) as object))
      if (typeof value === 'object' && value !== null && is(value)) out.push((value as { id: string }).id)
  }
  return out
}
describe('nothing is left out of the lists', () => {
  it('of studies', async () =>
    expect((await found('studies', x => 'asks' in x && 'reads' in x)).filter(id => !STUDIES.some(s => s.id === id))).toEqual([]))
  it('of rules', async () => expect((await found('rules', x => 'judgements' in x)).filter(id => !RULES.some(r => r.id === id))).toEqual([]))
  it('and each id stands once', () => {
    for (const ids of [STUDIES.map(s => s.id), RULES.map(r => r.id)]) expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([])
    expect(HEADLINE.filter(s => !STUDIES.includes(s))).toEqual([])
  })
})
