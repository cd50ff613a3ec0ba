import type { Assessment } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, type Car, textOf } from './cars.ts'

const kept = new Map<string, Assessment>()
function assessed(car: Car): Assessment {
  const a = kept.get(car) ?? assessText(textOf(car)).assessment
  kept.set(car, a)
  return a
}

describe('the curves of a motor', () => {
  const series = (name: string): Float64Array => {
    const found = assessed('lapwing')
      .traces.get('motor.curves@main')
      ?.series.find(s => s.name === name)
    if (!found) throw new Error(`no series ${name}`)
    return found.values
  }
  it('start at the torque of the sheet and hold its power at top speed: 250 N·m, 100 kW, and 110 N·m for ever', () => {
    expect(series('peak torque')[0]).toBe(250)
    expect(series('peak power').at(-1)).toBeCloseTo(100e3, 6)
    expect(series('continuous torque')[0]).toBe(110)
    expect(series('peak power')[0]).toBe(0)
  })
  it('have power that is torque times speed everywhere, and never more for ever than for a while', () => {
    const trace = assessed('otter').traces.get('motor.curves@front'),
      of = (name: string): Float64Array => trace?.series.find(s => s.name === name)?.values ?? new Float64Array()
    trace?.axis.values.forEach((speed, i) => {
      expect(of('peak power')[i]).toBeCloseTo((of('peak torque')[i] as number) * speed, 6)
      expect(of('continuous torque')[i]).toBeLessThanOrEqual(of('peak torque')[i] as number)
    })
    expect(trace?.axis.values).toHaveLength(121)
  })
  it('are there without a continuous rating, for a while only', () => {
    const text = textOf('lapwing').replace(/^ *continuous-(torque|power):.*\n/gm, ''),
      trace = assessText(text).assessment.traces.get('motor.curves@main')
    expect(trace?.series.map(s => s.name)).toEqual(['peak torque', 'peak power'])
  })
})

describe('the voltage of the pack and of every part on it', () => {
  it('stands in one table for all four cars, the pack first and no part of it twice', () => {
    for (const car of CARS) {
      const rows = assessed(car).tables.get('voltage-window.parts')?.rows ?? []
      expect(rows[0]?.name).toBe('pack')
      expect(new Set(rows.map(r => r.name)).size).toBe(rows.length)
      expect(rows.length).toBeGreaterThan(3)
    }
  })
  it('names a part whose window is not known, with its cells left open', () => {
    const rows = assessText(textOf('lapwing').replace(/^ *(lowest|highest)-voltage:.*\n/gm, '')).assessment.tables.get(
        'voltage-window.parts',
      )?.rows,
      inverter = rows?.find(r => r.name === 'inverter')
    expect(inverter).toBeDefined()
    expect([inverter?.cells['lowest'], inverter?.cells['highest']]).toEqual([undefined, undefined])
  })
})
