import type { NearestPair } from './nearest-pair.ts'

/** Flat coordinates, three for each place; an index into them names a place by its first number. */
export type Flat = Float64Array

const hold = (t: number): number => (t > 0 ? (t < 1 ? t : 1) : 0)

/**
 * Offers the nearest points of two straight pieces, from place `i` to `j` of `a` and from `k` to `l` of `b`.
 *
 * Nearest are two inner points, or an end of one piece and a point of the other: all five are tried, so that pieces near to parallel, where the inner
 * solution drowns in rounding, come out right too.
 */
export function pieceToPiece(best: NearestPair, a: Flat, i: number, j: number, b: Flat, k: number, l: number): void {
  const [px, py, pz, qx, qy, qz] = [a[i], a[i + 1], a[i + 2], b[k], b[k + 1], b[k + 2]] as [number, number, number, number, number, number]
  const ux = (a[j] as number) - px,
    uy = (a[j + 1] as number) - py,
    uz = (a[j + 2] as number) - pz,
    vx = (b[l] as number) - qx,
    vy = (b[l + 1] as number) - qy,
    vz = (b[l + 2] as number) - qz,
    rx = px - qx,
    ry = py - qy,
    rz = pz - qz
  const uu = ux * ux + uy * uy + uz * uz,
    uv = ux * vx + uy * vy + uz * vz,
    vv = vx * vx + vy * vy + vz * vz,
    ur = ux * rx + uy * ry + uz * rz,
    vr = vx * rx + vy * ry + vz * rz
  const across = uu * vv - uv * uv
  if (across > 0) {
    const s = (uv * vr - vv * ur) / across,
      t = (uu * vr - uv * ur) / across
    if (s > 0 && s < 1 && t > 0 && t < 1) best.offer(px + s * ux, py + s * uy, pz + s * uz, qx + t * vx, qy + t * vy, qz + t * vz)
  }
  // Both ends of the first piece with the place of the second nearest to them, then the other way about.
  const t0 = vv > 0 ? hold(vr / vv) : 0,
    t1 = vv > 0 ? hold((vr + uv) / vv) : 0,
    s0 = uu > 0 ? hold(-ur / uu) : 0,
    s1 = uu > 0 ? hold((uv - ur) / uu) : 0
  best.offer(px, py, pz, qx + t0 * vx, qy + t0 * vy, qz + t0 * vz)
  best.offer(px + ux, py + uy, pz + uz, qx + t1 * vx, qy + t1 * vy, qz + t1 * vz)
  best.offer(px + s0 * ux, py + s0 * uy, pz + s0 * uz, qx, qy, qz)
  best.offer(px + s1 * ux, py + s1 * uy, pz + s1 * uz, qx + vx, qy + vy, qz + vz)
}

/**
 * Offers the point of a triangle (nine numbers from `at` on) under a place, where there is one; its edges are for others. `swapped` says that the triangle is
 * the first of the two shapes.
 */
export function placeToFace(best: NearestPair, x: number, y: number, z: number, face: Flat, at: number, swapped: boolean): void {
  const [ax, ay, az] = [face[at], face[at + 1], face[at + 2]] as [number, number, number]
  const ux = (face[at + 3] as number) - ax,
    uy = (face[at + 4] as number) - ay,
    uz = (face[at + 5] as number) - az,
    vx = (face[at + 6] as number) - ax,
    vy = (face[at + 7] as number) - ay,
    vz = (face[at + 8] as number) - az,
    wx = x - ax,
    wy = y - ay,
    wz = z - az
  const uu = ux * ux + uy * uy + uz * uz,
    uv = ux * vx + uy * vy + uz * vz,
    vv = vx * vx + vy * vy + vz * vz,
    uw = ux * wx + uy * wy + uz * wz,
    vw = vx * wx + vy * wy + vz * wz
  const across = uu * vv - uv * uv
  if (!(across > 0)) return
  const s = (vv * uw - uv * vw) / across,
    t = (uu * vw - uv * uw) / across
  if (s < 0 || t < 0 || s + t > 1) return
  const fx = ax + s * ux + t * vx,
    fy = ay + s * uy + t * vy,
    fz = az + s * uz + t * vz
  if (swapped) best.offer(fx, fy, fz, x, y, z)
  else best.offer(x, y, z, fx, fy, fz)
}

/** Tells where a piece goes through the inside of a triangle, if it does. One that only touches it comes out at distance 0 by other means. */
export function throughFace(best: NearestPair, a: Flat, i: number, j: number, face: Flat, at: number): void {
  const [ax, ay, az] = [face[at], face[at + 1], face[at + 2]] as [number, number, number]
  const ux = (face[at + 3] as number) - ax,
    uy = (face[at + 4] as number) - ay,
    uz = (face[at + 5] as number) - az,
    vx = (face[at + 6] as number) - ax,
    vy = (face[at + 7] as number) - ay,
    vz = (face[at + 8] as number) - az
  const nx = uy * vz - uz * vy,
    ny = uz * vx - ux * vz,
    nz = ux * vy - uy * vx
  const px = (a[i] as number) - ax,
    py = (a[i + 1] as number) - ay,
    pz = (a[i + 2] as number) - az,
    qx = (a[j] as number) - ax,
    qy = (a[j + 1] as number) - ay,
    qz = (a[j + 2] as number) - az
  const from = px * nx + py * ny + pz * nz,
    to = qx * nx + qy * ny + qz * nz
  if (!((from > 0 && to < 0) || (from < 0 && to > 0))) return
  const k = from / (from - to),
    x = px + k * (qx - px),
    y = py + k * (qy - py),
    z = pz + k * (qz - pz)
  // On the same side of all three edges, seen along the normal.
  if (nx * (uy * z - uz * y) + ny * (uz * x - ux * z) + nz * (ux * y - uy * x) < 0) return
  if (nx * (y * vz - z * vy) + ny * (z * vx - x * vz) + nz * (x * vy - y * vx) < 0) return
  const [ex, ey, ez, wx, wy, wz] = [vx - ux, vy - uy, vz - uz, x - ux, y - uy, z - uz]
  if (nx * (ey * wz - ez * wy) + ny * (ez * wx - ex * wz) + nz * (ex * wy - ey * wx) < 0) return
  best.meet(ax + x, ay + y, az + z)
}
