import type { Trace } from '@ampwright/engine'
import { type Line, lineChart } from '../line-chart.ts'
import type { Chart, Page } from '../picture.ts'
import { axisQuantity, lineOf } from './trace-chart.ts'

/** More grip than any road gives is not drawn. */
const HIGHEST = 1.1
/** The line of least braking is drawn over the grips it is asked for. */
const ALLOWED = [0.2, 0.8] as const
/** Brakings over which the order of locking is asked for. */
const ORDER = { along: 'x', from: 0.15, to: 0.8, label: 'front must stay above rear' } as const

const between = (values: Float64Array, low: number, high: number): Float64Array => values.map(v => (v >= low && v <= high ? v : Number.NaN))

/**
 * Grip each axle uses over braking, under one load (`utilisation.grip`): the axle above locks first. Neither may rise above the line over the grips it holds for, and over the
 * shaded brakings the front must lie above the rear.
 */
export function gripUsed(trace: Trace, page: Page): Chart {
  const line = (name: string, more: Partial<Line>): readonly Line[] =>
    trace.series
      .filter(s => s.name === name)
      .map(s => lineOf(s, { values: name === 'allowed' ? between(s.values, ...ALLOWED) : between(s.values, 0, HIGHEST), ...more }))
  return lineChart(
    {
      label: trace.label,
      x: { ...axisQuantity(trace), values: trace.axis.values },
      panels: [
        {
          y: { label: 'grip used', unit: '1', shows: 'ratio' },
          low: 0,
          high: HIGHEST,
          lines: [
            ...line('front', { tone: 'strong', dash: 0, at: 'end' }),
            ...line('rear', { tone: 'strong', dash: 1, at: 'end' }),
            ...line('front with motors', { tone: 'act', dash: 0, at: 'start' }),
            ...line('rear with motors', { tone: 'act', dash: 1, at: 'start' }),
            ...line('allowed', { tone: 'quiet', dash: 0, at: 'end' }),
          ],
          bands: [ORDER],
        },
      ],
    },
    page,
  )
}
