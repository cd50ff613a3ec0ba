import { between, cross, dot, lengthOf, minus, plus, times, type Vector } from '@ampwright/engine'
import { inCar, type Placement } from './placement.ts'
import { bestTurn } from './turn.ts'
import { FILE_UNITS, type FileUnit, unitOfScale } from './unit.ts'

/** A point picked on the scan, in the unit and axes of its file, and where it is in the car, m. */
export type Pick = { readonly onScan: Vector; readonly inCar: Vector }

export type Alignment = {
  readonly placement: Placement
  /** The unit of the file, as it was given or as the distances tell; undefined where they fit none and the scale was taken from them. */
  readonly unit: FileUnit | undefined
  /** How much longer the picks are apart in the car than on the scan in that unit: 0.01 is one in a hundred. 0 where the scale was taken from them. */
  readonly scaleOff: number
  /** How far each pick lies from its place after all, m, and the root of their mean square. */
  readonly residuals: readonly number[]
  readonly residual: number
}
export type AlignmentProblem = { readonly what: string; readonly found: string; readonly accepted: string }

/** Picks that stand off their common line by less than this share of their length leave the turn about it open. (common practice) */
const FLATTEST = 0.05
/** Points nearer to each other than this, m, say too little of how the rest of a scan lies. (common practice) */
const CLOSEST = 0.1
/** Distances that differ by more than this from the unit that was said are in another unit, or between other points. (common practice) */
const FURTHEST_OFF = 0.1

/**
 * Lays a scan into the car by three or more points picked on it whose places in the car are known: the best turn and shift in the sum of squares, never a
 * stretch. The scale is that of the unit, given or found from the distances; where they fit no unit, the scale itself, and that is said.
 *
 * Three points cannot tell a scan from its mirror image: `mirrored` has to be said.
 */
export function byPicks(
  picks: readonly Pick[],
  { unit, mirrored = false }: { readonly unit?: FileUnit; readonly mirrored?: boolean } = {},
): Alignment | { readonly problem: AlignmentProblem } {
  const problem = wrong(picks)
  if (problem) return { problem }
  // Mirrored, z of the file is turned round first; the turn that follows takes care of the rest.
  const seen = (p: Vector): Vector => (mirrored ? [p[0], p[1], -p[2]] : p)
  const [from, to] = [picks.map(p => seen(p.onScan)), picks.map(p => p.inCar)] as const,
    [fromCentre, toCentre] = [centre(from), centre(to)],
    [outwards, wanted] = [from.map(p => minus(p, fromCentre)), to.map(p => minus(p, toCentre))] as const
  const found = Math.sqrt(squares(wanted) / squares(outwards)),
    known = unit ?? unitOfScale(found),
    scale = known === undefined ? found : FILE_UNITS[known]
  if (Math.abs(found / scale - 1) > FURTHEST_OFF) return { problem: unfit(unit as FileUnit, found) }
  const rows = bestTurn(outwards, wanted).map(seen) as unknown as Placement['turn'],
    turned = inCar({ scale, turn: rows, shift: [0, 0, 0] }, seen(fromCentre)),
    placement: Placement = { scale, turn: rows, shift: minus(toCentre, turned) },
    residuals = picks.map(p => between(inCar(placement, p.onScan), p.inCar))
  const residual = Math.sqrt(residuals.reduce((sum, r) => sum + r * r, 0) / residuals.length)
  return { placement, unit: known, scaleOff: found / scale - 1, residuals, residual }
}

function unfit(unit: FileUnit, found: number): AlignmentProblem {
  const other = unitOfScale(found)
  return {
    what: `the distances between the points do not fit a scan in ${unit}`,
    found: `${Number((found / FILE_UNITS[unit]).toPrecision(3))} times as long in the car${other ? `, as if it were in ${other}` : ''}`,
    accepted: `within ${percent(FURTHEST_OFF)}: another unit, none said, or other points`,
  }
}

const centre = (places: readonly Vector[]): Vector => times(places.reduce(plus, [0, 0, 0]), 1 / places.length)
const squares = (places: readonly Vector[]): number => places.reduce((sum, p) => sum + dot(p, p), 0)

function wrong(picks: readonly Pick[]): AlignmentProblem | undefined {
  if (picks.length < 3) return { what: 'too few points are picked', found: `${picks.length}`, accepted: 'three or more, not on one line' }
  for (const [side, places] of [
    ['on the scan', picks.map(p => p.onScan)],
    ['in the car', picks.map(p => p.inCar)],
  ] as const) {
    const flat = flatness(places)
    if (!(flat >= FLATTEST))
      return {
        what: `the points lie on one line ${side}, or nearly so: the scan could turn about it`,
        found: Number.isNaN(flat) ? 'all at one place' : `${percent(flat)} of their length off it`,
        accepted: `at least ${percent(FLATTEST)}: pick one well to the side`,
      }
  }
  const span = Math.max(...picks.flatMap(p => picks.map(q => between(p.inCar, q.inCar))))
  if (span < CLOSEST)
    return {
      what: 'the points lie too close together in the car',
      found: `${Number((1000 * span).toPrecision(3))} mm`,
      accepted: `at least ${1000 * CLOSEST} mm: pick them as far apart as the scan goes`,
    }
  return undefined
}

const percent = (share: number): string => `${Math.round(1000 * share) / 10} %`

/** How far the places stand off the line through the two furthest apart, as a share of its length; NaN where all are one. */
function flatness(places: readonly Vector[]): number {
  let longest = 0,
    [start, along]: [Vector, Vector] = [
      [0, 0, 0],
      [0, 0, 0],
    ]
  for (const p of places)
    for (const q of places)
      if (between(p, q) > longest) {
        longest = between(p, q)
        start = p
        along = times(minus(q, p), 1 / longest)
      }
  return Math.max(...places.map(p => lengthOf(cross(minus(p, start), along)))) / longest
}
