import type { System } from '@ampwright/conversion'
import { type Track, trackDistances } from '@ampwright/exchange'
import { routeHeights } from '../route-file.ts'
import { shownNumber } from '../shown.ts'
import { localMetres } from './local-metres.ts'
import { thinned } from './thinned.ts'

/** A line to draw: alternating x and y. */
export type Line = readonly number[]
/** A route as a screen draws it: plain data, lengths in metres, texts ready to print. */
export type RouteView = {
  readonly name?: string
  /** One line for each piece the receiver recorded without a break; x east, y north. */
  readonly pieces: readonly Line[]
  readonly box: Box
  readonly start: readonly [x: number, y: number]
  readonly end: readonly [x: number, y: number]
  readonly bar: { readonly metres: number; readonly text: string }
  /** Height over distance; absent where the track carries no heights. */
  readonly profile?: { readonly line: Line; readonly box: Box; readonly across: readonly Tick[]; readonly up: readonly Tick[] }
  readonly facts: readonly { readonly label: string; readonly text: string }[]
  /** What the drawing shows, for whoever does not see it. */
  readonly says: string
}
export type Box = { readonly left: number; readonly right: number; readonly low: number; readonly high: number }
export type Tick = { readonly at: number; readonly text: string }

/** Parts of a drawing's size nobody sees. */
const UNSEEN = 1 / 1500

/**
 * A track as it is drawn, north up, with its length, rises, highest and lowest place; undefined for a track that can be none. Heights are read as trips read
 * them, at places at least 10 m apart; the climb is the sum of every rise between those, noise of the receiver and all.
 */
export function routeView(track: Track, system: System): RouteView | undefined {
  const distances = trackDistances(track)
  if (!distances || distances.length < 2) return undefined
  const ground = localMetres(track),
    box = boxOf(ground.x, ground.y),
    size = Math.max(box.right - box.left, box.high - box.low, 1),
    length = distances.at(-1)!,
    say = (v: number): string => shownNumber(v, 'distance', 'm', system)
  const last = distances.length - 1,
    bar = roundBelow(size / 3, miles(system))
  const heights = heightFacts(track, system)
  const facts = [{ label: 'Distance', text: say(length) }, ...(heights?.facts ?? [])]
  return {
    ...(track.name === undefined ? {} : { name: track.name }),
    pieces: pieces(track.starts, last).map(([from, to]) => lineOf(ground.x.subarray(from, to), ground.y.subarray(from, to), size * UNSEEN)),
    box,
    start: [ground.x[0]!, ground.y[0]!],
    end: [ground.x[last]!, ground.y[last]!],
    bar: { metres: bar, text: say(bar) },
    ...(heights ? { profile: heights.profile } : {}),
    facts,
    says: saying(track, facts, ground.x[last]! - ground.x[0]!, ground.y[last]! - ground.y[0]!, say),
  }
}

function heightFacts(track: Track, system: System): { profile: NonNullable<RouteView['profile']>; facts: RouteView['facts'] } | undefined {
  const heights = routeHeights(track)
  if (!heights) return undefined
  const box = boxOf(heights.x, heights.y),
    [wide, tall] = [Math.max(box.right - box.left, 1), Math.max(box.high - box.low, 1)]
  let [rise, fall, top, bottom] = [0, 0, 0, 0]
  for (let i = 0; i < heights.y.length; i++) {
    const step = i === 0 ? 0 : heights.y[i]! - heights.y[i - 1]!
    rise += Math.max(0, step)
    fall += Math.max(0, -step)
    if (heights.y[i]! > heights.y[top]!) top = i
    if (heights.y[i]! < heights.y[bottom]!) bottom = i
  }
  const height = (v: number): string => shownNumber(v, 'altitude', 'm', system),
    where = (i: number): string => `${height(heights.y[i]!)}, after ${shownNumber(heights.x[i]!, 'distance', 'm', system)}`
  // Both axes to one size, so that one tolerance fits both.
  const kept = thinned(
    heights.x.map(v => v / wide),
    heights.y.map(v => v / tall),
    UNSEEN,
  )
  return {
    profile: {
      line: kept.flatMap(i => [heights.x[i]!, heights.y[i]!]),
      box,
      across: ticks(box.left, box.right, 5, miles(system)).map(at => ({ at, text: shownNumber(at, 'distance', 'm', system) })),
      up: ticks(box.low, box.high, 4, system === 'metric' ? 1 : FOOT).map(at => ({ at, text: height(at) })),
    },
    facts: [
      { label: 'Climb, every rise added up', text: height(rise) },
      { label: 'Fall, every drop added up', text: height(fall) },
      { label: 'Highest', text: where(top) },
      { label: 'Lowest', text: where(bottom) },
    ],
  }
}

const lineOf = (x: Float64Array, y: Float64Array, tolerance: number): Line => thinned(x, y, tolerance).flatMap(i => [x[i]!, y[i]!])
/** From each start of a recording to the place before the next. */
const pieces = (starts: readonly number[], last: number): readonly (readonly [number, number])[] => {
  const from = starts.length ? starts : [0]
  return from.map((s, k) => [s, from[k + 1] ?? last + 1] as const).filter(([a, b]) => b > a)
}

function boxOf(x: ArrayLike<number>, y: ArrayLike<number>): Box {
  let [left, right, low, high] = [x[0]!, x[0]!, y[0]!, y[0]!]
  for (let i = 1; i < x.length; i++) {
    left = Math.min(left, x[i]!)
    right = Math.max(right, x[i]!)
    low = Math.min(low, y[i]!)
    high = Math.max(high, y[i]!)
  }
  return { left, right, low, high }
}

/** Largest of 1, 2 and 5 times a power of ten that is not above a length. */
export function roundBelow(length: number, unit = 1): number {
  const power = 10 ** Math.floor(Math.log10(length / unit) + 1e-12),
    times = [5, 2, 1].find(t => t * power * unit <= length * (1 + 1e-12)) ?? 1
  return times * power * unit
}
const MILE = 1609.344
const FOOT = 0.3048
const miles = (system: System): number => (system === 'metric' ? 1 : MILE)

/** Round numbers of a unit between two, at most about `most` of them. */
export function ticks(from: number, to: number, most: number, unit = 1): readonly number[] {
  if (!(to > from)) return [from]
  const rough = (to - from) / most / unit,
    power = 10 ** Math.floor(Math.log10(rough)),
    step = unit * power * ([1, 2, 5, 10].find(t => t * power >= rough) ?? 10)
  const out: number[] = []
  for (let k = Math.ceil(from / step - 1e-9); k * step <= to + 1e-9 * step; k++) out.push(k * step + 0)
  return out
}

const WINDS = ['east', 'north-east', 'north', 'north-west', 'west', 'south-west', 'south', 'south-east'] as const
function saying(track: Track, facts: RouteView['facts'], east: number, north: number, say: (v: number) => string): string {
  const apart = Math.hypot(east, north),
    wind = WINDS[(Math.round(Math.atan2(north, east) / (Math.PI / 4)) + 8) % 8]
  const breaks = track.starts.length > 1 ? ` Recorded in ${track.starts.length} pieces.` : ''
  return `${track.name ? `${track.name}: a` : 'A'} track of ${track.latitudes.length} places. It ends ${say(apart)} ${wind} of its start.${breaks} ${facts.map(f => `${f.label}: ${f.text}.`).join(' ')}`
}
