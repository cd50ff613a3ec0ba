/*
 * One step of the method of Dormand and Prince, order 5(4): stages, error estimate, continuous answer of fourth order, starting step.
 *
 * Source: Dormand and Prince, A family of embedded Runge–Kutta formulae, J. Comput. Appl. Math. 6 (1980) 19–26; dense output and starting step:
 * Hairer, Nørsett and Wanner, Solving Ordinary Differential Equations I, II.4 to II.6 (from memory).
 */

/** Writes the rates of change of the state `y` at time `t` into `rates`. */
export type Rates = (t: number, y: Float64Array, rates: Float64Array) => void

/** A step taken, with what its dense output needs: y(t + θh) = c₀ + θ(c₁ + (1−θ)(c₂ + θ(c₃ + (1−θ)c₄))). */
export type Piece = { readonly t: number; readonly h: number; readonly c: readonly Float64Array[] }

const C = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1] as const
const A: readonly (readonly number[])[] = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
]
/** Fifth-order weights minus fourth-order weights. */
const E = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40] as const
const D = [
  -12715105075 / 11282082432,
  0,
  87487479700 / 32700410799,
  -10690763975 / 1880347072,
  701980252875 / 199316789632,
  -1453857185 / 822651844,
  69997945 / 29380423,
] as const

/** Fills k₂…k₇ (k₁ is there already) and gives the state after the step. */
export function stages(
  rates: Rates,
  t: number,
  h: number,
  y: Float64Array,
  k: readonly Float64Array[],
  scratch: Float64Array,
): Float64Array {
  const next = new Float64Array(y.length)
  for (let s = 1; s < 7; s++) {
    const row = A[s]!
    const into = s === 6 ? next : scratch
    for (let i = 0; i < y.length; i++) {
      let sum = 0
      for (let j = 0; j < row.length; j++) sum += row[j]! * k[j]![i]!
      into[i] = y[i]! + h * sum
    }
    rates(t + C[s]! * h, into, k[s]!)
  }
  return next
}

/** Estimated error of a step against what is allowed: 1 is just allowed. */
export function errorNorm(
  h: number,
  k: readonly Float64Array[],
  y: Float64Array,
  next: Float64Array,
  relative: number,
  floor: Float64Array,
): number {
  let sum = 0
  for (let i = 0; i < y.length; i++) {
    let e = 0
    for (let s = 0; s < 7; s++) e += E[s]! * k[s]![i]!
    sum += ((h * e) / (floor[i]! + relative * Math.max(Math.abs(y[i]!), Math.abs(next[i]!)))) ** 2
  }
  return Math.sqrt(sum / y.length)
}

/** Coefficients of the continuous answer over a step. */
export function densePiece(t: number, h: number, y: Float64Array, next: Float64Array, k: readonly Float64Array[]): Piece {
  const c = Array.from({ length: 5 }, () => new Float64Array(y.length))
  for (let i = 0; i < y.length; i++) {
    const change = next[i]! - y[i]!
    const bend = h * k[0]![i]! - change
    c[0]![i] = y[i]!
    c[1]![i] = change
    c[2]![i] = bend
    c[3]![i] = change - h * k[6]![i]! - bend
    let d = 0
    for (let s = 0; s < 7; s++) d += D[s]! * k[s]![i]!
    c[4]![i] = h * d
  }
  return { t, h, c }
}

/** State within a step. */
export function stateWithin({ t, h, c }: Piece, time: number): Float64Array {
  const [c0, c1, c2, c3, c4] = c as [Float64Array, Float64Array, Float64Array, Float64Array, Float64Array]
  const s = (time - t) / h
  return c0.map((y, i) => y + s * (c1[i]! + (1 - s) * (c2[i]! + s * (c3[i]! + (1 - s) * c4[i]!))))
}

/** First step from the sizes of state, first and second derivative (Hairer, Nørsett and Wanner, II.4, starting step size). */
export function firstStep(
  rates: Rates,
  t: number,
  y: Float64Array,
  k0: Float64Array,
  relative: number,
  floor: Float64Array,
  span: number,
): number {
  const norm = (v: (i: number) => number): number => {
    let sum = 0
    for (let i = 0; i < y.length; i++) sum += (v(i) / (floor[i]! + relative * Math.abs(y[i]!))) ** 2
    return Math.sqrt(sum / y.length)
  }
  const d0 = norm(i => y[i]!)
  const d1 = norm(i => k0[i]!)
  const h0 = Math.min(span, d0 < 1e-5 || d1 < 1e-5 ? 1e-6 * span : (0.01 * d0) / d1)
  const k1 = new Float64Array(y.length)
  rates(
    t + h0,
    y.map((v, i) => v + h0 * k0[i]!),
    k1,
  )
  const d2 = norm(i => k1[i]! - k0[i]!) / h0
  const steepest = Math.max(d1, d2)
  const h1 = steepest <= 1e-15 ? Math.max(1e-6 * span, h0 * 1e-3) : (0.01 / steepest) ** 0.2
  return Number.isFinite(h1) ? Math.min(100 * h0, h1, span) : h0
}
