import { gaussLegendre } from '../numerics/integrate.ts'
import { normalProbability, normalQuantile } from '../numerics/normal.ts'
import { formula } from '../working/formula.ts'
import { many, number, share } from './symbols.ts'

const ORDER = { work: 'probability', place: 'order statistics' } as const

/**
 * How many standard deviations below the mean the i-th weakest of M normal ones is expected, exactly.
 *
 * Φ⁻¹((i − 0.375)/(M + 0.25)) by Blom is within half a per cent. Real lots have a weak tail: test every module, never plan from this alone.
 */
export const weakestExpected = formula(
  {
    id: 'weakest-expected',
    label: 'Expected i-th weakest of many',
    gives: number('z', 'standard deviations from the mean'),
    takes: {
      of: { symbol: 'M', unit: '1', label: 'how many', shows: 'count', holds: [1, 1000] },
      place: { symbol: 'i', unit: '1', label: 'place from the weakest', shows: 'count', holds: [1, 1000] },
    },
    text: 'Mean of the i-th smallest of M standard normal values: z = ∫ x · M!/((i−1)!(M−i)!) · Φ(x)^(i−1) · (1 − Φ(x))^(M−i) · φ(x) dx. By Blom nearly Φ⁻¹((i − 0.375)/(M + 0.25)).',
    words: 'an integral of a probability',
    source: ORDER,
    leavesOut: 'The weak tail of real lots: in one the weakest of 52 lay 4.4 deviations below the mean, by this law 2.3.',
    proof: {
      examples: [
        { takes: { of: 16, place: 1 }, gives: -1.766, within: 5e-5, source: ORDER },
        { takes: { of: 24, place: 1 }, gives: -1.9477, within: 6e-5, source: ORDER },
        { takes: { of: 96, place: 1 }, gives: -2.493, within: 6e-5, source: ORDER },
        { takes: { of: 102, place: 1 }, gives: -2.5147, within: 6e-5, source: ORDER },
        { takes: { of: 100, place: 5 }, gives: -1.6872, within: 6e-5, source: ORDER, because: 'the best 96 of 100' },
        { takes: { of: 120, place: 25 }, gives: -0.8251, within: 6e-5, source: ORDER, because: 'the best 96 of 120' },
        { takes: { of: 18, place: 3 }, gives: -1.0657, within: 6e-5, source: ORDER, because: 'the best 16 of 18' },
      ],
    },
  },
  ({ of, place }) => {
    const m = Math.round(of),
      i = Math.min(m, Math.max(1, Math.round(place)))
    let constant = Math.log(m)
    for (let k = 1; k < i; k++) constant += Math.log((m - k) / k)
    const density = (x: number): number => {
      const p = normalProbability(x)
      return (x * Math.exp(constant + (i - 1) * Math.log(p) + (m - i) * Math.log1p(-p) - (x * x) / 2)) / Math.sqrt(2 * Math.PI)
    }
    let sum = 0
    for (let k = -8; k < 8; k++) sum += gaussLegendre(density, k, k + 1, 8)
    return sum
  },
)

/** The level that the weakest of N stays above with a given chance. */
export const weakestSurely = formula(
  {
    id: 'weakest-surely',
    label: 'Level the weakest of N stays above',
    gives: number('z', 'standard deviations from the mean'),
    takes: {
      of: { symbol: 'N', unit: '1', label: 'how many', shows: 'count', holds: [1, 1000] },
      chance: { ...share('p', 'chance'), holds: [0.01, 0.99] },
    },
    text: 'The inverse of the normal law at 1 − p^(1/N).',
    words: 'needs the inverse of the normal law',
    source: ORDER,
    proof: {
      examples: [
        { takes: { of: 16, chance: 0.95 }, gives: -2.7265, within: 5e-5, source: ORDER },
        { takes: { of: 96, chance: 0.95 }, gives: -3.2719, within: 5e-5, source: ORDER },
      ],
    },
  },
  ({ of, chance }) => normalQuantile(1 - chance ** (1 / of)),
)

/** Mean of the weakest of N from a lot by the law of Weibull, whose tail is weak as that of real lots. */
export const weakestByWeibull = formula(
  {
    id: 'weakest-by-weibull',
    label: 'Expected weakest of many, weak tail',
    gives: number('x_N', 'expected weakest, in the unit of the scale'),
    takes: {
      scale: number('λ', 'scale of the lot'),
      shape: { ...number('β', 'shape of the lot'), holds: [1, 1000] },
      of: { symbol: 'N', unit: '1', label: 'how many', shows: 'count', holds: [1, 1000] },
    },
    text: 'x_N = λ · Γ(1 + 1/β) · N^(−1/β)',
    words: 'needs the gamma function',
    source: ORDER,
    proof: {
      examples: [
        { takes: { scale: 60, shape: 30, of: 96 }, gives: 50.5953, within: 5e-5, source: ORDER },
        { takes: { scale: 60, shape: 30, of: 1 }, gives: 58.9096, within: 5e-5, source: ORDER, because: 'the mean of the lot' },
      ],
    },
  },
  // Γ(1 + s) = ∫ u^s e^(−u) du, with u = v⁸ to smooth the root at nothing.
  ({ scale, shape, of }) => {
    const s = 1 / shape
    let gamma = 0
    for (let k = 0; k < 16; k++) gamma += gaussLegendre(v => 8 * v ** (8 * s + 7) * Math.exp(-(v ** 8)), k / 10, (k + 1) / 10, 8)
    return scale * gamma * of ** -s
  },
)

/** Capacity to expect of a string of N taken blindly from a tested lot. No law of distribution is assumed. */
export const blindString = formula(
  {
    id: 'blind-string',
    label: 'Weakest of N taken blindly from a lot',
    gives: { symbol: 'Q_N', unit: 'C', label: 'expected weakest' },
    takes: {
      lot: many({ symbol: 'Q_k', unit: 'C', label: 'capacity of each in the lot' }),
      wanted: { symbol: 'N', unit: '1', label: 'how many are taken', shows: 'count', holds: [1, 3] },
    },
    text: 'Sorted q_1 ≤ … ≤ q_M: the sum over i of q_i · C(M − i, N − 1)/C(M, N).',
    words: 'counts the ways to draw',
    source: { work: 'probability', place: 'drawing without putting back' },
    proof: {
      examples: [
        {
          takes: { lot: [1, 2, 3], wanted: 2 },
          gives: 4 / 3,
          within: 1e-12,
          source: { work: 'probability', place: 'three pairs: weakest 1, 1, 2; worked by hand' },
        },
      ],
    },
  },
  ({ lot, wanted }) => {
    const q = Float64Array.from(lot).sort(),
      m = q.length,
      n = Math.min(m, Math.max(1, Math.round(wanted)))
    // Chance that the first is the weakest taken is N/M; each following one by the ratio of the binomials.
    let chance = n / m,
      sum = 0
    for (let i = 1; i <= m - n + 1; i++) {
      sum += q[i - 1]! * chance
      chance *= (m - i - n + 1) / (m - i)
    }
    return sum
  },
)
