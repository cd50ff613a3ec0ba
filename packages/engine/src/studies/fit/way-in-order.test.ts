import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { orderOf } from './way-in-order.ts'

describe('the order of going in', () => {
  it('lets a motor in before the inverter over it, and that before the cover over both', () => {
    const { place, circles } = orderOf({ cover: [], inverter: ['cover'], motor: ['inverter', 'cover'] })
    expect([...place].sort((a, b) => a[1] - b[1])).toEqual([
      ['motor', 1],
      ['inverter', 2],
      ['cover', 3],
    ])
    expect(circles.size).toBe(0)
  })
  it('finds two that stand in each other’s way, and gives what waits for them no number', () => {
    const { place, circles } = orderOf({ one: ['other'], other: ['one', 'third'], third: [], alone: [] })
    expect([...circles].sort()).toEqual(['one', 'other'])
    expect([...place.keys()]).toEqual(['alone'])
  })
  it('should hold every wish at once, or name a circle', () => {
    const names = ['a', 'b', 'c', 'd', 'e']
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.constantFrom(...names), fc.constantFrom(...names)), { maxLength: 8 }), pairs => {
        const wishes = Object.fromEntries(
            names.map(n => [n, pairs.filter(([one, other]) => one === n && other !== n).map(([, other]) => other)]),
          ),
          { place, circles } = orderOf(wishes)
        expect(place.size === names.length).toBe(circles.size === 0)
        for (const [one, others] of Object.entries(wishes))
          for (const other of others) if (place.has(other)) expect(place.get(one)).toBeLessThan(place.get(other) as number)
      }),
    )
  })
})
