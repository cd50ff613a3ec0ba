import type { Model } from '../../model/model.ts'
import { type Field, isGap, standard, type Value } from '../../working/value.ts'

/** How many modules of the other form each string holds, and what sums need of one; null where all modules are alike. */
export const othersInStrings = ({ pack: { otherModule: o } }: Model) =>
  isGap(o.inSeries) || o.inSeries.value === 0 ? null : { inSeries: o.inSeries, cells: o.cellsInSeries, mass: o.mass }

/** A box that says nothing of the other form holds none of it. */
export const NO_OTHERS = {
  ...standard('no-other-modules', 'no module of the other form', 'n_o', 0, '1', { work: 'definition', place: 'nothing' }),
  shows: 'count',
} as const

/** Modules of the other form in a box. */
export const othersIn = (otherModules: Field): Value => (isGap(otherModules) ? NO_OTHERS : otherModules)

/** Whether the other form matters to sums over boxes: a string or a box says that it holds some. */
export const twoForms = (m: Model): boolean => othersInStrings(m) !== null || Object.values(m.pack.boxes).some(b => !isGap(b.otherModules))
