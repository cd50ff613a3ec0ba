/** Three numbers: a place, a direction or the sides of a box. */
export type Vector = readonly [number, number, number]

export const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const times = (a: Vector, by: number): Vector => [a[0] * by, a[1] * by, a[2] * by]
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
export const lengthOf = (a: Vector): number => Math.hypot(a[0], a[1], a[2])
export const between = (a: Vector, b: Vector): number => lengthOf(minus(a, b))

/** A list as a place. Throws RangeError naming formula and input when it does not hold three numbers. */
export function checkPlace(formula: string, name: string, list: readonly number[]): Vector {
  const [x, y, z] = list
  if (list.length !== 3 || x === undefined || y === undefined || z === undefined)
    throw new RangeError(`${formula}: ${name} must be three lengths, x, y and z; found ${list.length}`)
  return [x, y, z]
}
