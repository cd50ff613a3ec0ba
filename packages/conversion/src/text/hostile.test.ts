import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { applyEdit } from './edit.ts'
import { MAX_DEPTH, MAX_ISSUES } from './limits.ts'
import { composed } from './pieces.ts'
import { isSound, readText } from './read.ts'

const FULL = 1_990_000
const times = (count: number, line: (i: number) => string): string => Array.from({ length: count }, (_, i) => line(i)).join('')

/** An alias bomb of the usual kind: ten lists, each of ten references to the one before. */
const BOMB = times(10, i => `l${i}: &l${i} [${i === 0 ? 'x' : times(10, () => `*l${i - 1}, `)}]\n`)

/** Files that must be refused, or said to be wrong, at once. */
const REFUSED: Record<string, string | Uint8Array> = {
  'open brackets': `a: ${'['.repeat(FULL)}`,
  'a short file of open brackets': '['.repeat(6000),
  'open brackets on lines of their own': `a:\n${times(6000, () => ' [\n')}`,
  'maps in maps': '{a: '.repeat(FULL / 4),
  'a stair of indentation': times(1500, i => `${' '.repeat(i)}a:\n`),
  'keys on one line': 'a: '.repeat(FULL / 3),
  'list marks on one line': '- '.repeat(FULL / 2),
  'question marks on one line': '? '.repeat(FULL / 2),
  'an alias bomb': BOMB,
  '50 MB': 'a: 1\n'.repeat(10_000_000),
  '50 MB of bytes': new Uint8Array(50_000_000),
  'nothing but NUL': '\u0000'.repeat(FULL),
  'a NUL in a value': 'a: 1\u00002\n',
  'keys of the language': '__proto__: { a: 1 }\nconstructor: { prototype: { b: 1 } }\n',
  '30 000 keys': times(30_000, i => `k${i}: 1\n`),
  '30 000 keys between braces': `a: {${times(30_000, i => `k${i}: 1, `)}}`,
  '30 000 times one key': `a:\n${'  k: 1\n'.repeat(30_000)}`,
  '4 000 times one key': `a:\n${'  k: 1\n'.repeat(4000)}`,
  'a million values in a row': `a: [${'1, '.repeat(FULL / 3)}]`,
  'a row of references': `a: [${'*a, '.repeat(19_000)}]`,
  'anchors without end': `a: ${'&a '.repeat(FULL / 3)}`,
  'tags without end': `a: ${'!a '.repeat(FULL / 3)}`,
  'closing brackets': `a: ${'}'.repeat(FULL)}`,
  'quotes without end': `a: ${'"'.repeat(FULL)}`,
  'a quote that never closes': `a: "${'x\n '.repeat(FULL / 3)}`,
  'backslashes in an open quote': `a: "${'\\'.repeat(FULL)}`,
  'a quote opened on each line': 'a: "\n'.repeat(FULL / 5),
  'list items': '- a\n'.repeat(FULL / 4),
  documents: '---\n'.repeat(FULL / 4),
  directives: '%\n'.repeat(FULL / 2),
  'lines of rubbish': 'a\n'.repeat(FULL / 2),
  'indented lines of rubbish': `a: 1\n${' b\n'.repeat(FULL / 3 - 10)}`,
  commas: `a: [${','.repeat(19_000)}]`,
  'empty lines below a key': `a: 1\n${'\n'.repeat(FULL - 10)}`,
  'comments below a key': `a:\n${'  #\n'.repeat(FULL / 4 - 10)}  b: 1\n`,
  'lone surrogates': `a: ${'\ud800'.repeat(FULL / 3 - 10)}`,
  'bytes that are no UTF-8': new Uint8Array(FULL).fill(0xff),
  'a continuation byte alone': Uint8Array.of(0x61, 0x3a, 0x20, 0x80),
}

/** Files that are odd but right, and must be read. */
const READ: Record<string, string> = {
  'a value of almost 2 MB': `a: ${'x'.repeat(FULL)}`,
  'a quoted value of almost 2 MB': `a: "${'x\\n'.repeat(FULL / 3 - 10)}"`,
  'a note of almost 2 MB': `note: |\n${'  a\n'.repeat(FULL / 4 - 10)}`,
  'a note full of brackets': `note: |\n  ${'[{'.repeat(FULL / 4)}\n`,
  'blanks to the end': `a: 1\n${' '.repeat(FULL)}`,
  '5 000 keys': times(5000, i => `k${i}: 1\n`),
  '5 000 keys between braces': `a: {${times(4999, i => `k${i}: 1, `)}}`,
  'the deepest nesting': times(MAX_DEPTH, i => `${' '.repeat(i)}a:\n`),
  'the deepest nesting between braces': `a: ${'{a: '.repeat(MAX_DEPTH - 1)}1${'}'.repeat(MAX_DEPTH - 1)}`,
}

/** Calls something from this many calls further down the stack. */
const fromDepth = <T>(depth: number, call: () => T): T => (depth < 1 ? call() : fromDepth(depth - 1, call))

const collectGarbage: () => void = (() => {
  setFlagsFromString('--expose-gc')
  return runInNewContext('gc') as () => void
})()

/** Nothing here may take longer, on a slow machine with other work beside it; most take some milliseconds. */
const SECONDS = 10

describe('a hostile file', () => {
  it.each(Object.entries(REFUSED))('(%s) is refused in bounded time, with a bounded list of issues', (_, input) => {
    const start = performance.now()
    const reading = readText(input, 'hostile.yaml')
    expect((performance.now() - start) / 1000).toBeLessThan(SECONDS)
    expect(isSound(reading)).toBe(false)
    expect(reading.issues.length).toBeGreaterThan(0)
    expect(reading.issues.length).toBeLessThanOrEqual(MAX_ISSUES + 1)
    for (const issue of reading.issues) expect(JSON.stringify(issue).length).toBeLessThan(6000)
  })

  it.each(Object.entries(READ))('that is only odd (%s) is read in bounded time', (_, input) => {
    const start = performance.now()
    const reading = readText(input)
    expect((performance.now() - start) / 1000).toBeLessThan(SECONDS)
    expect(reading.issues).toEqual([])
    expect(isSound(reading)).toBe(true)
  })

  it('reaches no prototype', () => {
    readText(REFUSED['keys of the language'] ?? '')
    applyEdit('a: 1\n', { path: '__proto__.polluted', now: '1' })
    applyEdit('a: 1\n', { path: 'a', now: JSON.parse('{ "__proto__": "1" }') as Record<string, string> })
    expect(Object.getOwnPropertyNames(Object.prototype)).not.toContain('polluted')
    expect(readText('toString: 1\nhasOwnProperty: 2\n').tree?.entries.size).toBe(2)
  })
})

describe('the same file a hundred times, from different depths of the stack', () => {
  it.each(Object.entries({ ...REFUSED, ...READ }))(
    '%s: gives the same answer each time, and memory stays flat',
    (_, input) => {
      const answer = readText(input).issues
      // A file that is read at once is read four times as often in the short run.
      const count = Math.min(100, input.length < 15_000 ? 4 * runs(100) : runs(100))
      collectGarbage()
      const before = process.memoryUsage().heapUsed
      for (let i = 0; i < count; i++) expect(fromDepth((8000 * i) / count, () => readText(input)).issues).toEqual(answer)
      collectGarbage()
      expect((process.memoryUsage().heapUsed - before) / 1e6).toBeLessThan(20)
    },
    600_000,
  )

  it('is survived even where the stack is almost used up: the file is read, refused with an issue, or the caller runs out of stack', () => {
    const outcomes = new Set<string>()
    const deepest = READ['the deepest nesting between braces'] ?? ''
    let above = 0
    /** Goes down until the stack overflows, then reads the file every now and then on the way up. */
    const dig = (): void => {
      try {
        dig()
      } catch (error) {
        if (!(error instanceof RangeError)) throw error
      }
      if (above++ % 20 > 0) return
      try {
        outcomes.add(isSound(readText(deepest)) ? 'read' : 'refused')
      } catch (error) {
        if (!(error instanceof RangeError)) throw error
        outcomes.add('out of stack')
      }
    }
    dig()
    expect(outcomes).toContain('read')
    expect(outcomes).toContain('out of stack')
  })
})

describe('the wall behind the scan', () => {
  it('stops the library before its stack grows, even for text the scan never saw', () => {
    for (const text of [
      '['.repeat(6000),
      '{a: '.repeat(6000),
      '- '.repeat(6000),
      'a: '.repeat(6000),
      times(200, i => `${' '.repeat(i)}a:\n`),
    ]) {
      expect(composed(text, 1e9).refused).toBe('depth')
    }
    expect(composed(`a:\n${'  # c\n'.repeat(2000)}`, 1000).refused).toBe('pieces')
    expect(composed('\n'.repeat(2000), 1e9).refused).toBe('pieces')
  })

  it('is never reached by what the scan lets through', () => {
    const pieces = fc.constantFrom('[', '{', '{a: ', 'a: ', '- ', '? ', '"', "'", '\n', '\n ', '\n  ', '|\n', ']', '}', ',', ':', ' #', 'x')
    fc.assert(
      fc.property(fc.array(pieces, { minLength: 30, maxLength: 300 }), parts => {
        const said = readText(parts.join('')).issues.filter(issue => issue.what === 'the text nests too deep')
        for (const issue of said) expect(issue.found).toMatch(/^\d+ levels$/)
      }),
      { numRuns: runs(10_000) },
    )
  })
})
