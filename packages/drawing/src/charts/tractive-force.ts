import type { Trace } from '@ampwright/engine'
import { isNarrow } from '../frame.ts'
import { type Line, lineChart, type Mark } from '../line-chart.ts'
import type { Chart, Page } from '../picture.ts'
import { axisQuantity, lineOf } from './trace-chart.ts'

/** The traces a chart of pull is drawn from: a unit's own (`tractive.pull@UNIT`), and that of all units with the road load on slopes; one of them or both. */
export type PullTraces = { readonly unit?: Trace; readonly together?: Trace | undefined }
export type PullOptions = {
  /** Goals and other points: a slope wanted at a speed, a top speed. */
  readonly marks?: readonly Mark[]
  /** The old engine's gears beside the new drive. */
  readonly oldEngine?: boolean
  /** Only the gear the unit is usually in; left out, a narrow picture of many gears shows that one. */
  readonly usualGear?: boolean
  /** The continuous pull of every gear, not of the usual one only: many lines. */
  readonly everyContinuous?: boolean
}

/**
 * Pull against road speed: each gear for a while, the usual one continuously, the road load on the level and on slopes, what the tyres carry. Where pull
 * and road load cross is the highest speed on that slope. The force axis follows the pull; what lies above is cut off.
 */
export function tractiveForce({ unit: own, together }: PullTraces, page: Page, options: PullOptions = {}): Chart {
  const unit = own ?? together
  if (!unit) throw new RangeError('a chart of pull needs the trace of a unit or that of all together')
  const all = unit.series.filter(s => /peak$|continuous$/.test(s.name)),
    leading = all.filter(s => s.leading),
    usualGear = options.usualGear ?? (isNarrow(page.width) && all.length > READABLE),
    shown = usualGear && leading.length > 0 ? leading : all,
    pulls = options.everyContinuous || leading.length === 0 ? shown : shown.filter(s => s.leading || s.name.endsWith('peak')),
    loads = (together ?? unit).series.filter(s => s.name.startsWith('slope')),
    grip = together?.series.filter(s => s.name === 'grip') ?? [],
    old = options.oldEngine ? unit.series.filter(s => s.name.startsWith('old')) : []
  const gears = [...new Set(pulls.map(gearOf))],
    usual = pulls.find(s => s.leading)
  const lines: Line[] = [
    ...pulls.map(s =>
      lineOf(s, {
        values: whileItPulls(s.values),
        tone: s.name.endsWith('continuous') ? 'act' : usual && !s.leading ? 'plain' : 'strong',
        dash: usual && gearOf(s) === gearOf(usual) ? 0 : gears.indexOf(gearOf(s)) + (usual ? 1 : 0),
        at: 'start',
      }),
    ),
    ...loads.map(s => lineOf(s, { tone: 'quiet', at: 'end' })),
    ...grip.map(s => lineOf(s, { tone: 'quiet', at: 'end' })),
    ...old.map(s => lineOf(s, { values: whileItPulls(s.values), tone: 'quiet', at: 'start' })),
  ]
  const most = Math.max(...[...pulls, ...old].flatMap(s => [...s.values]), ...(options.marks ?? []).map(m => m.y ?? 0))
  return lineChart(
    {
      label: unit.label,
      x: { ...axisQuantity(unit), values: unit.axis.values },
      panels: [{ y: { label: 'force at the wheels', unit: 'N' }, low: 0, high: most * ROOM_ABOVE, lines, marks: options.marks ?? [] }],
    },
    page,
  )
}

/** More lines of pull than this cannot be told apart in a narrow picture. */
const READABLE = 4
/** For the label of the highest line. */
const ROOM_ABOVE = 1.12
const gearOf = ({ name }: { readonly name: string }): string => name.replace(/ ?(peak|continuous)$/, '')

/** Beyond the speed where the motor or the gearbox runs out there is no pull: the line ends there, it does not drop. */
export function whileItPulls(values: Float64Array): Float64Array {
  const last = values.findLastIndex(v => v > 0)
  return values.map((v, i) => (i > last ? Number.NaN : v))
}
