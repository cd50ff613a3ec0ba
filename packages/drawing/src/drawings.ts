import type { Assessment, Finding, Trace } from '@ampwright/engine'
import { accelerationChart } from './charts/acceleration.ts'
import { brakeForces } from './charts/brake-forces.ts'
import { numberIn, wordsIn } from './charts/cells.ts'
import { energyFlow } from './charts/energy-flow.ts'
import { pullMarks, runMarks } from './charts/goal-marks.ts'
import { gripUsed } from './charts/grip-used.ts'
import { motorCurvesChart } from './charts/motor-curves.ts'
import { rangeTable } from './charts/range-table.ts'
import { ratioWindowChart } from './charts/ratio-window.ts'
import { tractiveForce } from './charts/tractive-force.ts'
import { tripChart } from './charts/trip.ts'
import { voltageWindowChart } from './charts/voltage-window.ts'
import type { Mark } from './line-chart.ts'
import type { Outcome, Page, Picture } from './picture.ts'
import { boxDrawing, type BoxToDraw } from './scene/box-drawing.ts'
import { type BoxPoint, boxPlan, type Plan, reachOut } from './scene/box-plan.ts'
import { sceneOf } from './scene/scene.ts'
import { carView, VIEWS } from './scene/view.ts'

export type Kind =
  | 'tractive force'
  | 'motor curves'
  | 'acceleration'
  | 'trip'
  | 'charge'
  | 'energy flow'
  | 'voltage window'
  | 'ratio window'
  | 'range table'
  | 'range by speed'
  | 'view of the car'
  | 'battery box'
  | 'brake forces'
  | 'grip used'

/** A drawing an assessment has the data for; nothing is drawn before it is asked. `id` is that of the trace or table it shows. */
export type Drawing = {
  readonly id: string
  readonly kind: Kind
  /** It tells how sure its figures are, which is worked out last. */
  readonly tellsHowSure?: true
  readonly label: string
  /** The unit, trip or place it is about, where there are several. */
  readonly item?: string
  readonly draw: (page: Page) => Picture
  /** The same to scale in metres, where it can go to a drawing program. */
  readonly plan?: () => Plan
}
type Known = Pick<Assessment, 'figures' | 'halves' | 'tables' | 'traces' | 'findings'>

/** Every drawing an assessment has the data for, in the order of the job. What rests on a gap is missing from the list. */
export function drawingsOf(a: Known): readonly Drawing[] {
  return [
    ...pulls(a),
    ...motors(a),
    ...runs(a),
    ...ratios(a),
    ...courses(a),
    ...flows(a),
    ...voltages(a),
    ...weather(a),
    ...views(a),
    ...boxes(a),
    ...brakes(a),
  ]
}

const itemOf = (id: string): { item?: string } => (id.includes('@') ? { item: id.slice(id.indexOf('@') + 1) } : {})
const ofTraces = (a: Known, start: string, kind: Kind, draw: (t: Trace, page: Page) => Picture): readonly Drawing[] =>
  [...a.traces.values()]
    .filter(t => t.id === start || t.id.startsWith(`${start}@`))
    .map(t => ({ id: t.id, kind, label: t.label, ...itemOf(t.id), draw: page => draw(t, page) }))

/** With one unit its gears carry the goals; with several the goals are a matter of all together. */
function pulls(a: Known): readonly Drawing[] {
  const together = a.traces.get('tractive.pull-together'),
    units = ofTraces(a, 'tractive.pull', 'tractive force', (unit, page) =>
      tractiveForce({ unit, together }, page, { marks: several ? [] : pullMarks(a) }),
    ),
    several = units.length > 1
  if (!several || !together) return units
  const { id, label } = together
  return [{ id, kind: 'tractive force', label, draw: page => tractiveForce({ together }, page, { marks: pullMarks(a) }) }, ...units]
}
const motors = (a: Known): readonly Drawing[] => ofTraces(a, 'motor.curves', 'motor curves', motorCurvesChart)
const runs = (a: Known): readonly Drawing[] =>
  ofTraces(a, 'acceleration.run', 'acceleration', (t, page) => accelerationChart(t, page, { marks: runMarks(a) }))
const courses = (a: Known): readonly Drawing[] => [
  ...ofTraces(a, 'trip.course', 'trip', (t, page) => tripChart(t, page, { temperatures: throttling(a, t) })),
  ...ofTraces(a, 'charge.course', 'charge', tripChart),
  ...ofTraces(a, 'parked.course', 'charge', tripChart),
]

/** Where warm windings begin to cost power. */
function throttling(a: Known, { id }: Trace): readonly Mark[] {
  const from = a.figures.get(id.replace('trip.course', 'trip.throttled-from'))?.value
  return from === undefined ? [] : [{ y: from, label: 'windings: less power from here' }]
}

const brakes = (a: Known): readonly Drawing[] => [
  ...ofTraces(a, 'utilisation.forces', 'brake forces', brakeForces),
  ...ofTraces(a, 'utilisation.grip', 'grip used', gripUsed),
]

function ratios(a: Known): readonly Drawing[] {
  return [...a.tables.values()]
    .filter(t => t.id.startsWith('window.ratio@'))
    .flatMap((t): readonly Drawing[] => {
      const { item = '' } = itemOf(t.id),
        present = a.figures.get(`ratio.total@${item}`)?.value
      if (present === undefined) return []
      const gears = (a.tables.get(`gear.gears@${item}`)?.rows ?? []).flatMap(({ name, cells }) => {
        const ratio = numberIn(cells['ratio'])
        return ratio === undefined ? [] : [{ name, ratio }]
      })
      return [{ id: t.id, kind: 'ratio window', label: t.label, item, draw: page => ratioWindowChart(t, present, page, { gears }) }]
    })
}
const flows = (a: Known): readonly Drawing[] =>
  [...a.tables.values()]
    .filter(t => t.id.startsWith('trip.energy@'))
    .map(t => ({ id: t.id, kind: 'energy flow', label: t.label, ...itemOf(t.id), draw: page => energyFlow(t, page) }))

function voltages(a: Known): readonly Drawing[] {
  const t = a.tables.get('voltage-window.parts')
  if (!t) return []
  const value = (id: string): number | undefined => a.figures.get(id)?.value,
    outcomes = worst(a.findings)
  return [
    {
      id: t.id,
      kind: 'voltage window',
      label: t.label,
      draw: page =>
        voltageWindowChart(
          t,
          { nominal: value('voltage-window.nominal'), charged: value('voltage-window.charged'), sag: value('sag.voltage'), outcomes },
          page,
        ),
    },
  ]
}
const WORST: readonly Outcome[] = ['failing', 'unanswered', 'marginal', 'accepted', 'sound', 'does not apply']
/** The worst outcome of each part among the rules on the pack's voltage. */
function worst(findings: readonly Finding[]): Readonly<Record<string, Outcome>> {
  const out: Record<string, Outcome> = {}
  for (const { rule, item, outcome } of findings)
    if (rule.startsWith('voltage-when-') && item !== undefined) {
      const before = out[item]
      if (before === undefined || WORST.indexOf(outcome) < WORST.indexOf(before)) out[item] = outcome
    }
  return out
}
/** The car from above, from its left and from ahead, once something has a shape. */
function views(a: Known): readonly Drawing[] {
  const scene = sceneOf(a)
  if (!scene) return []
  return (['plan', 'side', 'front'] as const).map(side => ({
    id: `place.shapes@${side}`,
    kind: 'view of the car',
    label: VIEWS[side],
    item: side,
    draw: page => carView(scene, side, page),
  }))
}
/** Battery boxes whose sides and wall are known, from three sides with their sizes. */
function boxes(a: Known): readonly Drawing[] {
  return (a.tables.get('shell.boxes')?.rows ?? []).flatMap(({ name, cells }): readonly Drawing[] => {
    const sizes = ['length', 'width', 'height', 'wall'].map(key => numberIn(cells[key]))
    if (sizes.some(s => s === undefined)) return []
    const [length, width, height, wall] = sizes as [number, number, number, number],
      box: BoxToDraw = { name, length, width, height, wall, material: wordsIn(cells['material']), points: pointsOf(a, name) },
      beside = 0.15 * Math.max(length, width, height)
    return [
      {
        id: `shell.boxes@${name}`,
        kind: 'battery box',
        label: `Battery box ${name}`,
        item: name,
        draw: page => boxDrawing(box, page),
        plan: () => boxPlan(box, 2 * (beside + reachOut(box)), beside / 2 + reachOut(box)),
      },
    ]
  })
}
/** Where a box is fixed, of the points that are measured on it. */
const pointsOf = (a: Known, part: string): readonly BoxPoint[] =>
  (a.tables.get('fixing-point.points')?.rows ?? []).flatMap(({ cells }) => {
    const [back, across, up] = ['back', 'across', 'up'].map(key => numberIn(cells[key]))
    return wordsIn(cells['part']) === part && back !== undefined && across !== undefined && up !== undefined ? [{ back, across, up }] : []
  })
function weather(a: Known): readonly Drawing[] {
  return (
    [
      ['range-in-weather.ranges', 'range table'],
      ['range-at-speeds.ranges', 'range by speed'],
    ] as const
  ).flatMap(([id, kind]) => {
    const t = a.tables.get(id)
    return t && t.rows.length > 0 ? [{ id, kind, label: t.label, tellsHowSure: true, draw: page => rangeTable(t, a.halves, page) }] : []
  })
}
