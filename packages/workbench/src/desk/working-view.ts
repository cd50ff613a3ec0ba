import type { System } from '@ampwright/conversion'
import { type AnyValue, type Assessment, type Fact, isFigure, isOne, markOf, nameOf, type One, WORKS } from '@ampwright/engine'
import { shown } from '../shown.ts'
import { withNumbers } from '../working-tree.ts'

/** One value of a working, with the names of what it was made from. A screen unfolds these one by one. */
export type WorkingView = {
  readonly name: string
  readonly label: string
  readonly symbol: string
  readonly value: string
  /** Of a figure: the formula as printed, and with its numbers. */
  readonly formula?: {
    readonly id: string
    readonly label: string
    readonly text: readonly string[]
    readonly numbers?: string
    readonly source: string
    readonly leavesOut?: string
  }
  readonly read?: string
  readonly beyond: readonly string[]
  /** Of a fact: how it is known, and what was typed. */
  readonly origin?: string
  readonly how?: string
  readonly typed?: string
  /** Where it stands in the file. */
  readonly path?: string
  readonly inputs: readonly WorkingBranch[]
}
export type WorkingBranch = {
  readonly name: string
  readonly label: string
  readonly symbol: string
  readonly value: string
  readonly leaf: boolean
  readonly how?: string
}

/** The working of one value. */
export function workingView(v: AnyValue, a: Assessment, system: System): WorkingView {
  const half = (x: AnyValue): number | undefined => (isFigure(x) ? a.halves.get(x.id) : (x as Fact).half)
  const base = { name: nameOf(v), label: v.label, symbol: v.symbol, value: shown(v, system, half(v)), beyond: [], inputs: [] }
  if (!isFigure(v)) return { ...base, ...factView(v as Fact) }
  const { formula, inputs, beyond, result, read } = v.because,
    { card } = formula,
    gives: One | undefined = isOne(card.gives) ? card.gives : result ? (card.gives as Record<string, One>)[result] : undefined
  const text = card.words ? [card.words] : card.text.split('\n')
  return {
    ...base,
    beyond,
    formula: {
      id: card.id,
      label: card.label,
      text,
      source: `${WORKS[card.source.work].title}, ${card.source.place}${markOf(card.source) ? ` (${markOf(card.source)})` : ''}`,
      ...(text.length === 1 && !card.words && gives ? { numbers: withNumbers(card.text, card.takes, inputs, system) } : {}),
      ...(card.leavesOut === undefined ? {} : { leavesOut: card.leavesOut }),
    },
    ...(read ? { read: `read from the trace ${read.trace}: ${read.how}` } : {}),
    inputs: Object.values(inputs)
      .flatMap(x => (Array.isArray(x) ? (x as AnyValue[]) : [x as AnyValue]))
      .map(x => ({
        name: nameOf(x),
        label: x.label,
        symbol: x.symbol,
        value: shown(x, system, half(x)),
        leaf: !isFigure(x),
        ...(isFigure(x) || !(x as Fact).origin ? {} : { how: (x as Fact).origin?.how as string }),
      })),
  }
}

function factView(f: Fact): Pick<WorkingView, 'origin' | 'how' | 'typed' | 'path'> {
  return {
    origin: f.origin ? `${f.origin.how}${f.origin.note ? `, ${f.origin.note}` : ''}` : 'typed, origin not stated',
    ...(f.origin ? { how: f.origin.how } : {}),
    ...(f.text && !f.path.includes('#') ? { typed: f.text } : {}),
    ...(f.path.startsWith('standard.') ? {} : { path: f.path }),
  }
}
