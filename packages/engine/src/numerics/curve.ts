/**
 * A line through points; `x` strictly rising, at least two points. Ends are held: before the first point the first value holds, behind the
 * last the last.
 */
export type Curve = { readonly x: Float64Array; readonly y: Float64Array }

/** Checks that an axis can be looked up in: at least two finite numbers, strictly rising. Throws RangeError naming `name` otherwise. */
export function checkAxis(name: string, x: ArrayLike<number>): void {
  if (x.length < 2) throw new RangeError(`${name}: at least two points are needed, found ${x.length}`)
  for (let i = 0; i < x.length; i++) {
    if (!Number.isFinite(x[i])) throw new RangeError(`${name}[${i}] must be a finite number, found ${x[i]}`)
    if (i > 0 && !(x[i]! > x[i - 1]!)) throw new RangeError(`${name} must rise strictly, found ${x[i]} after ${x[i - 1]} at ${i}`)
  }
}

/** A checked curve of its own copy. Throws RangeError when `x` does not rise strictly, lengths differ, or a number is not finite. */
export function curve(x: ArrayLike<number>, y: ArrayLike<number>): Curve {
  checkAxis('x', x)
  if (y.length !== x.length) throw new RangeError(`y must have as many points as x (${x.length}), found ${y.length}`)
  for (let i = 0; i < y.length; i++) if (!Number.isFinite(y[i])) throw new RangeError(`y[${i}] must be a finite number, found ${y[i]}`)
  return { x: Float64Array.from(x), y: Float64Array.from(y) }
}

/** Index i of the piece of a rising axis that holds the value: x[i] ≤ value < x[i+1]; outside, the first or the last piece. */
export function segment(x: Float64Array, value: number): number {
  let low = 0
  let high = x.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (value < x[middle]!) high = middle
    else low = middle
  }
  return low
}

/** As `segment`, but walks from the piece found last: in a loop over slowly changing values a step or two instead of a search. */
export function segmentFrom(x: Float64Array, value: number, hint: number): number {
  const last = x.length - 2
  let i = hint < 0 ? 0 : hint > last ? last : hint
  while (i < last && value >= x[i + 1]!) i++
  while (i > 0 && value < x[i]!) i--
  return i
}

/**
 * Value of a curve whose piece is already known from `segment` or `segmentFrom`; ends held.
 *
 * In a loop: `i = segmentFrom(curve.x, v, i); y = along(curve, i, v)`.
 */
export function along(curve: Curve, i: number, value: number): number {
  const { x, y } = curve
  const x0 = x[i]!
  const x1 = x[i + 1]!
  const y0 = y[i]!
  const y1 = y[i + 1]!
  if (value <= x0) return y0
  if (value >= x1) return y1
  return y0 + (y1 - y0) * ((value - x0) / (x1 - x0))
}

/** Value of a curve by straight lines between its points, ends held. NaN at NaN. */
export const at = (curve: Curve, x: number): number => along(curve, segment(curve.x, x), x)

/** Slope of a curve: at a point that of the piece to its right, at the last point that to its left; zero outside, where ends are held. */
export function slopeAt({ x, y }: Curve, value: number): number {
  if (value < x[0]! || value > x[x.length - 1]!) return 0
  const i = segment(x, value)
  return (y[i + 1]! - y[i]!) / (x[i + 1]! - x[i]!)
}

/**
 * Where a monotone curve takes the value `y`: the lowest such x where the curve is level; undefined outside its range of values.
 *
 * Throws RangeError when the curve turns round, for then there is more than one answer.
 */
export function inverseAt({ x, y }: Curve, value: number): number | undefined {
  const last = y.length - 1
  const sign = y[last]! >= y[0]! ? 1 : -1
  for (let i = 0; i < last; i++) {
    if (sign * (y[i + 1]! - y[i]!) < 0) throw new RangeError(`curve must be monotone to be turned round, but it turns at x = ${x[i]}`)
  }
  const wanted = sign * value
  if (!(wanted >= sign * y[0]! && wanted <= sign * y[last]!)) return undefined
  let low = -1
  let high = last
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (sign * y[middle]! >= wanted) high = middle
    else low = middle
  }
  if (high === 0) return x[0]!
  const share = (value - y[high - 1]!) / (y[high]! - y[high - 1]!)
  return x[high - 1]! + (x[high]! - x[high - 1]!) * share
}

/** Area under a curve between two places, ends held; negative when `to` lies before `from`. */
export function integral(curve: Curve, from: number, to: number): number {
  if (from > to) return -integral(curve, to, from)
  const { x, y } = curve
  const first = x[0]!
  const last = x[x.length - 1]!
  let sum = 0
  if (from < first) sum += (Math.min(to, first) - from) * y[0]!
  if (to > last) sum += (to - Math.max(from, last)) * y[y.length - 1]!
  const end = Math.min(to, last)
  let start = Math.max(from, first)
  for (let i = segment(x, start); start < end; i++) {
    const stop = Math.min(end, x[i + 1]!)
    sum += ((stop - start) * (along(curve, i, start) + along(curve, i, stop))) / 2
    start = stop
  }
  return sum
}
