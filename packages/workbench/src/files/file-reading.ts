import { isTesterNumber, isTesterWord, type System, writeQuantity } from '@ampwright/conversion'
import { type Curve, type Grid, KINDS, type Kind } from '@ampwright/engine'
import { readCsv, readGpx, readMesh } from '@ampwright/exchange'
import { isLogColumn } from '../coast-down.ts'
import { FILE_FORMATS, fileDatum, SCAN } from '../file-datum.ts'
import { type RouteView, routeView } from '../route/route-view.ts'
import { shownNumber } from '../shown.ts'
import { type FileFault, isScanName, nameFault } from './file-name.ts'

/** What a file holds: the formats it reads as, and why not the others. */
export type FileReading = {
  readonly name: string
  readonly size: number
  readonly fits: readonly { readonly format: string; readonly says: string }[]
  readonly others: readonly { readonly format: string; readonly found: string; readonly accepted: string }[]
  /** The page that takes it, where it is no file to keep but a table to take over. */
  readonly for?: 'modules' | 'coast-down'
  readonly route?: RouteView
  /** Why it cannot be kept, where it cannot. */
  readonly fault?: FileFault
}

/** A file held against every format there is. One that fits none is refused, with the first thing that is wrong with it. */
export function fileReading(name: string, bytes: Uint8Array, system: System): FileReading {
  const base = { name, size: bytes.length, fits: [], others: [] },
    barred = nameFault(name.slice(name.lastIndexOf('/') + 1), bytes.length)
  if (barred) return { ...base, fault: barred }
  if (isScanName(name)) return { ...base, ...scanReading(bytes) }
  const tries = formatsOf(bytes).map(format => ({ format, got: fileDatum(bytes, format) }))
  const fits = tries.flatMap(({ format, got }) =>
    got.ok ? [{ format, says: got.datum === undefined ? LACKS[format]! : holds(got.datum, format, system) }] : [],
  )
  const others = tries.flatMap(({ format, got }) => (got.ok ? [] : [{ format, found: got.found, accepted: got.accepted }])),
    page = fits.length ? undefined : pageFor(bytes)
  const fault = fits.length ? undefined : faultOf(bytes, others, page)
  const track = fits.some(f => f.format.startsWith('GPX')) ? readGpx(bytes) : undefined,
    route = track && 'gpx' in track ? routeView(track.gpx.track, system) : undefined
  return { ...base, fits, others, ...(page ? { for: page } : {}), ...(route ? { route } : {}), ...(fault ? { fault } : {}) }
}

/** A mesh: how many triangles it has, or what is wrong with it and where. */
function scanReading(bytes: Uint8Array): Pick<FileReading, 'fits' | 'fault'> {
  const read = readMesh(bytes)
  if ('issue' in read) {
    const { where, what, found, accepted } = read.issue
    return { fits: [], fault: { place: where, what, found, accepted } }
  }
  return { fits: [{ format: SCAN, says: `${read.format}, ${writeQuantity(read.mesh.triangles.length / 3, 'count')} triangles` }] }
}

const LACKS: Readonly<Record<string, string>> = {
  'GPX profile': 'a sound track, but without heights',
  'GPX timing': 'a sound track, but without times: a set speed is wanted beside it',
}

/** A track is no table, nor a table a track: the first sign that means anything tells them apart. */
function formatsOf(bytes: Uint8Array): readonly string[] {
  const head = new TextDecoder().decode(bytes.subarray(0, 400)).replace(/^\ufeff/, ''),
    isTrack = head.trimStart().startsWith('<')
  return Object.keys(FILE_FORMATS).filter(f => f !== SCAN && f.startsWith('GPX') === isTrack)
}

/** How many points, and from where to where. */
function holds(datum: unknown, format: string, system: System): string {
  const { x, y, z } = datum as Curve & Partial<Grid>,
    kinds: readonly Kind[] =
      format === 'GPX profile' ? ['distance', 'altitude'] : format === 'GPX timing' ? ['distance', 'speed'] : FILE_FORMATS[format]!
  const axes = [x, y, ...(z ? [z] : [])].map((values, i) => span(values, kinds[i] as Kind, system))
  return `${z ? `${x.length} × ${y.length}` : x.length} points: ${axes.join('; ')}`
}
function span(values: Float64Array, kind: Kind, system: System): string {
  const at = (v: number): string => shownNumber(v, kind, KINDS[kind].unit, system)
  return `${KINDS[kind].label} ${at(values.reduce((a, b) => Math.min(a, b)))} to ${at(values.reduce((a, b) => Math.max(a, b)))}`
}

/** Tables that are taken over elsewhere are known by their headings. */
function pageFor(bytes: Uint8Array): FileReading['for'] {
  const answer = readCsv(bytes, { words: () => true })
  if ('issues' in answer) return undefined
  const names = answer.csv.words.map(w => w.name)
  if (names.some(isTesterWord) && names.some(isTesterNumber)) return 'modules'
  return names.some(n => isLogColumn('time', n)) && names.some(n => isLogColumn('speed', n)) ? 'coast-down' : undefined
}

/** What the columns of a table may be, format by format. */
const COLUMNS = Object.entries(FILE_FORMATS)
  .filter(([, kinds]) => kinds.length)
  .map(([format, kinds]) => `${kinds.join(', ')} (${format.replace(/ CSV$/, '')})`)
  .join('; ')
const TAKEN = {
  modules: 'the table of a module tester: it is taken over on the page Salvaged modules',
  'coast-down': 'a speed log: it is taken over on the page Coast-down',
}
function faultOf(bytes: Uint8Array, others: FileReading['others'], page: FileReading['for']): FileFault {
  const what = 'the file fits no place in a conversion'
  if (page) return { place: 'content', what, found: TAKEN[page], accepted: 'a table or a track that stays beside the conversion' }
  const answer = others.some(o => o.format.startsWith('GPX')) ? undefined : readCsv(bytes)
  if (answer && 'issues' in answer && answer.issues[0]) {
    const { line, column, path, ...issue } = answer.issues[0]
    return { place: `line ${line}, column ${path || column}`, what: issue.what, found: issue.found, accepted: issue.accepted }
  }
  const track = answer ? undefined : readGpx(bytes)
  if (track && 'issue' in track)
    return {
      place: `line ${track.issue.line}, column ${track.issue.column}`,
      what: track.issue.what,
      found: track.issue.found,
      accepted: track.issue.accepted,
    }
  return { place: 'content', what, found: [...new Set(others.map(o => o.found))].slice(0, 3).join('; '), accepted: COLUMNS }
}
