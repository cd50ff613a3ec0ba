/** Three whole sides or coordinates: along, across, up. */
export type Whole = readonly [number, number, number]

/** A box where it lies: the corner nearest the origin, and its sides as it is turned. */
export type Placed = { readonly at: Whole; readonly sides: Whole }

/** One answer of a search: each has at least as many boxes as the one before, and a bound that is no higher. */
export type Answer<P> = {
  readonly placed: readonly P[]
  /** No arrangement holds more. Where it equals the number placed, the answer is proven best. */
  readonly bound: number
  readonly seed: number
  /** Work done so far: the same seed and the same steps give the same answer, anywhere. */
  readonly steps: number
}

/** Longest side a search takes, in whole units. */
const LONGEST = 20_000

/** Throws RangeError when a side is no whole number from 1 to 20 000, naming it. */
export function checkSides(sides: Readonly<Record<string, number>>): void {
  for (const [name, side] of Object.entries(sides))
    if (!Number.isInteger(side) || side < 1 || side > LONGEST)
      throw new RangeError(`packing: ${name} must be a whole number from 1 to ${LONGEST}, found ${side}`)
}

/** Most boxes a search takes on. */
const MANY = 2000

/** Throws RangeError when a space could hold more boxes than a search takes on. */
export function checkNumber(bound: number): void {
  if (bound > MANY) throw new RangeError(`packing: at most ${MANY} boxes are laid out, the space may hold ${bound}`)
}

/** The last answer of a search that is at its best, or has done so many steps. */
export function answerWithin<P>(search: Generator<Answer<P>, void>, steps: number): Answer<P> {
  let last: Answer<P> | undefined
  for (const answer of search) {
    last = answer
    if (answer.placed.length === answer.bound || answer.steps >= steps) break
  }
  if (!last) throw new RangeError('packing: the search gave no answer')
  return last
}
