import { type AnyFormula, isOne, type One, type Take } from './formula.ts'
import { readText, type TextNode } from './text.ts'

/** Exponents of metre, kilogram, second, ampere, kelvin and money. Angles are numbers (SI Brochure, 9th ed., 2.3.4). */
export type Dimension = readonly [m: number, kg: number, s: number, A: number, K: number, money: number]

const of = (m = 0, kg = 0, s = 0, A = 0, K = 0, money = 0): Dimension => [m, kg, s, A, K, money]
const NONE = of()
const UNITS: Readonly<Record<string, Dimension>> = {
  '1': NONE,
  rad: NONE,
  m: of(1),
  kg: of(0, 1),
  s: of(0, 0, 1),
  A: of(0, 0, 0, 1),
  K: of(0, 0, 0, 0, 1),
  '€': of(0, 0, 0, 0, 0, 1),
  N: of(1, 1, -2),
  J: of(2, 1, -2),
  W: of(2, 1, -3),
  Pa: of(-1, 1, -2),
  Hz: of(0, 0, -1),
  C: of(0, 0, 1, 1),
  V: of(2, 1, -3, -1),
  Ω: of(2, 1, -3, -2),
  F: of(-2, -1, 4, 2),
  H: of(2, 1, -2, -2),
  S: of(-2, -1, 3, 2),
}
const RAISED: Readonly<Record<string, number>> = { '²': 2, '³': 3, '⁴': 4 }
const times = (a: Dimension, b: Dimension, sign = 1): Dimension => a.map((x, i) => x + sign * (b[i] as number)) as unknown as Dimension
const raised = (a: Dimension, n: number): Dimension => a.map(x => x * n) as unknown as Dimension
const same = (a: Dimension, b: Dimension): boolean => a.every((x, i) => Math.abs(x - (b[i] as number)) < 1e-9)
const print = (d: Dimension): string =>
  ['m', 'kg', 's', 'A', 'K', '€']
    .map((u, i) => (d[i] ? `${u}^${d[i]}` : ''))
    .filter(Boolean)
    .join('·') || '1'

/** Reads a coherent unit such as `N·s²/m²` or `J/(kg·K)`. Throws RangeError on a unit this project does not compute in. */
export function dimensionOf(unit: string): Dimension {
  const [above = '', below] = unit.split('/', 2)
  const part = (text: string, sign: 1 | -1): Dimension =>
    text
      .replace(/[()]/g, '')
      .split('·')
      .reduce((d, word) => {
        const m = /^(.+?)([²³⁴])?(?:\^([\d.]+))?$/u.exec(word.trim()),
          base = m && UNITS[m[1] as string]
        if (!m || !base) throw new RangeError(`unit ${unit}: ${word} is not one of ${Object.keys(UNITS).join(' ')}`)
        return times(d, raised(base, RAISED[m[2] ?? ''] ?? (m[3] ? Number(m[3]) : 1)), sign)
      }, NONE)
  return times(part(above, 1), below === undefined ? NONE : part(below, -1), 1)
}

type Scope = Map<string, Dimension | { curve: readonly Dimension[] } | 'word'>
/** A literal zero fits any dimension. */
type Found = Dimension | 'zero'

/** Reads a formula's text in units instead of numbers. Gives what does not fit, in words; empty when the text gives the units its card claims. */
export function dimensionFaults(f: AnyFormula): readonly string[] {
  const scope: Scope = new Map(),
    faults: string[] = []
  for (const take of Object.values(f.card.takes) as Take[])
    scope.set(
      take.symbol,
      'oneOf' in take ? 'word' : typeof take.unit === 'string' ? dimensionOf(take.unit) : { curve: take.unit.map(dimensionOf) },
    )
  for (const used of f.card.uses ?? []) scope.set(used.symbol, dimensionOf(used.unit))
  for (const { symbol, value } of readText(f.card.text)) {
    const d = read(value, scope, faults)
    scope.set(symbol, d === 'zero' ? NONE : d)
  }
  for (const one of isOne(f.card.gives) ? [f.card.gives] : Object.values(f.card.gives as Record<string, One>)) {
    const got = scope.get(one.symbol)
    if (!Array.isArray(got)) faults.push(`${one.symbol} is never stated`)
    else if (!same(got as unknown as Dimension, dimensionOf(one.unit)))
      faults.push(`${one.symbol} comes out in ${print(got as unknown as Dimension)}, the card says ${one.unit}`)
  }
  return faults
}

function read(node: TextNode, scope: Scope, faults: string[]): Found {
  const go = (n: TextNode): Found => read(n, scope, faults)
  const plain = (n: TextNode): Dimension => {
    const d = go(n)
    return d === 'zero' ? NONE : d
  }
  const alike = (list: readonly Found[], where: string): Found => {
    const real = list.filter((d): d is Dimension => d !== 'zero'),
      [first] = real
    for (const d of real) if (first && !same(first, d)) faults.push(`${where} joins ${print(first)} and ${print(d)}`)
    return first ?? 'zero'
  }
  switch (node.is) {
    case 'number':
      // Nothing and «without limit» are so in any unit.
      return node.value === 0 || node.value === Infinity ? 'zero' : NONE
    case 'symbol': {
      const d = scope.get(node.name)
      if (Array.isArray(d)) return d as unknown as Dimension
      faults.push(`${node.name} ${d === undefined ? 'is not defined' : 'cannot be computed with'}`)
      return NONE
    }
    case 'sum':
    case 'difference':
      return alike([go(node.left), go(node.right)], 'a sum')
    case 'product':
      return times(plain(node.left), plain(node.right))
    case 'quotient':
      return times(plain(node.left), plain(node.right), -1)
    case 'minus':
    case 'total':
      return go(node.of)
    case 'power': {
      const base = plain(node.left),
        exponent = literal(node.right)
      if (exponent !== undefined) return raised(base, exponent)
      if (!same(base, NONE) || !same(plain(node.right), NONE)) faults.push('a power with a computed exponent needs plain numbers')
      return NONE
    }
    case 'cases':
      for (const w of node.when) for (const c of w.if) alike([go(c.left), go(c.right)], 'a comparison')
      return alike([...node.when.map(w => go(w.value)), go(node.otherwise)], 'a choice')
    case 'call': {
      const known = scope.get(node.name)
      if (known && typeof known === 'object' && 'curve' in known) {
        node.of.forEach((n, i) => alike([go(n), known.curve[i] as Dimension], `the look-up in ${node.name}`))
        return known.curve.at(-1) as Dimension
      }
      if (node.name === 'sqrt') return raised(plain(node.of[0] as TextNode), 0.5)
      if (['abs', 'min', 'max'].includes(node.name)) return alike(node.of.map(go), node.name)
      if (node.name === 'sign') return NONE
      for (const n of node.of) if (!same(plain(n), NONE)) faults.push(`${node.name} of something with a unit`)
      return NONE
    }
  }
}

const literal = (n: TextNode): number | undefined =>
  n.is === 'number'
    ? n.value
    : n.is === 'minus' && literal(n.of) !== undefined
      ? -(literal(n.of) as number)
      : n.is === 'quotient' && literal(n.left) !== undefined && literal(n.right) !== undefined
        ? (literal(n.left) as number) / (literal(n.right) as number)
        : undefined
