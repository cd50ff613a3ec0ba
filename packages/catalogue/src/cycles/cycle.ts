/** Where a cycle is laid down; `mark` where the passage was not compared with a copy. */
export type CycleSource = { readonly work: string; readonly place: string; readonly mark?: 'from memory' | 'common practice' }

/** A part of a cycle that is reported by itself: first and last second of the trace. The car stands still at both. */
export type CyclePhase = { readonly name: string; readonly from: number; readonly to: number }

/**
 * A standard speed trace, linear between its points.
 *
 * `times` in s, `speeds` in m/s, both shared by everyone who asks for the cycle: read them, never write. `published` holds the totals printed
 * with the cycle: duration in s, distance in m, greatest speed in m/s.
 */
export type Cycle = {
  readonly id: string
  readonly label: string
  readonly source: CycleSource
  readonly confidence: { readonly level: 'very high' | 'good' | 'medium'; readonly because: string }
  readonly phases: readonly CyclePhase[]
  readonly published: { readonly duration: number; readonly distance: number; readonly max?: number }
  readonly times: Float64Array
  readonly speeds: Float64Array
}

type Trace = Pick<Cycle, 'times' | 'speeds'>

/** International mile in m. */
export const MILE = 1609.344
/** m/s per count of a table. */
const COUNTS = { '0.1 km/h': (count: number) => count / 36, '0.1 mph': (count: number) => (count * MILE) / 36000 } as const

/** The trace of tables that follow one another, one whole count a second. */
export function measuredEverySecond(tables: readonly string[], unit: keyof typeof COUNTS): Trace {
  const counts = tables.flatMap(table => table.trim().split(/\s+/)).map(Number)
  return { times: Float64Array.from(counts, (_, second) => second), speeds: Float64Array.from(counts, COUNTS[unit]) }
}

/** The trace through corner points `[s, km/h]`, at every second; corner times rise and are whole seconds. */
export function throughCorners(corners: readonly (readonly [second: number, kmh: number])[]): Trace {
  const kmh = corners.slice(0, 1).map(([, speed]) => speed)
  for (const [index, [end, to]] of corners.slice(1).entries()) {
    const [start, from] = corners[index] as readonly [number, number]
    for (let second = start + 1; second <= end; second++) kmh.push(from + ((to - from) * (second - start)) / (end - start))
  }
  return { times: Float64Array.from(kmh, (_, second) => second), speeds: Float64Array.from(kmh, speed => speed / 3.6) }
}

/** Makes a cycle when first asked for and keeps it. */
export function lazily(make: () => Cycle): () => Cycle {
  let made: Cycle | undefined
  return () => {
    made ??= make()
    return made
  }
}
