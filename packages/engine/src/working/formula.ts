import type { Source } from '../sources.ts'
import type { Kind } from './kinds.ts'
import type { Curve, Fact, Grid } from './value.ts'

/** One number: its symbol in the text, its coherent SI unit, how it is shown, and the range in which the formula holds. */
export type One = {
  readonly symbol: string
  readonly unit: string
  readonly label?: string
  readonly shows?: Kind
  readonly holds?: readonly [low: number, high: number]
}
/** A list of numbers, summed over in the text by Σ. */
export type Many = One & { readonly many: true }
/** A curve, looked up in the text as `symbol(x)`. */
export type Line = {
  readonly symbol: string
  readonly unit: readonly [x: string, y: string]
  readonly label?: string
  readonly curve: true
}
/** A map over two axes, looked up in the text as `symbol(x, y)`. */
export type Plane = {
  readonly symbol: string
  readonly unit: readonly [x: string, y: string, z: string]
  readonly label?: string
  readonly grid: true
}
/** A choice between words. */
export type Pick = { readonly symbol: string; readonly oneOf: readonly string[]; readonly label?: string }
export type Take = One | Many | Line | Plane | Pick
export type Takes = Readonly<Record<string, Take>>
export type Gives = One | Readonly<Record<string, One>>

export type DatumOf<T> = T extends { many: true }
  ? readonly number[]
  : T extends { curve: true }
    ? Curve
    : T extends { grid: true }
      ? Grid
      : T extends { oneOf: readonly (infer S)[] }
        ? S
        : number
export type Numbers<T extends Takes> = { readonly [K in keyof T]: DatumOf<T[K]> }
export type Results<G extends Gives> = G extends One ? number : { readonly [K in keyof G]: number }

/** A published case: these inputs give this result within this tolerance, and why that tolerance. */
export type Example<T extends Takes = Takes, G extends Gives = Gives> = {
  readonly takes: Numbers<T>
  readonly gives: Results<G> | Partial<Results<G>>
  readonly within: number
  readonly source: Source
  readonly because?: string
}

export type Card<T extends Takes = Takes, G extends Gives = Gives> = {
  readonly id: string
  readonly label: string
  readonly gives: G
  readonly takes: T
  /** Standard values the function uses without being handed them. */
  readonly uses?: readonly Fact[]
  /** Lines of arithmetic; earlier lines may name steps that later lines use; the last line of each result states it. */
  readonly text: string
  /** Why the text cannot be read as arithmetic; then it is words. At most one card in ten. */
  readonly words?: string
  readonly source: Source
  /** What it leaves out, and when it misleads. */
  readonly leavesOut?: string
  readonly proof: { readonly examples: readonly Example<T, G>[] } | { readonly none: string }
}

export type Formula<T extends Takes = Takes, G extends Gives = Gives> = ((x: Numbers<T>) => Results<G>) & { readonly card: Card<T, G> }
// biome-ignore lint/suspicious/noExplicitAny: a list of formulas of every shape
export type AnyFormula = ((x: any) => any) & { readonly card: Card<any, any> }

/**
 * Joins a card to the function it describes. The function is returned itself, so calls in loops cost nothing extra.
 *
 * Throws RangeError when two inputs share a symbol: the text would be ambiguous.
 */
export function formula<const T extends Takes, const G extends Gives>(
  card: Card<T, G>,
  calculate: (x: Numbers<T>) => Results<G>,
): Formula<T, G> {
  const symbols = [...Object.values(card.takes).map(t => t.symbol), ...(card.uses ?? []).map(u => u.symbol)]
  const twice = symbols.find((s, i) => symbols.indexOf(s) !== i)
  if (twice !== undefined) throw new RangeError(`formula ${card.id}: the symbol ${twice} stands for two inputs`)
  return Object.assign(calculate, { card })
}

export const isOne = (gives: Gives): gives is One =>
  typeof (gives as { symbol?: unknown }).symbol === 'string' && typeof (gives as { unit?: unknown }).unit === 'string'
