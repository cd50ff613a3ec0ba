import type { Track } from './gpx.ts'
import { stampOf } from './timestamp.ts'

/**
 * A track as a GPX 1.1 file. Times are kept to the millisecond, everything else to the last bit; a NaN elevation or time is left out.
 *
 * Throws RangeError when lists differ in length, a place lies off the globe, an elevation is infinite, or the name holds a character XML cannot.
 */
export function writeGpx(track: Omit<Track, 'starts'> & Partial<Pick<Track, 'starts'>>): string {
  const { latitudes, longitudes, elevations, times, starts = [0] } = track
  const n = latitudes.length
  for (const [name, list] of Object.entries({ longitudes, elevations, times })) {
    if (list && list.length !== n) throw new RangeError(`${name} must have one value for each of ${n} points, found ${list.length}`)
  }
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx version="1.1" creator="Ampwright" xmlns="http://www.topografix.com/GPX/1/1">',
    '<trk>',
  ]
  if (track.name !== undefined) lines.push(`<name>${escaped(track.name)}</name>`)
  for (const [k, start] of starts.entries()) {
    lines.push('<trkseg>')
    for (let i = start; i < (starts[k + 1] ?? n); i++) lines.push(point(i, latitudes[i]!, longitudes[i]!, elevations?.[i], times?.[i]))
    lines.push('</trkseg>')
  }
  lines.push('</trk>', '</gpx>', '')
  return lines.join('\n')
}

function point(i: number, latitude: number, longitude: number, elevation: number | undefined, time: number | undefined): string {
  if (!(Math.abs(latitude) <= 90)) throw new RangeError(`latitudes[${i}] must be from -90 to 90, found ${latitude}`)
  if (!(Math.abs(longitude) <= 180)) throw new RangeError(`longitudes[${i}] must be from -180 to 180, found ${longitude}`)
  const ele = elevation === undefined || Number.isNaN(elevation) ? '' : `<ele>${decimal(elevation)}</ele>`
  const stamp = time === undefined || Number.isNaN(time) ? '' : `<time>${stampOf(time)}</time>`
  return `<trkpt lat="${decimal(latitude)}" lon="${decimal(longitude)}">${ele}${stamp}</trkpt>`
}

/** A number without an exponent, which the schema's decimal does not allow. */
function decimal(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a number must be finite, found ${value}`)
  const text = Object.is(value, -0) ? '-0' : String(value)
  const parts = /^(-?)(\d)(?:\.(\d+))?e([+-]\d+)$/.exec(text)
  if (!parts) return text
  const [sign, head, tail = '', exponent] = [parts[1]!, parts[2]!, parts[3], Number(parts[4])]
  const digits = head + tail
  return exponent < 0 ? `${sign}0.${'0'.repeat(-exponent - 1)}${digits}` : sign + digits.padEnd(exponent + 1, '0')
}

const FORBIDDEN = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u
const ESCAPES: Readonly<Record<string, string>> = { '<': '&lt;', '>': '&gt;', '&': '&amp;', '\r': '&#13;' }

function escaped(text: string): string {
  const bad = FORBIDDEN.exec(text)
  if (bad) throw new RangeError(`name must hold characters XML knows, found U+${bad[0].codePointAt(0)!.toString(16).padStart(4, '0')}`)
  return text.replace(/[<>&\r]/g, character => ESCAPES[character]!)
}
