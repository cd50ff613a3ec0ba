import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Ellipsoid, geodesicDistance, trackDistances, WGS84 } from './track-distance.ts'

const angle = (degrees: number, minutes: number, seconds: number): number => degrees + minutes / 60 + seconds / 3600

/** Great circle on a ball of the mean radius: an independent way, right to 0.6 %. */
function haversine(fromLatitude: number, fromLongitude: number, toLatitude: number, toLongitude: number): number {
  const r = Math.PI / 180
  const h =
    Math.sin(((toLatitude - fromLatitude) * r) / 2) ** 2 +
    Math.cos(fromLatitude * r) * Math.cos(toLatitude * r) * Math.sin(((toLongitude - fromLongitude) * r) / 2) ** 2
  return 2 * 6371008.8 * Math.asin(Math.min(1, Math.sqrt(h)))
}

const latitude = fc.double({ min: -89, max: 89, noNaN: true })
const longitude = fc.double({ min: -180, max: 180, noNaN: true })

describe('the way along the ellipsoid', () => {
  test('is that of the paper: lines (a), (b) and (c) to the millimetre', () => {
    // Vincenty 1975, table II: line (a) on Bessel's ellipsoid, (b) and (c) on the International one.
    const bessel: Ellipsoid = { radius: 6377397.155, flattening: 1 / 299.1528128 }
    const international: Ellipsoid = { radius: 6378388, flattening: 1 / 297 }
    const a = geodesicDistance(angle(55, 45, 0), 0, -angle(33, 26, 0), angle(108, 13, 0), bessel)
    const b = geodesicDistance(angle(37, 19, 54.95367), 0, angle(26, 7, 42.83946), angle(41, 28, 35.50729), international)
    const c = geodesicDistance(angle(35, 16, 11.24862), 0, angle(67, 22, 14.77638), angle(137, 47, 28.31435), international)
    expect(Math.abs(a! - 14110526.17)).toBeLessThan(0.001)
    expect(Math.abs(b! - 4085966.703)).toBeLessThan(0.001)
    expect(Math.abs(c! - 8084823.839)).toBeLessThan(0.001)
  })

  test('from Flinders Peak to Buninyong is 54 972.271 m', () => {
    // Worked example of the Australian geodetic datum's technical manual (GRS 80, which differs from WGS 84 in the tenth digit; from memory).
    const way = geodesicDistance(-angle(37, 57, 3.7203), angle(144, 25, 29.5244), -angle(37, 39, 10.1561), angle(143, 55, 35.3839))
    expect(Math.abs(way! - 54972.271)).toBeLessThan(0.001)
  })

  test('is 10 001 965.729 m from equator to pole, and a 360th of the equator for a degree along it', () => {
    expect(Math.abs(geodesicDistance(0, 12, 90, 77)! - 10001965.729)).toBeLessThan(0.001)
    expect(geodesicDistance(0, 5, 0, 6)).toBeCloseTo((2 * Math.PI * WGS84.radius) / 360, 6)
  })

  test('lies within 0.6 % of the great circle on a ball', () => {
    fc.assert(
      fc.property(latitude, longitude, latitude, longitude, (a, b, c, d) => {
        const way = geodesicDistance(a, b, c, d)
        const round = haversine(a, b, c, d)
        if (way !== undefined && round > 1) expect(Math.abs(way / round - 1)).toBeLessThan(0.006)
      }),
    )
  })

  test('is the same there and back, across the date line, and never longer than a detour', () => {
    fc.assert(
      fc.property(latitude, longitude, latitude, longitude, (a, b, c, d) => {
        const way = geodesicDistance(a, b, c, d)
        if (way === undefined) return
        expect(Math.abs(geodesicDistance(c, d, a, b)! - way)).toBeLessThan(1e-4)
        expect(Math.abs(geodesicDistance(a, b + 360, c, d)! - way)).toBeLessThan(1e-4)
        const [first, second] = [geodesicDistance(a, b, 10, 20), geodesicDistance(10, 20, c, d)]
        if (first !== undefined && second !== undefined) expect(way).toBeLessThan(first + second + 1e-3)
      }),
    )
    expect(geodesicDistance(10, 179.9999, 10, -179.9999)).toBeCloseTo(geodesicDistance(10, 0, 10, 0.0002)!, 5)
  })

  test('is right for the metre between two fixes', () => {
    // On so short a way the ellipsoid is flat: north M·Δφ, east N·cos φ·Δλ.
    const [phi, e2] = [(47 * Math.PI) / 180, WGS84.flattening * (2 - WGS84.flattening)]
    const w = 1 - e2 * Math.sin(phi) ** 2
    const [m, n] = [(WGS84.radius * (1 - e2)) / w ** 1.5, WGS84.radius / Math.sqrt(w)]
    const step = (1e-5 * Math.PI) / 180
    expect(geodesicDistance(47 - 5e-6, 8, 47 + 5e-6, 8)).toBeCloseTo(m * step, 6)
    expect(geodesicDistance(47, 8, 47, 8.00001)).toBeCloseTo(n * Math.cos(phi) * step, 6)
    expect(geodesicDistance(47, 8, 47, 8)).toBe(0)
  })

  test('is not known between places almost opposite each other', () => {
    expect(geodesicDistance(0, 0, 0.5, 179.7)).toBeUndefined()
  })
})

describe('the distances of a track', () => {
  test('add up from point to point', () => {
    const distances = trackDistances({ latitudes: [0, 0, 0, 0], longitudes: [0, 1, 1, 0.5] })!
    const degree = (2 * Math.PI * WGS84.radius) / 360
    expect(distances[0]).toBe(0)
    for (const [i, d] of [0, 1, 1, 1.5].entries()) expect(distances[i]).toBeCloseTo(d * degree, 5)
    expect(trackDistances({ latitudes: [], longitudes: [] })).toHaveLength(0)
  })

  test('are none for a jump across the globe, and refuse lists that do not fit', () => {
    expect(trackDistances({ latitudes: [0, 0.5], longitudes: [0, 179.7] })).toBeUndefined()
    expect(() => trackDistances({ latitudes: [0, 1], longitudes: [0] })).toThrow(
      RangeError('longitudes must have one value for each of 2 points, found 1'),
    )
    expect(() => trackDistances({ latitudes: [Number.NaN], longitudes: [0] })).toThrow(
      RangeError('point 0 must have a finite place, found NaN, 0'),
    )
  })
})
