import { applyEdits, readConversion } from '@ampwright/conversion'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, textOf } from '../../../../tests/cars.ts'
import { circuitEdits } from './lay-out.ts'

const edited = (text: string, edits: Parameters<typeof applyEdits>[1]): string => {
  const made = applyEdits(text, edits)
  if (!made.ok) throw new Error(made.problem.what)
  return made.text
}
const bare = (text: string): string => edited(text, [{ path: 'high-voltage', now: null }])
const laidOut = (text: string): string => edited(text, circuitEdits(readConversion(text).model))
const SHAPE = ['circuit-wired', 'both-poles-switched', 'box-has-own-fuse', 'disconnect-breaks-string'] as const
const outcomes = (text: string) =>
  assessText(text)
    .assessment.findings.filter(f => (SHAPE as readonly string[]).includes(f.rule))
    .map(f => [f.rule, f.outcome])

describe('a circuit laid out for a car', () => {
  it.each(CARS)('%s: hangs together, whole, with both poles switched, fuses and disconnect; what it rests on is asked for', car => {
    const text = laidOut(bare(textOf(car))),
      found = outcomes(text)
    expect(new Set(found.map(f => f[0]))).toEqual(new Set(SHAPE))
    expect(found.filter(f => f[1] !== 'sound')).toEqual([])
    const { findings } = assessText(text).assessment
    expect(findings.filter(f => f.rule === 'precharge-there').map(f => f.outcome)).toEqual(['unanswered'])
    expect(findings.filter(f => f.stage === 'high voltage' && f.outcome === 'failing')).toEqual([])
  })
  it('takes main fuse and contactor over as the pack says them', () => {
    const { highVoltage } = readConversion(laidOut(bare(textOf('lapwing')))).model
    expect(highVoltage.parts['fuse-tank']).toMatchObject({ kind: 'fuse', rating: { value: 250 }, voltage: { value: 500 } })
    expect(highVoltage.parts['main-minus']).toMatchObject({ kind: 'contactor', current: { value: 250 } })
    expect(highVoltage.parts['fuse-dc-dc']).toMatchObject({ rating: { gap: true } })
  })
  it('is whole however many boxes there are, and whatever they are called', () => {
    const base = bare(textOf('lapwing'))
    const name = fc.constantFrom('sensor', 'inverter', 'precharge', 'plus-bar', 'charger', 'a', 'b', 'c', 'd')
    fc.assert(
      fc.property(fc.uniqueArray(name, { minLength: 1, maxLength: 6 }), names => {
        const text = edited(base, [
          { path: 'fit.bodies', now: null },
          { path: 'fit.handles', now: null },
          { path: 'pack.salvage', now: null },
          ...['front', 'tank', 'boot'].map(box => ({ path: `pack.boxes.${box}`, now: null })),
          ...names.map(box => ({ path: `pack.boxes.${box}`, now: { modules: '2' } })),
        ])
        expect(outcomes(laidOut(text)).filter(f => f[1] !== 'sound')).toEqual([])
      }),
      { numRuns: 12 },
    )
  })
  it('says why it cannot be laid out', () => {
    const of = (edits: Parameters<typeof applyEdits>[1]) => () => circuitEdits(readConversion(edited(textOf('lapwing'), edits)).model)
    expect(of([])).toThrow(/describes a circuit already/)
    expect(
      of([
        { path: 'high-voltage', now: null },
        { path: 'pack.strings', now: '2' },
      ]),
    ).toThrow(/pack\.strings: found 2/)
    expect(() => circuitEdits(readConversion('schema: 1\n').model)).toThrow(/pack\.boxes has no box/)
    expect(() => circuitEdits(readConversion('schema: 1\npack:\n  boxes:\n    a: { modules: 4 }\n').model)).toThrow(/drive\.units/)
  })
})
