import type { Reserved } from './piece.ts'

/** A car a piece can be kept for: a conversion that is there, or one that was deleted. `of` is the conversion it is a variant of. */
export type ShelfCar = { readonly id: string; readonly name: string; readonly of?: string | undefined; readonly deleted: boolean }
/** Whom a reservation means: the car, where it is there; otherwise what the file calls it. */
export type Holder = { readonly name: string; readonly car?: ShelfCar }

/** Which car a reservation means: by the id of the conversion, else by the name where just one car has it. Variants count as one car. */
export function holderOf({ car: name, conversion }: Reserved, cars: readonly ShelfCar[]): Holder {
  const there = cars.filter(c => !c.deleted),
    named = there.filter(c => c.name === name),
    car = conversion === undefined ? only(named, cars) : there.find(c => c.id === conversion)
  if (car) return { name: car.name || name || car.id, car }
  return { name: name ?? cars.find(c => c.id === conversion)?.name ?? conversion ?? '' }
}

/** The one car several conversions are variants of, itself where it is among them; undefined where they are several cars, or none. */
function only(named: readonly ShelfCar[], cars: readonly ShelfCar[]): ShelfCar | undefined {
  const [first] = named
  if (!first || !named.every(c => isSameCar(c.id, first.id, cars))) return undefined
  return named.find(c => c.of === undefined) ?? first
}

/** Whether two conversions are one car: the same, or variants of one. */
export const isSameCar = (a: string, b: string, cars: readonly ShelfCar[]): boolean => rootOf(a, cars) === rootOf(b, cars)

function rootOf(id: string, cars: readonly ShelfCar[]): string {
  let at = id
  // Variants of variants end somewhere: each is made of one that was there before.
  for (let steps = 0; steps <= cars.length; steps++) {
    const above = cars.find(c => c.id === at)?.of
    if (above === undefined) return at
    at = above
  }
  return at
}
