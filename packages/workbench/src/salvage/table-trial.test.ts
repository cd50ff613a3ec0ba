import { describe, expect, it } from 'vitest'
import { textOf } from '../../../../tests/cars.ts'
import { Desk } from '../desk/desk.ts'
import { tableTrial } from './table-trial.ts'

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)

describe('a tester’s table tried on a conversion', () => {
  const desk = new Desk(textOf('lapwing'))
  it('shows value by value what stands and what would be, for known modules and new ones', () => {
    const trial = tableTrial(desk, bytes('serial\tcapacity [Ah]\nPM-40211\t107,5\nNEW-1\t108\nPM-40248\t108,9\n'))
    expect(trial.changes).toEqual([
      {
        path: 'pack.salvage.m01.capacity',
        label: 'Measured capacity',
        was: '109.3 ± 0.6 Ah (measured)',
        now: '107.5 Ah (measured, module tester)',
      },
      { path: 'pack.salvage.m17.serial', label: 'Serial number', was: null, now: 'NEW-1' },
      { path: 'pack.salvage.m17.capacity', label: 'Measured capacity', was: null, now: '108 Ah (measured, module tester)' },
    ])
    expect(desk.source).toBe(textOf('lapwing'))
  })
  it('names a reading nothing on a bench can show', () => {
    const trial = tableTrial(desk, bytes('serial,capacity [Ah]\nNEW-1,-3\n'))
    expect(trial.edits).toEqual([])
    expect(trial.faults[0]).toMatchObject({ column: 'capacity of NEW-1', found: expect.stringContaining('-3') })
  })
})
