import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { faults, readSvg } from '../../../../tests/drawn.ts'
import type { Page } from '../picture.ts'
import { rangeTable } from './range-table.ts'

const page: Page = { width: 600, units: () => ({ unit: 'km', fromSI: v => v / 1000 }) }
const table = (columns: readonly string[], ...rows: readonly (readonly [string, ...(number | string | undefined)[]])[]) => ({
  id: 'range',
  label: 'Range',
  columns: columns.map(label => ({ key: label, label, unit: 'm', shows: 'distance' })),
  rows: rows.map(([name, ...cells]) => ({ name, cells: Object.fromEntries(columns.map((c, i) => [c, cells[i]])) })),
})

describe('a table of ranges', () => {
  it('says what is not known by shape and word, and the least range in its text', () => {
    const picture = rangeTable(table(['−10 °C', '20 °C'], ['90 km/h', 120e3, 180e3], ['130 km/h', 80e3, undefined]), new Map(), page),
      texts = readSvg(picture.svg).texts.map(t => t.text)
    expect(texts).toContain('◌')
    expect(texts).toContain('unanswered')
    expect(picture.text).toContain('The least is 80\u202fkm, 130 km/h, −10 °C.')
  })
  it('says in its place why there is no range', () => {
    const picture = rangeTable(table(['cold', 'mild'], ['80 km/h', 120e3, 180e3], ['120 km/h', 80e3, 'not held']), new Map(), page)
    expect(readSvg(picture.svg).texts.map(t => t.text)).toContain('not held')
    expect(picture.text).toContain('mild not held')
  })
  it('is tinted darker the farther the low end', () => {
    const cells = readSvg(rangeTable(table(['a', 'b', 'c'], ['x', 1e5, 3e5, 2e5]), new Map(), page).svg).elements.filter(
      e => e.of('class') === 'drawing-cell',
    )
    const [a, b, c] = cells.map(e => e.at('fill-opacity')) as [number, number, number]
    expect(a).toBeLessThan(c)
    expect(c).toBeLessThan(b)
  })
  it('keeps everything inside and apart, for any size and width', () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 7 }),
        fc.integer({ min: 0, max: 6 }),
        fc.integer({ min: 0, max: 1200 }),
        (across, down, width) => {
          const columns = Array.from({ length: across }, (_, i) => `day number ${i}`),
            rows = Array.from({ length: down }, (_, r): [string, ...(number | undefined)[]] => [
              `a trip with a long name ${r}`,
              ...columns.map((_, c) => ((r + c) % 5 === 4 ? undefined : (r * 37 + c * 11) * 1e3)),
            ])
          expect(faults(rangeTable(table(columns, ...rows), new Map(), { ...page, width }).svg)).toEqual([])
        },
      ),
      { numRuns: runs(1000) },
    ))
})
