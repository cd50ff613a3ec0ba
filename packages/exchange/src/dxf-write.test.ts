import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type DxfDrawing, writeDxf } from './dxf-write.ts'

/** Group codes and values of a file, as any reader takes them: two lines each. */
const pairsOf = (text: string): readonly (readonly [number, string])[] => {
  const lines = text.split('\r\n').slice(0, -1)
  expect(lines.length % 2).toBe(0)
  return lines.flatMap((code, i) => (i % 2 === 0 ? [[Number(code), lines[i + 1] as string] as const] : []))
}
const entities = (text: string, name: string): readonly ReadonlyMap<number, string>[] => {
  const out: Map<number, string>[] = []
  let open: Map<number, string> | undefined
  for (const [code, value] of pairsOf(text)) {
    if (code === 0) open = value === name ? new Map() : undefined
    if (code === 0 && open) out.push(open)
    open?.set(code, value)
  }
  return out
}
const drawing: DxfDrawing = {
  layers: [{ name: 'OUTLINE', colour: 7 }],
  lines: [{ layer: 'OUTLINE', from: [0, 0], to: [380, 0.5] }],
  texts: [{ layer: 'OUTLINE', at: [1, 2], height: 5, text: 'Gehäuse\n380 mm', end: true }],
  note: 'millimetres',
}

describe('a drawing as DXF', () => {
  it('is a file of release 12 with its sections in order, and ends', () => {
    const pairs = pairsOf(writeDxf(drawing))
    expect(pairs[0]).toEqual([999, 'millimetres'])
    expect(pairs.filter(([code, v], i) => code === 2 && pairs[i - 1]?.[1] === 'SECTION' && v).map(([, v]) => v)).toEqual([
      'HEADER',
      'TABLES',
      'ENTITIES',
    ])
    expect(pairs.filter(([, v]) => v === 'SECTION').length).toBe(pairs.filter(([, v]) => v === 'ENDSEC').length)
    expect(pairs.at(-1)).toEqual([0, 'EOF'])
    expect(pairs).toContainEqual([1, 'AC1009'])
  })
  it('holds lines and words in ASCII, a word that ends at its place there again', () => {
    const text = writeDxf(drawing)
    expect(text).toMatch(/^[\r\n -~]*$/)
    expect(entities(text, 'LINE').map(l => [l.get(8), l.get(10), l.get(20), l.get(11), l.get(21)])).toEqual([
      ['OUTLINE', '0', '0', '380', '0.5'],
    ])
    expect(entities(text, 'TEXT').map(l => [l.get(1), l.get(40), l.get(72), l.get(11), l.get(21)])).toEqual([
      ['Geh\\U+00E4use 380 mm', '5', '2', '1', '2'],
    ])
  })
  it('gives every line back to the millionth', () => {
    const point = fc.tuple(fc.double({ min: -1e4, max: 1e4, noNaN: true }), fc.double({ min: -1e4, max: 1e4, noNaN: true }))
    fc.assert(
      fc.property(fc.array(fc.tuple(point, point), { minLength: 1, maxLength: 20 }), list => {
        const text = writeDxf({ layers: drawing.layers, lines: list.map(([from, to]) => ({ layer: 'OUTLINE', from, to })), texts: [] })
        const read = entities(text, 'LINE').map(l => [10, 20, 11, 21].map(code => Number(l.get(code))))
        expect(read.length).toBe(list.length)
        for (const [i, [from, to]] of list.entries())
          for (const [k, v] of [...from, ...to].entries()) expect(Math.abs((read[i]?.[k] as number) - v)).toBeLessThan(1e-6)
      }),
    )
  })
  it('refuses what no file can hold', () => {
    expect(() => writeDxf({ ...drawing, lines: [{ layer: 'OUTLINE', from: [0, Number.NaN], to: [1, 1] }] })).toThrow(RangeError)
    expect(() => writeDxf({ ...drawing, lines: [{ layer: 'LID', from: [0, 0], to: [1, 1] }] })).toThrow(/layer must be one of OUTLINE/)
    expect(() => writeDxf({ ...drawing, layers: [{ name: 'outer line', colour: 7 }] })).toThrow(/capitals/)
  })
})
