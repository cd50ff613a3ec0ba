import type { Trace } from '@ampwright/engine'
import { lineChart, type Mark, type Panel } from '../line-chart.ts'
import type { Chart, Page } from '../picture.ts'
import { axisQuantity, lineOf } from './trace-chart.ts'

export type TripOptions = {
  /** A stretch of the time axis [s], for looking closer. */
  readonly from?: number
  readonly to?: number
  /** Limits to hold the temperatures against, in K. */
  readonly temperatures?: readonly Mark[]
}

/** A trip or a charge over time (`trip.course@TRIP`, `charge.course@GOAL`): speed, power, charge and temperatures below one another, one time axis, one cursor. */
export function tripChart(trace: Trace, page: Page, { from, to, temperatures = [] }: TripOptions = {}): Chart {
  const named = (name: string): Trace['series'] => trace.series.filter(s => s.name === name),
    heat = trace.series.filter(s => s.unit === 'K')
  const alone = (name: string): readonly Panel[] =>
    named(name).map(s => ({
      y: { label: s.label, unit: s.unit, shows: s.shows },
      zero: true,
      lines: [lineOf(s, { tone: 'plain' })],
      ...(s.shows === 'share' ? { high: 1 } : {}),
    }))
  const panels: Panel[] = [
    ...alone('speed'),
    ...alone('power'),
    ...alone('charge'),
    ...(heat.length
      ? [
          {
            y: { label: 'temperature', unit: 'K' },
            lines: heat.map(s => lineOf(s, { at: 'end' as const, tone: toneOf(s.name) })),
            marks: temperatures,
            share: 1.4,
          },
        ]
      : []),
  ]
  return lineChart({ label: trace.label, x: { ...axisQuantity(trace), values: trace.axis.values, low: from, high: to }, panels }, page)
}
/** Cells plain, windings strongest: they govern first. */
const toneOf = (name: string) => (name.startsWith('winding') ? 'strong' : name.startsWith('inverter') ? 'act' : 'plain')
