import { type BayModule, isGap, type Model, type TriangleMesh, type VoxelField } from '@ampwright/engine'
import { type ScanPack, scanPack } from '@ampwright/geometry'
import { Refusal } from '@ampwright/workbench'
import { load } from './load.ts'
import type { ScanOptions } from './scan.ts'
import { lengthFrom } from './scan-words.ts'

/** Packs modules of a conversion into the free space of a scan; nothing where that is not asked. */
export function packed(
  o: ScanOptions,
  space: { readonly mesh: TriangleMesh; readonly field: VoxelField } | undefined,
): ScanPack | undefined {
  if (o.pack === undefined) return undefined
  if (!space) throw new Refusal("scan: --pack: the free space is not known; accepted --from with it, such as --from '300,0,600 mm'")
  const asked = { module: moduleOf(load(o.pack, false).model, o), seed: whole('--seed', o.seed, 0), steps: whole('--steps', o.steps, 1) }
  try {
    return scanPack(space.mesh, space.field, asked)
  } catch (e) {
    if (e instanceof RangeError) throw new Refusal(`scan: --pack: ${e.message}`)
    throw e
  }
}

/** The module of a conversion as a bay takes it. */
function moduleOf(m: Model, o: ScanOptions): BayModule {
  const { length, width, height } = m.pack.module,
    sides = [length, width, height].map(f => {
      if (isGap(f)) throw new Refusal(`scan: --pack ${o.pack}: ${f.path} is not stated: ${f.label}`)
      return f.value
    }) as [number, number, number]
  return { size: sides, clearance: lengthFrom('--air', o.air, true), down: o.down }
}

function whole(option: string, text: string, least: number): number {
  const n = Number(text)
  if (!Number.isSafeInteger(n) || n < least)
    throw new Refusal(`scan: ${option} ${text}: found ${text}; accepted a whole number from ${least} on`)
  return n
}
