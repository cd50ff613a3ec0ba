import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { faults, readSvg } from '../../../tests/drawn.ts'
import { type Page, pixelAt, SHAPES, valueAt } from './picture.ts'
import { type WindowsSpec, windowsChart } from './windows.ts'

const page: Page = { width: 600, units: () => ({ unit: 'V', fromSI: v => v }) }
const spec = (more: Partial<WindowsSpec> = {}): WindowsSpec => ({
  label: 'Voltage',
  quantity: { label: 'voltage', unit: 'V' },
  windows: [{ name: 'pack', low: 288, high: 403 }],
  stands: [],
  low: 200,
  high: 450,
  text: 'A pack from 288 V to 403 V.',
  ...more,
})
const bars = (s: WindowsSpec) => readSvg(windowsChart(s, page).svg).elements.filter(e => e.of('class') === 'drawing-window')

describe('windows on a common axis', () => {
  it('are bars from their lowest to their highest value', () => {
    const chart = windowsChart(spec(), page),
      [bar] = readSvg(chart.svg).elements.filter(e => e.of('class') === 'drawing-window')
    expect(bar?.at('x')).toBeCloseTo(pixelAt(chart.scale, 288), 0)
    expect((bar?.at('x') ?? 0) + (bar?.at('width') ?? 0)).toBeCloseTo(pixelAt(chart.scale, 403), 0)
  })
  it('reach the edge where an end is not known, and are not drawn where nothing is', () => {
    const { scale } = windowsChart(spec(), page)
    expect(bars(spec({ windows: [{ name: 'pack', low: 300 }] }))[0]?.at('width')).toBeCloseTo(scale.range[1] - pixelAt(scale, 300), 0)
    expect(bars(spec({ windows: [{ name: 'pack', none: 'window not known' }] }))).toEqual([])
  })
  it('say how they stand by shape and word', () => {
    const svg = windowsChart(
      spec({ windows: [{ name: 'dc-dc', low: 200, high: 390, stands: { outcome: 'failing', words: 'failing' } }] }),
      page,
    ).svg
    expect(readSvg(svg).texts.map(t => t.text)).toContain('▲ failing')
  })
  it('lead from a pixel to its value and back', () => {
    const { scale, handle } = windowsChart(spec({ stands: [{ value: 350, label: 'now', as: 'handle' }] }), page)
    expect(valueAt(scale, pixelAt(scale, 321))).toBeCloseTo(321, 9)
    expect(handle).toMatchObject({ value: 350 })
    expect(handle?.x).toBeCloseTo(pixelAt(scale, 350), 9)
  })
  it('keep everything inside and apart, whatever they are called and at whatever width', () => {
    const value = fc.double({ min: 100, max: 600, noNaN: true }),
      name = fc
        .array(fc.constantFrom('inverter', 'of', 'front', 'dc-dc', 'heater', 'compressor'), { minLength: 1, maxLength: 6 })
        .map(w => w.join(' ')),
      outcome = fc.constantFrom(...(Object.keys(SHAPES) as (keyof typeof SHAPES)[])),
      end = fc.option(value, { nil: undefined })
    const window = fc.record({
        name,
        low: end,
        high: end,
        best: end,
        stands: fc.option(
          outcome.map(o => ({ outcome: o, words: o })),
          { nil: undefined },
        ),
      }),
      stand = fc.record({ value, label: name, as: fc.constantFrom('line' as const, 'notch' as const, 'handle' as const) })
    fc.assert(
      fc.property(
        fc.array(window, { minLength: 1, maxLength: 7 }),
        fc.array(stand, { maxLength: 6 }),
        fc.integer({ min: 0, max: 1200 }),
        (windows, stands, width) => {
          expect(faults(windowsChart(spec({ windows, stands }), { ...page, width }).svg)).toEqual([])
        },
      ),
      { numRuns: runs(2000) },
    )
  })
  it('keep a name inside that is as wide as its column', () => {
    const windows = ['dc-dc dc-dc dc-dc dc-dc dc-dc dc-dc', 'inverter'].map(name => ({ name }))
    expect(faults(windowsChart(spec({ windows }), { ...page, width: 717 }).svg)).toEqual([])
  })
})
