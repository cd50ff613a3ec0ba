import { type Kind, kindOf } from '@ampwright/engine'
import { scaleLinear } from 'd3-scale'
import type { Scale, Units } from './picture.ts'
import { reading, tickText, withUnit } from './reading.ts'

/** What an axis shows: a label, a coherent SI unit, the kind where it is finer than the unit. */
export type Quantity = { readonly label: string; readonly unit: string; readonly shows?: Kind | undefined }
/** Limits of an axis in SI; what is left out follows from the data. */
export type Extent = {
  readonly low?: number | undefined
  readonly high?: number | undefined
  /** Starts at zero where the data do not lie on both sides of it. */
  readonly zero?: boolean | undefined
}
export type Tick = { readonly value: number; readonly text: string }

/** A quantity with its range and the unit it is shown in. */
export type Axis = {
  readonly quantity: Quantity
  readonly domain: readonly [number, number]
  readonly unit: string
  readonly fromSI: (value: number) => number
  readonly toSI: (shown: number) => number
  readonly read: (value: number) => string
  /** About so many ticks, at round values of the unit shown. */
  readonly ticks: (about: number) => readonly Tick[]
}

/** The unit a quantity is shown in, and both ways; a number without a kind keeps its own. */
export function unitOf({ unit, shows }: Quantity, units: Units, greatest: number): Pick<Axis, 'unit' | 'fromSI' | 'toSI'> {
  const kind = shows ?? kindOf(unit)
  if (kind === undefined || kind === 'number') return { unit: unit === '1' ? '' : unit, fromSI: v => v, toSI: v => v }
  const shown = units(kind, greatest),
    zero = shown.fromSI(0),
    slope = shown.fromSI(1) - zero
  return { unit: shown.unit, fromSI: shown.fromSI, toSI: v => (v - zero) / slope }
}

/** An axis over some values; `about` ticks decide how far it is rounded out. Rounds out only ends that the data decide, and not at all with `about` 0. */
export function axisOver(
  quantity: Quantity,
  data: readonly [number, number] | undefined,
  extent: Extent,
  units: Units,
  about: number,
): Axis {
  const [least, most] = data ?? [0, 1]
  let low = extent.low ?? (extent.zero ? Math.min(0, least) : least),
    high = extent.high ?? (extent.zero ? Math.max(0, most) : most)
  const unit = unitOf(quantity, units, Math.max(Math.abs(low), Math.abs(high)))
  if (!(high > low)) [low, high] = spreadOut(low, high, unit)
  if (about > 0) {
    const [a, b] = scaleLinear()
      .domain([unit.fromSI(low), unit.fromSI(high)])
      .nice(2 * about)
      .domain() as [number, number]
    if (extent.low === undefined) low = unit.toSI(a)
    if (extent.high === undefined) high = unit.toSI(b)
  }
  const read = (v: number): string => withUnit(reading(unit.fromSI(v)), unit.unit)
  return { quantity, domain: [low, high], ...unit, read, ticks: n => ticksOf(unit, low, high, n) }
}
/** A flat line still needs room above and below: one unit as shown, or a tenth of it. */
function spreadOut(low: number, high: number, { fromSI, toSI }: Pick<Axis, 'fromSI' | 'toSI'>): [number, number] {
  const at = fromSI(Number.isFinite(low) ? low : Number.isFinite(high) ? high : 0),
    by = Math.max(Math.abs(at) / 10, 1e-3)
  return [toSI(at - by), toSI(at + by)]
}
function ticksOf({ fromSI, toSI }: Pick<Axis, 'fromSI' | 'toSI'>, low: number, high: number, about: number): readonly Tick[] {
  const values = scaleLinear()
      .domain([fromSI(low), fromSI(high)])
      .ticks(Math.max(1, about)),
    step = values.length > 1 ? Math.abs((values[1] as number) - (values[0] as number)) : 1
  return values.map(v => ({ value: toSI(v), text: tickText(v, step) }))
}

export const scaleOf = (axis: Axis, range: readonly [number, number]): Scale => ({ domain: axis.domain, range, unit: axis.unit })

/** Lowest and highest finite number of some lists. */
export function extentOf(lists: readonly ArrayLike<number>[]): [number, number] | undefined {
  let low = Number.POSITIVE_INFINITY,
    high = Number.NEGATIVE_INFINITY
  for (const list of lists)
    for (let i = 0; i < list.length; i++) {
      const v = list[i] as number
      if (Number.isFinite(v)) {
        if (v < low) low = v
        if (v > high) high = v
      }
    }
  return low <= high ? [low, high] : undefined
}

/** The label of an axis with its unit: `road speed, km/h`. */
export const headingOf = (label: string, unit: string): string => (unit === '' ? label : label === '' ? unit : `${label}, ${unit}`)
