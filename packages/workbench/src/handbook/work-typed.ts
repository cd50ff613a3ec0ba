import type { System } from '@ampwright/conversion'
import { type AnyFormula, type AnyValue, type Figure, halfWidth, isOne, type One, work, workAll } from '@ampwright/engine'
import { headed, shown } from '../shown.ts'
import { withNumbers } from '../working-tree.ts'
import { type InputWrong, readInput, type TypedInput, takesOf } from './inputs.ts'
import { heldRange } from './range.ts'

/** Runs one formula on values; of several results, one figure each. Throws RangeError where the formula has no result for them. */
export function workOn(f: AnyFormula, inputs: Readonly<Record<string, TypedInput>>): readonly Figure[] {
  if (isOne(f.card.gives)) return [work(f as never, inputs as never, { id: f.card.id })]
  return Object.values(workAll(f as never, inputs as never, { id: f.card.id }).figures as Record<string, Figure>)
}

/** What comes of a formula worked through with what was typed: results, or what is missing and what is wrong. Plain data. */
export type FormulaWorked =
  | {
      readonly is: 'worked'
      readonly results: readonly { readonly symbol: string; readonly label: string; readonly text: string; readonly si: string }[]
      /** The formula with its numbers, where it is one line. */
      readonly numbers?: string
      /** Inputs outside the range in which the formula holds. */
      readonly beyond: readonly { readonly name: string; readonly label: string; readonly found: string; readonly holds: string }[]
    }
  | { readonly is: 'open'; readonly missing: readonly string[]; readonly wrong: readonly InputWrong[] }
  | { readonly is: 'no result'; readonly why: string }

/** Works a formula with texts by the names of its inputs, as somebody types them. Nothing is worked while anything is missing or wrong. */
export function workTyped(f: AnyFormula, texts: Readonly<Record<string, string>>, system: System): FormulaWorked {
  const inputs: Record<string, TypedInput> = {},
    missing: string[] = [],
    wrong: InputWrong[] = []
  for (const [name, take] of takesOf(f)) {
    const text = (texts[name] ?? '').trim()
    if (text === '') missing.push(name)
    else {
      const read = readInput(name, take, text)
      if (read.ok) inputs[name] = read.input
      else wrong.push(read.wrong)
    }
  }
  if (missing.length || wrong.length) return { is: 'open', missing, wrong }
  return told(f, inputs, system)
}

function told(f: AnyFormula, inputs: Readonly<Record<string, TypedInput>>, system: System): FormulaWorked {
  let figures: readonly Figure[]
  try {
    figures = workOn(f, inputs)
  } catch (e) {
    // A list of another length, a curve that never reaches: the formula says so itself.
    if (e instanceof RangeError) return { is: 'no result', why: headed(e.message) }
    throw e
  }
  const { card } = f,
    oneLine = !card.words && !card.text.includes('\n') && isOne(card.gives)
  return {
    is: 'worked',
    results: figures.map(r => ({
      symbol: r.symbol,
      label: headed(r.label),
      text: shown(r, system, halfWidth(r)),
      si: `${Number(r.value.toPrecision(10))} ${r.unit === '1' ? '' : r.unit}`.trim(),
    })),
    ...(oneLine ? { numbers: withNumbers(card.text, card.takes, inputs, system) } : {}),
    beyond: (figures[0]?.because.beyond ?? []).map(name => beyond(f, name, inputs[name] as TypedInput, system)),
  }
}

function beyond(f: AnyFormula, name: string, input: TypedInput, system: System): (FormulaWorked & { is: 'worked' })['beyond'][number] {
  const one = f.card.takes[name] as One,
    list = (Array.isArray(input) ? input : [input]) as readonly AnyValue[]
  return {
    name,
    label: headed(one.label ?? name),
    found: list
      .filter(v => !inside(v.value as number, one.holds))
      .map(v => shown(v, system))
      .join(', '),
    holds: heldRange(one, system) ?? '',
  }
}
const inside = (v: number, holds: One['holds']): boolean => holds === undefined || (v >= holds[0] && v <= holds[1])
