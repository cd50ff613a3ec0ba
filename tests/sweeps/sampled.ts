import { runs } from '../counts.ts'
import { seeded } from '../proof.ts'

/** A printed seed, so that a failing draw can be drawn again: AMPWRIGHT_SEED=… */
export const seed = Number(process.env['AMPWRIGHT_SEED'] ?? Math.floor(Math.random() * 2 ** 31))
console.info(`sweeps: seed ${seed}`)
seeded(seed)

/** A twentieth of a list in short runs, all of it in the long run; drawn by the seed, in the list's order. */
export function sampled<T>(list: readonly T[], salt: string): readonly T[] {
  const wanted = runs(list.length)
  if (wanted >= list.length) return list
  let h = seed
  for (const c of salt) h = Math.imul(h ^ c.charCodeAt(0), 0x01000193) >>> 0
  const next = (): number => {
    h = (h + 0x6d2b79f5) >>> 0
    let t = Math.imul(h ^ (h >>> 15), 1 | h)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  const chosen = new Set<number>()
  while (chosen.size < wanted) chosen.add(Math.floor(next() * list.length))
  return list.filter((_, i) => chosen.has(i))
}
