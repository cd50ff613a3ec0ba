import type { AlignedBox } from '../box.ts'
import { type BayModule, turnsOfModule } from './bay-module.ts'
import { marginsOf } from './pack-interior.ts'
import { BOX_SIDES, type BoxBuild } from './pack-types.ts'

const HAIR = 1e-9

/** Modules that go into a battery box as large as a room when all stand the same way round: quick to tell, and seldom far from the most. Room before a service face counts for each module. */
export function modulesAllOneWay(room: AlignedBox, module: BayModule, box: BoxBuild): number {
  let most = 0
  for (const busbars of box.busbar > 0 ? BOX_SIDES : BOX_SIDES.slice(0, 1)) {
    const { low, high } = marginsOf(box, busbars),
      inner = room.high.map((c, i) => c - (room.low[i] as number) - (low[i] as number) - (high[i] as number))
    for (const { sides, looks } of turnsOfModule(module)) {
      const strip = (axis: number): number => (looks?.axis === axis ? (module.service?.strip ?? 0) : 0)
      const count = sides.reduce((n, side, i) => {
        const pitch = side + Math.max(module.clearance, strip(i)),
          free = (inner[i] as number) - strip(i) + pitch - side
        return n * Math.max(0, Math.floor(free / pitch + HAIR))
      }, 1)
      most = Math.max(most, count)
    }
  }
  return most
}
