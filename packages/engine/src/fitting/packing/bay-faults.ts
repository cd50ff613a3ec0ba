import type { AlignedBox } from '../box.ts'
import { type VoxelField, voxelAt } from '../voxel-field.ts'
import type { BayModule, PlacedModule } from './bay-module.ts'

/** What sums of binary fractions may be off by [m]: a hundredth of a micrometre. */
const HAIR = 1e-8

/**
 * What is wrong with modules placed in a field, worked out from their coordinates alone: whether every cube a body or a strip reaches into is free, two modules keep
 * their clearance, no body stands in a strip, and each has the sides of the module. Empty when nothing is.
 */
export function bayFaults(field: VoxelField, module: BayModule, placed: readonly PlacedModule[]): string[] {
  const out: string[] = [],
    sides = [...module.size].sort((a, b) => a - b)
  placed.forEach(({ box, strip }, n) => {
    const found = box.high.map((h, i) => h - (box.low[i] as number)).sort((a, b) => a - b)
    if (found.some((s, i) => Math.abs(s - (sides[i] as number)) > HAIR)) out.push(`module ${n} has other sides`)
    if (!isFree(field, box)) out.push(`module ${n} stands outside the free space`)
    if (strip && !isFree(field, strip)) out.push(`the service strip of module ${n} is not free`)
    if (module.service && module.service.strip > 0 && !strip) out.push(`module ${n} has no service strip`)
    placed.forEach((other, m) => {
      if (m < n && apart(box, other.box) < module.clearance - HAIR) out.push(`modules ${m} and ${n} stand too close`)
      if (m !== n && strip && apart(strip, other.box) < -HAIR) out.push(`module ${m} stands in the service strip of module ${n}`)
    })
  })
  return out
}

/** The widest gap of two boxes along an axis: negative where they overlap. */
export const apart = (a: AlignedBox, b: AlignedBox): number =>
  Math.max(...a.low.map((l, i) => Math.max(l - (b.high[i] as number), (b.low[i] as number) - (a.high[i] as number))))

/** Whether all cubes a box reaches into are free. */
function isFree(field: VoxelField, box: AlignedBox): boolean {
  const from = box.low.map((c, i) => Math.floor((c + HAIR - (field.low[i] as number)) / field.edge)) as [number, number, number],
    to = box.high.map((c, i) => Math.ceil((c - HAIR - (field.low[i] as number)) / field.edge)) as [number, number, number]
  if (from.some(c => c < 0) || to.some((c, i) => c > (field.counts[i] as number))) return false
  for (let z = from[2]; z < to[2]; z++)
    for (let y = from[1]; y < to[1]; y++) for (let x = from[0]; x < to[0]; x++) if (!field.free[voxelAt(field, x, y, z)]) return false
  return true
}
