import { type FuseCurve, late, meltingTime } from './fuse-curve.ts'
import { type Band, bandsAbove, logLine, type Point, timeOnLine } from './log-lines.ts'

/** What a contactor carries and breaks: continuous current [A], points it carries (current [A], time [s]), and the most it may break [A] at the pack's voltage. */
export type ContactorLimits = { readonly continuous: number; readonly points: readonly Point[]; readonly breaks: number }
/**
 * How the way to a contactor's last point is read: along a line by logarithms, or by what the last point allows, I²t = constant, where that is less.
 * Sheets print points decades apart and do not say.
 */
export type Reading = 'line' | 'last point'
/** How a fuse and a contactor are held against each other: how late the fuse may be, as a share in current, and how the contactor is read. */
export type Held = { readonly tolerance: number; readonly reading: Reading }

/**
 * Time [s] a contactor carries a current [A]: without end up to its continuous current, then as its first point until there, then by the reading;
 * behind the last point I²t is constant. Throws RangeError on fewer than two points, or points that
 * do not rise in current and fall in time.
 */
export function carryTime({ continuous, points }: ContactorLimits, current: number, reading: Reading): number {
  if (current <= continuous) return Number.POSITIVE_INFINITY
  const line = logLine(points),
    [first, last] = [points[0] as Point, points.at(-1) as Point],
    before = points.at(-2) as Point
  if (current <= first[0]) return first[1]
  const asLast = (last[0] ** 2 * last[1]) / current ** 2
  if (current > last[0]) return asLast
  const along = timeOnLine(line, current)
  return reading === 'last point' && current > before[0] ? Math.min(asLast, along) : along
}

export type Verdict = 'opening' | 'fuse first' | 'gap'
export type AtCurrent = {
  /** Until the fuse melts [s]; undefined where its curve says nothing. */
  readonly melts: number | undefined
  readonly carries: number
  /** Opening: the contactor may be opened, within `carries`. Fuse first: it melts in time. Gap: neither. */
  readonly verdict: Verdict
}
/** Who clears a fault current [A]: the contactor up to what it breaks, above it the fuse if it melts no later than the contactor carries. */
export function whoClears(fuse: FuseCurve, contactor: ContactorLimits, current: number, { tolerance, reading }: Held): AtCurrent {
  const melts = meltingTime(late(fuse, tolerance), current),
    carries = carryTime(contactor, current, reading)
  return {
    melts,
    carries,
    verdict: current <= contactor.breaks ? 'opening' : melts !== undefined && melts <= carries ? 'fuse first' : 'gap',
  }
}

/**
 * Fault currents [A], of those between the lowest and the highest, that nothing clears: above what the contactor breaks, with the fuse not proven
 * first. Melting only: arcing comes on top, so a fuse barely first is not first. Exact on the curves as given.
 * Throws RangeError when the lowest is not above zero or lies above the highest.
 */
export function gaps(fuse: FuseCurve, contactor: ContactorLimits, lowest: number, highest: number, held: Held): readonly Band[] {
  if (!(lowest > 0 && lowest <= highest))
    throw new RangeError(`gaps: lowest must lie above zero and not above highest, found ${lowest} and ${highest}`)
  const from = Math.max(lowest, contactor.breaks)
  if (from >= highest) return []
  const slow = late(fuse, held.tolerance),
    corners = [contactor.continuous, ...contactor.points.map(([i]) => i), ...slow.points.map(([i]) => i)]
  return bandsAbove(from, highest, corners, current => {
    const melts = meltingTime(slow, current)
    return melts === undefined ? Number.POSITIVE_INFINITY : Math.log(melts / carryTime(contactor, current, held.reading))
  })
}

/** Current [A] from which the fuse is always first; what the contactor breaks where there is no gap, undefined where there is no end to it. */
export function crossing(fuse: FuseCurve, contactor: ContactorLimits, held: Held): number | undefined {
  const beyond = 10 * Math.max(contactor.breaks, ...contactor.points.map(([i]) => i), fuse.quickest[0] * (1 + held.tolerance)),
    last = gaps(fuse, contactor, contactor.breaks, beyond, held).at(-1)
  return last === undefined ? contactor.breaks : last.to >= beyond ? undefined : last.to
}

/** How sure a crossing is: as printed, with the fuse late, with the contactor read by its last point, and with both; least and greatest of these. */
export type CrossingBand = {
  readonly printed: number | undefined
  readonly late: number | undefined
  readonly lastPoint: number | undefined
  readonly both: number | undefined
  readonly from: number | undefined
  /** The one to use; undefined where one of the four has no end. */
  readonly to: number | undefined
}
/** The crossing as a band, for a fuse that may be late by a share in current. 0.1 is the usual band of a time–current curve (from memory). */
export function crossingBand(fuse: FuseCurve, contactor: ContactorLimits, tolerance: number): CrossingBand {
  const at = (share: number, reading: Reading) => crossing(fuse, contactor, { tolerance: share, reading }),
    [printed, slow, lastPoint, both] = [at(0, 'line'), at(tolerance, 'line'), at(0, 'last point'), at(tolerance, 'last point')],
    all = [printed, slow, lastPoint, both],
    known = all.filter(x => x !== undefined)
  return {
    printed,
    late: slow,
    lastPoint,
    both,
    from: known.length ? Math.min(...known) : undefined,
    to: known.length === all.length ? Math.max(...known) : undefined,
  }
}
