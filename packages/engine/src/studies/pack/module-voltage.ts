import { seriesVoltage } from '../../battery/pack-arithmetic.ts'
import type { Figure } from '../../working/value.ts'
import { study } from '../study.ts'

/** Voltage of one module alone, full: what the hands at the bench meet. */
export const moduleVoltage = study({
  id: 'module-voltage',
  stage: 'pack',
  asks: 'How much voltage has one module by itself?',
  reads: m => ({ cells: m.pack.module.cellsInSeries, each: m.pack.cellHighest }),
  answer: ({ cells, each }, make): { full: Figure } => ({
    full: make.work('full', seriesVoltage, { cells, each }, { label: 'One module, full', symbol: 'U_mod' }),
  }),
})
