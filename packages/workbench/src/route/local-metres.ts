import { type Ellipsoid, WGS84 } from '@ampwright/exchange'

/** A line on level ground [m]: x to the east, y to the north, 0 at the middle of the track. */
export type GroundLine = { readonly x: Float64Array; readonly y: Float64Array }

/**
 * A track in local metres around its middle latitude: east by the radius of the parallel, north by that of the meridian. Right to some parts in a thousand
 * over a day's drive; lengths are measured along the ellipsoid, not here.
 *
 * Across the date line the track stays in one piece. Source of the two radii: NGA.STND.0036, ellipsoid geometry (from memory).
 */
export function localMetres(
  { latitudes, longitudes }: { readonly latitudes: ArrayLike<number>; readonly longitudes: ArrayLike<number> },
  on: Ellipsoid = WGS84,
): GroundLine {
  const n = latitudes.length,
    unrolled = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    const before = i === 0 ? longitudes[0]! : unrolled[i - 1]!
    unrolled[i] = longitudes[i]! - 360 * Math.round((longitudes[i]! - before) / 360)
  }
  const [north, east] = [middleOf(latitudes), middleOf(unrolled)],
    degree = Math.PI / 180
  const e2 = on.flattening * (2 - on.flattening),
    w = 1 - e2 * Math.sin(north * degree) ** 2
  const meridian = (on.radius * (1 - e2)) / w ** 1.5,
    parallel = (on.radius / Math.sqrt(w)) * Math.cos(north * degree)
  return {
    x: unrolled.map(l => (l - east) * degree * parallel),
    y: Float64Array.from(latitudes, l => (l - north) * degree * meridian),
  }
}

function middleOf(values: ArrayLike<number>): number {
  let low = Number.POSITIVE_INFINITY,
    high = Number.NEGATIVE_INFINITY
  for (let i = 0; i < values.length; i++) {
    low = Math.min(low, values[i]!)
    high = Math.max(high, values[i]!)
  }
  return values.length === 0 ? 0 : (low + high) / 2
}
