const SQRT_2PI = Math.sqrt(2 * Math.PI)

/**
 * Probability that a standard normal variable lies below z. Good to a few roundings, far into the lower tail too.
 *
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.11 (series) and 26.2.14 (continued fraction of the tail) (from memory).
 */
export function normalProbability(z: number): number {
  if (z > 0) return 1 - normalProbability(-z)
  const density = Math.exp((-z * z) / 2) / SQRT_2PI
  if (z > -3) {
    let term = z
    let sum = z
    for (let k = 3; Math.abs(term) > 1e-17 * Math.abs(sum); k += 2) {
      term *= (z * z) / k
      sum += term
    }
    return 0.5 + density * sum
  }
  // Evaluated from the far end: 100 terms are more than enough from 3 on.
  let tail = 0
  for (let k = 100; k > 0; k--) tail = k / (-z + tail)
  return density / (-z + tail)
}

/**
 * The z below which a standard normal variable lies with probability `p`: 1.959964 for 0.975; ∓∞ for 0 and 1.
 *
 * Throws RangeError when `p` is not from 0 to 1.
 * Source: start by Abramowitz and Stegun, 26.2.23 (error below 4.5e-4, from memory), refined by Halley's method on `normalProbability`.
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`normalQuantile: p must be from 0 to 1, found ${p}`)
  if (p === 0) return -Infinity
  if (p === 1) return Infinity
  if (p > 0.5) return -normalQuantile(1 - p)
  const t = Math.sqrt(-2 * Math.log(p))
  let z = -(t - (2.515517 + 0.802853 * t + 0.010328 * t * t) / (1 + 1.432788 * t + 0.189269 * t * t + 0.001308 * t ** 3))
  for (let i = 0; i < 3; i++) {
    const e = (normalProbability(z) - p) * SQRT_2PI * Math.exp((z * z) / 2)
    z -= e / (1 + (z * e) / 2)
  }
  return z
}
