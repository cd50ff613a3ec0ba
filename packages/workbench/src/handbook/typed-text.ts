import { displayUnit, type System } from '@ampwright/conversion'
import { type Curve, type Grid, KINDS, type Kind, type Line, type One, type Plane, type Take, type Value } from '@ampwright/engine'
import { columnKinds, kindOfOne, readInput } from './inputs.ts'

/** Digits kept: the noise of turning units is gone, nothing anybody means is. */
const DIGITS = 12
const bare = (v: number): string => String(Number(v.toPrecision(DIGITS)))

/**
 * A value as somebody would type it, in a unit of the reader where one says it exactly: what the same reader reads back. An empty text where no text says
 * it (a value without limit).
 */
export function typedText(take: Take, datum: unknown, system: System): string {
  if ('oneOf' in take) return String(datum)
  if ('curve' in take) return curveText(take, datum as Curve)
  if ('grid' in take) return mapText(take, datum as Grid)
  if ('many' in take) {
    const all = (datum as readonly number[]).map(v => oneText(take, v, system))
    return all.includes('') ? '' : all.join('; ')
  }
  return oneText(take, datum as number, system)
}

/** Of the units a reader knows, the one in which the number is shortest; only what reads back as the same number counts. */
function oneText(one: One, value: number, system: System): string {
  const kind = kindOfOne(one),
    { many: _, ...single } = one as One & { many?: true }
  const candidates = kind === undefined || kind === 'number' ? [bare(value)] : spelt(value, kind, system)
  if (one.unit === '1') candidates.push(bare(value))
  const good = candidates.filter(text => {
    const read = readInput('', single, text)
    return read.ok && same((read.input as Value).value, value)
  })
  return good.reduce((a, b) => (a === '' || b.length < a.length - 1 ? b : a), '')
}
const same = (a: number, b: number): boolean => a === b || Math.abs(a - b) <= 1e-10 * Math.max(Math.abs(a), Math.abs(b))

function spelt(value: number, kind: Kind, system: System): string[] {
  const shown = [displayUnit(kind, system, Math.abs(value)), displayUnit(kind, system)].map(u => ({ n: u.fromSI(value), unit: u.unit }))
  return [...shown, { n: value, unit: KINDS[kind].unit }].map(({ n, unit }) => (unit === '1' ? bare(n) : `${bare(n)} ${unit}`.trim()))
}

/** Cells of a curve or a map in SI, unit behind each number: rows can be read and changed one by one. */
const cell = (v: number, kind: Kind, last: boolean): string =>
  kind === 'share' ? (last ? bare(v) : `${bare(100 * v)} %`) : kind === 'number' ? bare(v) : `${bare(v)} ${KINDS[kind].unit}`

function curveText(take: Line, { x, y }: Curve): string {
  const [kx, ky] = columnKinds(take) as [Kind, Kind]
  return Array.from(x, (v, i) => `${cell(v, kx, false)}: ${cell(y[i] as number, ky, true)}`).join('\n')
}
function mapText(take: Plane, { x, y, z }: Grid): string {
  const [kx, ky, kz] = columnKinds(take) as [Kind, Kind, Kind]
  return Array.from(x, (a, i) =>
    Array.from(y, (b, j) => `${cell(a, kx, false)}: ${cell(b, ky, false)}: ${cell(z[i * y.length + j] as number, kz, true)}`),
  )
    .flat()
    .join('\n')
}
