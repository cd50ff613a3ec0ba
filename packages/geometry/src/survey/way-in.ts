import { dot, lengthOf, minus, type OrientedBox, plus, type SurveyedWay, times, type Vector, type WayAsked } from '@ampwright/engine'
import { Box3 } from 'three'
import { type Gap, gapBetween, gapToBox, type Pose } from '../gap.ts'
import type { PreparedMesh } from '../prepare.ts'
import { type OnWay, tightest } from '../way.ts'

/** Nearer than this a body on its way touches [m]; so many steps are taken to come that near. */
const TOUCH = 1e-4
const STEPS = 1000

/**
 * A body on its straight way in past a mesh, from where it is past all of it: the tightest place, or where it first runs in. The body is its box, or `part` in
 * the axes of that box.
 *
 * Where it runs in first is found by steps as long as the gap, for no point of the body moves further than that. Source: Mirtich (1996), conservative advancement
 * (from memory).
 */
export function wayPast(mesh: PreparedMesh, box: OrientedBox, { pose, out, from }: WayAsked, part?: PreparedMesh): SurveyedWay {
  const outside = Math.max(from, travelPast(mesh, box, out)),
    at = (travel: number): Pose => ({ axes: box.axes, centre: plus(box.centre, times(out, travel)) }),
    gapAt = (p: Pose): Gap => (part ? gapBetween(mesh, part, { pose: p }) : gapToBox(mesh, { ...p, half: box.half })) as Gap,
    found = tightest(gapAt, lengthOf(box.half), outside > from ? [at(outside), at(from)] : [at(from)])
  const travel = found.gap.overlap ? struckAt(t => gapAt(at(t)).gap, from, outside) : outside + found.along * (from - outside)
  return told(pose, box.centre, travel, found, gapAt(at(travel)))
}

function told(
  pose: string,
  place: Vector,
  out: number,
  { gap: { gap, overlap }, atLeast }: OnWay,
  { onFirst, onSecond }: Gap,
): SurveyedWay {
  const line = minus(onSecond, onFirst)
  return { pose, place, out, apart: gap, atLeast, at: onFirst, away: overlap || gap === 0 ? [0, 0, 0] : times(line, 1 / gap) }
}

/** Travel out of its seat at which a body coming in first touches. */
function struckAt(gapAt: (travel: number) => number, from: number, outside: number): number {
  let travel = outside
  for (let step = 0; step < STEPS && travel > from; step++) {
    const gap = gapAt(travel)
    if (gap < TOUCH) break
    travel = Math.max(from, travel - gap)
  }
  return travel
}

/** Travel after which a body is past all of a mesh. */
function travelPast(mesh: PreparedMesh, box: OrientedBox, out: Vector): number {
  const { min, max } = mesh.tree.getBoundingBox(new Box3()),
    furthest = out[0] * (out[0] > 0 ? max.x : min.x) + out[1] * (out[1] > 0 ? max.y : min.y) + out[2] * (out[2] > 0 ? max.z : min.z),
    reach = box.half.reduce((sum, h, i) => sum + h * Math.abs(dot(box.axes[i] as Vector, out)), 0)
  return furthest - dot(box.centre, out) + reach
}
