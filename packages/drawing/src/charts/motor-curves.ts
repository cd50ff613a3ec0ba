import type { Trace } from '@ampwright/engine'
import { lineChart, type Panel } from '../line-chart.ts'
import type { Chart, Page } from '../picture.ts'
import { axisQuantity, lineOf } from './trace-chart.ts'

/** Torque above power over motor speed (`motor.curves@UNIT`), for a while and continuously. */
export function motorCurvesChart(trace: Trace, page: Page): Chart {
  const panel = (what: 'torque' | 'power', unit: string): Panel => ({
    y: { label: what, unit },
    zero: true,
    lines: trace.series
      .filter(s => s.name.endsWith(` ${what}`))
      .map(s => lineOf(s, { tone: s.name.startsWith('peak') ? 'strong' : 'act', at: 'end' })),
  })
  return lineChart(
    {
      label: trace.label,
      x: { ...axisQuantity(trace), values: trace.axis.values },
      panels: [panel('torque', 'N·m'), panel('power', 'W')],
    },
    { ...page, height: page.height ?? Math.min(340, Math.max(280, page.width * 0.55)) },
  )
}
