import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseDocument } from 'yaml'
import { runs } from '../../../../tests/counts.ts'
import { readableTexts } from '../../../../tests/readable-texts.ts'
import { formatIssue } from '../issue.ts'
import { type Meaning, meaningOf } from './expected.ts'
import { readText } from './read.ts'
import { entryAt } from './tree.ts'

const issues = (text: string): string[] => readText(text, 'car.yaml').issues.map(formatIssue)
const meaning = (text: string): unknown => plain(meaningOf(readText(text).tree ?? fail(text)))
const plain = (of: Meaning): unknown => (of instanceof Map ? Object.fromEntries([...of].map(([key, value]) => [key, plain(value)])) : of)
const fail = (text: string): never => {
  throw new Error(`this should be readable: ${issues(text).join('\n')}`)
}

const CAR = [
  '# the demo',
  'donor:',
  '  mass: 1180 ± 10 kg (measured, corner scales 12 May)   # not 1180',
  '  red: "#a00"',
  "  it's: 'it''s'",
  'pack:',
  '  front: { x: 60 mm, "y": , z: "0,5 m" }',
  '  gears: [3.21, 1.95, "1,36"]',
  '  empty: {}',
  '  note: |',
  '    two lines # no comment',
  '',
  '      the second further in',
  '',
  'trips:',
].join('\n')

describe('a file', () => {
  it('is read as groups, values, rows and notes, by the text as typed', () => {
    expect(meaning(CAR)).toEqual({
      donor: { mass: '1180 ± 10 kg (measured, corner scales 12 May)', red: '#a00', "it's": "it's" },
      pack: {
        front: { x: '60 mm', y: '', z: '0,5 m' },
        gears: ['3.21', '1.95', '1,36'],
        empty: '',
        note: 'two lines # no comment\n\n  the second further in',
      },
      trips: '',
    })
  })

  it('keeps what the language would take for numbers, dates, truth or nothing', () => {
    const typed = { a: '1.0', b: 'yes', c: '2024-05-12', d: '~', e: '0x1F', f: 'null', g: '.inf', h: '1_000' }
    expect(
      meaning(
        Object.entries(typed)
          .map(
            ([key, value]) => `${key}: ${value}
`,
          )
          .join(''),
      ),
    ).toEqual(typed)
  })

  it('knows the place of every key and value', () => {
    const { tree } = readText(CAR)
    const z = tree && entryAt(tree, ['pack', 'front', 'z'])
    const at = CAR.indexOf('z: "')
    expect(z?.keyAt).toEqual({ line: 7, column: 29, offset: at, end: at + 1 })
    expect(z?.node).toEqual({ kind: 'value', source: '0,5 m', quoted: true, at: { line: 7, column: 32, offset: at + 3, end: at + 10 } })
    const y = tree && entryAt(tree, ['pack', 'front', 'y'])
    expect(y?.node).toMatchObject({ source: '', quoted: false, at: { column: 26, offset: CAR.indexOf(' , z') } })
    const note = tree && entryAt(tree, ['pack', 'note'])?.node
    expect(CAR.slice(note?.at.offset, note?.at.end)).toMatch(/^\|\n[^]*further in$/)
    const group = tree && entryAt(tree, ['donor'])?.node
    expect(CAR.slice(group?.at.offset, group?.at.end)).toMatch(/^mass[^]*'it''s'$/)
  })

  it.each(['a: 1\n\t\nb: 2', '\t\na: 1', 'a: 1\n \t \n\n'])('may hold tabs in lines of nothing else: %j', text =>
    expect(issues(text)).toEqual([]),
  )
  it('may be empty, or hold only comments', () => {
    for (const text of ['', '\n', '# nothing', '\ufeff', '\ufeff# x\r\n', '  \n\t\n'])
      expect([issues(text), meaning(text)]).toEqual([[], ''])
  })

  it('keeps its columns behind a byte order mark', () => {
    expect(readText('\ufeffa: 1').tree?.entries.get('a')?.keyAt).toEqual({ line: 1, column: 1, offset: 1, end: 2 })
  })
})

describe('what does not belong to the small YAML', () => {
  it.each([
    ['a: &x 1', '1:4 a: anchors (&) are not read; found "&x"'],
    ['a:\n  b: *x', '2:6 a.b: references (*) are not read; found "*x"'],
    ['a: !!int 1', '1:4 a: tags (!) are not read; found "!!int"'],
    ['a: { b: *x }', '1:9 a: references (*) are not read'],
    ['a: { ? b: 1 }', '1:6 a: keys marked by ? are not read'],
    ['<<: { a: 1 }', '1:1 merge keys are not read'],
    ['__proto__: 1', '1:1 this word cannot be a key; found "__proto__"'],
    ['"\\u005f_proto__": 1', '1:1 this word cannot be a key; found "__proto__"'],
    ['a: { constructor: 1 }', '1:6 a: this word cannot be a key; found "constructor"'],
    ['a:\n  prototype:\n    b: 1', '2:3 a: this word cannot be a key; found "prototype"'],
    ['memo: |\n  x', '1:7 memo: text over several lines may stand only under the key `note`'],
    ['note: >\n  x', '1:7 note: a note is started by a single bar; found ">"'],
    ['note: |2\n    x', '1:7 note: a note is started by a single bar; found "|2"'],
    ['a: [[1], 2]', '1:5 a: a row holds only plain values; found "[1]"'],
    ['a: [{ b: 1 }]', '1:5 a: a row holds only plain values'],
    ['a: [b: 1]', '1:5 a: a row holds only plain values'],
    ['[a]: 1', '1:1 a colon without a plain key in front of it'],
    [': 1', '1:1 a colon without a plain key in front of it'],
    ['a: \n\t\n\nkey:', '2:1 a tab is used for indentation; accepted spaces'],
    ['a:\n  b:\n  \t\n  c: 1', '3:3 a tab is used for indentation; accepted spaces'],
    ['{ a: 1 }', '1:1 a line needs a key, a colon and a value'],
    ['a: "\\0"', '1:4 a: an escape stands for a character a value may not hold; found "\\u0000"'],
    ['a: "\\ud800"', '1:4 a: an escape stands for a character a value may not hold'],
  ])('%j is refused', (text, said) => {
    const found = issues(text)
    expect(found).toHaveLength(1)
    expect(found[0]?.replace('car.yaml:', '')).toContain(said)
  })
})

describe('a mistake the library finds', () => {
  it.each([
    ['a: @x', '1:4 a: a value cannot start with this character unless it is in quotes; found "@x"'],
    ['a: "x" y', '1:8 a: something stands behind the end of a value; found "y"'],
    ['a: "\\q"', '1:5 a: a backslash in double quotes starts an escape that is not known'],
    ['a: "x"#c', '1:7 a: a comment needs a space in front of it'],
    ['a: [1,,2]', '1:7 a: a comma too many'],
    ['a: { b: "x" c: 1 }', '1:13 a: a comma is missing between two entries'],
    ['a: }', '1:4 a: a closing bracket without an opening one'],
    ['note: | x\n  y', '1:9 note: something stands behind the bar that starts a note'],
    [`${'k'.repeat(1100)}: 1`, '1:1 a key is far too long'],
    ['a:\n  b: 1\n  c: { d: e: f }', '3:11 a.c: a comma is missing, or a value holds a colon'],
  ])('%j is said plainly, once', (text, said) => {
    const found = issues(text)
    expect(found).toHaveLength(1)
    expect(found[0]?.replace('car.yaml:', '')).toContain(said)
  })
})

describe('a comma', () => {
  it('that splits a value between braces is refused with what to write', () => {
    expect(issues('a: { x: 1,5 m }')).toEqual([
      'car.yaml:1:9 a.x: between braces a comma ends a value: a value that contains a comma must be quoted; found "1,5 m"; accepted x: "1,5 m"',
    ])
    expect(issues('a: { m: 12 kg (measured, scales, May), x: 1 }')[0]).toContain('accepted m: "12 kg (measured, scales, May)"')
    expect(issues('a: { x: 1, 5 m, y: 2, 5 m }')).toHaveLength(2)
    expect(issues('a: { b, c: 1 }')[0]).toContain('an entry between braces has no colon; found "b"')
    expect(issues('a: { b:1, c: 1 }')[0]).toContain('a colon needs a space behind it; found "b:1"; accepted "b: 1"')
  })

  it('between two figures of a row needs a space, so that none is split unseen', () => {
    expect(issues('a: [3,21, 1,95]')).toEqual([
      'car.yaml:1:5 a: a comma between two figures can be read in two ways; found "3,21"; accepted [3, 21] or ["3,21"]',
    ])
    expect(issues('a: [3, 21, "1,95",b,c]')).toEqual([])
  })
})

describe('a key given twice', () => {
  it('is reported with both places, and the first stands', () => {
    const text = 'a:\n  b: 1\n  c: 2\n  "b": 3\na: { d: 1, d: 2 }\n'
    expect(issues(text)).toEqual([
      'car.yaml:4:3 a.b: a key is given twice in one group; found "b", first on line 2, column 3; accepted each key once',
      'car.yaml:5:1 a: a key is given twice in one group; found "a", first on line 1, column 1; accepted each key once',
      'car.yaml:5:12 a.d: a key is given twice in one group; found "d", first on line 5, column 6; accepted each key once',
    ])
    expect(meaning(text)).toEqual({ a: { b: '1', c: '2' } })
  })
})

describe('several mistakes', () => {
  const WRONG = [
    'donor:',
    '  mass 960 kg',
    '\twheelbase: 2310 mm',
    '  tyre: "185/60 R14',
    '  track: 1410: 1425 mm',
    'pack: { x: 1,5 m }',
    'drive:',
    '  ratio: *axle',
    '  ratio: 3.92',
    '  motor: @home',
    'trips:',
    '  - daily',
    'brief:',
    '  seats: 2',
  ].join('\n')

  it('are all reported at once, in the order of the file', () => {
    expect(readText(WRONG).issues.map(issue => `${issue.line} ${issue.what}`)).toEqual([
      '2 a line needs a key, a colon and a value',
      '3 a tab is used for indentation',
      '4 a quote is not closed on its line',
      '5 a second colon in one line',
      '6 between braces a comma ends a value: a value that contains a comma must be quoted',
      '8 references (*) are not read',
      '10 a value cannot start with this character unless it is in quotes',
      '12 this form of list is not read',
    ])
  })

  it('leave the other sections readable, and what can be read of their own', () => {
    expect([...(readText(WRONG).tree?.entries.keys() ?? [])]).toEqual(['donor', 'pack', 'trips', 'brief'])
    const torn = readText('a:\n  b: 1\n\tc: 2\n  d:\n    e 3\n      f: 4\n    g: 5\n  h: "6\n  i: 7\n').tree
    expect(torn && plain(meaningOf(torn))).toEqual({ a: { b: '1', d: { g: '5' }, i: '7' } })
    expect(readText('a:\n  b: 1\n\tc: 2\n  b: 3\n  e: { x: 1,5 m }\n').issues.map(issue => issue.line)).toEqual([3, 4, 5])
    expect(meaning('a: { x: 1,5 m, y: 2 }')).toEqual({ a: { y: '2' } })
  })
})

describe('random files', () => {
  const asLibrary = (text: string): unknown => trimmed(parseDocument(text, { schema: 'failsafe', uniqueKeys: false }).toJS())
  /** Notes are compared without the line ends behind them, and a group with nothing in it as nothing. */
  const trimmed = (value: unknown): unknown => {
    if (value === null || value === undefined) return ''
    if (typeof value !== 'object') return String(value).trimEnd()
    if (Array.isArray(value)) return value.map(trimmed)
    const entries = Object.entries(value)
    return entries.length === 0 ? '' : Object.fromEntries(entries.map(([key, inner]) => [key, trimmed(inner)]))
  }

  it('mean what the library reads from the whole text', () => {
    fc.assert(
      fc.property(readableTexts, text => {
        expect(issues(text)).toEqual([])
        expect(trimmed(meaning(text))).toEqual(asLibrary(text))
      }),
      { numRuns: runs(10_000) },
    )
  })

  it('of any rubbish are either refused with an issue or mean what the library reads, and nothing is ever thrown', () => {
    const words = [
      'a',
      'b',
      'c: ',
      'note: ',
      'key:',
      '"',
      "'",
      '[',
      ']',
      '{',
      '}',
      ',',
      ', ',
      '#',
      ' #',
      ': ',
      ':',
      '- ',
      '? ',
      '-',
      '|',
      '>',
      '&a ',
      '*a',
    ]
    const breaks = [
      '\n',
      '\n',
      '\n  ',
      '\n    ',
      '\n ',
      ' ',
      '\t',
      '\r\n',
      '\n\n',
      '\n# c\n',
      '\n---\n',
      '---',
      '...',
      '%',
      '!t ',
      '|\n  x',
      '1,5',
      '~',
      '@',
    ]
    const rest = ['`', '\\', '<<: ', '€', '__proto__: ', '"q"', "'q'", 'x: 1', '{ x: 1 }', '[1, 2]', '\ufeff', '\u0000', '\ud800']
    let readable = 0
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...words, ...breaks, ...rest), { maxLength: 24 }), pieces => {
        const text = pieces.join('')
        if (readText(text).issues.length > 0) return
        readable++
        expect(parseDocument(text, { uniqueKeys: false }).errors).toEqual([])
        expect(trimmed(meaning(text))).toEqual(asLibrary(text))
      }),
      { numRuns: runs(40_000) },
    )
    expect(readable).toBeGreaterThan(runs(40_000) / 20)
  })
})
