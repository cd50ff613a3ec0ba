/**
 * Whether a triangle (nine numbers) and a cube about a place, half an edge to each side, share a place; touching counts.
 *
 * They are apart where along one of thirteen directions they are: the axes, the triangle's normal, and each axis crossed with each of its edges.
 * Source: T. Akenine-Möller, Fast 3D triangle-box overlap testing, J. Graphics Tools 6 (2001) 29–33 (from memory).
 */
export function touchesCube(t: Float64Array, cx: number, cy: number, cz: number, half: number): boolean {
  const ax = (t[0] as number) - cx,
    ay = (t[1] as number) - cy,
    az = (t[2] as number) - cz,
    bx = (t[3] as number) - cx,
    by = (t[4] as number) - cy,
    bz = (t[5] as number) - cz,
    dx = (t[6] as number) - cx,
    dy = (t[7] as number) - cy,
    dz = (t[8] as number) - cz
  if (Math.min(ax, bx, dx) > half || Math.max(ax, bx, dx) < -half) return false
  if (Math.min(ay, by, dy) > half || Math.max(ay, by, dy) < -half) return false
  if (Math.min(az, bz, dz) > half || Math.max(az, bz, dz) < -half) return false
  const [ux, uy, uz] = [bx - ax, by - ay, bz - az],
    [vx, vy, vz] = [dx - bx, dy - by, dz - bz],
    [wx, wy, wz] = [ax - dx, ay - dy, az - dz]
  const nx = uy * vz - uz * vy,
    ny = uz * vx - ux * vz,
    nz = ux * vy - uy * vx
  if (Math.abs(nx * ax + ny * ay + nz * az) > half * (Math.abs(nx) + Math.abs(ny) + Math.abs(nz))) return false
  return !(
    apart(half, uz, uy, uy * az - uz * ay, uy * dz - uz * dy) ||
    apart(half, uz, ux, uz * ax - ux * az, uz * dx - ux * dz) ||
    apart(half, uy, ux, ux * ay - uy * ax, ux * dy - uy * dx) ||
    apart(half, vz, vy, vy * bz - vz * by, vy * az - vz * ay) ||
    apart(half, vz, vx, vz * bx - vx * bz, vz * ax - vx * az) ||
    apart(half, vy, vx, vx * by - vy * bx, vx * ay - vy * ax) ||
    apart(half, wz, wy, wy * dz - wz * dy, wy * bz - wz * by) ||
    apart(half, wz, wx, wz * dx - wx * dz, wz * bx - wx * bz) ||
    apart(half, wy, wx, wx * dy - wy * dx, wx * by - wy * bx)
  )
}

/** Whether along (p, q) in a plane of two axes the shadows of an edge and of the corner opposite it miss that of the cube. */
function apart(half: number, p: number, q: number, onEdge: number, opposite: number): boolean {
  const reach = half * (Math.abs(p) + Math.abs(q))
  return Math.min(onEdge, opposite) > reach || Math.max(onEdge, opposite) < -reach
}
