import { type AlignedBox, type BoxBuild, isGap, type Model, modulesAllOneWay, type PackMix, type PackModule } from '@ampwright/engine'
import { Refusal } from '../refusal.ts'
import type { Wanting } from './wanted.ts'

/** What the search is told of a second form of module, the main one by the energy of its cell groups, and what a room is worth for both, in cell groups. */
export type Mixed = {
  readonly mix: PackMix
  readonly module: PackModule
  /** Mass of one module of the other form as it is weighed [kg]. */
  readonly bare: number
  readonly worth: (room: AlignedBox) => number
}

/**
 * The second form of module, where the file has one of the same cells: strings keep their number of cell groups, whatever they are made of. Throws a Refusal where the strings are said
 * to hold modules of other cells.
 */
export function mixOf({ pack, fit }: Model, w: Wanting, module: PackModule, series: number, box: BoxBuild): Mixed | undefined {
  const { otherModule: o } = pack
  if (!o.given) return undefined
  const inSeries = isGap(o.inSeries) ? 0 : o.inSeries.value
  if (w.word(o.sameCells) === 'no') {
    if (inSeries === 0) return undefined
    throw new Refusal(
      'The strings hold modules of other cells (pack.other-module.same-cells: no). Such are never arranged together: set pack.other-module.in-series to 0.',
    )
  }
  const groups = { main: w.number(pack.module.cellsInSeries), other: w.number(o.cellsInSeries) },
    string = series * groups.main + inSeries * groups.other,
    bare = w.number(o.mass)
  // The energy of the whole pack was shared out over the modules in series of the main form alone.
  const ofGroup = (module.energy * series) / string,
    main = { ...module, energy: ofGroup * groups.main }
  const other: PackModule = {
    ...module,
    size: [w.number(o.length), w.number(o.width), w.number(o.height)],
    mass: bare * (1 + w.number(fit.packing.hardware)),
    energy: ofGroup * groups.other,
  }
  return {
    mix: { other, groups: { ...groups, string }, have: isGap(o.have) ? Infinity : o.have.value },
    module: main,
    bare,
    worth: room => Math.max(modulesAllOneWay(room, main, box) * groups.main, modulesAllOneWay(room, other, box) * groups.other),
  }
}
