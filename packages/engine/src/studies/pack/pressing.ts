import { facePressure } from '../../battery/compression.ts'
import type { Model } from '../../model/model.ts'
import { type Figure, isGap } from '../../working/value.ts'
import { study } from '../study.ts'

/** One cell after the other has no housing of its own; of several side by side in a module the face is not known. */
export function bareCells({ pack }: Model): boolean {
  const { cellsInSeries: series, cellsInParallel: parallel } = pack.module
  return !isGap(series) && !isGap(parallel) && series.value <= 1 && parallel.value <= 1
}

/** Pressure of the fixture on bare cells; nothing to say of modules in their housing. */
export const pressing = study({
  id: 'pressing',
  stage: 'pack',
  asks: 'How hard does the fixture press the cells?',
  reads: m => {
    const { compression, module, pressingForce: force } = m.pack,
      { length, width, height } = module
    return { press: bareCells(m) && !isGap(compression) && compression.value === 'fixture' ? { force, length, width, height } : null }
  },
  answer: ({ press }, make): { pressure: Figure | null } => ({ pressure: press && make.work('pressure', facePressure, press) }),
})
