import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { root } from '../../../../tests/cars.ts'
import { runs } from '../../../../tests/counts.ts'
import { formatIssue, isError } from '../issue.ts'
import { applyEdits } from '../text/edit.ts'
import { isReadable, readWorkshop } from './workshop.ts'

const SAMPLE = readFileSync(join(root, 'samples/ferry-lane.workshop.yaml'), 'utf8')
const shelf = (...lines: string[]): string => `schema: 1\nshelf:\n${lines.map(l => `  ${l}\n`).join('')}`
const said = (text: string): readonly string[] => readWorkshop(text).issues.map(formatIssue)

describe('a workshop file', () => {
  it('gives its pieces with what they are, cost and lie at, in the order of the file', () => {
    const w = readWorkshop(SAMPLE)
    expect([w.name, w.issues, isReadable(w)]).toEqual(['Ferry Lane Electrics', [], true])
    expect(w.shelf[0]).toMatchObject({
      key: 'motor-saloon',
      part: 'motor-pm-100kw@1',
      serial: 'EM-20417',
      pieces: 1,
      price: { value: 1350, typed: '1350 €' },
      priceIs: 'paid',
      pricedOn: '2026-05-22',
      place: 'rack A, floor',
    })
    expect(w.shelf.find(p => p.key === 'modules-saloon')).toMatchObject({ pieces: 16, reserved: { car: 'Lapwing roadster' } })
    expect(w.shelf.find(p => p.key === 'charger-offer')?.price).toEqual({ value: 360, half: 20, typed: '360 ± 20 €' })
    expect(w.shelf.find(p => p.key === 'coupler-blank')).toMatchObject({ pieces: 2, note: 'Tomasz keeps one for trials.' })
  })
  it('leaves unsaid what it does not say: no price is taken from a record of the catalogue', () => {
    const lookUps = { parts: (id: string) => ({ id, how: 'assumed' as const, fields: { price: { text: '900 €' } } }) }
    const [piece] = readWorkshop(shelf('a: { part: motor-pm-100kw@1 }'), { lookUps }).shelf
    expect(piece).toEqual({
      key: 'a',
      part: 'motor-pm-100kw@1',
      pieces: 1,
      typed: { part: 'motor-pm-100kw@1' },
      stands: '{ part: motor-pm-100kw@1 }',
    })
  })
  it('without anything in it is an empty shelf', () => {
    expect(readWorkshop('schema: 1\n')).toMatchObject({ shelf: [], issues: [] })
    expect(readWorkshop('schema: 1\nshelf:\n')).toMatchObject({ shelf: [], issues: [] })
  })
  it.each([
    ['a price in another currency', 'a: { what: x, price: 12 USD }', /^3:\d+ shelf\.a\.price: price of one piece; found USD: .*€/],
    ['a price without its currency', 'a: { what: x, price: 12 }', /^3:\d+ shelf\.a\.price: .*needs its unit/],
    ['a price below nothing', 'a: { what: x, price: -1 € }', /^3:\d+ shelf\.a\.price: .*outside what is possible; accepted at least 0/],
    ['a day that is none', 'a: { what: x, priced-on: 2026-02-30 }', /^3:\d+ shelf\.a\.priced-on: .*found «2026-02-30»; accepted a date/],
    ['a key nobody knows', 'a: { what: x, seriel: 3 }', /^3:\d+ shelf\.a\.seriel: unknown key; .*did you mean serial\?$/],
    [
      'a word that is none of two',
      'a: { what: x, price-is: qouted }',
      /^3:\d+ shelf\.a\.price-is: .*accepted paid, quoted; did you mean quoted\?$/,
    ],
    ['half a piece', 'a: { what: x, pieces: 1.5 }', /^3:\d+ shelf\.a\.pieces: .*a count is a whole number/],
    ['a piece that is nothing', 'a: { serial: 3 }', /^3:\d+ shelf\.a: nothing says what this piece is; .*accepted a record/],
    [
      'a quote that ends before it began',
      'a: { what: x, priced-on: 2026-05-02, quote-until: 2026-05-01 }',
      /^3:\d+ shelf\.a\.quote-until: the quote ends before it was given; found «2026-05-01»; accepted 2026-05-02 or later$/,
    ],
    [
      'an id that is none',
      'a: { what: x, reserved: { conversion: lapwing } }',
      /^3:\d+ shelf\.a\.reserved\.conversion: .*accepted 16 figures/,
    ],
    ['a piece that is one word', 'a: motor', /^3:\d+ shelf\.a: piece is a group of lines; found «motor»/],
  ])('says of %s where it stands, what was found and what is accepted', (_, line, wanted) => {
    expect(said(shelf(line))[0]).toMatch(wanted)
  })
  it('notes the same serial number twice, a paid price with a last day, and a record nobody knows; none of them stops it', () => {
    const w = readWorkshop(
      shelf('a: { what: x, serial: 3 }', 'b: { what: x, serial: 3 }', 'c: { part: no-such@1, price-is: paid, quote-until: 2026-05-01 }'),
      { lookUps: { parts: () => undefined } },
    )
    expect(w.issues.map(i => [i.path, i.harm])).toEqual([
      ['shelf.b.serial', 'note'],
      ['shelf.c.part', 'note'],
      ['shelf.c.quote-until', 'note'],
    ])
    expect(isReadable(w)).toBe(true)
  })
  it('of a newer program, without its schema, or that is none gives one clear message', () => {
    expect(said('schema: 2\nbays: 3\n')).toEqual(['1:9 schema: this file is schema 2; this Ampwright reads up to 1: update Ampwright'])
    expect(said('shelf:\n')).toEqual(['1:1 schema: the file does not say which schema it is written in; accepted a first line `schema: 1`'])
    expect(said('a: [').length).toBeGreaterThan(0)
    expect(said('schema: 1\ncar: Wren\n')[0]).toMatch(/^2:1 car: unknown key; found «car»; accepted workshop, shelf/)
  })
  it('keeps its bytes outside an edit', () => {
    const edited = applyEdits(SAMPLE, [
      { path: 'shelf.motor-saloon.place', now: 'bench' },
      { path: 'shelf.dc-dc-2300.reserved', now: null },
    ])
    expect(edited.ok && edited.text).toBe(
      SAMPLE.replace('place: rack A, floor', 'place: bench').replace('    reserved: { car: Wren hatchback }\n', ''),
    )
  })
  it('never throws, whatever it holds', () => {
    const word = fc.oneof(
      fc.string({ maxLength: 12 }),
      fc.constantFrom('part', 'price', '12 €', '{', '}', '[', '__proto__', 'note', '|', ':'),
    )
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(6), word, word), { maxLength: 8 }), lines => {
        const text = `schema: 1\nshelf:\n${lines.map(([n, a, b]) => `${' '.repeat(n)}${a}: ${b}`).join('\n')}\n`,
          w = readWorkshop(text)
        for (const i of w.issues) expect(i.line).toBeGreaterThan(0)
        for (const p of w.shelf) expect(Number.isFinite(p.price?.value ?? 0)).toBe(true)
        if (!w.issues.some(isError)) for (const p of w.shelf) expect(p.part ?? p.what).toBeDefined()
      }),
      { numRuns: runs(4000) },
    )
  })
})
