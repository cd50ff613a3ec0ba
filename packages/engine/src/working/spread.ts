import { type AnyValue, type Datum, type Fact, type Figure, isFigure, type Value } from './value.ts'
import { numbers } from './work.ts'

/** How far a value moves with one standard uncertainty of each fact it rests on, by the fact's path. */
export type Contributions = ReadonlyMap<string, number>
export type SpreadMemo = Map<AnyValue, Contributions>

const NONE: Contributions = new Map()
/** ± is two standard uncertainties. */
export const COVERAGE = 2

/**
 * First-order spread of a value (GUM, JCGM 100:2008, 5.1): at each formula a secant over the whole ± of the input, chained down to the facts, so
 * that a fact used twice counts once and differences of like figures stay small. The whole ± and not half of it: where two limits lie close, the
 * other one may take over within it.
 *
 * Gives contributions of one standard uncertainty each, signed, by path of the fact. A curve or map carries the spread of the numbers it was made from where it can be
 * made anew from others; a typed one and a word carry none.
 */
export function spread(value: AnyValue, memo: SpreadMemo = new Map()): Contributions {
  const known = memo.get(value)
  if (known) return known
  const out = isFigure(value) ? ofFigure(value, memo) : ofFact(value as Fact)
  memo.set(value, out)
  return out
}

function ofFact(fact: Fact): Contributions {
  return typeof fact.value === 'number' && fact.half !== undefined && fact.half > 0 ? new Map([[fact.path, fact.half / COVERAGE]]) : NONE
}

function ofFigure(figure: Figure, memo: SpreadMemo): Contributions {
  const out = new Map<string, number>()
  const { inputs, again } = figure.because
  let x: Record<string, unknown> | undefined
  const add = (from: Contributions, slope: number): void => {
    if (Number.isFinite(slope)) for (const [path, c] of from) out.set(path, (out.get(path) ?? 0) + slope * c)
  }
  const throughCurve = (curve: Figure<Datum>, name: string): void => {
    for (const { from, step, up, down, changed } of variants(curve, memo)) {
      x ??= numbers(inputs)
      const at = (datum: Datum, side: string): number => again({ ...x, [name]: datum }, `${name}: ${changed} ${side}`)
      add(from, (at(up, '+') - at(down, '-')) / (2 * step))
    }
  }
  for (const [name, input] of Object.entries(inputs)) {
    for (const [i, one] of (Array.isArray(input) ? (input as Value[]) : [input as Value]).entries()) {
      if (typeof one.value !== 'number') {
        if (isFigure(one as AnyValue)) throughCurve(one as AnyValue as Figure<Datum>, name)
        continue
      }
      const from = spread(one, memo)
      if (from.size === 0) continue
      const step = COVERAGE * Math.hypot(...from.values())
      if (!(step > 0) || !Number.isFinite(one.value)) continue
      x ??= numbers(inputs)
      const at = (v: number, side: string): number =>
        again({ ...x, [name]: Array.isArray(input) ? (x?.[name] as number[]).map((o, j) => (j === i ? v : o)) : v }, `${name} ${i} ${side}`)
      const slope = (at(one.value + step, '+') - at(one.value - step, '-')) / (2 * step)
      add(from, slope)
    }
  }
  return out
}

type Variant = {
  readonly from: Contributions
  readonly step: number
  readonly up: Datum
  readonly down: Datum
  readonly changed: string
}
/** A curve or map with each number it was made from moved up and down by its ±, curves it was made from likewise. */
function variants({ because: { inputs, rebuild } }: Figure<Datum>, memo: SpreadMemo): readonly Variant[] {
  if (!rebuild) return []
  const x = numbers(inputs)
  return Object.entries(inputs).flatMap(([name, input]): readonly Variant[] => {
    if (Array.isArray(input)) return []
    const one = input as AnyValue
    const anew = (value: unknown): Datum => rebuild({ ...x, [name]: value })
    if (typeof one.value !== 'number')
      return isFigure(one)
        ? variants(one as Figure<Datum>, memo).map(v => ({ ...v, up: anew(v.up), down: anew(v.down), changed: `${name}: ${v.changed}` }))
        : []
    const from = spread(one, memo),
      step = COVERAGE * Math.hypot(...from.values())
    if (!(step > 0) || !Number.isFinite(one.value)) return []
    return [{ from, step, up: anew(one.value + step), down: anew(one.value - step), changed: name }]
  })
}

/** Half-width (two standard uncertainties) of a value: zero when nothing it rests on carries a spread. */
export const halfWidth = (value: AnyValue, memo?: SpreadMemo): number => COVERAGE * Math.hypot(...spread(value, memo).values())

/** Half-width of the difference of two values; facts both rest on are counted once, with sign. */
export function halfWidthOfDifference(a: AnyValue, b: AnyValue, memo: SpreadMemo = new Map()): number {
  const difference = new Map(spread(a, memo))
  for (const [path, c] of spread(b, memo)) difference.set(path, (difference.get(path) ?? 0) - c)
  return COVERAGE * Math.hypot(...difference.values())
}

/** The facts that widen a value most, widest first: what to measure next. */
export function widest(value: AnyValue, memo?: SpreadMemo): readonly { path: string; half: number }[] {
  return [...spread(value, memo)].map(([path, c]) => ({ path, half: COVERAGE * Math.abs(c) })).sort((a, b) => b.half - a.half)
}
