import { readQuantity } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { part, parts } from './catalogue.ts'
import { filling, priceField } from './price-field.ts'

describe('the price of a part as a field', () => {
  it('spans the band of the record, for every part sold by the piece', () => {
    const priced = parts.filter(p => p.price && p.price.per === undefined)
    expect(priced.length).toBeGreaterThan(100)
    for (const p of priced) {
      const read = readQuantity(priceField(p)?.text ?? '', 'money')
      if (!read.ok || !p.price) throw new Error(p.id)
      const { value, half = 0 } = read.quantity
      expect([value - half, value + half], p.id).toEqual([p.price.low, p.price.high])
    }
  })
  it('is left out where the price is not that of a piece, or there is none', () => {
    for (const p of parts.filter(p => !p.price || p.price.per !== undefined)) {
      expect(priceField(p)).toBeUndefined()
      expect(filling(p)).toBe(p.fields)
    }
  })
  it('comes beside the other fields', () => {
    const motor = part('motor-pm-100kw@1')
    if (!motor) throw new Error('no such part')
    expect(Object.keys(filling(motor))).toEqual([...Object.keys(motor.fields), 'price'])
  })
})
