import type { Source } from '../sources.ts'
import type { AnyFormula } from './formula.ts'
import type { Kind } from './kinds.ts'

/** A line through points, ends held. `x` rises. */
export type Curve = { readonly x: Float64Array; readonly y: Float64Array }
/** A surface over a rectangle of points: `z` row by row, one row for each `x`. */
export type Grid = { readonly x: Float64Array; readonly y: Float64Array; readonly z: Float64Array }
export type Datum = number | string | Curve | Grid

/** How a value is known. A decision (a goal, a choice) needs none. */
export type Origin = {
  readonly how: 'measured' | 'datasheet' | 'standard' | 'assumed'
  readonly note?: string
  readonly source?: Source
}

/** A leaf: something the file, a part record, a class table or a standard states. */
export type Fact<V extends Datum = number> = {
  readonly path: string
  readonly label: string
  readonly symbol: string
  readonly unit: string
  readonly shows?: Kind
  readonly value: V
  /** ±: half-width that should hold 19 times in 20, two standard uncertainties. */
  readonly half?: number
  readonly origin?: Origin
  /** As typed, or as the record states it. */
  readonly text?: string
  /** How to find it out, while it is assumed. */
  readonly measure?: Measure
}

/** A reported result. Its id is `study.figure`, or `study.figure@item`. */
export type Figure<V extends Datum = number> = {
  readonly id: string
  readonly label: string
  readonly symbol: string
  readonly unit: string
  readonly shows?: Kind
  readonly value: V
  readonly because: Worked
}

export type Value<V extends Datum = number> = Fact<V> | Figure<V>
export type AnyValue = Value<number> | Value<string> | Value<Curve> | Value<Grid>
export type Inputs = Readonly<Record<string, AnyValue | readonly Value[]>>

/** Which formula made a figure from what. Of several results, `result` names the one; `read` says how it was read from a trace. */
export type Worked = {
  readonly formula: AnyFormula
  readonly inputs: Inputs
  /** Inputs outside the range in which the formula holds. */
  readonly beyond: readonly string[]
  readonly result?: string
  readonly read?: { readonly trace: string; readonly how: 'max' | 'min' | 'integral' | 'at' | 'end'; readonly at?: number }
  /** Runs the same formula again on other numbers: what spread needs. */
  readonly again: (x: Record<string, unknown>, changed: string) => number
  /** Makes a curve or a map anew from other numbers, where what it rests on carries a spread that no number beside it stands for. */
  readonly rebuild?: (x: Record<string, unknown>) => Datum
}

/** A value that is missing and needed. `until` says when in the job it can no longer be measured. */
export type Gap = {
  readonly gap: true
  readonly path: string
  readonly label: string
  readonly until: Until
  readonly measure?: Measure
  readonly why?: 'missing' | 'being measured' | 'not in the catalogue'
}
export type Until = 'any time' | 'before the engine comes out' | 'before the body is apart' | 'before the part is bought'
export type Measure = { readonly tool: string; readonly accuracy: string; readonly minutes: number }

/** What a field of the model holds: a value, or the gap where one is wanted. */
export type Field<V extends Datum = number> = Fact<V> | Gap

export const isGap = (x: unknown): x is Gap => typeof x === 'object' && x !== null && 'gap' in x
export const isFact = (x: unknown): x is Fact => typeof x === 'object' && x !== null && 'path' in x && 'value' in x
export const isFigure = (x: unknown): x is Figure => typeof x === 'object' && x !== null && 'because' in x
export const nameOf = (x: AnyValue): string => ('because' in x ? x.id : x.path)

/** A constant of nature or of a standard, as a leaf that workings can name. */
export function standard(name: string, label: string, symbol: string, value: number, unit: string, source: Source): Fact {
  return { path: `standard.${name}`, label, symbol, unit, value, origin: { how: 'standard', source } }
}
