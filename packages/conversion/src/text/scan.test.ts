import { describe, expect, it } from 'vitest'
import { formatIssue } from '../issue.ts'
import { MAX_BYTES, MAX_DEPTH, MAX_KEYS, scan } from './scan.ts'

const refusal = (input: Uint8Array | string): string => {
  const scanned = scan(input)
  return scanned.ok ? 'read' : scanned.problems.issues.map(formatIssue).join('\n')
}
const problems = (text: string): string[] => scan(text).problems.issues.map(formatIssue)
const nested = (depth: number): string => Array.from({ length: depth }, (_, i) => `${' '.repeat(i)}a:`).join('\n')

describe('the scan refuses', () => {
  it('what is larger than 2 MB, counted in bytes', () => {
    expect(refusal(`# ${'x'.repeat(MAX_BYTES - 2)}`)).toBe('read')
    expect(refusal(`# ${'x'.repeat(MAX_BYTES - 1)}`)).toMatch('too large')
    expect(refusal(`# ${'ä'.repeat(MAX_BYTES / 2)}`)).toMatch('too large')
    expect(refusal(`# ${'€'.repeat(MAX_BYTES / 3 + 1)}`)).toMatch('too large')
    expect(refusal(`# ${'😀'.repeat(MAX_BYTES / 4)}`)).toMatch('too large')
    expect(refusal(`# ${'😀'.repeat(MAX_BYTES / 4 - 1)}`)).toBe('read')
    expect(refusal(new Uint8Array(MAX_BYTES + 1))).toMatch('too large')
  })

  it('nesting deeper than 32, by indentation, by brackets and by both', () => {
    expect(refusal(nested(MAX_DEPTH))).toBe('read')
    expect(refusal(nested(MAX_DEPTH + 1))).toMatch(/^33:33 the text nests too deep; found 33 levels; accepted up to 32 levels$/)
    const braces = (depth: number): string => `a: ${'{ a: '.repeat(depth)}1${' }'.repeat(depth)}`
    expect(refusal(braces(MAX_DEPTH - 1))).toBe('read')
    expect(refusal(braces(MAX_DEPTH))).toMatch('nests too deep')
    expect(refusal(`${nested(20)}\n${' '.repeat(20)}${braces(12)}`)).toMatch('nests too deep')
    expect(refusal(`a:${' a:'.repeat(40)}`)).toMatch('nests too deep')
    expect(refusal(`${'- '.repeat(40)}a`)).toMatch('nests too deep')
  })

  it('more than 5 000 keys, in lines or between braces', () => {
    const keys = (count: number): string => Array.from({ length: count }, (_, i) => `k${i}: 1`).join('\n')
    expect(refusal(keys(MAX_KEYS))).toBe('read')
    expect(refusal(keys(MAX_KEYS + 1))).toMatch(/^5001:1 the text has too many keys/)
    expect(refusal(`a: { ${keys(MAX_KEYS).replaceAll('\n', ', ')} }`)).toMatch('too many keys')
  })

  it('control characters, lone carriage returns, halves of characters and hidden marks, saying where and how many', () => {
    expect(refusal('a: 1\nb: \u0000\u0007')).toBe(
      '2:4 a control character cannot be part of a text file; found U+0000 and 1 more like it; accepted printable characters, tabs and line ends',
    )
    expect(refusal('a: \u0085')).toMatch('U+0085')
    expect(refusal('a: 1\u2028b: 2')).toMatch('U+2028')
    expect(refusal('a: 1\rb: 2')).toMatch('1:5 a carriage return stands alone')
    expect(refusal('a: \ud800')).toMatch('half of a character stands alone; found U+D800')
    expect(refusal('a: \udc00\ud800')).toMatch('found U+DC00 and 1 more')
    expect(refusal('a: \ufeff')).toMatch('1:4 an invisible character')
    expect(refusal('\ufeff\ufeffa: 1')).toMatch('1:2 an invisible character')
  })

  it('bytes that are not UTF-8, saying which', () => {
    expect(refusal(Uint8Array.of(0x61, 0x0a, 0x62, 0xe4))).toBe(
      '2:2 byte 4 is not UTF-8 text; found byte 0xe4; accepted a text file saved as UTF-8',
    )
    expect(refusal(Uint8Array.of(0xff, 0xfe, 0x61, 0x00))).toMatch('the file is written in UTF-16')
  })

  it('what has a hundred mistakes, instead of listing them for ever', () => {
    const said = refusal('- a\n'.repeat(100_000)).split('\n')
    expect(said).toHaveLength(100)
  })
})

describe('the scan accepts', () => {
  it('brackets, colons and hashes in quotes, notes and comments without counting them', () => {
    const brackets = '['.repeat(50)
    expect(
      refusal(`a: "${brackets}"\nb: '${brackets}'\nc: x${brackets}\n# ${brackets}\nd: 1 # ${brackets}\nnote: |\n  ${brackets}\n`),
    ).toBe('read')
    expect(problems(`note: |\n  a: b: c\n - x\n  "open\n\t\ne: 1\n`)).toEqual([])
    expect(problems(`a: "x: y" # z: 1\nb: 'it''s: 1'\n"c: d": 12:30\ne: http://x\n`)).toEqual([])
  })

  it('a byte order mark, both line ends and bytes alike', () => {
    const text = '\ufeffdonor:\r\n  mass: 960 kg\nb: 1'
    const scanned = scan(new TextEncoder().encode(text))
    expect(scanned).toEqual(scan(text))
    expect(scanned).toMatchObject({
      ok: true,
      text,
      sections: [
        { from: 1, to: 24, line: 1 },
        { from: 24, to: 28, line: 3 },
      ],
    })
  })
})

describe('a line with a mistake', () => {
  it.each([
    ['a:\n\tb: 1', '2:1 a.b: a tab is used for indentation; accepted spaces'],
    ['a:\n  - 1', '2:3 a: this form of list is not read'],
    ['? a', '1:1 keys marked by ? are not read'],
    ['--- # x\na: 1', '1:1 a document mark has no place here'],
    ['a: 1\n...', '2:1 a document mark has no place here'],
    ['%YAML 1.2', '1:1 a directive has no place here'],
    ['a:\n  b: "x', '2:6 a.b: a quote is not closed on its line; found ""x"'],
    ['a: { b: 1\nc: 2', '1:4 a: a bracket is not closed on its line'],
    ['mass 960 kg', '1:1 a line needs a key, a colon and a value; found "mass 960 kg"'],
    ['mass:960 kg', '1:1 a colon needs a space behind it; found "mass:960 kg"; accepted "mass: 960 kg"'],
    ['a: b: c', '1:5 a: a second colon in one line'],
    ['  a: 1', '1:3 a: an indented line has no key above it'],
    ['a: 1\n  b: 2\n  c: 3', '2:3 a.b: this line is indented below "a", which has a value already'],
    ['a:\n  b: 1\n c: 2', '3:2 a.c: this line is not in line with the keys above it; found 1 space; accepted 2 spaces, as for "b"'],
  ])('%j is named once', (text, said) => {
    const found = problems(text)
    expect(found).toHaveLength(1)
    expect(found[0]).toMatch(said)
  })
})
