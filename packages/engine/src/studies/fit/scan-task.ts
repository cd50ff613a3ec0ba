import type { AlignedBox, OrientedBox } from '../../fitting/box.ts'
import type { Vector } from '../../fitting/vector.ts'
import { outOf, type Way } from '../../fitting/way-in.ts'
import type { Scan } from '../../model/fit.ts'
import type { Model } from '../../model/model.ts'
import { type Fact, type Field, type Gap, isGap } from '../../working/value.ts'
import { type Ask, type Gaps, gapsIn, isGaps } from '../study.ts'
import { type PlacedShape, places, shapesOf } from './places.ts'
import { SEAT } from './way-in.ts'

/** How a scan is laid into the car, and which free space of it is wanted [m]; only points on the scan are as its file counts. */
export type LaidScan = {
  /** Name of the file beside the conversion. */
  readonly file: string
  /** All of this and the fingerprint of the file in one text: what is measured holds for it alone. */
  readonly pose: string
  readonly unit?: 'mm' | 'cm' | 'm' | 'in' | 'ft'
  readonly mirrored: boolean
  readonly picks: readonly { readonly onScan: Vector; readonly inCar: Vector }[]
  readonly free?: { readonly from: Vector; readonly edge: number; readonly within?: AlignedBox }
}
/** What geometry is asked of one scan: everything is plain numbers, so that it can go to another thread. */
export type ScanTask = LaidScan & {
  readonly scan: string
  readonly bodies: readonly {
    readonly name: string
    readonly pose: string
    readonly box: OrientedBox
    readonly way?: WayAsked
  }[]
}
/** A straight way in: where it goes when it is taken out, and the travel out of its seat from which on it is looked at [m]. */
export type WayAsked = { readonly pose: string; readonly out: Vector; readonly from: number }

/** Fewest points that lay a scan into a car. */
const FEWEST = 3

/** Scans of the file, in an order that does not hang on it. */
export const scansOf = (m: Model): readonly (readonly [string, Scan])[] => Object.entries(m.fit.scans).sort(([a], [b]) => (a < b ? -1 : 1))

/** How a scan lies, or what is missing to tell. */
export function laidScan(m: Model, name: string): LaidScan | Gaps {
  const scan = m.fit.scans[name] as Scan,
    points = Object.entries(scan.points).sort(([a], [b]) => (a < b ? -1 : 1)),
    gaps = gapsIn([scan.file, points.map(([, p]) => [p.onScanX, p.onScanY, p.onScanZ, p.x, p.y, p.z])], new WeakSet(), [])
  if (points.length < FEWEST) gaps.push(pointsOf(name))
  if (gaps.length) return { gaps }
  const file = scan.file as Fact<string>,
    picks = points.map(([, p]) => ({ onScan: vector(p.onScanX, p.onScanY, p.onScanZ), inCar: vector(p.x, p.y, p.z) })),
    unit = isGap(scan.unit) ? {} : { unit: scan.unit.value },
    mirrored = !isGap(scan.mirrored) && scan.mirrored.value === 'yes',
    free = freeOf(m, scan)
  const laid = { ...unit, mirrored, picks, ...(free ? { free } : {}) }
  return { ...laid, file: file.text ?? '', pose: JSON.stringify([file.value, laid]) }
}

/** What is to be measured of each scan that can be laid into the car. */
export function scanTasks(m: Model, ask: Ask): readonly ScanTask[] {
  const bodies = goingIn(m, ask).map(s => {
    const way = wayOf(m, s)
    return {
      name: s.name,
      pose: poseOf(s),
      box: s.box,
      ...(way ? { way: { pose: wayPose(s, way), out: outOf(way), from: SEAT.value } } : {}),
    }
  })
  return scansOf(m).flatMap(([scan]) => {
    const laid = laidScan(m, scan)
    return isGaps(laid) ? [] : [{ ...laid, scan, bodies }]
  })
}

/** Shapes that go in and have their place. What stays in the car is part of what was scanned. */
export function goingIn(m: Model, ask: Ask): readonly PlacedShape[] {
  const answer = ask(places)
  if (isGaps(answer)) return []
  return shapesOf(m).flatMap(([name, b]) => {
    const s = answer.shapes[name] as PlacedShape | Gaps
    return b.kind === 'stays in the car' || isGaps(s) ? [] : [s]
  })
}

/** Which way a shape goes in, where that is said. */
export function wayOf(m: Model, { name }: PlacedShape): Way | undefined {
  const body = m.fit.bodies[name]
  return body && 'wayIn' in body && !isGap(body.wayIn) ? body.wayIn.value : undefined
}
/** A shape as it stands and the way it goes in, in one text. */
export const wayPose = (shape: PlacedShape, way: Way): string => `${poseOf(shape)} ${way}`

/** Place, sides, turns and mesh of a shape in one text. */
export const poseOf = ({ place, sides, turns, mesh }: PlacedShape): string =>
  JSON.stringify([...[place, sides, turns].map(three => three.map(v => v.value)), ...(mesh ? [mesh.mark, mesh.unit ?? ''] : [])])

/** The free space wanted: inside the space the scan stands for, where that is measured. */
function freeOf(m: Model, { inside, resolution, space }: Scan): LaidScan['free'] {
  const { x, y, z } = inside
  if (isGap(x) || isGap(y) || isGap(z) || isGap(resolution)) return undefined
  const room = isGap(space) ? undefined : m.fit.spaces[space.value],
    known = room && gapsIn([room.front, room.left, room.bottom, room.rear, room.right, room.top], new WeakSet(), []).length === 0
  return {
    from: vector(x, y, z),
    edge: resolution.value,
    ...(room && known
      ? { within: { low: vector(room.front, room.left, room.bottom), high: vector(room.rear, room.right, room.top) } }
      : {}),
  }
}

const vector = (x: Field, y: Field, z: Field): Vector => [(x as Fact).value, (y as Fact).value, (z as Fact).value]
const pointsOf = (name: string): Gap => ({
  gap: true,
  path: `fit.scans.${name}.points`,
  label: 'three points picked on the scan, with their places in the car',
  until: 'before the body is apart',
  measure: { tool: 'tape, plumb line and straight edge', accuracy: '± 3 mm', minutes: 20 },
})
