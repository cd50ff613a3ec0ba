import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CARS, textOf } from '../../../../tests/cars.ts'
import { runs } from '../../../../tests/counts.ts'
import { readableTexts } from '../../../../tests/readable-texts.ts'
import { applyEdits, type Edit } from './edit.ts'
import { editsBetween } from './edits-between.ts'
import { isSound, readText, type SoundReading } from './read.ts'
import { holdsAlready, standingAt, stands } from './standing.ts'

const sound = (text: string): SoundReading => {
  const reading = readText(text)
  if (!isSound(reading)) throw new Error(reading.issues[0]?.what)
  return reading
}

describe('the edits between two texts', () => {
  it('are none where only comments, layout and order differ', () => {
    expect(editsBetween(sound('# a\nx: 1 m\ny: 2 m\n'), sound('y:   2 m # b\n\nx: "1 m"\n'))).toEqual([])
  })
  it('are none where a note of one line is written as a value', () => {
    expect(editsBetween(sound('note: |\n  two lines\n'), sound('note: two lines\n'))).toEqual([])
  })
  it('name the place, what stood there and what stands there now', () => {
    const before = sound('pack:\n  boxes:\n    rear: { mass: 12 kg, x: 1 m }\ncar: Wren\n'),
      after = sound('pack:\n  boxes:\n    rear: { mass: 13 kg }\n    front: { mass: 2 kg, at: [1 m, 2 m] }\n')
    expect(editsBetween(before, after)).toEqual([
      { path: 'pack.boxes.rear.mass', now: '13 kg', was: '12 kg' },
      { path: 'pack.boxes.rear.x', now: null, was: '1 m' },
      { path: 'pack.boxes.front.mass', now: '2 kg', was: null },
      { path: 'pack.boxes.front.at', now: ['1 m', '2 m'], was: null },
      { path: 'car', now: null, was: 'Wren' },
    ])
  })
  it('turn each sample into each other sample', () => {
    // In the short run each into the next one only.
    for (const [i, a] of CARS.entries())
      for (const b of runs(20) === 20 ? CARS : [CARS[(i + 1) % CARS.length] as (typeof CARS)[number]]) {
        const before = sound(textOf(a)),
          after = sound(textOf(b)),
          applied = applyEdits(before.text, editsBetween(before, after))
        expect(applied.ok && editsBetween(sound(applied.text), after)).toEqual([])
      }
  })
  it('turn any text into any other, or the edit is refused by name; what was seen stood there', () =>
    fc.assert(
      fc.property(readableTexts, readableTexts, (x, y) => {
        const before = sound(x),
          after = sound(y),
          edits = editsBetween(before, after)
        for (const { path, was } of edits) if (was !== null) expect(stands(before, path, was)).toBe(true)
        const applied = applyEdits(x, edits)
        if (!applied.ok) {
          expect(applied.problem.path).not.toBe('')
          return
        }
        expect(editsBetween(sound(applied.text), after)).toEqual([])
        for (const { path, now } of edits.slice(-1)) expect(holdsAlready(sound(applied.text), path, now)).toBe(true)
      }),
      { numRuns: runs(2000) },
    ))
})

describe('what stands at a place', () => {
  const reading = sound(
    'a: 1 m\nb: { x: 1 m, y: 2 m }\nc: [1 m, 2 m]\nd:\ne:\n  note: |\n    one\n    two\nf:\n  x: 1 m # here\n  y: 2 m\n',
  )
  it('is the value, the row, the text of the note or of the group, or nothing', () => {
    const seen = (path: string): unknown => standingAt(reading, path)
    expect([seen('a'), seen('b'), seen('c'), seen('d')]).toEqual(['1 m', '{ x: 1 m, y: 2 m }', ['1 m', '2 m'], ''])
    expect([seen('e.note'), seen('f'), seen('f.z'), seen('a.b.c'), seen('..')]).toEqual([
      'one\ntwo',
      'x: 1 m # here\n  y: 2 m',
      null,
      null,
      null,
    ])
  })
  it.each(['a', 'b', 'b.x', 'c', 'd', 'e', 'e.note', 'f', 'f.z', 'q'])('reads back as seen at %s', path =>
    expect(stands(reading, path, standingAt(reading, path))).toBe(true),
  )
  it('knows a group by its named values too, in any order, and an empty place as nothing', () => {
    expect(stands(reading, 'b', { y: '2 m', x: '1 m' })).toBe(true)
    expect(stands(reading, 'b', { y: '2 m' })).toBe(false)
    expect([stands(reading, 'd', null), stands(reading, 'q', ''), stands(reading, 'a', null)]).toEqual([true, true, false])
  })
  it('is not mistaken for something else', () => {
    const others: Edit[] = [
      { path: 'a', now: '2 m' },
      { path: 'c', now: ['1 m'] },
      { path: 'f', now: { x: '1 m' } },
      { path: 'q', now: '1 m' },
    ]
    for (const { path, now } of others) expect([stands(reading, path, now), holdsAlready(reading, path, now)]).toEqual([false, false])
  })
})
