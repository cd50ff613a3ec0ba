import type { AlignedBox } from '../box.ts'
import { apart, bayFaults } from './bay-faults.ts'
import type { PlacedModule } from './bay-module.ts'
import type { Interior } from './pack-interior.ts'
import type { PackModule } from './pack-types.ts'

const HAIR = 1e-8

/** What is wrong with modules of two forms placed in the room of one box, worked out from their coordinates alone. Empty when nothing is. */
export function mixedFaults(
  { field, low, high }: Interior,
  main: PackModule,
  other: PackModule,
  placed: readonly PlacedModule[],
): string[] {
  const out: string[] = [],
    { clearance, service } = main
  const forms = [
    { module: main, modules: placed.filter(p => !p.other) },
    { module: other, modules: placed.filter(p => p.other) },
  ]
  const inside = ({ low: from, high: to }: AlignedBox): boolean =>
    from.every((c, i) => c >= ((low ?? from)[i] as number) - HAIR) && to.every((c, i) => c <= ((high ?? to)[i] as number) + HAIR)
  for (const { module, modules } of forms) {
    if (!low || !high) out.push(...bayFaults(field, module, modules))
    const sides = [...module.size].sort((a, b) => a - b)
    modules.forEach(({ box, strip }, n) => {
      const found = box.high.map((h, i) => h - (box.low[i] as number)).sort((a, b) => a - b)
      if (found.some((s, i) => Math.abs(s - (sides[i] as number)) > HAIR)) out.push(`module ${n} has other sides`)
      if (!inside(box)) out.push(`module ${n} stands outside its box`)
      if (strip && !inside(strip)) out.push(`the service strip of module ${n} leaves its box`)
      if (service && service.strip > 0 && !strip) out.push(`module ${n} has no service strip`)
    })
  }
  placed.forEach(({ box, strip }, n) => {
    placed.forEach((o, m) => {
      if (m < n && apart(box, o.box) < clearance - HAIR) out.push(`modules ${m} and ${n} stand too close`)
      if (m !== n && strip && apart(strip, o.box) < -HAIR) out.push(`module ${m} stands in the service strip of module ${n}`)
    })
  })
  return out
}
