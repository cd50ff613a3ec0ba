import { cellCount } from '../../battery/pack-arithmetic.ts'
import type { Field, Figure, Value } from '../../working/value.ts'
import { isGap } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import { othersInStrings } from './other-module.ts'

/** Modules of one form the pack needs, and how many there are. */
export type Stock = { readonly wanted: Figure; readonly have: Value }

/** Modules needed against those there are, of each form the file says it of; nothing where it does not. */
export const moduleStock = study({
  id: 'module-stock',
  stage: 'pack',
  asks: 'Are there as many modules as the pack needs?',
  reads: m => {
    const { module, otherModule, modulesInSeries, strings } = m.pack,
      others = othersInStrings(m)
    const of = (have: Field, inSeries: Field) => (isGap(have) ? null : maybe({ have, inSeries, strings }))
    return { main: of(module.have, modulesInSeries), other: others && of(otherModule.have, others.inSeries) }
  },
  answer: ({ main, other }, make): { readonly main: Stock | Gaps | null; readonly other: Stock | Gaps | null } => {
    const stock = (known: typeof main, label: string, item?: string): Stock | Gaps | null =>
      known === null || isGaps(known)
        ? known
        : {
            wanted: make.work(
              'wanted',
              cellCount,
              { modules: known.strings, cells: known.inSeries },
              { label, symbol: 'n', ...(item === undefined ? {} : { item }) },
            ),
            have: known.have,
          }
    return {
      main: stock(main, 'Modules the pack takes'),
      other: stock(other, 'Modules of the other form the pack takes', 'other form'),
    }
  },
})
