import { dot, lengthOf, minus, type OrientedBox, plus, type SurveyedWay, times, type Vector, type WayAsked } from '@ampwright/engine'
import { Box3 } from 'three'
import { type Gap, gapBetween, gapToBox, type Pose } from '../gap.ts'
import type { PreparedMesh } from '../prepare.ts'
import { tightest } from '../way.ts'

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
    { near, exact, atLeast } = gapsPast(mesh, box, part),
    found = tightest(near, lengthOf(box.half), outside > from ? [at(outside), at(from)] : [at(from)])
  if (!found.gap.overlap) return told(pose, box.centre, outside + found.along * (from - outside), found.gap, found.atLeast)
  const travel = struckAt(t => atLeast(at(t)), from, outside)
  return told(pose, box.centre, travel, { ...exact(at(travel)), gap: 0, overlap: true }, 0)
}

/** Far enough from the tightest place not to be looked at closely [m]. */
const FAR = 0.05

/** Gaps of a body where it stands: as near as a search wants them, exact, and at the least. That of the box, which is quick, is never more than that of the mesh in it. */
function gapsPast(mesh: PreparedMesh, { half }: OrientedBox, part: PreparedMesh | undefined) {
  const ofBox = (p: Pose): Gap => gapToBox(mesh, { ...p, half }) as Gap
  if (!part) return { near: ofBox, exact: ofBox, atLeast: (p: Pose): number => ofBox(p).gap }
  const exact = (p: Pose): Gap => gapBetween(mesh, part, { pose: p }) as Gap
  return {
    exact,
    near: (p: Pose, least: number): Gap => {
      const quick = ofBox(p)
      if (quick.gap >= least) return quick
      return gapBetween(mesh, part, { pose: p, upTo: least + FAR }) ?? { ...quick, gap: least + FAR, overlap: false }
    },
    atLeast: (p: Pose): number => {
      const quick = ofBox(p).gap
      return quick > FAR / 10 ? quick : exact(p).gap
    },
  }
}

function told(pose: string, place: Vector, out: number, { gap, overlap, onFirst, onSecond }: Gap, atLeast: number): SurveyedWay {
  const line = minus(onSecond, onFirst)
  return { pose, place, out, apart: gap, atLeast, at: onFirst, away: overlap || gap === 0 ? [0, 0, 0] : times(line, 1 / gap) }
}

/** Travel out of its seat at which a body coming in first touches. `gapAt` tells its gap there, or less as long as it is well clear. */
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
