import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { geodesicDistance, readGpx, type Track, trackDistances, writeGpx } from '@ampwright/exchange'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { root } from '../../../../tests/cars.ts'
import { runs } from '../../../../tests/counts.ts'
import { localMetres } from './local-metres.ts'
import { type RouteView, roundBelow, routeView, ticks } from './route-view.ts'
import { distanceToPiece, thinned } from './thinned.ts'

function trackOf(text: string): Track {
  const answer = readGpx(text)
  if ('issue' in answer) throw new Error(answer.issue.what)
  return answer.gpx.track
}
const valley = trackOf(readFileSync(join(root, 'samples/attachments/valley-road.gpx'), 'utf8'))
const view = (track: Track, system: 'metric' | 'us' = 'metric'): RouteView => {
  const v = routeView(track, system)
  if (!v) throw new Error('no route')
  return v
}
const lengthOf = (line: readonly number[]): number => {
  let sum = 0
  for (let i = 2; i < line.length; i += 2) sum += Math.hypot(line[i]! - line[i - 2]!, line[i + 1]! - line[i - 1]!)
  return sum
}

describe('a track laid flat', () => {
  it('keeps distances as the ellipsoid has them, within a thousandth over ten kilometres', () => {
    const near = fc.double({ min: -0.045, max: 0.045, noNaN: true })
    fc.assert(
      fc.property(
        fc.double({ min: -65, max: 65, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        near,
        near,
        (lat, lon, a, b) => {
          const latitudes = [lat, lat + a],
            longitudes = [lon, lon + b > 180 ? lon + b - 360 : lon + b]
          const { x, y } = localMetres({ latitudes, longitudes }),
            apart = geodesicDistance(latitudes[0]!, longitudes[0]!, latitudes[1]!, longitudes[1]!) as number
          expect(Math.abs(Math.hypot(x[1]! - x[0]!, y[1]! - y[0]!) - apart)).toBeLessThanOrEqual(1e-3 * apart + 1e-6)
        },
      ),
      { numRuns: runs(20_000) },
    )
  })
  it('has north up and east to the right, also across the date line', () => {
    const { x, y } = localMetres({ latitudes: [10, 10.01, 10.01], longitudes: [179.995, 179.995, -179.995] })
    expect(y[1]! - y[0]!).toBeCloseTo(1106, 0)
    expect(x[1]).toBe(x[0])
    expect(x[2]! - x[1]!).toBeCloseTo(1096.5, 0)
  })
  it('comes back to its start where the track does', () => {
    const { x, y } = localMetres({ latitudes: [48, 48.1, 48], longitudes: [9, 9.2, 9] })
    expect([x[2], y[2]]).toEqual([x[0], y[0]])
  })
})

describe('a line thinned for drawing', () => {
  const point = fc.tuple(fc.integer({ min: -1000, max: 1000 }), fc.integer({ min: -1000, max: 1000 }))
  it('keeps both ends, and every point it leaves out lies within the tolerance of what is drawn', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 60 }), fc.integer({ min: 1, max: 300 }), (points, tolerance) => {
        const x = points.map(p => p[0]),
          y = points.map(p => p[1]),
          kept = thinned(x, y, tolerance)
        expect([kept[0], kept.at(-1)]).toEqual([0, points.length - 1])
        for (let k = 1; k < kept.length; k++) {
          const [a, b] = [kept[k - 1]!, kept[k]!]
          for (let i = a + 1; i < b; i++) expect(distanceToPiece(x[i]!, y[i]!, x[a]!, y[a]!, x[b]!, y[b]!)).toBeLessThanOrEqual(tolerance)
        }
      }),
      { numRuns: runs(5000) },
    )
  })
  it('takes nothing and a single point', () => {
    expect(thinned([], [], 1)).toEqual([])
    expect(thinned([3], [4], 1)).toEqual([0])
  })
})

describe('a route to be drawn', () => {
  it('of the valley road is as long as the ellipsoid says, and tells its rises', () => {
    const v = view(valley)
    expect(v.name).toBe('Valley road, invented')
    expect(lengthOf(v.pieces[0]!)).toBeLessThanOrEqual(trackDistances(valley)!.at(-1)! * 1.001)
    expect(lengthOf(v.pieces[0]!)).toBeGreaterThan(trackDistances(valley)!.at(-1)! * 0.97)
    expect(v.facts.map(f => f.label)).toEqual(['Distance', 'Climb, every rise added up', 'Fall, every drop added up', 'Highest', 'Lowest'])
    expect(v.profile?.box.low).toBe(Math.min(...valley.elevations!))
    expect(v.says).toMatch(/^Valley road, invented: a track of \d+ places\. It ends .* of its start\. Distance: /)
    expect(structuredClone(v)).toEqual(v)
  })
  it('climbs and falls by what its ends differ', () => {
    const track = trackOf(
      writeGpx({
        latitudes: Float64Array.of(47, 47.01, 47.02, 47.03),
        longitudes: Float64Array.of(8, 8, 8, 8),
        elevations: Float64Array.of(500, 620, 580, 600),
      }),
    )
    const facts = Object.fromEntries(view(track).facts.map(f => [f.label, f.text.replaceAll('\u202f', ' ')]))
    expect(facts).toMatchObject({ 'Climb, every rise added up': '140 m', 'Fall, every drop added up': '40 m' })
    expect(facts['Highest']).toMatch(/^620 m, after 1\.11\d? km$/)
    expect(view(track).says).toContain('north of its start')
    expect(view(track, 'us').facts[0]?.text).toContain('mi')
  })
  it('draws a break of the recording as two lines, and says so', () => {
    const v = view({ latitudes: Float64Array.of(1, 1.1, 1.2, 1.3), longitudes: Float64Array.of(1, 1, 1, 1), starts: [0, 2] })
    expect(v.pieces.map(p => p.length)).toEqual([4, 4])
    expect(v.says).toContain('Recorded in 2 pieces.')
    expect(v.profile).toBeUndefined()
  })
  it('of a single place is none', () => {
    expect(routeView({ latitudes: Float64Array.of(1), longitudes: Float64Array.of(1), starts: [0] }, 'metric')).toBeUndefined()
  })
  it('has a scale bar of a round length and marks of round numbers', () => {
    expect([1, 1.9, 2, 4.99, 730, 5000].map(l => roundBelow(l))).toEqual([1, 1, 2, 2, 500, 5000])
    expect(roundBelow(2000, 1609.344)).toBeCloseTo(1609.344)
    expect(ticks(112, 389, 4)).toEqual([200, 300])
    expect(ticks(0, 10_300, 5)).toEqual([0, 5000, 10_000])
    expect(ticks(5, 5, 4)).toEqual([5])
  })
})
