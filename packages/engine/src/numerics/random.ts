/** A source of random numbers that gives the same row again from the same seed. */
export type Random = {
  /** Whole number from 0 to 2³² − 1, all alike. */
  readonly word: () => number
  /** From 0 to below 1 with 53 bits, all alike. */
  readonly uniform: () => number
  /** Mean 0, standard deviation 1. */
  readonly normal: () => number
  /** Whole number from 0 to below `n`, all exactly alike. Throws RangeError when `n` is not a whole number from 1 to 2³². */
  readonly below: (n: number) => number
}

const WORD = 2 ** 32

/**
 * Random numbers from a seed.
 *
 * Not for secrets. Words by xoshiro128**, its state filled by SplitMix64 as its authors advise; uniform from 53 bits of two words; normal by the
 * polar method (Marsaglia and Bray, SIAM Review 6 (1964) 260–264). Throws RangeError when the seed is not a safe whole number of at least 0.
 * Source: Blackman and Vigna, Scrambled linear pseudorandom number generators, ACM Trans. Math. Softw. 47 (2021) 36 (from memory).
 */
export function random(seed: number): Random {
  if (!Number.isSafeInteger(seed) || seed < 0) throw new RangeError(`random: seed must be a safe whole number of at least 0, found ${seed}`)
  const fill = splitMix64(BigInt(seed))
  const [a, b] = [fill(), fill()]
  const word = xoshiro128([Number(a & 0xffffffffn), Number(a >> 32n), Number(b & 0xffffffffn), Number(b >> 32n)])
  const uniform = (): number => {
    const high = word() >>> 5
    return (high * 2 ** 26 + (word() >>> 6)) / 2 ** 53
  }
  let spare: number | undefined
  const normal = (): number => {
    if (spare !== undefined) {
      const kept = spare
      spare = undefined
      return kept
    }
    for (;;) {
      const x = 2 * uniform() - 1
      const y = 2 * uniform() - 1
      const s = x * x + y * y
      if (s === 0 || s >= 1) continue
      const factor = Math.sqrt((-2 * Math.log(s)) / s)
      spare = y * factor
      return x * factor
    }
  }
  const below = (n: number): number => {
    if (!Number.isInteger(n) || n < 1 || n > WORD) throw new RangeError(`random: below takes a whole number from 1 to 2^32, found ${n}`)
    // Words above the last whole multiple of n would favour small answers.
    const fair = WORD - (WORD % n)
    for (;;) {
      const w = word()
      if (w < fair) return w % n
    }
  }
  return { word, uniform, normal, below }
}

/** xoshiro128** from four words of state, not all zero. */
export function xoshiro128(state: readonly [number, number, number, number]): () => number {
  if (state.every(s => s === 0)) throw new RangeError('xoshiro128: the state must not be all zero')
  let [s0, s1, s2, s3] = state.map(s => s >>> 0) as [number, number, number, number]
  const turn = (x: number, by: number): number => (x << by) | (x >>> (32 - by))
  return () => {
    const result = Math.imul(turn(Math.imul(s1, 5), 7), 9) >>> 0
    const t = s1 << 9
    s2 ^= s0
    s3 ^= s1
    s1 ^= s2
    s0 ^= s3
    s2 ^= t
    s3 = turn(s3, 11)
    return result
  }
}

/**
 * SplitMix64: spreads any seed, zero too, over all bits.
 *
 * Source: Steele, Lea and Flood, Fast splittable pseudorandom number generators, OOPSLA 2014 (from memory).
 */
export function splitMix64(seed: bigint): () => bigint {
  let state = BigInt.asUintN(64, seed)
  return () => {
    state = BigInt.asUintN(64, state + 0x9e3779b97f4a7c15n)
    let z = state
    z = BigInt.asUintN(64, (z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n)
    z = BigInt.asUintN(64, (z ^ (z >> 27n)) * 0x94d049bb133111ebn)
    return z ^ (z >> 31n)
  }
}
