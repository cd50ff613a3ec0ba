import { type FileDatum, readQuantity } from '@ampwright/conversion'
import { type Grid, type Kind, mapProblem } from '@ampwright/engine'
import { type Issue, type NumberColumn, readCsv, readGpx } from '@ampwright/exchange'
import { fingerprint } from './files/fingerprint.ts'
import { routeHeights, routeSpeeds } from './route-file.ts'

/** Kinds of the columns a table holds, in their order; the last is looked up over those before it. */
const TABLES: Readonly<Record<string, readonly Kind[]>> = {
  'speed trace CSV': ['time', 'speed'],
  'drag CSV': ['rotational speed', 'torque'],
  'open-circuit CSV': ['share', 'voltage'],
  'resistance-over-charge CSV': ['share', 'ratio'],
  'charge-taper CSV': ['share', 'share'],
  'charge-table CSV': ['temperature', 'charge rate'],
  'cold-energy CSV': ['temperature', 'share'],
  'efficiency map CSV': ['rotational speed', 'torque', 'share'],
}
/** A mesh is read where it is measured; a conversion only knows which one it is. */
export const SCAN = 'scan mesh'
/** What a file beside a conversion may hold, and the kinds of its columns; a track has none. */
export const FILE_FORMATS: Readonly<Record<string, readonly Kind[]>> = { ...TABLES, 'GPX profile': [], 'GPX timing': [], [SCAN]: [] }
export const refused = (found: string, accepted: string): FileDatum => ({ ok: false, found, accepted })
export const refusedAt = ({ line, what, found, accepted }: Issue): FileDatum =>
  refused(`line ${line}: ${what}${found ? ` (${found})` : ''}`, accepted || 'a sound file')

/** What a file that stands beside a conversion holds: a table of numbers, or a track. */
export const fileDatum = (bytes: Uint8Array, format: string): FileDatum =>
  format === SCAN
    ? { ok: true, datum: fingerprint(bytes) }
    : format === 'GPX profile' || format === 'GPX timing'
      ? route(bytes, format)
      : table(bytes, format)

function route(bytes: Uint8Array, format: string): FileDatum {
  const answer = readGpx(bytes)
  if ('issue' in answer) return refusedAt(answer.issue)
  const { track } = answer.gpx
  return { ok: true, datum: format === 'GPX profile' ? routeHeights(track) : routeSpeeds(track) }
}

function table(bytes: Uint8Array, format: string): FileDatum {
  const kinds = TABLES[format]
  if (!kinds) throw new RangeError(`no reader for «${format}»`)
  const read = datumOf(bytes, kinds),
    problem = read.ok && format === 'efficiency map CSV' ? mapProblem(read.datum as Grid, 'efficiency') : undefined
  return problem ? refused(problem.found, problem.accepted) : read
}

/** A table of numbers as a curve (two columns) or a map (three), each column in a unit of its kind. */
export function datumOf(bytes: Uint8Array, kinds: readonly Kind[]): FileDatum {
  const answer = readCsv(bytes)
  if ('issues' in answer) return answer.issues[0] ? refusedAt(answer.issues[0]) : refused('an empty file', `${kinds.length} columns`)
  const { columns } = answer.csv
  if (columns.length !== kinds.length) return refused(`${columns.length} columns`, `${kinds.length} columns: ${kinds.join(', ')}`)
  const values: Float64Array[] = []
  for (const [i, column] of columns.entries()) {
    const si = inSi(column, kinds[i] as Kind)
    if ('found' in si) return { ok: false, ...si }
    values.push(si)
  }
  return curveOrMap(values)
}

/** A curve from two columns in SI, a map from three. */
export const curveOrMap = (values: readonly Float64Array[]): FileDatum =>
  values.length === 2
    ? line(values[0] as Float64Array, values[1] as Float64Array)
    : surface(values as [Float64Array, Float64Array, Float64Array])

/** A column in coherent SI, by what its unit makes of 0 and 1: every unit of the file format is a straight line. */
export function inSi({ name, unit = '', values }: NumberColumn, kind: Kind): Float64Array | { found: string; accepted: string } {
  const at = (n: number): number | undefined => {
    const got = readQuantity(unit === '1' ? String(n) : `${n} ${unit}`.trim(), kind)
    return got.ok ? got.quantity.value : undefined
  }
  const zero = at(0),
    one = at(1)
  if (zero === undefined || one === undefined)
    return {
      found: `column «${name}»${unit ? ` in ${unit}` : ' without a unit'}`,
      accepted: `a ${kind} with its unit, as in «${name} [unit]»`,
    }
  return values.map(v => zero + v * (one - zero))
}

function line(x: Float64Array, y: Float64Array): FileDatum {
  if (x.length < 2) return refused(`${x.length} rows`, 'at least two rows')
  for (let i = 1; i < x.length; i++)
    if (!(x[i]! > x[i - 1]!)) return refused(`row ${i + 1}: the first column does not rise`, 'a first column that rises from row to row')
  return { ok: true, datum: { x, y } }
}

/** A map from rows of x, y, value in any order; every pair of an x and a y must be there once. */
function surface([xs, ys, values]: readonly [Float64Array, Float64Array, Float64Array]): FileDatum {
  const axis = (v: Float64Array): Float64Array => Float64Array.from(new Set(v)).sort(),
    x = axis(xs),
    y = axis(ys)
  if (x.length < 2 || y.length < 2) return refused(`${x.length} × ${y.length} points`, 'at least two values on each axis')
  const z = new Float64Array(x.length * y.length).fill(Number.NaN)
  for (const [k, value] of values.entries()) z[x.indexOf(xs[k] as number) * y.length + y.indexOf(ys[k] as number)] = value
  const missing = z.findIndex(Number.isNaN)
  if (xs.length !== z.length || missing >= 0)
    return refused(`${xs.length} rows for ${x.length} × ${y.length} points`, 'one row for every pair of the two axes')
  return { ok: true, datum: { x, y, z } }
}
