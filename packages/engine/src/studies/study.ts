import type { Model } from '../model/model.ts'
import type { AnyFormula, Formula, One, Takes } from '../working/formula.ts'
import type { Kind } from '../working/kinds.ts'
import { type AnyValue, type Datum, type Figure, type Gap, type Inputs, isGap } from '../working/value.ts'
import { derive, type Values, work, workAll } from '../working/work.ts'

export type Stage =
  | 'brief'
  | 'donor'
  | 'drive'
  | 'pack'
  | 'fit'
  | 'high voltage'
  | 'signals'
  | 'thermal'
  | 'brakes & steering'
  | 'driveline'
  | 'build'
  | 'prove'
  | 'papers'
  | 'service'

/** Why there is no answer: the gaps to close, found at any depth. */
export type Gaps = { readonly gaps: readonly Gap[] }
export const isGaps = (x: unknown): x is Gaps => typeof x === 'object' && x !== null && Array.isArray((x as Gaps).gaps) && !('because' in x)

/** Something a study can do without: its gaps are named, but do not stop the rest. */
export type Maybe<T> = { readonly maybe: T }
export const maybe = <T>(value: T): Maybe<T> => ({ maybe: value })

const ANSWER = Symbol('answer of a study')
export type Answered<A> = A & { readonly [ANSWER]?: true }

/** What a study has read once no gap is left: gaps are gone, a `maybe` is its value or its gaps. */
export type Known<T> = T extends Gap | Gaps
  ? never
  : T extends Maybe<infer U>
    ? Known<U> | Gaps
    : T extends AnyValue | ArrayBufferView | ((...x: never[]) => unknown)
      ? T
      : T extends { readonly [ANSWER]?: true }
        ? T
        : T extends object
          ? { readonly [K in keyof T]: Known<T[K]> }
          : T

/** Series over a common axis, named; units are coherent SI. */
export type Trace = {
  readonly id: string
  readonly label: string
  readonly axis: { readonly label: string; readonly unit: string; readonly values: Float64Array }
  readonly series: readonly {
    readonly name: string
    readonly label: string
    readonly unit: string
    readonly values: Float64Array
    readonly shows?: Kind
    /** Drawn where not all can be read together. */
    readonly leading?: true
  }[]
}
/** Rows by name, columns with unit; a cell is a figure, a fact, a plain number or words. */
export type Table = {
  readonly id: string
  readonly label: string
  readonly columns: readonly { readonly key: string; readonly label: string; readonly unit?: string; readonly shows?: string }[]
  readonly rows: readonly { readonly name: string; readonly cells: Readonly<Record<string, AnyValue | number | string | undefined>> }[]
}

/** What a study makes its figures with: ids come out as `study.key` or `study.key@item`. */
export interface Maker {
  work<T extends Takes, G extends One>(
    key: string,
    f: Formula<T, G>,
    inputs: Values<T>,
    more?: { item?: string; label?: string; symbol?: string },
  ): Figure
  all<T extends Takes, G extends Readonly<Record<string, One>>, R extends Record<string, unknown>>(
    key: string,
    f: ((x: Parameters<Formula<T, G>>[0]) => R) & { readonly card: Formula<T, G>['card'] },
    inputs: Values<T>,
    more?: {
      item?: string
      labels?: Partial<Record<keyof G & string, string>>
      rerun?: (x: Parameters<Formula<T, G>>[0]) => Record<string, unknown>
    },
  ): { readonly figures: { readonly [K in keyof G]: Figure }; readonly run: R }
  derive<V extends Datum>(
    key: string,
    f: AnyFormula,
    inputs: Inputs,
    value: V,
    unit: string,
    more?: { item?: string; label?: string; rebuild?: (x: Record<string, unknown>) => V },
  ): Figure<V>
  trace(key: string, trace: Omit<Trace, 'id'>, item?: string): Trace
  table(key: string, table: Omit<Table, 'id'>, item?: string): Table
}

export type Ask = <A>(study: Study<A>) => Answered<A> | Gaps
// biome-ignore lint/suspicious/noExplicitAny: what a study reads is its own affair
export type Study<A, I = any> = {
  readonly id: string
  readonly stage: Stage
  /** The question it answers, as the user would put it. */
  readonly asks: string
  readonly reads: (model: Model, ask: Ask) => I
  readonly answer: (known: Known<I>, make: Maker) => A
}
export const study = <A, I>(s: Study<A, I>): Study<A, I> => s

/** Takes a part of another study's answer, or its gaps. */
export const from = <A, B>(answer: A | Gaps, pick: (a: A) => B): B | Gaps => (isGaps(answer) ? answer : pick(answer as A))

/**
 * One of two ways to know something: the first where it is there, else the second; where neither is, the gaps of both, so that the reader sees
 * either would do.
 */
export function either<A, B extends object>(first: A | Gap | Gaps, second: B): A | B | Gaps {
  if (!isGap(first) && !isGaps(first)) return first
  const missing = gapsIn(second, new WeakSet(), [])
  return missing.length === 0 ? second : { gaps: once([...gapsIn(first, new WeakSet(), []), ...missing]) }
}

export type Kept = {
  readonly answer: unknown
  readonly figures: readonly Figure[]
  readonly traces: readonly Trace[]
  readonly tables: readonly Table[]
  readonly missing: readonly Gap[]
}

export class Making implements Maker {
  readonly figures: Figure<never>[] = []
  readonly traces: Trace[] = []
  readonly tables: Table[] = []
  private readonly study: string
  private readonly ids = new Set<string>()
  constructor(study: string) {
    this.study = study
  }
  private id = (key: string, item?: string): string => `${this.study}.${key}${item === undefined ? '' : `@${item}`}`
  private keep<F extends Figure<never>>(figure: F): F {
    if (this.ids.has(figure.id)) throw new RangeError(`study ${this.study} makes the figure ${figure.id} twice`)
    this.ids.add(figure.id)
    this.figures.push(figure)
    return figure
  }
  work: Maker['work'] = (key, f, inputs, more = {}) =>
    this.keep(work(f, inputs, { id: this.id(key, more.item), ...named(more) }) as Figure<never>) as unknown as Figure
  all: Maker['all'] = (key, f, inputs, more = {}) => {
    const done = workAll(f, inputs, { id: '' }, more.rerun)
    const figures: Record<string, Figure> = {}
    for (const [result, figure] of Object.entries(done.figures) as [string, Figure][]) {
      const label = more.labels?.[result]
      figures[result] = this.keep({
        ...figure,
        id: this.id(key === '' ? result : `${key}.${result}`, more.item),
        ...(label ? { label } : {}),
      } as Figure<never>) as unknown as Figure
    }
    return { figures: figures as never, run: done.run }
  }
  derive: Maker['derive'] = (key, f, inputs, value, unit, more = {}) =>
    this.keep(
      derive(f, inputs, { id: this.id(key, more.item), ...named(more) }, value, unit, more.rebuild) as unknown as Figure<never>,
    ) as never
  trace: Maker['trace'] = (key, trace, item) => {
    const t = { id: this.id(key, item), ...trace }
    this.traces.push(t)
    return t
  }
  table: Maker['table'] = (key, table, item) => {
    const t = { id: this.id(key, item), ...table }
    this.tables.push(t)
    return t
  }
}
const named = (more: { label?: string; symbol?: string }): { label?: string; symbol?: string } => ({
  ...(more.label ? { label: more.label } : {}),
  ...(more.symbol ? { symbol: more.symbol } : {}),
})

/** Every gap in what a study read, with the path it stands at; does not look into facts, figures or other studies' answers. */
export function gapsIn(x: unknown, answers: WeakSet<object>, soft: Gap[], out: Gap[] = []): Gap[] {
  if (typeof x !== 'object' || x === null || ArrayBuffer.isView(x) || answers.has(x)) return out
  if (isGap(x)) out.push(x)
  else if (isGaps(x)) out.push(...x.gaps)
  else if ('maybe' in x) gapsIn((x as Maybe<unknown>).maybe, answers, soft, soft)
  else if (!('because' in x) && !('path' in x && 'value' in x))
    for (const v of Array.isArray(x) ? x : Object.values(x)) gapsIn(v, answers, soft, out)
  return out
}
/** Replaces each `maybe` by its value or its gaps. */
export function known(x: unknown, answers: WeakSet<object>): unknown {
  if (
    typeof x !== 'object' ||
    x === null ||
    ArrayBuffer.isView(x) ||
    answers.has(x) ||
    'because' in x ||
    ('path' in x && 'value' in x) ||
    isGap(x) ||
    isGaps(x)
  )
    return x
  if ('maybe' in x) {
    const inner = (x as Maybe<unknown>).maybe,
      gaps = gapsIn(inner, answers, [])
    return gaps.length ? { gaps: once(gaps) } : known(inner, answers)
  }
  if (Array.isArray(x)) return x.map(v => known(v, answers))
  const all: Record<string, unknown> = {}
  for (const key of Object.keys(x)) all[key] = known((x as Record<string, unknown>)[key], answers)
  return all
}
export const once = (gaps: readonly Gap[]): readonly Gap[] => [...new Map(gaps.map(g => [g.path, g])).values()]
