import { type Curve, curve } from '@ampwright/engine'
import { type Track, trackDistances } from '@ampwright/exchange'

/** Points closer together than this are one place [m]: below it a satellite receiver sees mostly its own noise. */
const APART = 10

/** Index of every point that lies at least `APART` behind the one kept before; the last always. */
function kept(distances: Float64Array, has: (i: number) => boolean): number[] {
  const out: number[] = []
  for (let i = 0; i < distances.length; i++)
    if (has(i) && (out.length === 0 || distances[i]! - distances[out.at(-1)!]! >= APART)) out.push(i)
  const last = distances.length - 1
  if (out.length > 1 && out.at(-1) !== last && has(last) && distances[last]! > distances[out.at(-2)!]!) out[out.length - 1] = last
  return out
}

/** Height over distance of a track; undefined where it carries no heights. Distances along the ellipsoid, from the first point. */
export function routeHeights(track: Track): Curve | undefined {
  const distances = trackDistances(track),
    { elevations } = track
  if (!distances || !elevations) return undefined
  const places = kept(distances, i => Number.isFinite(elevations[i]))
  return places.length < 2
    ? undefined
    : curve(
        places.map(i => distances[i]!),
        places.map(i => elevations[i]!),
      )
}

/**
 * Speed over distance of a track, from its time stamps; undefined where it carries none, or where they stand still or fall back.
 *
 * Speed is that between places at least 10 m apart and stands in the middle between them. A stop shows as a slow place.
 */
export function routeSpeeds(track: Track): Curve | undefined {
  const distances = trackDistances(track),
    { times } = track
  if (!distances || !times) return undefined
  const places = kept(distances, i => Number.isFinite(times[i])),
    x: number[] = [],
    y: number[] = []
  for (let k = 1; k < places.length; k++) {
    const a = places[k - 1]!,
      b = places[k]!,
      seconds = times[b]! - times[a]!
    if (!(seconds > 0)) return undefined
    x.push((distances[a]! + distances[b]!) / 2)
    y.push((distances[b]! - distances[a]!) / seconds)
  }
  if (x.length < 2) return undefined
  const end = distances[places.at(-1)!]!
  return curve([distances[places[0]!]!, ...x, end], [y[0]!, ...y, y.at(-1)!])
}
