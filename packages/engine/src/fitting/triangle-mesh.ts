/**
 * A surface of triangles, as flat lists so that millions of them stay cheap. A scan is such a surface with holes; a part may be closed.
 *
 * The lists say nothing of unit and axes: a file has its own, and only a mesh placed in the car is in metres and the axes of the car.
 */
export type TriangleMesh = {
  /** x, y and z of each corner, one after the other. */
  readonly positions: Float64Array | Float32Array
  /** Three corners for each triangle, counted from 0; seen from outside they run against the clock. */
  readonly triangles: Uint32Array
}

/** How many triangles a mesh has. */
export const triangleCount = ({ triangles }: TriangleMesh): number => triangles.length / 3
