/**
 * The lowest place between two at which something holds that, once it holds, holds from there on; found by halving.
 *
 * The answer itself holds and lies within `tolerance` above the boundary. It is `low` when it holds there already, undefined when it does not
 * hold at `high`. Throws RangeError when `low` is not below `high`, or the tolerance not above zero.
 */
export function firstTrue(holds: (x: number) => boolean, low: number, high: number, tolerance: number): number | undefined {
  check('firstTrue', low, high, tolerance)
  if (holds(low)) return low
  return holds(high) ? halve(holds, low, high, tolerance) : undefined
}

/**
 * The highest place between two up to which something holds; the mirror image of `firstTrue`.
 *
 * The answer itself holds and lies within `tolerance` below the boundary. It is `high` when it still holds there, undefined when it does not
 * hold at `low`. Throws RangeError as `firstTrue`.
 */
export function lastTrue(holds: (x: number) => boolean, low: number, high: number, tolerance: number): number | undefined {
  check('lastTrue', low, high, tolerance)
  if (holds(high)) return high
  return holds(low) ? halve(holds, high, low, tolerance) : undefined
}

/** Narrows [no, yes] to the tolerance, or until no number lies between, and gives the side that holds. */
function halve(holds: (x: number) => boolean, no: number, yes: number, tolerance: number): number {
  let outside = no
  let inside = yes
  while (Math.abs(inside - outside) > tolerance) {
    const middle = outside + (inside - outside) / 2
    if (middle === outside || middle === inside) break
    if (holds(middle)) inside = middle
    else outside = middle
  }
  return inside
}

function check(name: string, low: number, high: number, tolerance: number): void {
  if (!(Number.isFinite(low) && Number.isFinite(high) && low < high))
    throw new RangeError(`${name}: low must lie below high, found ${low} and ${high}`)
  if (!(tolerance > 0)) throw new RangeError(`${name}: tolerance must be above zero, found ${tolerance}`)
}
