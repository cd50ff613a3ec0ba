import { describe, expect, it } from 'vitest'
import { holderOf, isSameCar, type ShelfCar } from './reservation.ts'

const car = (id: string, name: string, of?: string, deleted = false): ShelfCar => ({ id, name, of, deleted })
const CARS = [
  car('a', 'Lapwing'),
  car('b', 'Lapwing', 'a'),
  car('c', 'Wren'),
  car('d', 'Wren'),
  car('e', 'Otter', undefined, true),
  car('f', ''),
]

describe('a reservation', () => {
  it('means the conversion it names, whatever the car is called now', () => {
    expect(holderOf({ car: 'Old name', conversion: 'c' }, CARS)).toEqual({ name: 'Wren', car: CARS[2] })
  })
  it('by name means the one car of that name, of variants the one they are variants of', () => {
    expect(holderOf({ car: 'Lapwing' }, CARS).car?.id).toBe('a')
  })
  it('by a name two cars share, or none has, means no car that can be told', () => {
    expect(holderOf({ car: 'Wren' }, CARS)).toEqual({ name: 'Wren' })
    expect(holderOf({ car: 'Badger' }, CARS)).toEqual({ name: 'Badger' })
  })
  it('for a car that was deleted or taken out keeps its name', () => {
    expect(holderOf({ conversion: 'e' }, CARS)).toEqual({ name: 'Otter' })
    expect(holderOf({ car: 'Gone', conversion: 'x' }, CARS)).toEqual({ name: 'Gone' })
    expect(holderOf({ car: 'Otter' }, CARS)).toEqual({ name: 'Otter' })
  })
  it('for a car without a name still says which', () => {
    expect(holderOf({ conversion: 'f' }, CARS).name).toBe('f')
  })
})

it('variants of one conversion are one car, others are not', () => {
  const more = [...CARS, car('g', 'Lapwing', 'b'), car('loop', 'x', 'loop')]
  expect([isSameCar('a', 'b', more), isSameCar('g', 'a', more), isSameCar('a', 'c', more)]).toEqual([true, true, false])
  expect(isSameCar('loop', 'a', more)).toBe(false)
})
