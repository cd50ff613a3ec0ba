import type { Trace } from '@ampwright/engine'
import { lineChart, type Mark } from '../line-chart.ts'
import type { Chart, Page } from '../picture.ts'
import { axisQuantity, lineOf } from './trace-chart.ts'

export type RunOptions = {
  /** Times wanted and found, as points of time and speed. */
  readonly marks?: readonly Mark[]
  /** Another run beside this one: a variant, what a log recorded. */
  readonly beside?: readonly { readonly label: string; readonly trace: Trace }[]
}

/** Speed over time at full pull (`acceleration.run`), with the times the brief asks for as points: the line must pass them to the left. */
export function accelerationChart(trace: Trace, page: Page, { marks = [], beside = [] }: RunOptions = {}): Chart {
  const run = (t: Trace): Trace['series'] => t.series.filter(s => s.name === 'speed')
  return lineChart(
    {
      label: trace.label,
      x: { ...axisQuantity(trace), values: trace.axis.values },
      panels: [
        {
          y: { label: 'speed', unit: 'm/s' },
          zero: true,
          lines: [
            ...run(trace).map(s => lineOf(s, { tone: 'strong', ...(beside.length ? { label: 'this car' } : {}) })),
            ...beside.flatMap(b =>
              run(b.trace).map(s => lineOf(s, { name: b.label, label: b.label, x: b.trace.axis.values, tone: 'act' })),
            ),
          ],
          marks,
        },
      ],
    },
    page,
  )
}
