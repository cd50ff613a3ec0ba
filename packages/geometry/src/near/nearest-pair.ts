import type { Vector } from '@ampwright/engine'

/**
 * The nearest pair of points found so far, one on each of two shapes. Whatever is offered truly lies on the shapes, so that the pair is never nearer than
 * they are; two shapes that meet are told by `meet`, not by a distance that rounding left near nothing.
 */
export class NearestPair {
  squared: number
  met = false
  readonly #on = new Float64Array(6)

  /** Pairs further apart than this are not wanted. */
  constructor(upTo = Infinity) {
    this.squared = upTo * upTo
  }

  offer(ax: number, ay: number, az: number, bx: number, by: number, bz: number): void {
    const squared = (ax - bx) ** 2 + (ay - by) ** 2 + (az - bz) ** 2
    if (squared < this.squared) this.#take(squared, ax, ay, az, bx, by, bz)
  }

  meet(x: number, y: number, z: number): void {
    if (!this.met) this.#take(0, x, y, z, x, y, z)
    this.met = true
  }

  get first(): Vector {
    return [this.#on[0] as number, this.#on[1] as number, this.#on[2] as number]
  }

  get second(): Vector {
    return [this.#on[3] as number, this.#on[4] as number, this.#on[5] as number]
  }

  #take(squared: number, ax: number, ay: number, az: number, bx: number, by: number, bz: number): void {
    this.squared = squared
    if (squared === 0) this.met = true
    const on = this.#on
    on[0] = ax
    on[1] = ay
    on[2] = az
    on[3] = bx
    on[4] = by
    on[5] = bz
  }
}
