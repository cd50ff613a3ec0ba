import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { faults, readSvg } from '../../../tests/drawn.ts'
import { csvOf } from './csv.ts'
import { type ChartSpec, lineChart } from './line-chart.ts'
import { type Page, pixelAt } from './picture.ts'

const si: Page = { width: 600, units: kind => ({ unit: kind === 'temperature' ? 'K' : kind === 'speed' ? 'm/s' : 's', fromSI: v => v }) }
const times = Float64Array.from({ length: 11 }, (_, i) => i)
const run = (values: ArrayLike<number>, more: Partial<ChartSpec['panels'][number]> = {}): ChartSpec => ({
  label: 'A run',
  x: { label: 'time', unit: 's', values: times },
  panels: [{ y: { label: 'speed', unit: 'm/s' }, lines: [{ name: 'speed', label: 'speed', values }], ...more }],
})

describe('a line chart', () => {
  it('draws the line through its points', () => {
    const chart = lineChart(run(times, { zero: true }), si),
      path = readSvg(chart.svg).elements.find(e => e.of('class').startsWith('drawing-line')),
      [x, y] = [chart.scales.x, chart.scales.y[0]]
    if (!y) throw new Error('no scale')
    const at = (v: number): string => `${Math.round(pixelAt(x, v) * 10) / 10},${Math.round(pixelAt(y, v) * 10) / 10}`
    expect(path?.of('d')).toBe(`M${[...times].map(at).join('L')}`)
  })
  it('leaves a gap where values are missing, and says so in no number', () => {
    const values = times.map(t => (t > 3 && t < 7 ? Number.NaN : t)),
      chart = lineChart(run(values), si)
    expect(
      readSvg(chart.svg)
        .elements.find(e => e.of('class').startsWith('drawing-line'))
        ?.of('d')
        .match(/M/g),
    ).toHaveLength(2)
    expect(faults(chart.svg)).toEqual([])
    expect(chart.readout(pixelAt(chart.scales.x, 5)).values[0]).toMatchObject({ value: undefined, text: '–', y: undefined })
    expect(csvOf(chart).split('\r\n')[6]).toBe('5,')
  })
  it('draws a line that never moves, one of a single point, and one without any value', () => {
    for (const values of [times.map(() => 4), times.map(t => (t === 5 ? 1 : Number.NaN)), times.map(() => Number.NaN)])
      expect(faults(lineChart(run(values), si).svg)).toEqual([])
    const [point] = [lineChart({ ...run([3]), x: { label: 'time', unit: 's', values: [2] } }, si)]
    expect(faults(point.svg)).toEqual([])
  })
  it('cuts off what lies beyond a limit of the axis', () => expect(faults(lineChart(run(times, { low: 2, high: 6 }), si).svg)).toEqual([]))
  it('shows a stretch of the axis, and reads only along it', () => {
    const spec = run(times),
      chart = lineChart({ ...spec, x: { ...spec.x, low: 2.5, high: 4 } }, si)
    expect(chart.readout(0).x).toBe(2.5)
    expect(chart.readout(599).values[0]?.value).toBe(4)
    expect(faults(chart.svg)).toEqual([])
  })
  it('puts lines with places of their own beside the others', () => {
    const spec = run(times),
      own = { name: 'other', label: 'other', x: [0, 20], values: [0, 40] },
      chart = lineChart({ ...spec, panels: [{ y: { label: 'speed', unit: 'm/s' }, lines: [...(spec.panels[0]?.lines ?? []), own] }] }, si)
    expect(chart.scales.x.domain).toEqual([0, 20])
    expect(chart.readout(pixelAt(chart.scales.x, 5)).values.map(v => v.value)).toEqual([5, 10])
    expect(chart.table().rows[3]).toEqual([3, 3, 6])
  })
  it('keeps bands and marks inside and says where they are', () => {
    const chart = lineChart(
      run(times, {
        marks: [
          { x: 4, label: 'half way' },
          { y: 9, label: 'limit', outcome: 'failing' },
          { x: 8, y: 2, label: 'wanted', outcome: 'sound' },
        ],
        bands: [
          { along: 'x', from: 1, to: 2, label: 'run-up' },
          { along: 'y', from: 0, to: 1, label: 'crawl' },
        ],
      }),
      si,
    )
    expect(faults(chart.svg)).toEqual([])
    expect(chart.text).toBe(
      'Over time from 0\u202fs to 10\u202fs: speed from 0\u202fm/s to 10\u202fm/s. Marked: half way at 4\u202fs; limit, failing at 9\u202fm/s; wanted, sound at 8\u202fs, 2\u202fm/s.',
    )
    expect(
      readSvg(chart.svg)
        .texts.map(t => t.text)
        .join(),
    ).toContain('▲ limit: failing')
  })
  it('holds twenty lines apart: each has a label or a letter with an entry in the key', () => {
    const lines = Array.from({ length: 20 }, (_, i) => ({ name: `l${i}`, label: `line number ${i}`, values: times.map(t => t * (i + 1)) }))
    for (const width of [330, 620]) {
      const chart = lineChart({ ...run(times), panels: [{ y: { label: 'speed', unit: 'm/s' }, lines }] }, { ...si, width }),
        texts = readSvg(chart.svg).texts.map(t => t.text)
      expect(faults(chart.svg)).toEqual([])
      for (const { label } of lines) expect(texts).toContain(label)
    }
  })
  it('draws a hundred thousand points with no more than the picture can show, every extreme among them', () => {
    const n = 100_001,
      x = Float64Array.from({ length: n }, (_, i) => i / 10),
      noise = (k: number): Float64Array => x.map((t, i) => Math.sin(t / 40) * 20 + Math.sin(i * i * (k + 1)) * 5 + (i === 77_777 ? 99 : 0)),
      lines = Array.from({ length: 8 }, (_, k) => ({ name: `${k}`, label: `line ${k}`, values: noise(k) }))
    const spec: ChartSpec = {
      label: 'A long log',
      x: { label: 'time', unit: 's', values: x },
      panels: lines.map(l => ({ y: { label: l.label, unit: 'm/s' }, lines: [l] })),
    }
    const chart = lineChart(spec, si)
    expect(chart.svg.length).toBeLessThan(8 * 5 * 600 * 14)
    for (const [k, path] of readSvg(chart.svg)
      .elements.filter(e => e.of('class').startsWith('drawing-line'))
      .entries()) {
      const y = chart.scales.y[k],
        highest = Math.max(...(lines[k]?.values ?? []))
      if (!y) throw new Error('no scale')
      expect(
        Math.min(
          ...path
            .of('d')
            .slice(1)
            .split('L')
            .map(p => Number(p.split(',')[1])),
        ),
      ).toBeCloseTo(pixelAt(y, highest), 0)
    }
  })
  it('keeps everything inside and apart for whatever lines and marks, at whatever width', () => {
    const value = fc.oneof(
        fc.double({ min: -1e7, max: 1e7, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.constant(Number.NaN),
      ),
      values = fc.array(value, { minLength: 11, maxLength: 11 }),
      mark = fc.record({
        x: fc.option(fc.double({ min: -5, max: 15, noNaN: true }), { nil: undefined }),
        y: fc.option(value.filter(Number.isFinite), { nil: undefined }),
      })
    fc.assert(
      fc.property(
        fc.array(values, { minLength: 1, maxLength: 9 }),
        fc.array(mark, { maxLength: 4 }),
        fc.integer({ min: 0, max: 1300 }),
        (lists, marks, width) => {
          const spec: ChartSpec = {
            ...run(times),
            panels: [
              {
                y: { label: 'speed', unit: 'm/s' },
                lines: lists.map((list, i) => ({ name: `${i}`, label: `line ${i}`, values: list })),
                marks: marks.map((m, i) => ({
                  label: `mark ${i}`,
                  ...(m.x === undefined ? {} : { x: m.x }),
                  ...(m.y === undefined ? {} : { y: m.y }),
                })),
              },
            ],
          }
          expect(faults(lineChart(spec, { ...si, width }).svg)).toEqual([])
        },
      ),
      { numRuns: runs(2000) },
    )
  })
  it('refuses a width that is no number', () =>
    expect(() => lineChart(run(times), { ...si, width: Number.NaN })).toThrow('asked for NaN px'))
  it('refuses a line that has not one value for each place', () =>
    expect(() => lineChart(run([1, 2, 3]), si)).toThrow('A run: speed has 3 values for 11 places along the axis'))
  it('escapes what would be markup in a name', () => {
    const chart = lineChart({ ...run(times), label: 'a <b> & "c" \u0007' }, { ...si, standalone: true })
    expect(readSvg(chart.svg).texts[0]?.text).toBe('a <b> & "c" ')
  })
  it('shows temperatures in their own unit, by way of a straight line with an offset', () => {
    const page: Page = {
        ...si,
        units: kind => (kind === 'temperature' ? { unit: '°C', fromSI: v => v - 273.15 } : { unit: 's', fromSI: v => v }),
      },
      warm = { y: { label: 'temperature', unit: 'K' }, lines: [{ name: 'cells', label: 'cells', values: times.map(t => 283.15 + t) }] },
      chart = lineChart({ ...run(times), panels: [warm] }, page)
    expect(chart.text).toContain('cells from 10\u202f°C to 20\u202f°C')
    expect(chart.scales.y[0]?.domain[0]).toBeCloseTo(283.15, 9)
    expect(chart.table().rows[1]).toEqual([1, 11])
  })
})
