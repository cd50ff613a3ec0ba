import { type Equation, readText, type TextNode } from '@ampwright/engine'
import { between, brace, mn, mo, parens, row, set, symbolSet, type Typeset, upright } from './math-marks.ts'

/**
 * The text of a formula set as mathematics, equation by equation: fractions, roots, sums, indices, cases under one another; a long sum goes on in further
 * lines. Plain data in the names of MathML, so that a screen draws it and a screen reader speaks it. Undefined where the text is words.
 */
export function typeset(text: string): readonly (readonly Typeset[])[] | undefined {
  let lines: readonly Equation[]
  try {
    lines = readText(text)
  } catch (e) {
    if (e instanceof SyntaxError) return undefined
    throw e
  }
  const halves = /[½¼¾]/.test(text)
  return lines.map(l => {
    const [first, ...more] = inLines(l.value, (n, least) => laid(n, halves, least))
    return [row(symbolSet(l.symbol), mo('='), first as Typeset), ...more]
  })
}

/** Signs a line of mathematics may take before a sum is broken. */
const WIDEST = 58
const width = (s: Typeset | string): number => {
  if (typeof s === 'string') return s.length
  const of = s.of.map(width)
  return s.tag === 'mfrac' ? Math.max(...of) : of.reduce((a, b) => a + b, s.tag === 'mo' ? 1 : 0)
}
/** A sum term by term; a line that would get too wide ends before the sign of the next term. */
function inLines(n: TextNode, go: (n: TextNode, least?: number) => Typeset): readonly Typeset[] {
  const whole = go(n)
  if (width(whole) <= WIDEST || (n.is !== 'sum' && n.is !== 'difference')) return [whole]
  const before = inLines(n.left, go),
    last = before.at(-1) as Typeset,
    term = [between(n.is === 'sum' ? '+' : '−'), go(n.right, 2)]
  return width(last) + term.reduce((s, t) => s + width(t), 0) <= WIDEST
    ? [...before.slice(0, -1), row(last, ...term)]
    : [...before, row(...term)]
}

/** How tightly a thing binds: what binds less than its place asks for stands in brackets. */
const binding = (n: TextNode): number => {
  if (n.is === 'sum' || n.is === 'difference') return 1
  if (n.is === 'minus' || n.is === 'total') return 2
  if (n.is === 'product') return 3
  return 5
}
/** A sum takes in every factor behind it: what ends in one stands in brackets before a further factor. */
const endsInTotal = (n: TextNode): boolean => n.is === 'total' || (n.is === 'product' && endsInTotal(n.right))
type Laid = (n: TextNode, least?: number) => Typeset

function laid(whole: TextNode, halves: boolean, least?: number): Typeset {
  const go: Laid = (n, from = 0) => (binding(n) < from ? parens(inner(n, go, halves)) : inner(n, go, halves))
  return go(whole, least)
}

function inner(n: TextNode, go: Laid, halves: boolean): Typeset {
  switch (n.is) {
    case 'number':
      return numberSet(n.value, halves)
    case 'symbol':
      return symbolSet(n.name)
    case 'sum':
      return row(go(n.left), mo('+'), go(n.right, 2))
    case 'difference':
      return row(go(n.left), mo('−'), go(n.right, 2))
    case 'product':
      return row(go(n.left, endsInTotal(n.left) ? 9 : 2), mo('·'), go(n.right, n.right.is === 'minus' ? 3 : 2))
    case 'quotient':
      return set('mfrac', go(n.left), go(n.right))
    case 'minus':
      return row(mo('−'), go(n.of, 2))
    case 'total':
      return row(mo('∑'), go(n.of, 2))
    case 'power':
      return powerSet(n, go)
    case 'cases':
      return casesSet(n, go)
    case 'call':
      return callSet(n, go)
  }
}

type Pair = Extract<TextNode, { readonly left: TextNode }>
/** A power of a root, a fraction or a call stands on a bracket or behind its name; of a power on a bracket. */
function powerSet(n: Pair, go: Laid): Typeset {
  const base = n.left.is === 'symbol' || n.left.is === 'number' ? go(n.left) : parens(go(n.left))
  return set('msup', base, go(n.right))
}

const NAMED = new Set(['exp', 'ln', 'sin', 'cos', 'tan', 'asin', 'acos', 'atan', 'tanh', 'min', 'max', 'sign', 'round', 'floor', 'ceil'])
function callSet(n: TextNode & { is: 'call' }, go: Laid): Typeset {
  const [first] = n.of
  if (n.name === 'sqrt' && first) return set('msqrt', go(first))
  if (n.name === 'abs' && first) return row(mo('|'), go(first), mo('|'))
  const inside = n.of.flatMap((x, i): Typeset[] => (i === 0 ? [go(x)] : [mo(';'), go(x)]))
  return row(NAMED.has(n.name) ? upright(n.name) : symbolSet(n.name), parens(row(...inside)))
}

function casesSet(n: TextNode & { is: 'cases' }, go: Laid): Typeset {
  const line = (value: TextNode, ...when: Typeset[]): Typeset => set('mtr', set('mtd', go(value)), set('mtd', ...when))
  const rows = n.when.map(w =>
    line(
      w.value,
      set('mtext', 'if\u00a0'),
      row(
        ...w.if.flatMap((c, i): Typeset[] => [...(i === 0 ? [] : [set('mtext', '\u00a0and\u00a0')]), go(c.left), mo(c.sign), go(c.right)]),
      ),
    ),
  )
  return row(brace, set('mtable', ...rows, line(n.otherwise, set('mtext', 'otherwise'))))
}

const HALVES: Readonly<Record<string, string>> = { '0.5': '½', '0.25': '¼', '0.75': '¾' }
/** Numbers as the card prints them; a power of ten where there are many noughts. */
function numberSet(v: number, halves: boolean): Typeset {
  if (v === Math.PI) return upright('π')
  if (v === Number.POSITIVE_INFINITY) return mn('∞')
  const text = String(v)
  if (halves && HALVES[text]) return mn(HALVES[text])
  const [digits, power] = (v >= 1e6 || v < 1e-5) && v !== 0 ? v.toExponential().split('e') : [text]
  if (power === undefined) return mn(text)
  const ten = set('msup', mn('10'), mn(String(Number(power)).replace('-', '−')))
  return digits === '1' ? ten : row(mn(digits as string), mo('·'), ten)
}
