import type { TriangleMesh } from '@ampwright/engine'
import { checkAny, checkCount, MOST_CORNERS, refuse } from './mesh-file.ts'

/** Collects corners and triangles into flat lists that double when full. */
export class MeshBuilder {
  corners = 0
  count = 0
  #positions = new Float64Array(3 * 256)
  #triangles = new Uint32Array(3 * 256)
  readonly #where: () => string

  constructor(where: () => string) {
    this.#where = where
  }

  corner(x: number, y: number, z: number): void {
    const at = 3 * this.corners++
    if (this.corners > MOST_CORNERS)
      refuse(this.#where(), 'the mesh has too many corners', `more than ${MOST_CORNERS}`, 'fewer: make the mesh coarser')
    if (at === this.#positions.length) {
      const wider = new Float64Array(Math.min(2 * at, 3 * MOST_CORNERS))
      wider.set(this.#positions)
      this.#positions = wider
    }
    this.#positions[at] = x
    this.#positions[at + 1] = y
    this.#positions[at + 2] = z
  }

  triangle(a: number, b: number, c: number): void {
    const at = 3 * this.count++
    checkCount(this.count, this.#where())
    if (at === this.#triangles.length) {
      const wider = new Uint32Array(2 * at)
      wider.set(this.#triangles)
      this.#triangles = wider
    }
    this.#triangles[at] = a
    this.#triangles[at + 1] = b
    this.#triangles[at + 2] = c
  }

  /** The mesh, once every triangle has its corners. Throws MeshRefusal. */
  mesh(holds: string): TriangleMesh {
    checkAny(this.count, holds)
    const triangles = this.#triangles.slice(0, 3 * this.count)
    checkCorners(triangles, this.corners)
    return { positions: this.#positions.slice(0, 3 * this.corners), triangles }
  }
}

/** Refuses a triangle whose corner is not there. */
export function checkCorners(triangles: Uint32Array, corners: number): void {
  for (let i = 0; i < triangles.length; i++)
    if ((triangles[i] as number) >= corners)
      refuse(
        `triangle ${Math.floor(i / 3) + 1}`,
        'a triangle names a corner that is not there',
        `corner ${(triangles[i] as number) + 1}`,
        `one of the ${corners} corners of the file`,
      )
}
