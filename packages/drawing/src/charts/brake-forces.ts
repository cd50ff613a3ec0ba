import type { Trace } from '@ampwright/engine'
import { type Line, lineChart } from '../line-chart.ts'
import type { Chart, Page } from '../picture.ts'
import { axisQuantity, lineOf } from './trace-chart.ts'

/** Room above the highest ideal parabola, where the installed lines and the lines of grip leave the picture. */
const ROOM_ABOVE = 1.35
const within = (values: Float64Array, high: number): Float64Array => values.map(v => (v >= 0 && v <= high ? v : Number.NaN))

/**
 * Brake force behind against brake force in front, both over weight (`utilisation.forces`): where the installed line lies below the ideal parabola the front axle locks first.
 * The quiet lines are where an axle locks on a road: rising for the front axle, falling for the rear; they meet on the parabola of the car at kerb.
 */
export function brakeForces(trace: Trace, page: Page): Chart {
  const named = (start: string): Trace['series'] => trace.series.filter(s => s.name === start || s.name.startsWith(`${start} `)),
    ideal = named('ideal'),
    locks = [...named('front locks'), ...named('rear locks')]
  const high = Math.max(0.05, ...ideal.flatMap(s => [...s.values])) * ROOM_ABOVE
  const lines: Line[] = [
    ...named('installed').map(s => lineOf(s, { values: within(s.values, high), tone: 'strong', at: 'end' })),
    ...named('with motors').map(s => lineOf(s, { values: within(s.values, high), tone: 'act', at: 'end' })),
    ...ideal.map((s, i) => lineOf(s, { values: within(s.values, high), tone: 'plain', dash: i, at: 'end' })),
    ...locks.map((s, i) => lineOf(s, { values: within(s.values, high), tone: 'quiet', dash: i % (locks.length / 2), at: 'start' })),
  ]
  return lineChart(
    {
      label: trace.label,
      x: { ...axisQuantity(trace), values: trace.axis.values },
      panels: [{ y: { label: 'rear brake force over weight', unit: '1', shows: 'ratio' }, low: 0, high, lines }],
    },
    page,
  )
}
