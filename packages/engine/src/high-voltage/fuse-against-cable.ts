import { root } from '../numerics/index.ts'
import { hottest, type WarmingCable, warming } from './cable-warming.ts'
import { type FuseCurve, late, meltingCurrent, meltingIntegral, meltingTime } from './fuse-curve.ts'
import { type Band, bandsAbove } from './log-lines.ts'
import { ADIABATIC_TIME } from './short-circuit-withstand.ts'

/** Where a fuse alone does not prove a cable, of the fault currents [A] asked about. */
export type Unproven = {
  /** More current squared times time than the cable stands, within 5 s. */
  readonly fails: readonly Band[]
  /** The same, but slower than 5 s: heat is lost meanwhile, so follow it in time with `clearedAt`. */
  readonly slow: readonly Band[]
  /** Below the fuse's curve, where nothing is known. */
  readonly unknown: readonly Band[]
}
/**
 * Fault currents between the lowest and the highest [A] at which a fuse lets through more than a cable stands [A²·s]. The worst is the lowest: a fuse
 * lets through the more the slower it melts. `tolerance`: how late the fuse may be, as a share in current; `arcing`: current squared times time [A²·s]
 * that comes on top.
 *
 * Where nothing is named the cable is proven, slow faults too: no heat was taken as lost. Exact on the curve as given.
 * Throws RangeError when the lowest is not above zero or lies above the highest.
 */
export function unproven(fuse: FuseCurve, stands: number, lowest: number, highest: number, tolerance: number, arcing = 0): Unproven {
  if (!(lowest > 0 && lowest <= highest))
    throw new RangeError(`unproven: lowest must lie above zero and not above highest, found ${lowest} and ${highest}`)
  const slow = late(fuse, tolerance),
    left = stands - arcing,
    known = slow.slowest[0],
    within = (from: number, to: number, excess: (current: number) => number): readonly Band[] => {
      const [a, b] = [Math.max(from, lowest), Math.min(to, highest)]
      return a < b
        ? bandsAbove(
            a,
            b,
            slow.points.map(([i]) => i),
            excess,
          )
        : []
    },
    excess = (current: number): number =>
      left > 0 ? Math.log(meltingIntegral({ current, time: meltingTime(slow, current) as number }) / left) : Number.POSITIVE_INFINITY,
    // A curve that ends above or below 5 s has all its currents on one side.
    atFive = meltingCurrent(slow, ADIABATIC_TIME.value) ?? known
  return {
    fails: within(Math.max(known, atFive), Number.POSITIVE_INFINITY, excess),
    slow: within(known, Math.max(known, atFive), excess),
    unknown: within(0, known, () => Number.POSITIVE_INFINITY),
  }
}

/** A cable before a slow fault: temperature of its conductor [K] and of the air [K]. */
export type Before = { readonly start: number; readonly ambient: number }
/** Temperature [K] of a cable's conductor when its fuse has melted at a current [A], heat lost meanwhile; undefined below the fuse's curve, without end above 1000 °C. */
export function clearedAt(fuse: FuseCurve, cable: WarmingCable, current: number, { start, ambient }: Before): number | undefined {
  const time = meltingTime(fuse, current)
  if (time === undefined) return undefined
  const run = warming(cable, [{ current, time }], start, ambient)
  return run === undefined ? Number.POSITIVE_INFINITY : hottest(run)
}

/**
 * Current [A] from which a fuse alone keeps a cable below a temperature [K] in slow faults; the start of the fuse's curve where it always does, undefined
 * where it does not even at the current that melts it in 5 s. Good to ±3 %, as the one body of `warming` is.
 */
export function protectedFrom(fuse: FuseCurve, cable: WarmingCable, most: number, before: Before): number | undefined {
  const known = fuse.slowest[0],
    over = (current: number): number => Math.min(clearedAt(fuse, cable, current, before) as number, 1e4) - most
  if (over(known) <= 0) return known
  return root(over, known, meltingCurrent(fuse, ADIABATIC_TIME.value) ?? fuse.quickest[0], 1e-3)
}
