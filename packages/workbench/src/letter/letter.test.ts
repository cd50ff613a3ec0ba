import { applyEdits, type Conversion, type Edit, isUsable, readConversion } from '@ampwright/conversion'
import { type AnyValue, type Assessment, type Fact, isFigure, nameOf, RULE_SETS } from '@ampwright/engine'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, lookUps, textOf, typedFacts } from '../../../../tests/cars.ts'
import { runs } from '../../../../tests/counts.ts'
import { shown } from '../shown.ts'
import { enquiryLetter, type Letter, type Recipient } from './letter.ts'
import { letterText, NOT_KNOWN, plainText } from './letter-text.ts'
import type { LetterLine, Piece } from './pieces.ts'

const TO: readonly Recipient[] = ['inspector', 'insurer']
const SYSTEMS = ['metric', 'us', 'uk'] as const
const UNWRITTEN = { date: '', by: '', recipient: '', about: '' }
type Judged = { readonly conversion: Conversion; readonly assessment: Assessment }
const judged = (text: string): Judged => assessText(text, { bands: true })
const edited = (text: string, edits: readonly Edit[]): string => {
  const made = applyEdits(text, edits)
  if (!made.ok) throw new Error(made.problem.what)
  return made.text
}

const lines = (l: Letter): readonly LetterLine[] => l.parts.flatMap(p => p.lines)
function piecesOf(line: LetterLine): readonly Piece[] {
  if (line.is === 'row') return [...line.label, ...line.cells.flatMap(c => c ?? [])]
  if (line.is === 'rule') return [line.asks, line.says, line.source, ...line.stands.flat()]
  return line.is === 'open' ? [] : line.pieces
}
const pieces = (l: Letter): readonly Piece[] => [...l.subject, ...lines(l).flatMap(piecesOf)]
const own = (l: Letter): readonly string[] => pieces(l).filter(p => typeof p === 'string')
const said = (l: Letter) => pieces(l).filter(p => typeof p === 'object' && 'name' in p)
const quotes = (l: Letter): readonly string[] => pieces(l).flatMap(p => (typeof p === 'object' && 'quoted' in p ? [p.quoted] : []))

/** Every value of an assessment by its name: figures, facts, rows of the rule set that findings are held against. */
function values({ conversion, assessment: a }: Judged): ReadonlyMap<string, readonly AnyValue[]> {
  const met = a.findings.flatMap(f => [f.found, f.required?.limit, ...Object.values(f.slots)]).filter(v => v !== undefined)
  const out = new Map<string, AnyValue[]>()
  // Limits of one row may differ from axle to axle.
  for (const v of [...a.figures.values(), ...(conversion.facts as readonly Fact[]), ...met] as readonly AnyValue[])
    out.set(nameOf(v), [...(out.get(nameOf(v)) ?? []), v])
  return out
}

describe('the enquiry before the first part is bought', () => {
  it.each(CARS)('says no number of %s that is not a figure or fact of its assessment, in the units of the reader', car => {
    const one = judged(textOf(car)),
      all = values(one)
    for (const to of TO)
      for (const system of SYSTEMS) {
        const letter = enquiryLetter(one.assessment, one.conversion, to, system)
        for (const p of said(letter)) {
          const texts = (all.get(p.name) ?? []).map(v =>
            shown(v, system, isFigure(v) ? one.assessment.halves.get(p.name) : (v as Fact).half),
          )
          expect(texts, p.name).toContain(p.text.replace(/ \(assumed\)$/, ''))
        }
        expect(own(letter).filter(s => /\d/.test(s))).toEqual([])
      }
  })
  it.each(CARS)('quotes for %s only names given in the file, labels, and what rule set and rules say', car => {
    const one = judged(textOf(car)),
      { findings, figures, tables } = one.assessment
    const sources = [
      textOf(car),
      ...findings.flatMap(f => [f.title, f.item ?? '', ...Object.values(f.slots).map(v => String(v?.value))]),
      ...[...figures.values()].map(f => f.label),
      ...RULE_SETS.map(s => s.name),
      'Ampwright',
    ]
    const numbers = [...(tables.get('brief.requirements')?.rows ?? [])]
      .flatMap(r => [r.name, ...Object.values(r.cells).map(String)])
      .join(' ')
    // Rows of a rule set are put together from their cells: each number in them stands in one.
    for (const to of TO)
      for (const q of quotes(enquiryLetter(one.assessment, one.conversion, to)))
        if (!sources.some(s => s.includes(q))) for (const n of q.match(/\d+(?:\.\d+)?/g) ?? []) expect(numbers, `${q}: ${n}`).toContain(n)
  })
  it.each([...CARS, 'an empty file'] as const)('calls nothing of %s safe or approved, and says that the tool approves nothing', car => {
    const { conversion, assessment } = judged(car === 'an empty file' ? '' : textOf(car))
    for (const to of TO) {
      const letter = enquiryLetter(assessment, conversion, to)
      for (const s of own(letter)) expect(s).not.toMatch(/\b(safe|safely|approved|guaranteed|permissible)\b/i)
      const text = letterText(letter, UNWRITTEN)
      expect(text).not.toMatch(/\b(is|are|as|be) (safe|approved|guaranteed)\b/i)
      expect(text).toContain('Ampwright, which laid out this letter, informs; it does not approve.')
      expect(text).not.toMatch(/undefined|NaN|\[object|\{[a-z]/)
    }
  })
  it('of an empty file says of everything that it is not known yet, and no number at all', () => {
    const { conversion, assessment } = judged('schema: 1\n')
    for (const to of TO) {
      const letter = enquiryLetter(assessment, conversion, to)
      expect(letterText(letter, UNWRITTEN).replace(/^\d\. /gm, '')).not.toMatch(/\d/)
      expect(said(letter)).toEqual([])
      const open = lines(letter).filter(l => l.is === 'open')
      expect(open.length).toBeGreaterThan(20)
      expect(letterText(letter, UNWRITTEN)).toContain(`- ${NOT_KNOWN}: power of the old engine`)
    }
  })
  it('never makes a number of a fact that is taken out: it is an open line or its row is gone', () => {
    const text = textOf('lapwing'),
      { conversion } = judged(text),
      paths = typedFacts(conversion)
        .map(f => f.path)
        .filter(p => /^(brief|donor|pack)\./.test(p) && !p.includes('salvage') && !p.includes('coast-down'))
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.constantFrom(...TO), (path, to) => {
        const without = edited(text, [{ path, now: null }])
        // What another line names cannot go: the file would not be read.
        fc.pre(isUsable(readConversion(without, { lookUps })))
        // Without bands: which facts a letter names hangs on none of them.
        const one = assessText(without),
          letter = enquiryLetter(one.assessment, one.conversion, to)
        expect(said(letter).map(p => p.name)).not.toContain(path)
        expect(said(letter).filter(p => !/\S/.test(p.text) || /undefined|NaN|–$/.test(p.text))).toEqual([])
      }),
      { numRuns: runs(200) },
    )
  }, 600_000)
  it('asks the inspector about what the plan does not hold, and leaves out what the letter itself will answer', () => {
    const text = edited(textOf('lapwing'), [{ path: 'brief.asked.inspector', now: null }]),
      { conversion, assessment } = judged(text),
      letter = enquiryLetter(assessment, conversion, 'inspector')
    const questions = lines(letter).flatMap(l => (l.is === 'question' ? [plainText(l.pieces)] : []))
    expect(questions.some(q => q.startsWith('Every load case stays within the permitted masses (two-up, rear axle).'))).toBe(true)
    expect(questions.every(q => q.endsWith('?'))).toBe(true)
    expect(questions.filter(q => q.includes('agreed in writing before'))).toEqual([])
  })
  it('holds each axle, laden, against what is permitted', () => {
    const { conversion, assessment } = judged(textOf('lapwing')),
      text = letterText(enquiryLetter(assessment, conversion, 'inspector'), UNWRITTEN).replaceAll('\u202f', ' ')
    expect(text).toMatch(/^- Laden two-up, rear axle: after 732\.7 ± 5\.3 kg; permitted 710 kg$/m)
    expect(text).toMatch(/^- Peak power: before 92 kW; after 100 kW$/m)
    expect(text).toMatch(/^- Top speed: before 195 km\/h; after 160\.4 ± 2\.1 km\/h$/m)
  })
  it('asks about a demand that only the office can answer in the words of its row', () => {
    const text = edited(textOf('wren'), [{ path: 'brief.rules', now: 'de' }]),
      { conversion, assessment } = judged(text),
      letter = enquiryLetter(assessment, conversion, 'inspector')
    expect(lines(letter).flatMap(l => (l.is === 'question' ? [plainText(l.pieces)] : []))).toContainEqual(
      expect.stringMatching(
        /^How many or how different cars one approval covers: .*20 % of .* Does it concern this car, and can it be met\?$/,
      ),
    )
  })
  it.each(RULE_SETS.map(s => s.id))('can be written under the rule set %s', rules => {
    const one = assessText(edited(textOf('badger'), [{ path: 'brief.rules', now: rules }]))
    for (const to of TO) {
      const letter = enquiryLetter(one.assessment, one.conversion, to)
      expect(own(letter).filter(s => /\d/.test(s))).toEqual([])
      expect(letterText(letter, UNWRITTEN)).not.toMatch(/undefined|NaN|\[object|\{[a-z]/)
    }
  })
  it('carries day and names as the person wrote them, and a line to write on where not', () => {
    const { conversion, assessment } = judged(textOf('wren')),
      letter = enquiryLetter(assessment, conversion, 'insurer')
    const written = letterText(letter, {
      date: '2026-03-04',
      by: 'A. Builder',
      recipient: 'Office of the town',
      about: 'registration W 12',
    })
    expect(written).toMatch(/^To: Office of the town\nFrom: A\. Builder\nDate: 2026-03-04\nAbout: registration W 12\n/)
    expect(letterText(letter, UNWRITTEN)).toMatch(/^To: _+\nFrom: _+\nDate: _+\n/)
    expect(structuredClone(letter)).toEqual(letter)
  })
  it('calls parts as the trade does, and says what the donor car may draw', () => {
    const { conversion, assessment } = judged(textOf('otter')),
      written = letterText(enquiryLetter(assessment, conversion, 'inspector'), UNWRITTEN)
    expect(written).toMatch(/DC-DC, 4/)
    expect(written).not.toMatch(/dc-dc|junction-boxes|propshaft-and-transfer/)
    expect(written).toMatch(/Braked trailer.*as before, if you agree/)
    const wren = judged(textOf('wren'))
    expect(letterText(enquiryLetter(wren.assessment, wren.conversion, 'inspector'), UNWRITTEN)).not.toMatch(/Braked trailer/)
  })
  it('tells an insurer power, mass and value before and after, who converts, where the battery sits, where it is charged and what is altered', () => {
    const { conversion, assessment } = judged(textOf('lapwing')),
      letter = enquiryLetter(assessment, conversion, 'insurer'),
      written = letterText(letter, UNWRITTEN)
    expect(letter.parts.map(p => p.heading)).toEqual(
      expect.arrayContaining([
        'What is taken out',
        'What is put in',
        'Before and after',
        'What it is worth',
        'The battery',
        'Where it is charged',
      ]),
    )
    for (const words of [
      /Peak power/,
      /Mass in running order/,
      /value of the donor car/,
      /Work done by/,
      /Box .*, place/,
      /Brake assist/,
      /Body and frame/,
    ])
      expect(written).toMatch(words)
  })
})
