/** Where a letter is written: its middle [px]. */
export type Spot = { readonly u: number; readonly v: number }
type Flat = readonly [u: number, v: number]
const WIDE = 20
const HIGH = 16
const TRIES = [0.5, 0.25, 0.75, 0.1, 0.9]

/** A place in each outline where its letter touches no earlier one; none where there is no such place. */
export function letters(hulls: readonly (readonly Flat[])[]): readonly (Spot | undefined)[] {
  const taken: Spot[] = []
  return hulls.map(hull => {
    const us = hull.map(p => p[0]),
      vs = hull.map(p => p[1])
    const [u1, u2, v1, v2] = [Math.min(...us), Math.max(...us), Math.min(...vs), Math.max(...vs)]
    for (const a of TRIES)
      for (const b of TRIES) {
        const spot = { u: u1 + (u2 - u1) * a, v: v1 + (v2 - v1) * b }
        if (taken.every(t => Math.abs(t.u - spot.u) >= WIDE || Math.abs(t.v - spot.v) >= HIGH)) {
          taken.push(spot)
          return spot
        }
      }
    return undefined
  })
}
