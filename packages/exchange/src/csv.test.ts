import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { csvReader, readCsv } from './csv.ts'
import { headingOf } from './csv-header.ts'
import type { Csv, CsvOptions } from './csv-table.ts'
import { type CsvColumn, writeCsv } from './csv-write.ts'

const read = (input: string | Uint8Array, options?: CsvOptions): Csv => {
  const answer = readCsv(input, options)
  if ('issues' in answer) throw new Error(JSON.stringify(answer.issues))
  return answer.csv
}
/** Columns as name, unit and values. */
const table = (input: string, options?: CsvOptions): unknown[] => read(input, options).columns.map(c => [c.name, c.unit ?? '', ...c.values])
const issuesOf = (input: string | Uint8Array, options?: CsvOptions): string[] => {
  const answer = readCsv(input, options)
  if (!('issues' in answer)) throw new Error('no issue')
  return answer.issues.map(i => `${i.line}:${i.column} ${i.path}: ${i.what}; found ${i.found}; accepted ${i.accepted}`)
}

describe('a CSV table', () => {
  test('gives columns with names and units', () => {
    expect(table('time [s],speed [km/h],soc\n0,1.5,1\n0.1,-2e-3,.5\n')).toEqual([
      ['time', 's', 0, 0.1],
      ['speed', 'km/h', 1.5, -0.002],
      ['soc', '', 1, 0.5],
    ])
  })

  test('may have semicolons or tabs and then a decimal comma', () => {
    expect(table('t [s];v [km/h]\n0;1,5\n1;+2\n')).toEqual([
      ['t', 's', 0, 1],
      ['v', 'km/h', 1.5, 2],
    ])
    expect(table('t [s]\tv\n0\t,5\n')).toEqual([
      ['t', 's', 0],
      ['v', '', 0.5],
    ])
    expect(table('t [s];v [km/h]\n0;1.5\n')).toEqual([
      ['t', 's', 0],
      ['v', 'km/h', 1.5],
    ])
    expect(read('"a;b",c\n1,2\n').separator).toBe(',')
    expect(table('a,b;c\n', { separator: ',' })).toEqual([
      ['a', ''],
      ['b;c', ''],
    ])
  })

  test('may count one thing in two units', () => {
    expect(table('charged_Ah,charged_Wh\n1,4\n')).toEqual([
      ['charged', 'Ah', 1],
      ['charged', 'Wh', 4],
    ])
    expect(issuesOf('charged_Ah,charged [Ah]\n')).toHaveLength(1)
  })

  test('may end its lines in any way, be quoted, have blanks, empty lines, a byte-order mark and notes', () => {
    const expected = [
      ['a, b', '', 1, 3],
      ['c\n"d"', 'V', 2, 4],
    ]
    for (const end of ['\n', '\r\n', '\r']) {
      const lines = ['# licence: free', '#from a logger', '', '"a, b", "c\n""d""" [V]', '"1", 2 ', '', ' 3,"4"', '', ''].map(l =>
        l.replace(', "c\n""d""" [V]', ',"c\n""d"" [V]"'),
      )
      const text = lines.join(end)
      expect(table(text)).toEqual(expected)
      expect(table(`\ufeff${text}`)).toEqual(expected)
      expect(read(new TextEncoder().encode(`\ufeff${text}`)).notes).toEqual(['licence: free', 'from a logger'])
    }
    expect(table('a\n1')).toEqual([['a', '', 1]])
  })

  test('may keep columns of words, and take an empty cell as no number when told to', () => {
    const csv = read('serial,R [mOhm]\nA-1,2.5\n"B ""two""",\n', { words: ['serial'], empty: 'nan' })
    expect(csv.words).toEqual([{ name: 'serial', values: ['A-1', 'B "two"'] }])
    expect(csv.columns).toEqual([{ name: 'R', unit: 'mOhm', values: Float64Array.of(2.5, Number.NaN) }])
    expect(table('a,b\n,2\n', { empty: 'nan' })).toEqual([
      ['a', '', Number.NaN],
      ['b', '', 2],
    ])
    expect(read('a\n""\n\n1\n', { empty: 'nan' }).rows).toBe(2)
  })

  test('is the same in pieces of any size', () => {
    const text = '# °\r\n\r\n"a\r\nb",c [°C]\r\n1,"2"\r\n\r\n3,4e1\r\n5,'
    const bytes = new TextEncoder().encode(text)
    const whole = readCsv(text, { empty: 'nan' })
    expect('csv' in whole && whole.csv.rows).toBe(3)
    for (let size = 1; size < bytes.length; size++) {
      const reader = csvReader({ empty: 'nan' })
      for (let i = 0; i < bytes.length; i += size) reader.push(bytes.subarray(i, i + size))
      expect(reader.end()).toEqual(whole)
    }
  })
})

describe('what is wrong with a CSV table', () => {
  test('is named all at once, with line, column, and the name of the column', () => {
    expect(issuesOf('t [s],v\n0,1\nx,2\n1\n\n2,"1,5"\n3,\n4,1e999,7\n5,"6"7\n')).toEqual([
      '3:1 t: a cell is no number; found "x"; accepted a number with a decimal point',
      '4:1 : a row has another number of cells than the header; found 1 cells; accepted 2 cells',
      '6:3 v: a comma stands in a number; found "1,5"; accepted a decimal point, or semicolons between the columns',
      '7:3 v: a cell is empty; found nothing; accepted a number',
      '8:3 v: a number is too large; found "1e999"; accepted at most 1.8e308',
      '8:1 : a row has another number of cells than the header; found 3 cells; accepted 2 cells',
      '9:6 v: text stands behind a quotation mark; found "7"; accepted a separator',
    ])
    expect(issuesOf('a,b\n,2\n')).toEqual(['2:1 a: a cell is empty; found nothing; accepted a number'])
  })

  test('may be a number that reads two ways or a decimal mark that changes', () => {
    expect(issuesOf('a;b\n1,5;1.234,5\n2;2.5\n1 234,0;3\n')).toEqual([
      '2:5 b: a number has thousands separators; found "1.234,5"; accepted digits with one decimal point or comma only',
      '3:3 b: the decimal mark changes; found "2.5"; accepted a decimal comma as in line 2',
      '4:1 a: a number has thousands separators; found "1 234,0"; accepted digits with one decimal point or comma only',
    ])
  })

  test('in the header is told before anything else', () => {
    expect(issuesOf('a,a,,1\nx\n')).toEqual([
      '1:3 a: two columns have the same name and unit; found "a"; accepted different names',
      '1:5 : a column has no name; found nothing; accepted a name such as speed [km/h]',
      '1:6 : the first row holds a number; found "1"; accepted a row of column names above the numbers',
    ])
    expect(issuesOf('a,b\n', { words: ['c'] })).toEqual(['1:1 c: a column is missing; found "a", "b"; accepted "c"'])
    for (const nothing of ['', '\n\r\n', '# only a note', '\ufeff']) expect(issuesOf(nothing)[0]).toMatch(/the file holds no table/)
  })

  test('is a line of the file, not of the table, behind notes and cells of several lines', () => {
    expect(issuesOf('# note\r\n\r\n"a\r\nb",c\r\n1,2\r\nx,"\r\n"\r\n')).toEqual([
      '6:1 a\\u000d\\u000ab: a cell is no number; found "x"; accepted a number with a decimal point',
      '6:3 c: a cell is empty; found nothing; accepted a number',
    ])
  })

  test('is listed a hundred times at most, and the rest counted', () => {
    const answer = readCsv(`a\n${'x\n'.repeat(5000)}`)
    expect('issues' in answer && [answer.issues.length, answer.more]).toEqual([100, 4900])
  })
})

describe('a hostile CSV file', () => {
  test('is refused with an issue', () => {
    const one = (input: string | Uint8Array, options?: CsvOptions): string => issuesOf(input, options).at(-1)!
    expect(one('a\n1\n\0\n')).toMatch(/^3:1 : a control character is not accepted; found "\\u0000"/)
    expect(one('# \u0001\na\n')).toMatch(/^1:1 : a control character/)
    expect(one('a,b\n"1,2\n3,4\n')).toMatch(/^2:1 : a quotation mark is never closed/)
    expect(one(`a\n${'9'.repeat(20_000)}\n`)).toMatch(/^2:1 : a cell is too long/)
    expect(one('x'.repeat(70_000))).toMatch(/^1:1 : a line before the table is too long/)
    expect(one('a,'.repeat(5000))).toMatch(/the table has too many columns; found more than 1000/)
    expect(one('#\n'.repeat(5000))).toMatch(/^1001:1 : there are too many notes/)
    expect(one(Uint8Array.of(0x61, 0x0a, 0x31, 0xb0))).toBe(
      '2:2 : a byte is no UTF-8; found byte 0xb0 at offset 3; accepted text saved as UTF-8',
    )
    expect(one('a,b\n1,2\n3,4\n', { mostCells: 3 })).toMatch(/^3:3 b: the table is too large; found more than 3 cells/)
    expect(one('a,b\n1,2\n3,4\n', { mostBytes: 5 })).toMatch(/the file is too large; found 12 bytes; accepted at most 5 bytes/)
  })

  test('of any make takes an answer or issues, never another exception, the same in pieces', () => {
    const soup = fc.array(
      fc.constantFrom(',', ';', '\t', '"', '\n', '\r', '\r\n', ' ', '#', '1', '2.5', '3,5', 'a', 'b [V]', '-', '__proto__'),
      { maxLength: 40 },
    )
    fc.assert(
      fc.property(soup, fc.integer({ min: 1, max: 5 }), (parts, size) => {
        const text = parts.join('')
        const reader = csvReader()
        const bytes = new TextEncoder().encode(text)
        for (let i = 0; i < bytes.length; i += size) reader.push(bytes.subarray(i, i + size))
        expect(reader.end()).toEqual(readCsv(text))
      }),
      { numRuns: 3000 },
    )
  })

  test('with digits without end or quotation marks only takes time in proportion to its length', () => {
    const started = performance.now()
    for (const cell of [
      '9'.repeat(9999),
      `${'9'.repeat(9000)}x`,
      '1,'.repeat(4000),
      '"'.repeat(9998),
      ' '.repeat(9999),
      '1 111'.repeat(1900),
    ])
      readCsv(`a;b\n${`${cell};1\n`.repeat(300)}`)
    expect(performance.now() - started).toBeLessThan(10_000)
  })
})

describe('a long CSV file', () => {
  test('of a million rows comes in pieces and leaves nothing behind but its columns', () => {
    setFlagsFromString('--expose-gc')
    const collect = runInNewContext('gc') as () => void
    const held = (): number => {
      collect()
      const { heapUsed, arrayBuffers } = process.memoryUsage()
      return heapUsed + arrayBuffers
    }
    const reader = csvReader()
    const encoder = new TextEncoder()
    reader.push(encoder.encode('time [s],current [A],voltage [V]\n'))
    const before = held()
    const started = performance.now()
    for (let block = 0; block < 1000; block++) {
      let text = ''
      for (let i = 0; i < 1000; i++) text += `${block * 100 + i / 10},${(i % 300) - 50.25},350.5\n`
      expect(reader.push(encoder.encode(text))).toBe(true)
      // Columns grow by doubling: twice their own size, and what the collector has not yet given back.
      if (block % 200 === 199) expect(held() - before).toBeLessThan(2 * 24_000 * (block + 1) + 20e6)
    }
    const answer = reader.end()
    expect(performance.now() - started).toBeLessThan(30_000)
    if (!('csv' in answer)) throw new Error(JSON.stringify(answer.issues[0]))
    expect(answer.csv.rows).toBe(1_000_000)
    expect(answer.csv.columns[0]!.values[999_999]).toBeCloseTo(99_999.9, 9)
    expect(answer.csv.columns[1]!.values.reduce((a, b) => a + b)).toBeCloseTo(
      1000 * Array.from({ length: 1000 }, (_, i) => (i % 300) - 50.25).reduce((a, b) => a + b),
      3,
    )
  })
})

describe('a table written', () => {
  const text = fc.string({ unit: fc.constantFrom(...'ab_ ,;"#\n\r\t[]()°kmhVs'), minLength: 1, maxLength: 12 })
  const name = text.map(t => t.trim()).filter(t => t !== '' && !/^[\d.+-]/.test(t))
  const value = fc.oneof(fc.double({ noDefaultInfinity: true }), fc.integer(), fc.constantFrom(0, -0, 1e21, 5e-324, Number.NaN))
  const tables = fc.integer({ min: 0, max: 8 }).chain(rows =>
    fc.uniqueArray(
      fc.record({
        name,
        unit: fc.option(fc.constantFrom('km/h', '°C', 'V'), { nil: undefined }),
        values: fc.array(value, { minLength: rows, maxLength: rows }),
        words: fc.option(fc.array(text, { minLength: rows, maxLength: rows }), { nil: undefined, freq: 4 }),
      }),
      { selector: c => c.name, minLength: 1, maxLength: 5 },
    ),
  )
  const style = fc.constantFrom(
    { separator: ',', decimal: '.' } as const,
    { separator: ';', decimal: ',' } as const,
    { separator: '\t', decimal: ',' } as const,
    { separator: ';', decimal: '.' } as const,
  )

  test('reads back to the last bit', () => {
    fc.assert(
      fc.property(tables, style, fc.array(fc.constantFrom('licence: free', 'a;b,c', '')), (columns, look, notes) => {
        const written = columns.map(
          (c): CsvColumn =>
            c.words
              ? { name: c.name, values: c.words }
              : { name: c.name, ...(c.unit === undefined ? {} : { unit: c.unit }), values: Float64Array.from(c.values) },
        )
        const words = written.filter(c => Array.isArray(c.values))
        const back = read(writeCsv(written, { ...look, notes }), { separator: look.separator, words: words.map(c => c.name), empty: 'nan' })
        expect(back.columns).toEqual(written.filter(c => !Array.isArray(c.values)))
        expect(back.words).toEqual(words)
        expect(back.rows).toBe(written[0]!.values.length)
        expect(back.notes).toEqual(notes)
      }),
      { numRuns: 500 },
    )
  })

  test('has units in brackets and lines as the standard ends them', () => {
    const columns = [
      { name: 'speed', unit: 'km/h', values: Float64Array.of(1.5, Number.NaN) },
      { name: 'who', values: ['a, b', 'c'] },
    ]
    expect(writeCsv(columns, { notes: ['own'] })).toBe('# own\r\nspeed [km/h],who\r\n1.5,"a, b"\r\n,c\r\n')
    expect(writeCsv([{ name: 'v_kmh', values: Float64Array.of(1.5) }], { separator: ';', decimal: ',' })).toBe('v_kmh []\r\n1,5\r\n')
  })

  test('refuses what cannot be read back', () => {
    const column = { name: 'a', values: Float64Array.of(1) }
    expect(() => writeCsv([])).toThrow(RangeError('columns must hold at least one column, found none'))
    expect(() => writeCsv([column, { name: 'b', values: ['x', 'y'] }])).toThrow(RangeError('column b must have 1 rows, found 2'))
    expect(() => writeCsv([column], { decimal: ',' })).toThrow(RangeError('separator must be ; or a tab beside a decimal comma, found ,'))
    expect(() => writeCsv([{ name: 'a', values: Float64Array.of(Infinity) }])).toThrow(
      RangeError('numbers must be finite or NaN, found Infinity'),
    )
    expect(() => writeCsv([column], { notes: ['a\nb'] })).toThrow(/notes must be single lines/)
  })
})

describe('a heading', () => {
  test('is a name and, in brackets or behind an underscore, a unit', () => {
    const units = [
      'speed [km/h]',
      'speed (km/h)',
      'speed_kmh',
      'temp_degC',
      'temp_C',
      'current_A',
      'Coolant out [°C]',
      'a [b] [V]',
      ' v[m/s] ',
    ].map(headingOf)
    expect(units.map(h => `${h.name}|${h.unit}`)).toEqual([
      'speed|km/h',
      'speed|km/h',
      'speed|km/h',
      'temp|°C',
      'temp|C',
      'current|A',
      'Coolant out|°C',
      'a [b]|V',
      'v|m/s',
    ])
  })

  test('is a name alone where nothing names a unit', () => {
    expect(['soc', 'road_load', 'time []', '[V]', '_kmh', 'cell_'].map(headingOf)).toEqual([
      { name: 'soc' },
      { name: 'road_load' },
      { name: 'time' },
      { name: '[V]' },
      { name: '_kmh' },
      { name: 'cell_' },
    ])
  })
})
