import { type AnyFormula, isOne, type One } from './formula.ts'
import { type Equation, readText, type TextNode } from './text.ts'
import type { Curve, Grid } from './value.ts'

type Known = number | readonly number[] | string | Curve | Grid
type Scope = Map<string, Known>
export type LookUp = { readonly curve: (c: Curve, x: number) => number; readonly grid: (g: Grid, x: number, y: number) => number }

const FUNCTIONS: Readonly<Record<string, (...x: number[]) => number>> = {
  sqrt: Math.sqrt,
  abs: Math.abs,
  exp: Math.exp,
  ln: Math.log,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  asin: Math.asin,
  acos: Math.acos,
  atan: Math.atan,
  tanh: Math.tanh,
  min: Math.min,
  max: Math.max,
  sign: Math.sign,
  round: Math.round,
  floor: Math.floor,
  ceil: Math.ceil,
}
const COMPARE = {
  '<': (a: number, b: number) => a < b,
  '≤': (a: number, b: number) => a <= b,
  '>': (a: number, b: number) => a > b,
  '≥': (a: number, b: number) => a >= b,
}

/** Works out a formula's printed text as arithmetic: what the text says, independent of the function. Several results come by symbol. */
export function evaluateText(f: AnyFormula, x: Readonly<Record<string, unknown>>, lookUp: LookUp): number | Record<string, number> {
  const scope: Scope = new Map()
  for (const [name, take] of Object.entries(f.card.takes) as [string, { symbol: string }][]) scope.set(take.symbol, x[name] as Known)
  for (const used of f.card.uses ?? []) scope.set(used.symbol, used.value)
  for (const { symbol, value } of readText(f.card.text) as readonly Equation[]) scope.set(symbol, evaluate(value, scope, lookUp))
  const { gives } = f.card
  if (isOne(gives)) return numberAt(scope, gives.symbol)
  return Object.fromEntries(Object.entries(gives as Record<string, One>).map(([name, one]) => [name, numberAt(scope, one.symbol)]))
}

function numberAt(scope: Scope, name: string): number {
  const v = scope.get(name)
  if (typeof v !== 'number')
    throw new SyntaxError(`formula text: the symbol ${name} ${v === undefined ? 'is not defined' : 'is no number here'}`)
  return v
}

function evaluate(node: TextNode, scope: Scope, lookUp: LookUp): number {
  const go = (n: TextNode): number => evaluate(n, scope, lookUp)
  switch (node.is) {
    case 'number':
      return node.value
    case 'symbol':
      return numberAt(scope, node.name)
    case 'sum':
      return go(node.left) + go(node.right)
    case 'difference':
      return go(node.left) - go(node.right)
    case 'product':
      return go(node.left) * go(node.right)
    case 'quotient':
      return go(node.left) / go(node.right)
    case 'power':
      return go(node.left) ** go(node.right)
    case 'minus':
      return -go(node.of)
    case 'total':
      return total(node.of, scope, lookUp)
    case 'cases': {
      const hit = node.when.find(w => w.if.every(c => COMPARE[c.sign](go(c.left), go(c.right))))
      return go(hit ? hit.value : node.otherwise)
    }
    case 'call':
      return call(node, scope, lookUp)
  }
}

function call(node: TextNode & { is: 'call' }, scope: Scope, lookUp: LookUp): number {
  const known = scope.get(node.name)
  if (known !== undefined && typeof known === 'object' && 'x' in known) {
    const [a, b] = node.of.map(n => evaluate(n, scope, lookUp)) as [number, number]
    return 'z' in known ? lookUp.grid(known, a, b) : lookUp.curve(known, a)
  }
  const f = FUNCTIONS[node.name]
  if (!f) throw new SyntaxError(`formula text: ${node.name} is neither a function nor a curve`)
  const [first] = node.of
  if (node.of.length === 1 && first?.is === 'symbol') {
    const list = scope.get(first.name)
    if (Array.isArray(list)) return f(...(list as number[]))
  }
  return f(...node.of.map(n => evaluate(n, scope, lookUp)))
}

/** Symbols of lists met under Σ are taken element by element; all must be of one length. */
function total(of: TextNode, scope: Scope, lookUp: LookUp): number {
  const lists = symbolsOf(of).filter(s => Array.isArray(scope.get(s)))
  if (lists.length === 0) throw new SyntaxError('formula text: Σ stands before no list')
  const length = (scope.get(lists[0] as string) as readonly number[]).length
  let sum = 0
  for (let i = 0; i < length; i++) {
    const inner: Scope = new Map(scope)
    for (const s of lists) inner.set(s, (scope.get(s) as readonly number[])[i] as number)
    sum += evaluate(of, inner, lookUp)
  }
  return sum
}

export function symbolsOf(node: TextNode): string[] {
  switch (node.is) {
    case 'number':
      return []
    case 'symbol':
      return [node.name]
    case 'minus':
    case 'total':
      return symbolsOf(node.of)
    case 'call':
      return node.of.flatMap(symbolsOf)
    case 'cases':
      return [
        ...node.when.flatMap(w => [...symbolsOf(w.value), ...w.if.flatMap(c => [...symbolsOf(c.left), ...symbolsOf(c.right)])]),
        ...symbolsOf(node.otherwise),
      ]
    default:
      return [...symbolsOf(node.left), ...symbolsOf(node.right)]
  }
}
