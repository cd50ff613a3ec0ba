import { describe, expect, it } from 'vitest'
import { CARS, conversionOf, textOf } from '../../../../tests/cars.ts'
import { joined, parted } from './origin.ts'

describe('how a value is known', () => {
  it.each(CARS)('is told apart from the value and put back as typed, for every fact of %s', car => {
    for (const { text } of conversionOf(textOf(car)).facts as readonly { text?: string }[]) {
      if (text === undefined) continue
      const { value, how, note } = parted(text)
      expect(joined(value, how, note).replaceAll(/\s+/g, ' ')).toBe(text.replaceAll(/\s+/g, ' '))
    }
  })
  it('is nothing where nobody said', () => expect(parted('45 l')).toEqual({ value: '45 l' }))
  it('keeps its note', () =>
    expect(parted('251 ± 1 kg (measured, wheel scales)')).toEqual({ value: '251 ± 1 kg', how: 'measured', note: 'wheel scales' }))
})
