import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { BoxKind, Whole } from '../packages/engine/src/index.ts'

/** A container and the boxes for it. */
export type ContainerProblem = { readonly number: number; readonly space: Whole; readonly kinds: readonly BoxKind[] }

/** Open data kept beside the repository and not in it: AMPWRIGHT_PACKING_DATA names the folder. */
const folder = process.env['AMPWRIGHT_PACKING_DATA'] ?? join(new URL('.', import.meta.url).pathname, '../../shared/reference/packing')

/**
 * The odd-numbered problems of one of the sets BR1 to BR7, or undefined, with a line that says so, where the file is not at hand.
 *
 * Layout: number of problems; then of each its number and seed, length, width and height of the container, number of kinds, and a line a kind: its number, three
 * sides each with 1 where it may stand upright, and the count.
 * Source: Bischoff and Ratcliff, Omega 23 (1995) 377–390; OR-Library, files thpack1 to thpack7.
 */
export function containerProblems(set: number): readonly ContainerProblem[] | undefined {
  const path = join(folder, `br${set}-odd.txt`)
  if (!existsSync(path)) {
    console.info(`skipped: the container problems br${set}-odd.txt are not at hand (set AMPWRIGHT_PACKING_DATA to their folder)`)
    return undefined
  }
  const numbers = readFileSync(path, 'utf8').trim().split(/\s+/).map(Number)
  let at = 0
  const next = (): number => numbers[at++] as number
  const kind = (): BoxKind => {
    next()
    const [a, fa, b, fb, c, fc] = [next(), next(), next(), next(), next(), next()]
    return { sides: [a, b, c], upright: [fa === 1, fb === 1, fc === 1], count: next() }
  }
  return Array.from({ length: next() }, () => {
    const number = next()
    next()
    const space: Whole = [next(), next(), next()]
    return { number, space, kinds: Array.from({ length: next() }, kind) }
  })
}
