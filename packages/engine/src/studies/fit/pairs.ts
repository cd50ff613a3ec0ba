import { CLEARANCE_HABITS } from '../../fitting/clearance-habits.ts'
import { bodyGap, gapBelow } from '../../fitting/placed-body.ts'
import { surveyedAir } from '../../fitting/surveyed.ts'
import type { Vector } from '../../fitting/vector.ts'
import type { SurveyedMeshes } from '../../model/survey.ts'
import type { Fact, Figure, Gap } from '../../working/value.ts'
import type { Maker } from '../study.ts'
import type { PlacedShape } from './places.ts'
import { poseOf } from './scan-task.ts'
import { standsAs } from './stands-as.ts'

/** Two shapes and the air between them; a gap while that of their meshes is being measured. */
export type Pair = { readonly one: PlacedShape; readonly other: PlacedShape; readonly gap: Figure | Gap }
/** Two shapes and the air between their boxes [m]. */
type Boxes = { readonly one: PlacedShape; readonly other: PlacedShape; readonly plain: number }

/** Pairs further apart than this are not told, unless none is nearer [m]. */
const CLOSE = 0.03

/** Air that is wanted between two shapes: what moves with a motor wants more. */
export const airBetween = (one: PlacedShape, other: PlacedShape): Fact =>
  one.kind === 'motor' || other.kind === 'motor' ? CLEARANCE_HABITS.atMotor : CLEARANCE_HABITS.toBody
export const pairName = (one: PlacedShape, other: PlacedShape): string => `${one.name} and ${other.name}`
export const pairPose = (one: PlacedShape, other: PlacedShape): string => `${poseOf(one)} ${poseOf(other)}`

/** Pairs whose boxes come close; where none do, the one that comes closest. What stays in the car was there together before. */
export function closePairs(all: readonly PlacedShape[]): readonly Boxes[] {
  const stays = (s: PlacedShape): boolean => s.kind === 'stays in the car'
  let least: Boxes | undefined
  const close: Boxes[] = []
  for (const [i, one] of all.entries())
    for (const other of all.slice(i + 1)) {
      if (stays(one) && stays(other)) continue
      const pair = { one, other, plain: gapBelow(one.box, other.box, Math.max(CLOSE, least?.plain ?? Infinity)) }
      if (least === undefined || pair.plain < least.plain) least = pair
      if (pair.plain < CLOSE) close.push(pair)
    }
  return close.length ? close : least ? [least] : []
}

/** The air of each pair that comes close: by meshes where there are any. Until these are measured their boxes will do, which hold them, where they leave enough. */
export const airOfPairs = (make: Maker, all: readonly PlacedShape[], measured: SurveyedMeshes | undefined): readonly Pair[] =>
  closePairs(all).map(({ one, other, plain }): Pair => {
    const as = [one, other].map(s => standsAs(s, measured?.shapes))
    if (as.every(a => a === 'box')) return { one, other, gap: byBoxes(make, one, other) }
    const found = as.includes('being measured') ? undefined : measured?.pairs[pairName(one, other)]
    if (found?.pose === pairPose(one, other)) return { one, other, gap: byMeshes(make, one, other, found) }
    return { one, other, gap: plain < airBetween(one, other).value ? beingMeasured(one, other) : byBoxes(make, one, other) }
  })

const named = (one: PlacedShape, other: PlacedShape) => ({
  item: pairName(one, other),
  label: `Air between ${one.name} and ${other.name}`,
})
const byBoxes = (make: Maker, one: PlacedShape, other: PlacedShape): Figure =>
  make.work(
    'between',
    bodyGap,
    { place1: one.place, sides1: one.sides, turns1: one.turns, place2: other.place, sides2: other.sides, turns2: other.turns },
    named(one, other),
  )
const byMeshes = (make: Maker, one: PlacedShape, other: PlacedShape, { apart, away, places }: SurveyedMeshes['pairs'][string]): Figure =>
  make.work(
    'between',
    surveyedAir,
    {
      surveyed: meshFact(one, `gap to ${other.name}`, 's', apart, 'm'),
      away: three(one, `${other.name} away from it`, 'n', away, '1'),
      now1: one.place,
      before1: three(one, 'when measured', 'p_10', places[0], 'm'),
      now2: other.place,
      before2: three(one, `${other.name} when measured`, 'p_20', places[1], 'm'),
    },
    named(one, other),
  )

const beingMeasured = (one: PlacedShape, other: PlacedShape): Gap => ({
  gap: true,
  path: `fit.bodies.${one.mesh ? one.name : other.name}.mesh`,
  label: `gap between ${one.name} and ${other.name} by their meshes`,
  until: 'any time',
  why: 'being measured',
})

/** A value measured on the mesh of a shape. */
export const meshFact = ({ name }: PlacedShape, what: string, symbol: string, value: number, unit: string): Fact => ({
  path: `fit.bodies.${name}.mesh#${what}`,
  label: what,
  symbol,
  unit,
  ...(unit === 'm' ? { shows: 'length' as const } : {}),
  value,
  origin: { how: 'measured', note: 'on the mesh, over all its triangles' },
})
const three = (shape: PlacedShape, what: string, symbol: string, v: Vector, unit: string): readonly Fact[] =>
  v.map((x, i) => meshFact(shape, `${what}, ${'xyz'[i]}`, symbol, x, unit))
