import { facePressure } from '../../battery/compression.ts'
import type { Figure } from '../../working/value.ts'
import { study } from '../study.ts'

/** Pressure of the fixture on bare cells. */
export const pressing = study({
  id: 'pressing',
  stage: 'pack',
  asks: 'How hard does the fixture press the cells?',
  reads: m => {
    const { length, width, height } = m.pack.module
    return { force: m.pack.pressingForce, length, width, height }
  },
  answer: (k, make): { pressure: Figure } => ({ pressure: make.work('pressure', facePressure, k) }),
})
