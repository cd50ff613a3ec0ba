import { type AnyFormula, type Formula, type Gives, isOne, type Numbers, type One, type Take, type Takes } from './formula.ts'
import type { AnyValue, Curve, Datum, Figure, Grid, Inputs, Value, Worked } from './value.ts'

export type ValueOf<T> = T extends { many: true }
  ? readonly Value[]
  : T extends { curve: true }
    ? Value<Curve>
    : T extends { grid: true }
      ? Value<Grid>
      : T extends { oneOf: readonly (infer S)[] }
        ? Value<S & string>
        : Value
export type Values<T extends Takes> = { readonly [K in keyof T]: ValueOf<T[K]> }

/** Where a figure stands: the study makes the id, the item tells several of a kind apart. */
export type Place = { readonly id: string; readonly label?: string; readonly symbol?: string }

/** The plain numbers behind inputs. */
export function numbers(inputs: Inputs): Record<string, unknown> {
  const x: Record<string, unknown> = {}
  for (const name of Object.keys(inputs)) {
    const input = inputs[name]
    x[name] = Array.isArray(input) ? input.map((v: Value) => v.value) : (input as AnyValue).value
  }
  return x
}

function outside(takes: Takes, x: Record<string, unknown>): string[] {
  const beyond: string[] = []
  for (const name of Object.keys(takes)) {
    const take = takes[name] as Take,
      holds = 'holds' in take ? take.holds : undefined
    if (!holds) continue
    const list = Array.isArray(x[name]) ? (x[name] as number[]) : [x[name] as number]
    if (list.some(v => !(v >= holds[0] && v <= holds[1]))) beyond.push(name)
  }
  return beyond
}

function checked(id: string, value: number): number {
  if (Number.isNaN(value)) throw new RangeError(`${id}: the result is not a number`)
  return value
}

function figure(place: Place, one: One, fallback: string, value: number, because: Worked): Figure {
  return {
    id: place.id,
    label: place.label ?? one.label ?? fallback,
    symbol: place.symbol ?? one.symbol,
    unit: one.unit,
    ...(one.shows ? { shows: one.shows } : {}),
    value: checked(place.id, value),
    because,
  }
}

/** Runs a formula with one result on values and keeps the working, noting inputs beyond the range in which the formula holds. */
export function work<T extends Takes, G extends One>(f: Formula<T, G>, inputs: Values<T>, place: Place): Figure {
  const x = numbers(inputs as Inputs)
  const value = f(x as Numbers<T>) as number
  const again = (y: Record<string, unknown>): number => f(y as Numbers<T>) as number
  return figure(place, f.card.gives, f.card.label, value, {
    formula: f as AnyFormula,
    inputs: inputs as Inputs,
    beyond: outside(f.card.takes, x),
    again,
  })
}

/**
 * Runs a formula with several results, or a simulation, and gives one figure for each result.
 *
 * `rerun` may be a coarser twin used for spread only; without it the formula itself is run again. Runs are kept, so all results of one
 * simulation share them.
 */
export function workAll<T extends Takes, G extends Readonly<Record<string, One>>, R extends Record<string, unknown>>(
  f: ((x: Numbers<T>) => R) & { readonly card: Formula<T, G>['card'] },
  inputs: Values<T>,
  place: Place,
  rerun: (x: Numbers<T>) => Record<string, unknown> = f,
): { readonly figures: { readonly [K in keyof G]: Figure }; readonly run: R } {
  const x = numbers(inputs as Inputs)
  const run = f(x as Numbers<T>)
  const beyond = outside(f.card.takes, x)
  const kept = new Map<string, Record<string, unknown>>()
  const figures: Record<string, Figure> = {}
  for (const [result, one] of Object.entries(f.card.gives as Readonly<Record<string, One>>)) {
    const again = (y: Record<string, unknown>, changed: string): number => {
      let other = kept.get(changed)
      if (!other) kept.set(changed, (other = rerun(y as Numbers<T>)))
      return other[result] as number
    }
    const because: Worked = { formula: f as unknown as AnyFormula, inputs: inputs as Inputs, beyond, result, again }
    figures[result] = figure({ ...place, id: place.id ? `${place.id}.${result}` : result }, one, result, run[result] as number, because)
  }
  return { figures: figures as { [K in keyof G]: Figure }, run }
}

/** A figure that is no number (a curve, a map, a word), made by a formula whose result is such. With `rebuild` its spread reaches what is worked out from it. */
export function derive<V extends Datum>(
  f: AnyFormula,
  inputs: Inputs,
  place: Place,
  value: V,
  unit: string,
  rebuild?: (x: Record<string, unknown>) => V,
): Figure<V> {
  const again = (): number => Number.NaN
  return {
    id: place.id,
    label: place.label ?? f.card.label,
    symbol: place.symbol ?? (isOne(f.card.gives as Gives) ? (f.card.gives as One).symbol : f.card.id),
    unit,
    value,
    because: { formula: f, inputs, beyond: [], again, ...(rebuild ? { rebuild } : {}) },
  }
}
