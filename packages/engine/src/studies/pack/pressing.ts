import { facePressure } from '../../battery/compression.ts'
import { type Figure, isGap } from '../../working/value.ts'
import { study } from '../study.ts'

/** Pressure of the fixture on bare cells; none where no fixture presses them. */
export const pressing = study({
  id: 'pressing',
  stage: 'pack',
  asks: 'How hard does the fixture press the cells?',
  reads: m => {
    const { compression, pressingForce: force } = m.pack,
      { length, width, height } = m.pack.module
    return { cells: !isGap(compression) && compression.value === 'fixture' ? { force, length, width, height } : null }
  },
  answer: ({ cells }, make): { pressure?: Figure } => (cells ? { pressure: make.work('pressure', facePressure, cells) } : {}),
})
