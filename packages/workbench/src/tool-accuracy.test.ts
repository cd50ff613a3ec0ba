import { fieldAt } from '@ampwright/conversion'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CARS, conversionOf, textOf } from '../../../tests/cars.ts'
import { runs } from '../../../tests/counts.ts'
import { halfByTool } from './tool-accuracy.ts'

describe('the accuracy a tool states', () => {
  it.each([
    ['± 3 mm', 2.31, 'length', 0.003],
    ['± 0.5 kg', 128, 'mass', 0.5],
    ['± 1 l', 0.02, 'volume', 0.001],
    ['± 5 %', 0.63, 'area', 0.0315],
    ['± 5 %', 0.75, 'ratio', 0.0375],
    ['± 1 %', 0.91, 'share', 0.01],
    ['± 1 °C, ± 2 hPa', 285, 'temperature', 1],
    ['± 1 °C, ± 2 hPa', 100_900, 'pressure', 200],
    ['± 0.1 N·m', 5, 'torque', 0.1],
  ] as const)('%s of %s (%s) leaves ± %s', (accuracy, value, kind, half) => {
    expect(halfByTool(accuracy, value, kind)).toBeCloseTo(half, 12)
  })
  it('counts the coarsest of several tools', () => {
    expect(halfByTool('± 1 kg (scales), ± 10 kg (weighbridge)', 250, 'mass')).toBe(10)
  })
  it.each([
    ['as stated', 'mass'],
    ['exact', 'mass'],
    ['seen or not', 'mass'],
    ['± 5 % on road load', 'area'],
    ['± 3 mm', 'share'],
    ['± 20 mm', 'mass'],
    ['', 'mass'],
  ] as const)('«%s» says no number for a field of kind %s', (accuracy, kind) => {
    expect(halfByTool(accuracy, 1, kind)).toBeUndefined()
  })
  it('is the same for a value and its opposite, and grows with the value only where it is a part of it', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e4, noNaN: true }), fc.integer({ min: 1, max: 50 }), (value, n) => {
        expect(halfByTool(`± ${n} %`, -value, 'mass')).toBe(halfByTool(`± ${n} %`, value, 'mass'))
        expect(halfByTool(`± ${n} kg`, value, 'mass')).toBe(n)
      }),
      { numRuns: runs(400) },
    )
  })
  it.each(CARS)('is read as a number for many fields of %s, and never as less than nothing', car => {
    const { facts } = conversionOf(textOf(car))
    const halves = (facts as readonly { path: string; value: unknown }[]).flatMap(f => {
      const field = fieldAt(f.path)
      return field?.is === 'quantity' && field.measure && typeof f.value === 'number'
        ? [halfByTool(field.measure.accuracy, f.value, field.kind)]
        : []
    })
    expect(halves.filter(h => h !== undefined).length).toBeGreaterThan(10)
    expect(halves.filter(h => h !== undefined && !(h >= 0))).toEqual([])
  })
})
