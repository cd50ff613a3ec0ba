import { isSound, readText, type SoundReading, standingAt } from '@ampwright/conversion'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { textOf } from '../../../tests/cars.ts'
import { runs } from '../../../tests/counts.ts'
import { merge } from './merge.ts'

const TEXT = `schema: 1
car: Wren
# a word on the car
donor:
  wheelbase: 2310 mm
  weighing: { front-left: 200 kg, front-right: 201 kg }
pack:
  boxes:
    rear: { x: 1 m, y: 0 m }
    front:
      x: 2 m
`
const read = (text: string): SoundReading => {
  const reading = readText(text)
  if (!isSound(reading)) throw new Error(reading.issues[0]?.what)
  return reading
}
const seen = (text: string, path: string) => standingAt(read(text), path)

describe('a batch of edits on a text that went on', () => {
  it('joins changes of different places, and touches nothing else', () => {
    const theirs = TEXT.replace('2310 mm', '2312 mm'),
      merged = merge(theirs, [{ path: 'donor.weighing.front-left', was: '200 kg', now: '202 kg' }])
    expect(merged.ok && merged.text).toBe(theirs.replace('200 kg', '202 kg'))
  })
  it('clashes where both changed the same, and says both values and what was seen', () => {
    const theirs = TEXT.replace('2310 mm', '2312 mm')
    expect(merge(theirs, [{ path: 'donor.wheelbase', was: '2310 mm', now: '2309 mm' }])).toEqual({
      ok: false,
      clashes: [{ path: 'donor.wheelbase', yours: '2309 mm', theirs: '2312 mm', was: '2310 mm' }],
    })
  })
  it('is content where both changed the same to the same', () => {
    const theirs = TEXT.replace('2310 mm', '2312 mm')
    expect(merge(theirs, [{ path: 'donor.wheelbase', was: '2310 mm', now: '2312 mm' }])).toMatchObject({
      ok: true,
      text: theirs,
      edits: [],
    })
  })
  it('clashes as a whole: what does not clash is not made either', () => {
    const theirs = TEXT.replace('2310 mm', '2312 mm'),
      edits = [
        { path: 'car', was: 'Wren', now: 'Wren two' },
        { path: 'donor.wheelbase', was: '2310 mm', now: '2309 mm' },
      ]
    const merged = merge(theirs, edits)
    expect(!merged.ok && 'clashes' in merged && merged.clashes).toHaveLength(1)
  })
  it('clashes where a group is taken away that somebody added to, and takes it away where nobody did', () => {
    const was = seen(TEXT, 'pack.boxes.rear'),
      edits = [{ path: 'pack.boxes.rear', was, now: null }]
    expect(merge(TEXT, edits)).toMatchObject({ ok: true })
    expect(merge(TEXT.replace('y: 0 m', 'y: 0 m, mass: 3 kg'), edits)).toMatchObject({
      ok: false,
      clashes: [{ path: 'pack.boxes.rear', theirs: '{ x: 1 m, y: 0 m, mass: 3 kg }' }],
    })
  })
  it('clashes where something is added to a group that somebody took away, when the text that was seen is known', () => {
    const theirs = TEXT.replace('    rear: { x: 1 m, y: 0 m }\n', ''),
      edits = [{ path: 'pack.boxes.rear.mass', was: null, now: '3 kg' }]
    expect(merge(theirs, edits, TEXT)).toMatchObject({ ok: false, clashes: [{ path: 'pack.boxes.rear', theirs: null }] })
    expect(merge(TEXT, edits, TEXT)).toMatchObject({ ok: true })
  })
  it('may go on within what it wrote itself', () => {
    const edits = [
      { path: 'pack.boxes.rear', was: seen(TEXT, 'pack.boxes.rear'), now: { x: '3 m' } },
      { path: 'pack.boxes.rear.x', was: '1 m', now: '4 m' },
      { path: 'pack.boxes.mid.x', was: null, now: '5 m' },
      { path: 'pack.boxes.mid.y', was: null, now: '6 m' },
    ]
    const merged = merge(TEXT, edits)
    expect(merged.ok && [seen(merged.text, 'pack.boxes.rear.x'), seen(merged.text, 'pack.boxes.mid.y')]).toEqual(['4 m', '6 m'])
  })
  it.each(['', '..', 'a..b', '"', 'donor.'])('refuses %j, which is no path, whatever it wants there', path => {
    for (const now of [null, '1 m', ''])
      expect(merge(TEXT, [{ path, was: null, now }])).toMatchObject({ ok: false, problem: { what: 'this is not a path' } })
  })
  it('refuses what cannot be written, and leaves nothing half done', () => {
    expect(merge(TEXT, [{ path: 'car', was: 'Wren', now: 'a\u0000b' }])).toMatchObject({ ok: false })
    expect(merge(TEXT, [{ path: 'car.name', was: null, now: 'a' }])).toMatchObject({ ok: false })
    expect(merge(`${TEXT}\n\tx`, [{ path: 'car', was: 'Wren', now: 'a' }])).toMatchObject({ ok: false })
  })
})

describe('two windows', () => {
  const text = textOf('lapwing')
  const places = (() => {
    const out: string[] = []
    const walk = (node: ReturnType<typeof read>['tree'], path: string): void =>
      node.entries.forEach(({ key, node: below }) =>
        below.kind === 'group'
          ? walk(below, `${path}${key}.`)
          : below.kind === 'value' && /^[a-z-]+$/.test(key) && out.push(`${path}${key}`),
      )
    walk(read(text).tree, '')
    return out
  })()
  it('come to the same, whoever is first, where they change different places', () =>
    fc.assert(
      fc.property(
        fc.shuffledSubarray(places, { minLength: 2, maxLength: 5 }),
        fc.nat(5),
        fc.infiniteStream(fc.nat(99)),
        (chosen, at, numbers) => {
          const edits = chosen.map(path => ({ path, was: seen(text, path), now: `${numbers.next().value} kg` })),
            [mine, yours] = [edits.slice(0, at), edits.slice(at)]
          const both = (first: typeof mine, second: typeof mine): string => {
            const one = merge(text, first)
            if (!one.ok) throw new Error('refused')
            const two = merge(one.text, second)
            if (!two.ok) throw new Error('refused')
            return two.text
          }
          expect(both(mine, yours)).toBe(both(yours, mine))
        },
      ),
      { numRuns: runs(100) },
    ))
  it('lose no change: what the second wants where the first changed is made or said, never dropped', () =>
    fc.assert(
      // No part weighs so much: what stands there already would be no change.
      fc.property(fc.constantFrom(...places), fc.integer({ min: 901, max: 910 }), fc.integer({ min: 901, max: 910 }), (path, a, b) => {
        const was = seen(text, path),
          one = merge(text, [{ path, was, now: `${a} kg` }])
        if (!one.ok) throw new Error('refused')
        const two = merge(one.text, [{ path, was, now: `${b} kg` }])
        if (a === b) expect(two).toMatchObject({ ok: true, text: one.text })
        else expect(two).toMatchObject({ ok: false, clashes: [{ path, yours: `${b} kg`, theirs: `${a} kg`, was }] })
      }),
      { numRuns: runs(400) },
    ))
})
