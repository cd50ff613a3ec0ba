import type { Axis } from './axis.ts'
import { extentOf } from './axis.ts'
import type { ChartSpec, Line, Mark, Panel } from './line-chart.ts'

const FEW = 4

/** The text alternative of a chart: what runs over what, lowest and highest of each line, where the marks lie. */
export function describedChart(spec: ChartSpec, x: Axis, ys: readonly Axis[]): string {
  const over = `Over ${x.quantity.label} from ${x.read(x.domain[0])} to ${x.read(x.domain[1])}: `
  const said = spec.panels.flatMap((p, i) => saidOf(p, ys[i] as Axis))
  const marks = spec.panels.flatMap((p, i) => (p.marks ?? []).map(m => markSaid(m, x, ys[i] as Axis)))
  return `${over}${said.join('; ')}.${marks.length ? ` Marked: ${marks.join('; ')}.` : ''}`
}
function saidOf({ lines, y: quantity }: Panel, y: Axis): readonly string[] {
  if (lines.length <= FEW) {
    const said = lines.map(l => lineSaid(l, y)).join(', ')
    return [lines.every(l => l.label.includes(quantity.label)) ? said : `${quantity.label}: ${said}`]
  }
  const extremes = lines.flatMap(l => {
    const e = extentOf([l.values])
    return e ? [{ label: l.label, low: e[0], high: e[1] }] : []
  })
  const [first] = extremes
  if (!first) return [`${quantity.label}, ${lines.length} lines without a value`]
  const low = extremes.reduce((a, b) => (b.low < a.low ? b : a), first),
    high = extremes.reduce((a, b) => (b.high > a.high ? b : a), first)
  return [
    `${quantity.label} in ${lines.length} lines, lowest ${y.read(low.low)} (${low.label}), highest ${y.read(high.high)} (${high.label})`,
  ]
}
function lineSaid({ label, values }: Line, y: Axis): string {
  const e = extentOf([values])
  if (e === undefined) return `${label} without a value`
  const [low, high] = e.map(y.read)
  return low === high ? `${label} ${low}` : `${label} from ${low} to ${high}`
}
function markSaid({ label, outcome, x, y }: Mark, xAxis: Axis, yAxis: Axis): string {
  const where = [...(x === undefined ? [] : [xAxis.read(x)]), ...(y === undefined ? [] : [yAxis.read(y)])].join(', ')
  return `${label}${outcome ? `, ${outcome}` : ''} at ${where}`
}
