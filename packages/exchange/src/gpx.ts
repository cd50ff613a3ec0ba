import { Growing } from './growing.ts'
import { type Issue, quoted, Refusal } from './issue.ts'
import { type ByteReader, byteReader, type Place, readWhole, type TextReader } from './source-text.ts'
import { secondsOf } from './timestamp.ts'
import { XmlReader } from './xml.ts'
import type { Attributes } from './xml-tag.ts'

/** A track with its segments joined. All lists have one value for each point. */
export type Track = {
  readonly name?: string
  /** Degrees on the WGS 84 ellipsoid, north and east positive. */
  readonly latitudes: Float64Array
  readonly longitudes: Float64Array
  /** Metres; absent when no point has one, NaN at points without. */
  readonly elevations?: Float64Array
  /** Seconds since 1970-01-01T00:00:00Z; absent when no point has one, NaN at points without. As recorded: they may stand still or fall back. */
  readonly times?: Float64Array
  /** Index of the first point of each segment. */
  readonly starts: readonly number[]
}

export type TrackSummary = { readonly name?: string; readonly segments: number; readonly points: number }
export type Gpx = {
  readonly version: '1.0' | '1.1'
  readonly track: Track
  /** Every track of the file, so that another can be chosen. */
  readonly tracks: readonly TrackSummary[]
  /** Points of the track without an elevation, without a time. */
  readonly without: { readonly elevation: number; readonly time: number }
}
export type GpxAnswer = { readonly gpx: Gpx } | { readonly issue: Issue }
export type GpxOptions = {
  /** Which track to read, counted from 0. */
  readonly track?: number
}

export const MOST_GPX_BYTES = 100_000_000
const MOST_TRACKS = 10_000

/**
 * The first track (or another) of a GPX file, version 1.0 or 1.1, as plain arrays; or one issue: the first thing that is wrong.
 *
 * Waypoints, routes and extensions are passed over. Refused: files over 100 MB, a document type, anything that is not well-formed, other
 * encodings than UTF-8, other versions, a point without a place, a place off the globe, an elevation or time that cannot be read.
 * Source: GPX 1.1 schema documentation (from memory).
 */
export const readGpx = (input: Uint8Array | string, options: GpxOptions = {}): GpxAnswer =>
  readWhole(new GpxReader(options), input, MOST_GPX_BYTES)

/** The same for a file that comes in pieces. */
export const gpxReader = (options: GpxOptions = {}): ByteReader<GpxAnswer> => byteReader(new GpxReader(options), MOST_GPX_BYTES)

type Counted = { name?: string; segments: number; points: number }

class GpxReader implements TextReader<GpxAnswer> {
  readonly #chosen: number
  readonly #xml = new XmlReader({ open: (n, a, p) => this.#open(n, a, p), close: (n, t, p) => this.#close(n, t, p) })
  /** Local names of the open elements; '' for those of another namespace. */
  readonly #names: string[] = []
  #prefix = ''
  #version: Gpx['version'] = '1.1'
  readonly #tracks: Counted[] = []
  #routes = 0
  readonly #latitudes = new Growing()
  readonly #longitudes = new Growing()
  readonly #elevations = new Growing()
  readonly #times = new Growing()
  readonly #starts: number[] = []
  #elevation = Number.NaN
  #time = Number.NaN

  constructor({ track = 0 }: GpxOptions) {
    if (!Number.isInteger(track) || track < 0) throw new RangeError(`track must be a whole number of at least 0, found ${track}`)
    this.#chosen = track
  }

  take(text: string): void {
    this.#xml.take(text)
  }

  place(): Place {
    return this.#xml.place()
  }

  refused(issue: Issue): GpxAnswer {
    return { issue }
  }

  end(): GpxAnswer {
    this.#xml.end()
    const counted = this.#tracks[this.#chosen]
    if (!counted || counted.points === 0) this.#noTrack(counted)
    const latitudes = this.#latitudes.values()
    const [elevations, times] = [this.#elevations.values(), this.#times.values()]
    const without = { elevation: missing(elevations), time: missing(times) }
    const track: Track = {
      ...(counted!.name === undefined ? {} : { name: counted!.name }),
      latitudes,
      longitudes: this.#longitudes.values(),
      ...(without.elevation < latitudes.length ? { elevations } : {}),
      ...(without.time < latitudes.length ? { times } : {}),
      starts: this.#starts,
    }
    return { gpx: { version: this.#version, track, tracks: this.#tracks, without } }
  }

  #noTrack(counted: Counted | undefined): never {
    const others = this.#tracks.flatMap((t, i) =>
      t.points > 0 ? [`track ${i}${t.name === undefined ? '' : ` ${quoted(t.name)}`} with ${t.points} points`] : [],
    )
    const routes = this.#routes > 0 ? `, ${this.#routes} planned routes without times` : ''
    this.#refuse(
      this.place(),
      counted ? `track ${this.#chosen} has no points` : `there is no track ${this.#chosen}`,
      `${this.#tracks.length} tracks${routes}`,
      others.length > 0 ? others.slice(0, 5).join(', ') : 'a <trk> with points',
    )
  }

  #open(name: string, attributes: Attributes, place: Place): boolean {
    const names = this.#names
    if (names.length === 0) this.#root(name, attributes, place)
    const local = name.startsWith(this.#prefix) ? name.slice(this.#prefix.length) : ''
    names.push(local)
    const path = names.length <= 5 ? names.join('/') : ''
    const track = this.#tracks.at(-1)
    if (path === 'gpx/rte') this.#routes++
    else if (path === 'gpx/trk') {
      if (this.#tracks.length >= MOST_TRACKS) this.#refuse(place, 'the file holds too many tracks', `more than ${MOST_TRACKS}`, 'fewer')
      this.#tracks.push({ segments: 0, points: 0 })
    } else if (path === 'gpx/trk/trkseg') {
      track!.segments++
      if (this.#reading()) this.#starts.push(this.#latitudes.length)
    } else if (path === 'gpx/trk/trkseg/trkpt') this.#point(attributes, place)
    return path === 'gpx/trk/name' || (this.#reading() && (path === 'gpx/trk/trkseg/trkpt/ele' || path === 'gpx/trk/trkseg/trkpt/time'))
  }

  #close(_: string, text: string, place: Place): void {
    const names = this.#names
    const path = names.length <= 5 ? names.join('/') : ''
    if (path === 'gpx/trk/name') this.#tracks.at(-1)!.name = text.trim()
    else if (this.#reading()) {
      if (path === 'gpx/trk/trkseg/trkpt/ele') this.#elevation = this.#number('elevation', text.trim(), place, -20_000, 100_000)
      else if (path === 'gpx/trk/trkseg/trkpt/time') {
        this.#time =
          secondsOf(text.trim()) ??
          this.#refuse(place, 'a time cannot be read', quoted(text.trim()), 'date and time such as 2024-05-12T08:30:00Z')
      } else if (path === 'gpx/trk/trkseg/trkpt') {
        this.#elevations.push(this.#elevation)
        this.#times.push(this.#time)
      }
    }
    names.pop()
  }

  #root(name: string, attributes: Attributes, place: Place): void {
    const version = attributes.get('version')
    if (name !== 'gpx' && !name.endsWith(':gpx')) this.#refuse(place, 'this is no GPX file', quoted(`<${name}>`), '<gpx>')
    if (version !== '1.0' && version !== '1.1') {
      return this.#refuse(
        place,
        'the version is not accepted',
        version === undefined ? 'none' : quoted(version),
        'version="1.0" or version="1.1"',
      )
    }
    this.#prefix = name.slice(0, -'gpx'.length)
    this.#version = version
  }

  #point(attributes: Attributes, place: Place): void {
    this.#tracks.at(-1)!.points++
    if (!this.#reading()) return
    this.#elevation = Number.NaN
    this.#time = Number.NaN
    this.#latitudes.push(this.#number('latitude', attributes.get('lat'), place, -90, 90))
    this.#longitudes.push(this.#number('longitude', attributes.get('lon'), place, -180, 180))
  }

  #number(what: string, text: string | undefined, place: Place, low: number, high: number): number {
    const value = text !== undefined && /^\s*[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?\s*$/.test(text) ? Number(text) : Number.NaN
    if (value >= low && value <= high) return value
    const found = text === undefined ? 'none' : quoted(text)
    return this.#refuse(
      place,
      `the ${what} of a point is ${text === undefined ? 'missing' : 'not accepted'}`,
      found,
      `a number from ${low} to ${high} with a decimal point`,
    )
  }

  #reading(): boolean {
    return this.#tracks.length - 1 === this.#chosen
  }

  /** Where in the document: tracks, segments and points counted from 1. */
  #path(): string {
    const track = this.#tracks.at(-1)
    const counts: Readonly<Record<string, number | undefined>> = { trk: this.#tracks.length, trkseg: track?.segments, trkpt: track?.points }
    return this.#names.map(n => (counts[n] === undefined ? n : `${n}[${counts[n]}]`)).join('/')
  }

  #refuse(place: Place, what: string, found: string, accepted: string): never {
    throw new Refusal({ ...place, path: this.#path(), what, found, accepted })
  }
}

const missing = (values: Float64Array): number => values.reduce((n, v) => n + (Number.isNaN(v) ? 1 : 0), 0)
