import { seriesVoltage } from '../../battery/pack-arithmetic.ts'
import type { Figure } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'

/** Voltage of one module alone, full: what the hands at the bench meet. */
export const moduleVoltage = study({
  id: 'module-voltage',
  stage: 'pack',
  asks: 'How much voltage has one module by itself?',
  reads: m => ({
    cells: m.pack.module.cellsInSeries,
    others: m.pack.otherModule.given ? maybe(m.pack.otherModule.cellsInSeries) : null,
    each: m.pack.cellHighest,
  }),
  answer: ({ cells, others, each }, make): { full: Figure; other: Figure | Gaps | null } => ({
    full: make.work('full', seriesVoltage, { cells, each }, { label: 'One module, full', symbol: 'U_mod' }),
    other:
      others === null || isGaps(others)
        ? others
        : make.work(
            'full',
            seriesVoltage,
            { cells: others, each },
            { item: 'other form', label: 'One module of the other form, full', symbol: 'U_mod' },
          ),
  }),
})
