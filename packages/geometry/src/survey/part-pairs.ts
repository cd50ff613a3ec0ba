import {
  dot,
  inBox,
  lengthOf,
  minus,
  type OrientedBox,
  outOfBox,
  type PairTask,
  type SurveyedPair,
  times,
  type Vector,
} from '@ampwright/engine'
import { type Gap, gapBetween, gapToBox } from '../gap.ts'
import type { PreparedMesh } from '../prepare.ts'

/** Meshes that stand for their shapes, in the axes of these, by name. */
export type PartMeshes = ReadonlyMap<string, PreparedMesh>

/** How near each pair comes, by meshes where these stand for their shapes and by boxes where not; nothing of a pair without any mesh. */
export const pairsOf = (
  pairs: readonly PairTask[],
  parts: PartMeshes,
  before: Readonly<Record<string, SurveyedPair>> = {},
): Readonly<Record<string, SurveyedPair>> =>
  Object.fromEntries(
    pairs.flatMap((pair): [string, SurveyedPair][] => {
      const known = before[pair.name]
      if (known?.pose === pair.pose) return [[pair.name, known]]
      const gap = gapOf(pair, parts)
      return gap ? [[pair.name, surveyed(pair, gap)]] : []
    }),
  )

function gapOf({ one, other }: PairTask, parts: PartMeshes): Gap | undefined {
  const first = parts.get(one.name),
    second = parts.get(other.name)
  if (first)
    return inCar(
      one.box,
      second ? gapBetween(first, second, { pose: within(one.box, other.box) }) : gapToBox(first, within(one.box, other.box)),
    )
  return second && turnedRound(inCar(other.box, gapToBox(second, within(other.box, one.box))))
}

/** A box as another one's axes have it, from the middle of that. */
const within = (frame: OrientedBox, { centre, half, axes }: OrientedBox): OrientedBox => ({
  centre: inBox(frame, centre),
  half,
  axes: axes.map(axis => frame.axes.map(f => dot(f, axis))) as unknown as OrientedBox['axes'],
})
const inCar = (frame: OrientedBox, gap: Gap | undefined): Gap | undefined =>
  gap && { ...gap, onFirst: outOfBox(frame, gap.onFirst), onSecond: outOfBox(frame, gap.onSecond) }
const turnedRound = (gap: Gap | undefined): Gap | undefined => gap && { ...gap, onFirst: gap.onSecond, onSecond: gap.onFirst }

function surveyed({ pose, one, other }: PairTask, { gap, onFirst, onSecond }: Gap): SurveyedPair {
  const line: Vector = minus(onSecond, onFirst),
    far = lengthOf(line)
  return {
    pose,
    places: [one.box.centre, other.box.centre],
    apart: gap,
    at: tidy(onFirst),
    away: far > 0 ? times(line, 1 / far) : [0, 0, 0],
  }
}

/** What is left of sums of binary fractions is nothing. */
const tidy = (at: Vector): Vector => at.map(x => (Math.abs(x) < 1e-9 ? 0 : x)) as unknown as Vector
