/** An ellipsoid of revolution: equatorial radius [m] and flattening. */
export type Ellipsoid = { readonly radius: number; readonly flattening: number }

/** World Geodetic System 1984, which satellite receivers and GPX use. NGA.STND.0036 (from memory). */
export const WGS84: Ellipsoid = { radius: 6378137, flattening: 1 / 298.257223563 }

const MOST_TURNS = 200

/**
 * Shortest way [m] along an ellipsoid between two places in degrees, right to a millimetre.
 *
 * Undefined for places almost opposite each other on the globe, where the iteration does not settle.
 * Source: Vincenty, Direct and inverse solutions of geodesics on the ellipsoid with application of nested equations, Survey Review XXIII
 * no. 176 (1975) 88–93, inverse formula (from memory).
 */
export function geodesicDistance(
  fromLatitude: number,
  fromLongitude: number,
  toLatitude: number,
  toLongitude: number,
  on: Ellipsoid = WGS84,
): number | undefined {
  const f = on.flattening
  const polar = on.radius * (1 - f)
  const degree = Math.PI / 180
  const u1 = Math.atan((1 - f) * Math.tan(fromLatitude * degree))
  const u2 = Math.atan((1 - f) * Math.tan(toLatitude * degree))
  const [sinU1, cosU1, sinU2, cosU2] = [Math.sin(u1), Math.cos(u1), Math.sin(u2), Math.cos(u2)]
  // The shorter way round, also across the date line.
  const apart = toLongitude - fromLongitude
  const difference = apart - 360 * Math.round(apart / 360)
  let lambda = difference * degree
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const [sinL, cosL] = [Math.sin(lambda), Math.cos(lambda)]
    const sinSigma = Math.hypot(cosU2 * sinL, cosU1 * sinU2 - sinU1 * cosU2 * cosL)
    if (sinSigma === 0 && cosL > 0) return 0
    const cosSigma = sinU1 * sinU2 + cosU1 * cosU2 * cosL
    const sigma = Math.atan2(sinSigma, cosSigma)
    const sinAlpha = sinSigma === 0 ? 0 : (cosU1 * cosU2 * sinL) / sinSigma
    const cos2Alpha = 1 - sinAlpha * sinAlpha
    const cos2M = cos2Alpha === 0 ? 0 : cosSigma - (2 * sinU1 * sinU2) / cos2Alpha
    const c = (f / 16) * cos2Alpha * (4 + f * (4 - 3 * cos2Alpha))
    const last = lambda
    lambda = difference * degree + (1 - c) * f * sinAlpha * (sigma + c * sinSigma * (cos2M + c * cosSigma * (2 * cos2M * cos2M - 1)))
    if (Math.abs(lambda) > Math.PI) return undefined
    if (Math.abs(lambda - last) > 1e-13) continue
    const uu = cos2Alpha * ((on.radius / polar) ** 2 - 1)
    const a = 1 + (uu / 16384) * (4096 + uu * (-768 + uu * (320 - 175 * uu)))
    const b = (uu / 1024) * (256 + uu * (-128 + uu * (74 - 47 * uu)))
    const inner = cosSigma * (2 * cos2M * cos2M - 1) - (b / 6) * cos2M * (4 * sinSigma * sinSigma - 3) * (4 * cos2M * cos2M - 3)
    return polar * a * (sigma - b * sinSigma * (cos2M + (b / 4) * inner))
  }
  return undefined
}

/**
 * Distance [m] from the first point of a track to each, along the ellipsoid from point to point; the first is 0.
 *
 * Level distance: climbing makes the road longer (0.5 % at a slope of 10 %), but noise of the elevations would make it longer still. Gaps between
 * segments count as straight ways. Undefined when two neighbouring points lie almost opposite each other on the globe: that is no track.
 * Throws RangeError when the lists differ in length or a place is not finite.
 */
export function trackDistances(track: {
  readonly latitudes: ArrayLike<number>
  readonly longitudes: ArrayLike<number>
}): Float64Array | undefined {
  const { latitudes, longitudes } = track
  const n = latitudes.length
  if (longitudes.length !== n) throw new RangeError(`longitudes must have one value for each of ${n} points, found ${longitudes.length}`)
  const distances = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    if (!Number.isFinite(latitudes[i]) || !Number.isFinite(longitudes[i]))
      throw new RangeError(`point ${i} must have a finite place, found ${latitudes[i]}, ${longitudes[i]}`)
    if (i === 0) continue
    const step = geodesicDistance(latitudes[i - 1]!, longitudes[i - 1]!, latitudes[i]!, longitudes[i]!)
    if (step === undefined) return undefined
    distances[i] = distances[i - 1]! + step
  }
  return distances
}
