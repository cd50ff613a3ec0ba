import { bisectLeft, bisectRight } from 'd3-array'

export type Points = { readonly x: Float64Array; readonly y: Float64Array }
type Numbers = ArrayLike<number>

/**
 * Thins a line to what `columns` pixels can show: in each column the first, the lowest, the highest and the last point, in their order. A line
 * drawn through these covers the same pixels. Keeps both ends and every extreme; a stretch that is not a number keeps one such point, so that
 * the line stays broken there. `x` must not fall.
 */
export function thin(x: Numbers, y: Numbers, columns: number): Points {
  const n = x.length
  if (n <= 4 * columns || columns < 1) return { x: Float64Array.from(x), y: Float64Array.from(y) }
  const low = x[0] as number,
    width = ((x[n - 1] as number) - low) / columns || 1,
    kept: number[] = []
  for (let i = 0; i < n; ) {
    const column = columnOf(x[i] as number, low, width, columns)
    let end = i
    while (end < n && columnOf(x[end] as number, low, width, columns) === column) end++
    kept.push(...telling(y, i, end))
    i = end
  }
  return { x: Float64Array.from(kept, i => x[i] as number), y: Float64Array.from(kept, i => y[i] as number) }
}
const columnOf = (x: number, low: number, width: number, columns: number): number => Math.min(columns - 1, Math.floor((x - low) / width))

/** First, lowest, highest, last and the first that is no number, of the points from `start` to before `end`. */
function telling(y: Numbers, start: number, end: number): readonly number[] {
  let lowest = -1,
    highest = -1,
    broken = -1
  for (let i = start; i < end; i++) {
    const v = y[i] as number
    if (!Number.isFinite(v)) broken = broken < 0 ? i : broken
    else {
      if (lowest < 0 || v < (y[lowest] as number)) lowest = i
      if (highest < 0 || v > (y[highest] as number)) highest = i
    }
  }
  return [...new Set([start, lowest, highest, broken, end - 1])].filter(i => i >= 0).sort((a, b) => a - b)
}

/** The points from one x to another, with one more at each side where there is one, so that the line reaches the edges. */
export function between(x: Numbers, y: Numbers, from: number, to: number): Points {
  const all = x as unknown as number[],
    asList = (list: Numbers): Float64Array => (list instanceof Float64Array ? list : Float64Array.from(list)),
    start = Math.max(0, bisectLeft(all, from) - 1),
    end = Math.min(x.length, bisectRight(all, to) + 1)
  return { x: asList(x).subarray(start, end), y: asList(y).subarray(start, end) }
}

/** Value of a line at x, straight between points, held at the ends; undefined where the line is broken or there is none. */
export function readAt(x: Numbers, y: Numbers, at: number): number | undefined {
  const n = x.length
  if (n === 0) return undefined
  const i = Math.min(Math.max(bisectRight(x as unknown as number[], at) - 1, 0), Math.max(n - 2, 0)),
    x0 = x[i] as number,
    y0 = y[i] as number,
    x1 = (x[i + 1] ?? x0) as number,
    y1 = (y[i + 1] ?? y0) as number
  const share = x1 === x0 ? 0 : Math.min(1, Math.max(0, (at - x0) / (x1 - x0)))
  const value = share === 0 ? y0 : share === 1 ? y1 : y0 + share * (y1 - y0)
  return Number.isFinite(value) ? value : undefined
}
