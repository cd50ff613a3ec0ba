import type { TriangleMesh, Vector } from '@ampwright/engine'

/**
 * How often a mesh goes round a place: 1 inside a closed mesh whose triangles face out, 0 outside, a share where the mesh has holes.
 *
 * The solid angles of all triangles added up, over 4π. Source: van Oosterom and Strackee, IEEE Trans. Biomed. Eng. 30 (1983) 125–126 (from memory).
 */
export function winding({ positions, triangles }: TriangleMesh, [x, y, z]: Vector): number {
  let sum = 0
  for (let k = 0; k < triangles.length; k += 3) {
    const [i, j, l] = [3 * (triangles[k] as number), 3 * (triangles[k + 1] as number), 3 * (triangles[k + 2] as number)]
    const ax = (positions[i] as number) - x,
      ay = (positions[i + 1] as number) - y,
      az = (positions[i + 2] as number) - z,
      bx = (positions[j] as number) - x,
      by = (positions[j + 1] as number) - y,
      bz = (positions[j + 2] as number) - z,
      cx = (positions[l] as number) - x,
      cy = (positions[l + 1] as number) - y,
      cz = (positions[l + 2] as number) - z
    const a = Math.sqrt(ax * ax + ay * ay + az * az),
      b = Math.sqrt(bx * bx + by * by + bz * bz),
      c = Math.sqrt(cx * cx + cy * cy + cz * cz)
    const spanned = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)
    const below = a * b * c + (ax * bx + ay * by + az * bz) * c + (bx * cx + by * cy + bz * cz) * a + (cx * ax + cy * ay + cz * az) * b
    sum += Math.atan2(spanned, below)
  }
  return sum / (2 * Math.PI)
}

/** Whether a place lies inside a closed mesh, whichever way its triangles face. */
export const insideOf = (mesh: TriangleMesh, place: Vector): boolean => Math.abs(winding(mesh, place)) > 0.5
