import { corners, type Vector } from '@ampwright/engine'
import { unitOf } from '../axis.ts'
import { type Entry, keyOf, pictureSvg, SIZE, sized, titleOf, write } from '../frame.ts'
import { type Hand, handOf, type Ink } from '../inks.ts'
import { element, pixel } from '../markup.ts'
import { type Outcome, type Page, type Picture, SHAPES } from '../picture.ts'
import { reading, withUnit } from '../reading.ts'
import { tidy } from '../readout.ts'
import { letters, type Spot } from './letters.ts'
import type { Scene, SceneBody, SceneHandle, SceneRoom } from './scene.ts'

export type Side = 'plan' | 'side' | 'front'
type Flat = readonly [u: number, v: number]
/** What lies across and what lies up the sheet: in plan the front is to the left and the right side of the car above, as seen on the road from above. */
const ONTO: Readonly<Record<Side, (p: Vector) => Flat>> = {
  plan: ([x, y]) => [x, y],
  side: ([x, , z]) => [x, z],
  front: ([, y, z]) => [-y, z],
}
const SEEN: Readonly<Record<Side, string>> = {
  plan: 'from above, the front to the left',
  side: 'from the left, the front to the left',
  front: 'from ahead',
}
/** What each view is called. */
export const VIEWS: Readonly<Record<Side, string>> = {
  plan: 'The car from above',
  side: 'The car from its left',
  front: 'The car from ahead',
}
const INK: Readonly<Partial<Record<Outcome, Ink>>> = { failing: 'failing', marginal: 'marginal', unanswered: 'unknown' }
const MARGIN = 14
const MARKS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz'
/** A letter for each shape; past the last one, a number. */
const markOf = (i: number): string => MARKS[i] ?? String(i)

/** The car as a drawing to scale, from one side: spaces, what stands in them, what is kept free, wheels, ground and centre of mass. */
export function carView(scene: Scene, side: Side, on: Page): Picture {
  const page = sized(on),
    hand = handOf(page.standalone),
    label = VIEWS[side],
    title = titleOf(page, label),
    extent = extentOf(scene, side),
    scale = (page.width - 2 * MARGIN) / (extent.high[0] - extent.low[0]),
    foot = title.height + MARGIN + (extent.high[1] - extent.low[1]) * scale
  const at = ([u, v]: Flat): Flat => [MARGIN + (u - extent.low[0]) * scale, foot - (v - extent.low[1]) * scale]
  const onto = (p: Vector): Flat => at(ONTO[side](p))
  const spots = scene.bodies.map(b => ({ hull: hullOf(corners(b.box).map(onto)) })),
    marks = letters(spots.map(s => s.hull))
  const text = textOf(scene, side)
  const key = keyOf(hand, entriesOf(hand, scene), MARGIN, foot + 26, page.width - 2 * MARGIN),
    height = foot + 26 + key.height + 6
  const svg = [
    ...title.svg,
    ...groundOf(hand, side, extent, at),
    ...carOf(hand, scene, side, onto),
    ...wheelsOf(hand, scene, side, onto, scale),
    ...scene.spaces.map(r => outline(hand, roundSpace(r, side, onto), { ink: 'quiet', dash: '2 3' })),
    ...scene.kept.map(r => outline(hand, boxHull(r.low, r.high, onto), { ink: 'failing', dash: '5 3', fill: 0.06 })),
    ...scene.shafts.map(s => shaftOf(hand, onto(s.from), onto(s.to), Math.max(1.5, 2 * s.radius * scale))),
    ...scene.bodies.map((b, i) => bodyOf(hand, b, (spots[i] as { hull: readonly Flat[] }).hull)),
    ...scene.handles.map(h => handleMark(hand, h, onto(h.at))),
    ...massOf(hand, scene, onto),
    ...marks.flatMap((m, i) => (m ? [letterOf(hand, m, markOf(i))] : [])),
    ...rulerOf(page, hand, scale, foot + 14),
    ...key.svg,
  ]
  return { label, width: page.width, text, height, svg: pictureSvg(page, height, label, text, svg), table: () => listed(scene, page) }
}

type Box2 = { readonly low: Flat; readonly high: Flat }
/** Everything that is drawn, with the ground in the views that have one. */
function extentOf(scene: Scene, side: Side): Box2 {
  const points: Flat[] = []
  const add = (p: Vector): void => void points.push(ONTO[side](p))
  for (const b of scene.bodies) corners(b.box).forEach(add)
  for (const r of [...scene.spaces, ...scene.kept]) [r.low, r.high].forEach(add)
  for (const s of scene.shafts) [s.from, s.to].forEach(add)
  for (const h of scene.handles) add(h.at)
  for (const [x, z] of scene.profile ?? []) add([x, 0, z])
  for (const w of scene.wheels)
    for (const i of [-1, 1]) add([w.centre[0] + i * w.radius, w.centre[1] + (i * w.width) / 2, w.centre[2] + i * w.radius])
  if (scene.car) {
    const { front, rear, width, height } = scene.car
    add([front, -width / 2, 0])
    add([rear, width / 2, height])
  }
  if (side !== 'plan') points.push([points[0]?.[0] ?? 0, 0])
  const along = (i: 0 | 1, of: (...n: number[]) => number): number => of(...points.map(p => p[i]))
  const low: Flat = [along(0, Math.min), along(1, Math.min)],
    high: Flat = [along(0, Math.max), along(1, Math.max)]
  // A car is never drawn wider than this share allows, so that a single part does not fill the sheet.
  return { low, high: [Math.max(high[0], low[0] + 0.5), Math.max(high[1], low[1] + 0.2)] }
}

/** Convex outline of points, in order round it. */
export function hullOf(points: readonly Flat[]): readonly Flat[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (list: readonly Flat[]): Flat[] => {
    const out: Flat[] = []
    for (const p of list) {
      while (out.length > 1 && turns(out.at(-2) as Flat, out.at(-1) as Flat, p) <= 0) out.pop()
      out.push(p)
    }
    return out.slice(0, -1)
  }
  return [...half(sorted), ...half(sorted.reverse())]
}
const turns = (a: Flat, b: Flat, c: Flat): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

const path = (points: readonly Flat[]): string => `M${points.map(([u, v]) => `${pixel(u)} ${pixel(v)}`).join('L')}Z`
function outline(hand: Hand, hull: readonly Flat[], o: { ink: Ink; dash?: string; fill?: number; width?: number }): string {
  return element('path', {
    d: path(hull),
    fill: o.fill === undefined ? 'none' : hand.ink(o.ink),
    'fill-opacity': o.fill === undefined ? undefined : String(o.fill),
    stroke: hand.ink(o.ink),
    'stroke-width': String(o.width ?? 1),
    'stroke-dasharray': o.dash,
  })
}
/** A space as its walls run where they are measured and seen from above, else square. */
const roundSpace = ({ low, high, outline }: SceneRoom, side: Side, onto: (p: Vector) => Flat): readonly Flat[] =>
  side === 'plan' && outline ? outline.map(([x, y]) => onto([x, y, low[2]])) : boxHull(low, high, onto)
function boxHull(low: Vector, high: Vector, onto: (p: Vector) => Flat): readonly Flat[] {
  const all = Array.from({ length: 8 }, (_, n): Vector => [n & 1 ? high[0] : low[0], n & 2 ? high[1] : low[1], n & 4 ? high[2] : low[2]])
  return hullOf(all.map(onto))
}
function bodyOf(hand: Hand, { kind, outcome }: SceneBody, hull: readonly Flat[]): string {
  const ink: Ink = INK[outcome] ?? (kind === 'stays in the car' ? 'quiet' : 'act')
  return outline(hand, hull, { ink, fill: kind === 'stays in the car' ? 0.06 : 0.16, width: 1.6 })
}
function letterOf(hand: Hand, { u, v }: Spot, letter: string): string {
  return write(hand, u, v + 4.5, letter, { ink: 'ink', anchor: 'middle', weight: 700, rim: true, class: 'drawing-label' })
}
function groundOf(hand: Hand, side: Side, extent: Box2, at: (p: Flat) => Flat): readonly string[] {
  const line = (a: Flat, b: Flat, ink: Ink, dash?: string): string =>
    element('line', { x1: a[0], y1: a[1], x2: b[0], y2: b[1], stroke: hand.ink(ink), 'stroke-dasharray': dash })
  return side === 'plan'
    ? [line(at([extent.low[0], 0]), at([extent.high[0], 0]), 'hair', '9 3 2 3')]
    : [line(at([extent.low[0], 0]), at([extent.high[0], 0]), 'quiet')]
}
function carOf(hand: Hand, { car, profile }: Scene, side: Side, onto: (p: Vector) => Flat): readonly string[] {
  if (side === 'side' && profile)
    return [
      outline(
        hand,
        profile.map(([x, z]) => onto([x, 0, z])),
        { ink: 'line', fill: 0.05 },
      ),
    ]
  if (!car) return []
  const { front, rear, width, height } = car,
    clear = side === 'plan' ? 0 : 0.12
  return [outline(hand, boxHull([front, -width / 2, clear], [rear, width / 2, height], onto), { ink: 'line' })]
}
function wheelsOf(hand: Hand, scene: Scene, side: Side, onto: (p: Vector) => Flat, scale: number): readonly string[] {
  return scene.wheels.map(({ centre, radius, width }) => {
    if (side === 'side') {
      const [cx, cy] = onto(centre)
      return element('circle', { cx, cy, r: radius * scale, fill: 'none', stroke: hand.ink('line'), 'stroke-width': '1.5' })
    }
    const half: Vector = side === 'plan' ? [radius, width / 2, 0] : [0, width / 2, radius]
    return outline(
      hand,
      boxHull(
        [centre[0] - half[0], centre[1] - half[1], centre[2] - half[2]],
        [centre[0] + half[0], centre[1] + half[1], centre[2] + half[2]],
        onto,
      ),
      {
        ink: 'line',
        width: 1.5,
      },
    )
  })
}
const shaftOf = (hand: Hand, a: Flat, b: Flat, width: number): string =>
  element('line', {
    x1: a[0],
    y1: a[1],
    x2: b[0],
    y2: b[1],
    stroke: hand.ink('failing'),
    'stroke-opacity': '0.35',
    'stroke-width': pixel(width),
  })
function massOf(hand: Hand, { centreOfMass }: Scene, onto: (p: Vector) => Flat): readonly string[] {
  if (!centreOfMass) return []
  const [cx, cy] = onto(centreOfMass)
  return [
    element('circle', { cx, cy, r: 7, fill: hand.ink('sheet'), stroke: hand.ink('ink'), 'stroke-width': '1.5' }),
    element('path', { d: `M${pixel(cx)} ${pixel(cy)}V${pixel(cy - 7)}A7 7 0 0 1 ${pixel(cx + 7)} ${pixel(cy)}Z`, fill: hand.ink('ink') }),
    element('path', { d: `M${pixel(cx)} ${pixel(cy)}V${pixel(cy + 7)}A7 7 0 0 1 ${pixel(cx - 7)} ${pixel(cy)}Z`, fill: hand.ink('ink') }),
  ]
}
/** What cuts the power: a bar across a circle, as on its label. */
function handleMark(hand: Hand, { outcome }: SceneHandle, [cx, cy]: Flat): string {
  const ink = hand.ink(INK[outcome] ?? 'ink')
  return `${element('circle', { cx, cy, r: 5, fill: hand.ink('sheet'), stroke: ink, 'stroke-width': '1.5' })}${element('path', { d: `M${pixel(cx)} ${pixel(cy - 5)}V${pixel(cy + 5)}`, stroke: ink, 'stroke-width': '1.5' })}`
}
/** Half a metre, to measure with. */
function rulerOf(page: Page, hand: Hand, scale: number, y: number): readonly string[] {
  const long = 0.5 * scale,
    { unit, fromSI } = unitOf({ label: '', unit: 'm', shows: 'length' }, page.units, 3)
  return [
    element('path', {
      d: `M${pixel(MARGIN)} ${pixel(y - 4)}L${pixel(MARGIN)} ${pixel(y + 1)}L${pixel(MARGIN + long)} ${pixel(y + 1)}L${pixel(MARGIN + long)} ${pixel(y - 4)}`,
      fill: 'none',
      stroke: hand.ink('quiet'),
    }),
    write(hand, MARGIN + long + 6, y + 2, withUnit(reading(fromSI(0.5)), unit), { size: SIZE.tick }),
  ]
}
function entriesOf(hand: Hand, scene: Scene): readonly Entry[] {
  const told = (name: string, outcome: Outcome): string => (INK[outcome] ? `${name} ${SHAPES[outcome]} ${outcome}` : name)
  const handles = scene.handles.map(h => ({
    label: told(h.name, h.outcome),
    sample: (x: number, y: number) => handleMark(hand, h, [x + 10, y]),
  }))
  const bodies = scene.bodies.map(({ name, outcome, kind }, i) => {
    const ink: Ink = INK[outcome] ?? (kind === 'stays in the car' ? 'quiet' : 'act')
    return {
      letter: markOf(i),
      label: told(name, outcome),
      sample: (x: number, y: number) =>
        element('rect', { x, y: y - 6, width: 20, height: 11, fill: hand.ink(ink), 'fill-opacity': '0.16', stroke: hand.ink(ink) }),
    }
  })
  return [...bodies, ...handles]
}
function textOf(scene: Scene, side: Side): string {
  const list = [...scene.bodies.map(({ name, box, outcome }) => ({ name, at: box.centre, outcome })), ...scene.handles].map(
    ({ name, at, outcome }) => `${name} ${placedAt(at)}${INK[outcome] ? ` (${outcome})` : ''}`,
  )
  const mass = scene.centreOfMass ? ` The centre of mass lies ${placedAt(scene.centreOfMass)}.` : ''
  return `Seen ${SEEN[side]}: ${list.join('; ')}.${mass}`
}
const mm = (m: number): string => `${Math.round(m * 1000)}`.replace('-', '−')
const placedAt = ([x, y, z]: Vector): string =>
  `${mm(x)} mm behind the front axle, ${mm(Math.abs(y))} mm to the ${y < 0 ? 'left' : 'right'}, ${mm(z)} mm above the ground`
function listed(scene: Scene, page: Page): ReturnType<Picture['table']> {
  const { unit, fromSI } = unitOf({ label: '', unit: 'm', shows: 'length' }, page.units, 3)
  return {
    columns: [
      '',
      `behind the front axle, ${unit}`,
      `to the right, ${unit}`,
      `above the ground, ${unit}`,
      `length, ${unit}`,
      `width, ${unit}`,
      `height, ${unit}`,
      'found',
    ],
    rows: [
      ...scene.bodies.map(({ name, box, outcome }) => [
        name,
        ...box.centre.map(v => tidy(fromSI(v))),
        ...box.half.map(v => tidy(fromSI(2 * v))),
        outcome,
      ]),
      ...scene.handles.map(({ name, at, outcome }) => [name, ...at.map(v => tidy(fromSI(v))), '', '', '', outcome]),
    ],
  }
}
