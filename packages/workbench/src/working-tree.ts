import type { System } from '@ampwright/conversion'
import { type AnyValue, type Assessment, type Fact, isFigure, isOne, type One, type Take } from '@ampwright/engine'
import { shown } from './shown.ts'

type Paint = { readonly quiet: (s: string) => string; readonly strong: (s: string) => string }

/** The formula's text with numbers in place of its symbols: the line a person writes below the formula. */
export function withNumbers(
  text: string,
  takes: Readonly<Record<string, Take>>,
  inputs: Readonly<Record<string, AnyValue | readonly AnyValue[]>>,
  system: System,
): string {
  const numbers = new Map<string, string>()
  for (const [name, take] of Object.entries(takes)) {
    const input = inputs[name]
    if (input && !Array.isArray(input) && typeof (input as AnyValue).value === 'number')
      numbers.set(take.symbol, shown(input as AnyValue, system))
  }
  return text.replace(/[\p{L}°][\p{L}\p{M}\p{Nd}_₀-₉₊₋′″,]*(?<!,)/gu, s => numbers.get(s) ?? s)
}

/**
 * The working of a value as lines of a hand calculation, down to the typed facts; a branch already shown is named, not repeated.
 *
 * `depth` limits how far it unfolds; what is cut is named by its id, to be asked for.
 */
export function workingTree(root: AnyValue, a: Assessment, system: System, paint: Paint, depth = Number.POSITIVE_INFINITY): string[] {
  const lines: string[] = [],
    met = new Set<AnyValue>()
  const half = (v: AnyValue): number | undefined => (isFigure(v) ? a.halves.get(v.id) : (v as Fact).half)
  const line = (v: AnyValue, stem: string): void => {
    const name = v.symbol ? `${v.symbol} = ` : ''
    lines.push(`${stem}${paint.strong(`${name}${shown(v, system, half(v))}`)}  ${v.label}${isFigure(v) ? paint.quiet(`  ${v.id}`) : ''}`)
  }
  const walk = (v: AnyValue, first: string, rest: string, left: number): void => {
    line(v, first)
    if (!isFigure(v)) return fact(v as Fact, rest)
    if (met.has(v)) return void lines.push(`${rest}${paint.quiet('worked above')}`)
    met.add(v)
    const { formula, inputs, beyond, result, read } = v.because,
      { card } = formula
    const gives: One | undefined = isOne(card.gives) ? card.gives : result ? (card.gives as Record<string, One>)[result] : undefined
    const text = card.text.split('\n')
    for (const t of card.words ? [card.words] : text) lines.push(`${rest}${paint.quiet(t)}`)
    if (text.length === 1 && !card.words && gives) lines.push(`${rest}${paint.quiet(withNumbers(card.text, card.takes, inputs, system))}`)
    if (read) lines.push(`${rest}${paint.quiet(`read from the trace ${read.trace}: ${read.how}`)}`)
    for (const b of beyond) lines.push(`${rest}${paint.strong(`${b} lies outside the range in which this formula holds`)}`)
    const children = Object.values(inputs).flatMap(x => (Array.isArray(x) ? (x as AnyValue[]) : [x as AnyValue]))
    if (left <= 0 && children.length) return void lines.push(`${rest}${paint.quiet(`… ${children.length} inputs: ask for ${v.id}`)}`)
    children.forEach((c, i) => {
      const last = i === children.length - 1
      walk(c, `${rest}${last ? '└ ' : '├ '}`, `${rest}${last ? '  ' : '│ '}`, left - 1)
    })
  }
  const fact = (f: Fact, rest: string): void => {
    const from = f.origin ? `${f.origin.how}${f.origin.note ? `, ${f.origin.note}` : ''}` : 'typed, origin not stated'
    lines.push(
      `${rest}${paint.quiet(`${f.path.startsWith('standard.') ? '' : `${f.path}: `}${f.text && !f.path.includes('#') ? `«${f.text}» ` : ''}${from}`)}`,
    )
  }
  walk(root, '', '', depth)
  return lines
}
