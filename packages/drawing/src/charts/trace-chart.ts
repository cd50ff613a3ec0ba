import { kindOf, type Trace } from '@ampwright/engine'
import { group } from 'd3-array'
import type { Quantity } from '../axis.ts'
import { type Line, lineChart, type Mark, type Panel } from '../line-chart.ts'
import type { Chart, Page } from '../picture.ts'

type Series = Trace['series'][number]
/** The common axis of a trace as a quantity. */
export const axisQuantity = ({ axis }: Trace): Quantity => ({ label: axis.label, unit: axis.unit })
export const lineOf = (s: Series, more: Partial<Line> = {}): Line => ({ name: s.name, label: s.label, values: s.values, ...more })

/** Kinds that are read from zero: a temperature or a voltage is not. */
const FROM_ANYWHERE = ['temperature', 'voltage', 'altitude']
export const fromZero = ({ unit, shows }: Pick<Series, 'unit' | 'shows'>): boolean => !FROM_ANYWHERE.includes(shows ?? kindOf(unit) ?? '')

/** Any trace as it is: series of one unit share a plot, in the order the trace names them. Where `names` are given, only those series. */
export function traceChart(
  trace: Trace,
  page: Page,
  { names, marks = [] }: { readonly names?: readonly string[]; readonly marks?: readonly Mark[] } = {},
): Chart {
  const series = names ? trace.series.filter(s => names.includes(s.name)) : trace.series,
    groups = group(series, s => `${s.unit} ${s.shows ?? ''}`)
  const panels = [...groups.values()].map((list, i): Panel => {
    const [first] = list as [Series]
    return {
      y: { label: list.length === 1 ? first.label : (kindOf(first.unit) ?? ''), unit: first.unit, shows: first.shows },
      zero: fromZero(first),
      lines: list.map(s => lineOf(s)),
      marks: i === 0 ? marks : [],
    }
  })
  return lineChart({ label: trace.label, x: { ...axisQuantity(trace), values: trace.axis.values }, panels }, page)
}
