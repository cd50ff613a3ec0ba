import { normalQuantile } from './normal.ts'
import { root } from './root.ts'

/** From here on the expansion about the normal distribution is right to all digits, and the sum would be long. */
const MANY = 1000

/**
 * Probability that a Student variable with a whole number of degrees of freedom lies within ±t.
 *
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4: finite sums in θ = atan(t/√ν) (from memory).
 */
export function studentWithin(t: number, degrees: number): number {
  checkDegrees('studentWithin', degrees)
  if (!(t >= 0)) throw new RangeError(`studentWithin: t must be zero or more, found ${t}`)
  return within(Math.atan(t / Math.sqrt(degrees)), degrees)
}

function within(angle: number, degrees: number): number {
  const sin = Math.sin(angle)
  const cos = Math.cos(angle)
  const odd = degrees % 2 === 1
  if (degrees === 1) return (2 * angle) / Math.PI
  let term = odd ? cos : 1
  let sum = term
  for (let k = odd ? 3 : 2; k <= degrees - 2; k += 2) {
    term *= ((k - 1) / k) * cos * cos
    sum += term
  }
  return odd ? (2 / Math.PI) * (angle + sin * sum) : sin * sum
}

/**
 * Student factor: ± this many standard deviations hold a share `confidence` of cases, two-sided; 2.228 for 95 % and 10 degrees of freedom.
 *
 * Effective degrees of freedom that are no whole number are to be cut to the next lower one first (GUM, JCGM 100:2008, G.4.2).
 * Throws RangeError when `degrees` is not a whole number of at least 1 or `confidence` not above 0 and below 1.
 * Source: inverse of `studentWithin`; above 1000 degrees of freedom Abramowitz and Stegun, 26.7.5 (from memory).
 */
export function studentFactor(degrees: number, confidence = 0.95): number {
  checkDegrees('studentFactor', degrees)
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError(`studentFactor: confidence must be above 0 and below 1, found ${confidence}`)
  if (degrees > MANY) return nearNormal(normalQuantile((1 + confidence) / 2), degrees)
  const angle = root(a => within(a, degrees) - confidence, 0, Math.PI / 2, 0)
  // The share runs from 0 to 1 over the angles, so a crossing always exists.
  return Math.sqrt(degrees) * Math.tan(angle!)
}

function nearNormal(z: number, degrees: number): number {
  const g1 = (z ** 3 + z) / 4
  const g2 = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96
  const g3 = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384
  const g4 = (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / 92160
  return z + (g1 + (g2 + (g3 + g4 / degrees) / degrees) / degrees) / degrees
}

function checkDegrees(name: string, degrees: number): void {
  if (!Number.isInteger(degrees) || degrees < 1)
    throw new RangeError(`${name}: degrees must be a whole number of at least 1, found ${degrees}`)
}
