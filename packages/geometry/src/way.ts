import { between, cross, dot, lengthOf, minus, type OrientedBox, plus, times, type Vector } from '@ampwright/engine'
import { type Gap, gapToBox, type Pose } from './gap.ts'
import type { PreparedMesh } from './prepare.ts'

/** The tightest place on a way. */
export type OnWay = {
  readonly gap: Gap
  /** How far along the way, 0 at its start, each leg counting one; and where the box stands there. */
  readonly along: number
  readonly pose: Pose
  /** The gap is nowhere on the way smaller than this, m. */
  readonly atLeast: number
}
export type WayOptions = {
  /** How close `atLeast` has to come to the gap told, m. */
  readonly within?: number
  /** More looks than this are not taken; what is known then is told. */
  readonly looks?: number
}

/** A turn of this much between two stations may go either way round. */
const WIDEST_TURN = (170 / 180) * Math.PI

/**
 * The tightest place on the way of a box past a mesh: from station to station in straight lines, turning evenly. It ends where the box runs into the mesh.
 *
 * No point of the box moves further than its middle does plus the turn times half the diagonal; so between two looks the gap cannot fall below a bound, and looks
 * are taken where it is lowest. Source: Piyavskii (1972) and Shubert (1972), global search for functions of bounded slope (from memory).
 * Throws RangeError on a way without stations, or one that turns by more than 170° between two.
 */
export const tightestOnWay = (mesh: PreparedMesh, half: Vector, stations: readonly Pose[], options: WayOptions = {}): OnWay =>
  tightest(pose => gapToBox(mesh, { ...pose, half }) as Gap, lengthOf(half), stations, options)

/**
 * The same of any body whose gap can be told where it stands, and no point of which is further from its middle than `reach`, m. `gapAt` hears the least gap so far:
 * of a gap that is no less it may tell one too small, but no less either.
 */
export function tightest(
  gapAt: (pose: Pose, least: number) => Gap,
  reach: number,
  stations: readonly Pose[],
  { within = 0.001, looks = 2000 }: WayOptions = {},
): OnWay {
  const [first] = stations
  if (!first) throw new RangeError('tightestOnWay: the way must have stations, found none')
  const legs = stations.slice(1).map((to, i) => legOf(stations[i] as Pose, to, reach, i))
  let best: Omit<OnWay, 'atLeast'> | undefined
  const look = (along: number, pose: Pose): number => {
    const gap = gapAt(pose, best?.gap.gap ?? Infinity)
    if (!best || gap.gap < best.gap.gap || (gap.overlap && !best.gap.overlap)) best = { gap, along, pose }
    return gap.gap
  }
  type Stretch = {
    readonly leg: Leg
    readonly from: number
    readonly to: number
    readonly bound: number
    readonly ends: readonly [number, number]
  }
  const stretch = (leg: Leg, from: number, to: number, a: number, b: number): Stretch => ({
    leg,
    from,
    to,
    ends: [a, b],
    bound: (a + b - leg.most * (to - from)) / 2,
  })
  let at = look(0, first)
  const left: Stretch[] = legs.map(leg => stretch(leg, 0, 1, at, (at = look(leg.index + 1, leg.at(1)))))
  const found = (): Omit<OnWay, 'atLeast'> => best as Omit<OnWay, 'atLeast'>
  for (let taken = stations.length; taken < looks && !found().gap.overlap; taken++) {
    const lowest = left.reduce((l, s, i) => (s.bound < (left[l]?.bound ?? Infinity) ? i : l), 0),
      next = left[lowest]
    if (!next || next.bound >= found().gap.gap - within) break
    const { leg, from, to, ends } = next,
      // Where both bounds meet; kept off the ends, so that stretches always shrink.
      lean = leg.most > 0 ? (ends[0] - ends[1]) / (2 * leg.most) : 0,
      middle = Math.min(to - 0.1 * (to - from), Math.max(from + 0.1 * (to - from), (from + to) / 2 + lean)),
      gap = look(leg.index + middle, leg.at(middle))
    left.splice(lowest, 1, stretch(leg, from, middle, ends[0], gap), stretch(leg, middle, to, gap, ends[1]))
  }
  return { ...found(), atLeast: Math.max(0, Math.min(found().gap.gap, ...left.map(s => s.bound))) }
}

type Leg = {
  readonly index: number
  readonly at: (t: number) => Pose /** How far any point of the box moves at the most, m. */
  readonly most: number
}

function legOf(from: Pose, to: Pose, reach: number, index: number): Leg {
  const trace = from.axes.reduce((sum, a, i) => sum + dot(a, to.axes[i] as Vector), 0),
    angle = Math.acos(Math.max(-1, Math.min(1, (trace - 1) / 2))),
    twist = from.axes.reduce<Vector>((sum, a, i) => plus(sum, cross(a, to.axes[i] as Vector)), [0, 0, 0]),
    size = lengthOf(twist)
  if (angle > WIDEST_TURN)
    throw new RangeError(`tightestOnWay: leg ${index} must turn by at most 170°, found ${Math.round((180 / Math.PI) * angle)}°`)
  const about: Vector = size > 0 ? times(twist, 1 / size) : [0, 0, 1],
    way = minus(to.centre, from.centre)
  return {
    index,
    most: between(from.centre, to.centre) + angle * reach,
    at: t => ({
      centre: plus(from.centre, times(way, t)),
      axes: from.axes.map(a => turnedAbout(a, about, t * angle)) as unknown as OrientedBox['axes'],
    }),
  }
}

/** A direction turned about another (Rodrigues). */
function turnedAbout(a: Vector, about: Vector, angle: number): Vector {
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  return plus(plus(times(a, c), times(cross(about, a), s)), times(about, dot(about, a) * (1 - c)))
}
