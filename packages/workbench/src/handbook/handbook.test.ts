import { FORMULAS, isOne, type One, readText } from '@ampwright/engine'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { cardView, handbookEntries } from './card-view.ts'
import { takesOf } from './inputs.ts'
import type { Typeset } from './math-marks.ts'
import { cardsFound } from './search.ts'
import { typedText } from './typed-text.ts'
import { type FormulaWorked, workTyped } from './work-typed.ts'

const SYSTEMS = ['metric', 'us', 'uk'] as const
const CARDS = FORMULAS.map(({ formula }) => [formula.card.id, formula] as const)
const WORKED = CARDS.filter(([id, f]) => 'examples' in f.card.proof && !cardView(id, 'metric')?.plan)
const results = (w: FormulaWorked): (FormulaWorked & { is: 'worked' })['results'] => {
  if (w.is !== 'worked') throw new Error(JSON.stringify(w))
  return w.results
}

/** Set mathematics as a line of formula text again. */
function lineOf(s: Typeset | string): string {
  if (typeof s === 'string') return s
  const of = s.of.map(lineOf),
    [a = '', b = ''] = of
  if (s.tag === 'mfrac') return `((${a}) / (${b}))`
  if (s.tag === 'msqrt') return `√(${of.join(' ')})`
  if (s.tag === 'msub') return `${a}_${b}`
  if (s.tag === 'msup') return a === '10' ? `1e${b.replace('−', '-')}` : `${a}^(${b})`
  if (s.tag === 'mtr') return of.join(' ')
  if (s.tag === 'mtable') return `${of.join(' ; ')} }`
  if (s.tag === 'mo' && a === ';') return ','
  return of.join(' ').replace(/^([\d.]+) · 1e/, '$1e')
}

describe('the handbook', () => {
  it.each(WORKED)('%s is worked through its example from texts as somebody types them', (id, f) => {
    for (const system of SYSTEMS)
      for (const [n, e] of (
        f.card.proof as unknown as { examples: { gives: number | Record<string, number>; within: number }[] }
      ).examples.entries()) {
        const texts = cardView(id, system)?.examples[n]?.texts ?? {}
        const got = results(workTyped(f, texts, system)),
          gives = isOne(f.card.gives) ? [''] : Object.keys(f.card.gives as Record<string, One>)
        for (const [i, name] of gives.entries()) {
          const wanted = typeof e.gives === 'number' ? e.gives : e.gives[name]
          if (wanted !== undefined)
            expect(
              Math.abs(Number.parseFloat(got[i]?.si ?? '') - wanted),
              `${system} ${name} ${JSON.stringify(texts)}`,
            ).toBeLessThanOrEqual(e.within + 1e-9 * Math.abs(wanted))
        }
      }
  })
  it.each(CARDS)('%s is laid out as plain data, and set as mathematics unless its text is words', (id, f) => {
    const card = cardView(id, 'metric')
    expect(structuredClone(card)).toEqual(card)
    expect(card?.math === undefined, card?.text).toBe(Boolean(f.card.words))
    // What is set, read back line by line, is what the card says.
    if (card?.math) expect(readText(card.math.map(lines => lines.map(lineOf).join(' ')).join('\n'))).toEqual(readText(f.card.text))
  })
  it.each(WORKED)('%s refuses a text that is none of its inputs, naming the one and what is accepted', (id, f) => {
    const texts = cardView(id, 'metric')?.examples[0]?.texts ?? {}
    for (const [name] of takesOf(f)) {
      const got = workTyped(f, { ...texts, [name]: 'three sheep' }, 'metric')
      expect(got.is === 'open' && got.wrong, name).toMatchObject([
        { at: expect.stringMatching(`^${name}( 1)?$`), accepted: expect.stringMatching(/./) },
      ])
      expect(got.is === 'open' && got.wrong[0]?.found).toContain('three')
      expect(workTyped(f, { ...texts, [name]: '' }, 'metric')).toEqual({ is: 'open', missing: [name], wrong: [] })
    }
  })
  it('says which value lies outside the range in which a formula holds', () => {
    const got = workTyped(
      FORMULAS.find(x => x.formula.card.id === 'air-density')?.formula as never,
      { altitude: '9000 m', temperature: '20 °C' },
      'metric',
    )
    expect(got.is === 'worked' && got.beyond).toMatchObject([{ name: 'altitude', found: expect.stringMatching(/^9\s000\sm$/) }])
  })
  it('says of a mass typed where a torque is wanted that it is none, and works nothing', () => {
    const f = FORMULAS.find(x => x.formula.card.id === 'wheel-force')?.formula as never
    const got = workTyped(f, { torque: '250 kg', ratio: '5.33', efficiency: '95 %', radius: '280 mm' }, 'metric')
    expect(got).toMatchObject({ is: 'open', missing: [], wrong: [{ at: 'torque', found: expect.stringContaining('kg') }] })
  })
  it('carries a typed ± into the result', () => {
    const f = FORMULAS.find(x => x.formula.card.id === 'wheel-force')?.formula as never
    expect(
      results(workTyped(f, { torque: '250 ± 10 Nm', ratio: '5.33', efficiency: '95 %', radius: '280 mm' }, 'metric'))[0]?.text,
    ).toContain('±')
  })
  it('takes a curve in rows, one a line, or pasted as a CSV table', () => {
    const f = FORMULAS.find(x => x.formula.card.id === 'stored-energy')?.formula as never
    for (const openCircuit of ['0 %: 3 V\n100 %: 4 V', 'charge [%],voltage [V]\n0,3\n100,4\n', 'charge [%];voltage [V]\n0;3,0\n100;4,0'])
      expect(Number.parseFloat(results(workTyped(f, { openCircuit, capacity: '1 Ah' }, 'metric'))[0]?.si ?? '')).toBeCloseTo(12_600, 6)
    const wrong = workTyped(f, { openCircuit: '0 %: 3 V', capacity: '1 Ah' }, 'metric')
    expect(wrong).toMatchObject({ is: 'open', wrong: [{ at: 'openCircuit', about: 'table', accepted: 'at least two rows' }] })
  })
  it('reads back what it spells, for every number of every card', () => {
    const takes = CARDS.flatMap(([id, f]) => takesOf(f).map(([name, take]) => ({ id, name, take }))).filter(
      ({ take }) => !('oneOf' in take) && typeof take.unit === 'string' && !('many' in take),
    )
    fc.assert(
      fc.property(
        fc.constantFrom(...takes),
        fc.double({ min: 1e-3, max: 0.999, noNaN: true }),
        fc.constantFrom(...SYSTEMS),
        ({ take }, v, system) => {
          expect(typedText(take, v, system)).not.toBe('')
        },
      ),
      { numRuns: runs(4000) },
    )
  })
  it('finds a card by any of its words, by name first', () => {
    const all = handbookEntries()
    expect(cardsFound(all, '').length).toBe(FORMULAS.length)
    expect(cardsFound(all, 'wheel force')[0]?.id).toBe('wheel-force')
    expect(cardsFound(all, 'no such thing as this')).toEqual([])
    for (const e of all) expect(cardsFound(all, e.id).map(x => x.id)).toContain(e.id)
  })
})
