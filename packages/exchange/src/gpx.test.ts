import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Gpx, gpxReader, readGpx } from './gpx.ts'
import { writeGpx } from './gpx-write.ts'

const head = '<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" creator="a device" xmlns="http://www.topografix.com/GPX/1/1">\n'
const read = (text: string, track = 0): Gpx => {
  const answer = readGpx(text, { track })
  if ('issue' in answer) throw new Error(JSON.stringify(answer.issue))
  return answer.gpx
}
const issueOf = (input: string | Uint8Array): string => {
  const answer = readGpx(input)
  if (!('issue' in answer)) throw new Error('no issue')
  const { line, column, path, what, found, accepted } = answer.issue
  return `${line}:${column} ${path}: ${what}; found ${found}; accepted ${accepted}`
}

const tour = `${head}<metadata><name>not this one</name><time>2024-05-12T00:00:00Z</time></metadata>
<wpt lat="99" lon="0"><ele>1</ele></wpt>
<rte><rtept lat="1" lon="1"/></rte>
<trk><name> Over the pass </name>
 <trkseg>
  <trkpt lat="46.5" lon="7.25"><ele>1200.5</ele><time>2024-05-12T08:30:00Z</time><extensions><t:hr xmlns:t="x">99</t:hr><ele>5</ele></extensions></trkpt>
  <trkpt lon="7.26" lat="46.51"><time>2024-05-12T10:30:02+02:00</time></trkpt>
 </trkseg>
 <trkseg/>
 <trkseg><trkpt lat="-46.52" lon="-7.27"/></trkseg>
</trk>
<trk><trkseg><trkpt lat="1" lon="2"/></trkseg></trk>
</gpx>`

describe('a GPX file', () => {
  test('gives its first track with the segments joined', () => {
    const { track, tracks, without, version } = read(tour)
    expect(version).toBe('1.1')
    expect(track.name).toBe('Over the pass')
    expect([...track.latitudes]).toEqual([46.5, 46.51, -46.52])
    expect([...track.longitudes]).toEqual([7.25, 7.26, -7.27])
    expect([...track.elevations!]).toEqual([1200.5, Number.NaN, Number.NaN])
    expect(track.times![1]! - track.times![0]!).toBe(2)
    expect(track.starts).toEqual([0, 2, 2])
    expect(tracks).toEqual([
      { name: 'Over the pass', segments: 3, points: 3 },
      { segments: 1, points: 1 },
    ])
    expect(without).toEqual({ elevation: 2, time: 1 })
  })

  test('gives another track when asked, without lists for what no point has', () => {
    const { track } = read(tour, 1)
    expect(track).toEqual({ latitudes: Float64Array.of(1), longitudes: Float64Array.of(2), starts: [0] })
  })

  test('may be of version 1.0 and may have a prefix', () => {
    expect(
      read(
        '<g:gpx version="1.0" xmlns:g="u"><g:trk><trk/><g:trkseg><g:trkpt lat="1" lon="2"/><trkpt lat="9" lon="9"/></g:trkseg></g:trk></g:gpx>',
      ).tracks,
    ).toEqual([{ segments: 1, points: 1 }])
  })

  test('is the same in pieces of any size, with a byte-order mark or without', () => {
    const whole = readGpx(tour)
    const bytes = new TextEncoder().encode(`\ufeff${tour}`)
    expect(readGpx(bytes)).toEqual(whole)
    expect(readGpx(`\ufeff${tour}`)).toEqual(whole)
    for (const size of [1, 2, 3, 7, 64, 1000]) {
      const reader = gpxReader()
      for (let i = 0; i < bytes.length; i += size) expect(reader.push(bytes.subarray(i, i + size))).toBe(true)
      expect(reader.end()).toEqual(whole)
    }
  })

  test('is refused with one issue that names place, found and accepted', () => {
    const point = (inside: string): string => `${head}<trk><trkseg>\n<trkpt lat="1" lon="1"/>\n${inside}</trkseg></trk></gpx>`
    expect(issueOf('')).toBe('1:1 : the file holds no document; found the end of the file; accepted an XML document')
    expect(issueOf('<kml/>')).toBe('1:1 : this is no GPX file; found "<kml>"; accepted <gpx>')
    expect(issueOf('<gpx version="2.0"/>')).toBe('1:1 : the version is not accepted; found "2.0"; accepted version="1.0" or version="1.1"')
    expect(issueOf('<gpx/>')).toBe('1:1 : the version is not accepted; found none; accepted version="1.0" or version="1.1"')
    expect(issueOf(point('<trkpt lat="91" lon="1"/>'))).toBe(
      '5:1 gpx/trk[1]/trkseg[1]/trkpt[2]: the latitude of a point is not accepted; found "91"; accepted a number from -90 to 90 with a decimal point',
    )
    expect(issueOf(point('<trkpt lat="46,5" lon="1"/>'))).toMatch(/^5:1 .*latitude of a point is not accepted; found "46,5"/)
    expect(issueOf(point('<trkpt lat="1"/>'))).toMatch(/longitude of a point is missing; found none/)
    expect(issueOf(point('<trkpt lat="1" lon="1"><ele>high</ele></trkpt>'))).toMatch(
      /^5:33 gpx\/trk\[1\]\/trkseg\[1\]\/trkpt\[2\]\/ele: the elevation .* found "high"/,
    )
    expect(issueOf(point('<trkpt lat="1" lon="1"><time>yesterday</time></trkpt>'))).toMatch(
      /a time cannot be read; found "yesterday"; accepted date and time such as/,
    )
    expect(issueOf(`${head}<rte><rtept lat="1" lon="1"/></rte></gpx>`)).toMatch(
      /there is no track 0; found 0 tracks, 1 planned routes without times; accepted a <trk> with points/,
    )
    expect(issueOf(`${head}<trk/><trk><name>B</name><trkseg><trkpt lat="1" lon="1"/></trkseg></trk></gpx>`)).toMatch(
      /track 0 has no points; found 2 tracks; accepted track 1 "B" with 1 points/,
    )
    expect(issueOf(point('<trkpt'))).toMatch(/^5:1 .*a tag is not closed/)
  })

  test('in another encoding is refused where the encoding shows', () => {
    const latin = Uint8Array.from(`${head}<trk><name>Stra\u00dfe</name></trk></gpx>`, c => c.charCodeAt(0))
    expect(issueOf(latin)).toMatch(/^3:16 : a byte is no UTF-8; found byte 0xdf at offset \d+; accepted text saved as UTF-8$/)
    expect(issueOf(Uint8Array.of(0xff, 0xfe, 0x3c, 0))).toMatch(/^1:1 : the file is no text, or text saved as UTF-16/)
  })
})

describe('a hostile GPX file', () => {
  test('with a document type, an entity bomb or outside references is refused before anything is expanded', () => {
    const bomb = `<?xml version="1.0"?>\n<!DOCTYPE gpx [<!ENTITY a "ha"><!ENTITY b "&a;&a;">]><gpx version="1.1"><trk><name>&b;</name></trk></gpx>`
    expect(issueOf(bomb)).toMatch(/^2:1 : a document type or declaration is not accepted/)
    expect(issueOf('<!DOCTYPE gpx SYSTEM "file:///etc/passwd"><gpx version="1.1"/>')).toMatch(/document type/)
  })

  test('over 100 MB is refused at once, and in pieces as soon as it is over', () => {
    expect(issueOf(new Uint8Array(100_000_001))).toBe(
      '1:1 : the file is too large; found 100000001 bytes; accepted at most 100000000 bytes',
    )
    const reader = gpxReader()
    const spaces = new Uint8Array(10_000_000).fill(32)
    let pushed = 0
    while (reader.push(spaces)) pushed++
    expect(pushed).toBe(10)
    expect(reader.push(spaces)).toBe(false)
    const answer = reader.end()
    expect('issue' in answer && answer.issue.what).toBe('the file is too large')
  })

  test('with a million tracks, deep nesting, NUL or prototype names gives an issue or an answer, never an exception', () => {
    expect(issueOf(`${head}${'<trk/>'.repeat(1_000_000)}</gpx>`)).toMatch(/the file holds too many tracks; found more than 10000/)
    expect(issueOf(`${head}${'<x>'.repeat(100_000)}`)).toMatch(/nested too deeply/)
    expect(issueOf(`${head}<trk>\0`)).toMatch(/a control character is not accepted/)
    const odd = `${head}<__proto__ constructor="x"/><trk><toString/><trkseg><trkpt __proto__="1" lat="1" lon="1"><constructor>1</constructor></trkpt></trkseg></trk></gpx>`
    expect(read(odd).tracks).toEqual([{ segments: 1, points: 1 }])
    expect(({} as Record<string, unknown>).x).toBeUndefined()
  })

  test('cut off anywhere gives an issue', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: tour.length - '</gpx>'.length }), at => {
        expect('issue' in readGpx(tour.slice(0, at))).toBe(true)
      }),
    )
  })
})

describe('a track written', () => {
  const coordinate = (most: number): fc.Arbitrary<number> =>
    fc.oneof(
      fc.double({ min: -most, max: most, noNaN: true }),
      fc.double({ min: -1e-6, max: 1e-6, noNaN: true }),
      fc.constantFrom(0, -0, most, -most, 5e-324, 1e-7),
    )
  const place = fc.record({
    lat: coordinate(90),
    lon: coordinate(180),
    ele: fc.oneof(fc.double({ min: -400, max: 9000, noNaN: true }), fc.constant(Number.NaN)),
    ms: fc.oneof(fc.integer({ min: -1e12, max: 4e12 }), fc.constant(Number.NaN)),
  })
  const name = fc.option(
    fc
      .string({ unit: 'binary', maxLength: 20 })
      .map(s => s.replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '').trim()),
    { nil: undefined },
  )

  test('reads back the same: places and elevations to the last bit, times to the millisecond', () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 20 }), name, fc.array(fc.nat(), { maxLength: 3 }), (points, title, cuts) => {
        const starts = [0, ...cuts.map(c => c % points.length).sort((a, b) => a - b)]
        const elevations = Float64Array.from(points, p => p.ele)
        const times = Float64Array.from(points, p => p.ms / 1000)
        const track = {
          ...(title === undefined ? {} : { name: title }),
          latitudes: Float64Array.from(points, p => p.lat),
          longitudes: Float64Array.from(points, p => p.lon),
          ...(elevations.every(Number.isNaN) ? {} : { elevations }),
          ...(times.every(Number.isNaN) ? {} : { times }),
          starts,
        }
        expect(read(writeGpx(track)).track).toEqual(track)
      }),
    )
  })

  test('has plain decimals, as the schema wants', () => {
    const text = writeGpx({ latitudes: Float64Array.of(1.5e-7), longitudes: Float64Array.of(-2e-10), elevations: Float64Array.of(123) })
    expect(text).toContain('<trkpt lat="0.00000015" lon="-0.0000000002"><ele>123</ele></trkpt>')
  })

  test('refuses what no reader would accept', () => {
    const one = Float64Array.of(1)
    expect(() => writeGpx({ latitudes: one, longitudes: new Float64Array(2) })).toThrow(
      RangeError('longitudes must have one value for each of 1 points, found 2'),
    )
    expect(() => writeGpx({ latitudes: Float64Array.of(91), longitudes: one })).toThrow(
      RangeError('latitudes[0] must be from -90 to 90, found 91'),
    )
    expect(() => writeGpx({ latitudes: one, longitudes: Float64Array.of(Number.NaN) })).toThrow(/longitudes\[0\] must be/)
    expect(() => writeGpx({ latitudes: one, longitudes: one, elevations: Float64Array.of(Infinity) })).toThrow(
      RangeError('a number must be finite, found Infinity'),
    )
    expect(() => writeGpx({ latitudes: one, longitudes: one, name: 'a\u0000b' })).toThrow(
      RangeError('name must hold characters XML knows, found U+0000'),
    )
  })
})
