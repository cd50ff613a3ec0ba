import { formula } from '../working/formula.ts'
import { between, checkPlace, dot, minus, plus, times, type Vector } from './vector.ts'

const place = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length', many: true }) as const
const radius = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const hold = (x: number): number => Math.min(1, Math.max(0, x))

/** Two pieces are parallel where the sine of their angle, squared, is below this. */
const PARALLEL = 1e-12

export type Met = {
  readonly distance: number
  /** How far along each piece the nearest point lies, 0 at its start, 1 at its end. */
  readonly s: number
  readonly t: number
  readonly onFirst: Vector
  readonly onSecond: Vector
}

/**
 * Nearest points of two straight pieces, p₁ to q₁ and p₂ to q₂. A piece may be a point; of parallel ones one nearest pair of many is told. Pieces within a
 * millionth of a radian count as parallel: their distance is right to a millionth of their length.
 *
 * Source: Ericson, Real-Time Collision Detection (2005), 5.1.9 (from memory).
 */
export function segmentToSegment(p1: Vector, q1: Vector, p2: Vector, q2: Vector): Met {
  const d1 = minus(q1, p1),
    d2 = minus(q2, p2),
    r = minus(p1, p2)
  const a = dot(d1, d1),
    b = dot(d1, d2),
    c = dot(d1, r),
    e = dot(d2, d2),
    f = dot(d2, r)
  const across = a * e - b * b
  const first = across > PARALLEL * a * e ? hold((b * f - c * e) / across) : 0
  const t = e > 0 ? hold((b * first + f) / e) : 0
  const s = a > 0 ? hold((b * t - c) / a) : 0
  const onFirst = plus(p1, times(d1, s)),
    onSecond = plus(p2, times(d2, t))
  return { distance: between(onFirst, onSecond), s, t, onFirst, onSecond }
}

/** Clearance between two straight round pieces: hoses, shafts, cables, brake pipes. Below zero they run into each other. */
export const pipeClearance = formula(
  {
    id: 'pipe-clearance',
    label: 'Clearance of two straight pieces',
    gives: { symbol: 'd', unit: 'm', label: 'clearance', shows: 'length' },
    takes: {
      fromA: place('p_1', 'one piece, start: x, y, z'),
      toA: place('q_1', 'one piece, end: x, y, z'),
      radiusA: radius('r_1', 'its radius'),
      fromB: place('p_2', 'other piece, start: x, y, z'),
      toB: place('q_2', 'other piece, end: x, y, z'),
      radiusB: radius('r_2', 'its radius'),
    },
    text: [
      'a = Σ (q_1 − p_1) · (q_1 − p_1)',
      'b = Σ (q_1 − p_1) · (q_2 − p_2)',
      'c = Σ (q_1 − p_1) · (p_1 − p_2)',
      'e = Σ (q_2 − p_2) · (q_2 − p_2)',
      'f = Σ (q_2 − p_2) · (p_1 − p_2)',
      'n = a · e − b · b',
      's_0 = { max(0, min(1, (b · f − c · e) / n)) if n > 0.000000000001 · a · e; 0 otherwise }',
      't = { max(0, min(1, (b · s_0 + f) / e)) if e > 0; 0 otherwise }',
      's = { max(0, min(1, (b · t − c) / a)) if a > 0; 0 otherwise }',
      'd = √(Σ (p_1 + s · (q_1 − p_1) − p_2 − t · (q_2 − p_2))²) − r_1 − r_2',
    ].join('\n'),
    words: 'for nearly parallel pieces the last digits of the sums decide which points are nearest',
    source: { work: 'ericson', place: '5.1.9, nearest points of two segments' },
    leavesOut: 'Bends: take a bent hose piece by piece. In the handbook only: no study knows hoses by place yet.',
    proof: {
      examples: [
        {
          takes: { fromA: [0, 0, 0], toA: [1, 0, 0], radiusA: 0, fromB: [0.3, -0.4, 0.12], toB: [0.5, 0.6, 0.12], radiusB: 0 },
          gives: 0.12,
          within: 0.00005,
          source: { work: 'statics', place: 'worked by hand: two that cross, 120 mm apart' },
        },
        {
          takes: { fromA: [0, 0, 0], toA: [1, 0, 0], radiusA: 0, fromB: [1.2, 0.1, 0.05], toB: [1.4, 0.5, 0.05], radiusB: 0 },
          gives: 0.2291,
          within: 0.00005,
          source: { work: 'statics', place: 'worked by hand: end against start' },
        },
        {
          takes: { fromA: [0, 0, 0], toA: [1, 0, 0], radiusA: 0.02, fromB: [0.3, -0.4, 0.12], toB: [0.5, 0.6, 0.12], radiusB: 0.015 },
          gives: 0.085,
          within: 0.00005,
          source: { work: 'statics', place: 'worked by hand: the crossing pair as hoses of 40 and 30 mm' },
        },
      ],
    },
  },
  ({ fromA, toA, radiusA, fromB, toB, radiusB }) => {
    const [p1, q1, p2, q2] = Object.entries({ fromA, toA, fromB, toB }).map(([name, place]) =>
      checkPlace('pipe-clearance', name, place),
    ) as [Vector, Vector, Vector, Vector]
    return segmentToSegment(p1, q1, p2, q2).distance - radiusA - radiusB
  },
)
