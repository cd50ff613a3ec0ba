import { describe, expect, it } from 'vitest'
import type { Change } from './change.ts'
import { isSound, readText } from './read.ts'
import { type Splice, spliceBetween } from './splice.ts'
import { tried } from './tried.ts'

const BEFORE = 'a:\n  x: 1\n  y: 2\nb: [1, 2]\nnote: |\n  one\n'

const outcome = (change: Change, after: string): string => {
  const before = readText(BEFORE)
  if (!isSound(before)) throw new Error('the text must be readable')
  const applied = tried(before, change, spliceBetween(BEFORE, after))
  return applied.ok ? 'accepted' : applied.problem.what
}

describe('a splice tried for an edit', () => {
  it('is accepted where exactly what the edit names is different', () => {
    expect(outcome({ path: 'a.x', now: '3' }, BEFORE.replace('x: 1', 'x: 3'))).toBe('accepted')
    expect(outcome({ path: 'a.x', now: null }, BEFORE.replace('  x: 1\n', ''))).toBe('accepted')
    expect(outcome({ path: 'a.x', key: 'z' }, BEFORE.replace('x: 1', 'z: 1'))).toBe('accepted')
    expect(outcome({ path: 'c.d', now: '1' }, `${BEFORE}c:\n  d: 1\n`)).toBe('accepted')
    expect(outcome({ path: 'note', now: 'two\nlines\n' }, BEFORE.replace('one', 'two\n  lines'))).toBe('accepted')
  })

  it.each<[string, Change, string]>([
    ['another value', { path: 'a.x', now: '3' }, BEFORE.replace('x: 1', 'x: 4')],
    ['another place', { path: 'a.x', now: '3' }, BEFORE.replace('y: 2', 'y: 3')],
    ['a second change', { path: 'a.x', now: '3' }, BEFORE.replace('x: 1\n  y: 2', 'x: 3\n  y: 3')],
    ['a further key', { path: 'a.x', now: '3' }, BEFORE.replace('x: 1', 'x: 3\n  z: 1')],
    ['a key lost', { path: 'a.x', now: '3' }, BEFORE.replace('x: 1\n  y: 2', 'x: 3')],
    ['another order', { path: 'a.x', now: '1' }, BEFORE.replace('x: 1\n  y: 2', 'y: 2\n  x: 1')],
    ['a value for a row', { path: 'b', now: '1, 2' }, BEFORE.replace('[1, 2]', '[1, 3]')],
    ['a row for a value', { path: 'a.x', now: '1' }, BEFORE.replace('x: 1', 'x: [1]')],
    ['nothing', { path: 'a.x', now: '3' }, BEFORE],
    ['a comment swallowed by a note', { path: 'note', now: 'one' }, BEFORE.replace('  one\n', '  one\n  # two\n')],
  ])('is refused where it makes %s', (_, change, after) => {
    expect(outcome(change, after)).toBe('this edit would change more than it names, or not what it names')
  })

  it('is refused where the text could no longer be read', () => {
    expect(outcome({ path: 'a.x', now: '3' }, BEFORE.replace('x: 1', 'x: "3'))).toMatch('leave the file unreadable: a quote is not closed')
  })

  it('must fit the text: otherwise the program is wrong, not the user', () => {
    const before = readText(BEFORE)
    const strange: Splice = { at: 0, out: 'zzz', in: '' }
    expect(() => isSound(before) && tried(before, { path: 'a', now: '1' }, strange)).toThrow('must fit')
  })
})
