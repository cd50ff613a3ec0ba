import { expect, test } from 'vitest'
import { Growing } from './growing.ts'

test('numbers collected one by one come out in order, and later ones do not disturb a copy taken', () => {
  const growing = new Growing()
  for (let i = 0; i < 1000; i++) growing.push(i / 3)
  const taken = growing.values()
  growing.push(7)
  expect(taken).toEqual(Float64Array.from({ length: 1000 }, (_, i) => i / 3))
  expect(growing.length).toBe(1001)
})
