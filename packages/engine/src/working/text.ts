/** The arithmetic that formula texts are written in, read into a tree. See CONTRIBUTING for the grammar in words. */
export type TextNode =
  | { readonly is: 'number'; readonly value: number }
  | { readonly is: 'symbol'; readonly name: string }
  | { readonly is: 'sum' | 'difference' | 'product' | 'quotient' | 'power'; readonly left: TextNode; readonly right: TextNode }
  | { readonly is: 'minus'; readonly of: TextNode }
  | { readonly is: 'total'; readonly of: TextNode }
  | { readonly is: 'call'; readonly name: string; readonly of: readonly TextNode[] }
  | {
      readonly is: 'cases'
      readonly when: readonly { readonly value: TextNode; readonly if: readonly Comparison[] }[]
      readonly otherwise: TextNode
    }
export type Comparison = { readonly left: TextNode; readonly sign: '<' | '≤' | '>' | '≥'; readonly right: TextNode }
export type Equation = { readonly symbol: string; readonly value: TextNode }

const TOKEN = /\s*(\d+(?:\.\d+)?(?:[eE][+-]?\d+)?|[\p{L}°][\p{L}\p{M}\p{Nd}_₀-₉₊₋′″,]*(?<!,)|[½¼¾√Σ∑π∞²³⁴]|[-+−·×/^()|{};,=<>≤≥])/uy
const FRACTION: Readonly<Record<string, number>> = { '½': 0.5, '¼': 0.25, '¾': 0.75 }
const RAISED: Readonly<Record<string, number>> = { '²': 2, '³': 3, '⁴': 4 }
const SIGNS = ['<', '≤', '>', '≥'] as const

function tokens(text: string): string[] {
  const out: string[] = []
  TOKEN.lastIndex = 0
  while (TOKEN.lastIndex < text.length) {
    if (/^\s*$/.test(text.slice(TOKEN.lastIndex))) break
    const at = TOKEN.lastIndex,
      m = TOKEN.exec(text)
    if (!m?.[1]) throw new SyntaxError(`formula text: nothing known at «${text.slice(at, at + 20)}» in «${text}»`)
    out.push(m[1])
  }
  return out
}

/** Reads a text of one line per equation. Throws SyntaxError naming the place: a text is written by us, so a fault in it is a fault of the program. */
export function readText(text: string): readonly Equation[] {
  return text
    .split('\n')
    .filter(line => line.trim() !== '')
    .map(line => new Reader(tokens(line), line).line())
}

class Reader {
  private at = 0
  private readonly list: readonly string[]
  private readonly text: string
  constructor(list: readonly string[], text: string) {
    this.list = list
    this.text = text
  }

  line(): Equation {
    const symbol = this.next()
    this.expect('=')
    const value = this.sum()
    if (this.at < this.list.length) this.fault()
    return { symbol, value }
  }
  private peek = (): string | undefined => this.list[this.at]
  private next(): string {
    const t = this.list[this.at++]
    return t ?? this.fault()
  }
  private takes(...any: string[]): string | undefined {
    const t = this.peek()
    return t !== undefined && any.includes(t) ? this.next() : undefined
  }
  private expect(t: string): void {
    if (this.next() !== t) {
      this.at--
      this.fault(t)
    }
  }
  private fault(wanted = 'something else'): never {
    throw new SyntaxError(`formula text: ${wanted} expected at «${this.list.slice(this.at, this.at + 4).join(' ')}» in «${this.text}»`)
  }
  private sum(): TextNode {
    let left = this.product()
    for (let t = this.takes('+', '−', '-'); t; t = this.takes('+', '−', '-'))
      left = { is: t === '+' ? 'sum' : 'difference', left, right: this.product() }
    return left
  }
  private product(divides = true): TextNode {
    let left = this.signed()
    const signs = divides ? ['·', '×', '/'] : ['·', '×']
    for (let t = this.takes(...signs); t; t = this.takes(...signs))
      left = { is: t === '/' ? 'quotient' : 'product', left, right: this.signed() }
    return left
  }
  private signed(): TextNode {
    if (this.takes('−', '-')) return { is: 'minus', of: this.signed() }
    if (this.takes('Σ', '∑')) return { is: 'total', of: this.product(false) }
    return this.power()
  }
  private power(): TextNode {
    const base: TextNode = this.takes('√') ? { is: 'call', name: 'sqrt', of: [this.atom()] } : this.atom()
    if (this.takes('^')) return { is: 'power', left: base, right: this.signed() }
    const raised = RAISED[this.peek() ?? '']
    if (raised === undefined) return base
    this.at++
    return { is: 'power', left: base, right: { is: 'number', value: raised } }
  }
  private atom(): TextNode {
    const t = this.next()
    if (/^\d/.test(t)) return { is: 'number', value: Number(t) }
    if (t in FRACTION) return { is: 'number', value: FRACTION[t] as number }
    if (t === '∞') return { is: 'number', value: Infinity }
    if (t === 'π') return { is: 'number', value: Math.PI }
    if (t === '(') {
      const inner = this.sum()
      this.expect(')')
      return inner
    }
    if (t === '|') {
      const inner = this.sum()
      this.expect('|')
      return { is: 'call', name: 'abs', of: [inner] }
    }
    if (t === '{') return this.cases()
    if (!/^[\p{L}°]/u.test(t)) {
      this.at--
      this.fault('a number, symbol or bracket')
    }
    if (!this.takes('(')) return { is: 'symbol', name: t }
    const of = [this.sum()]
    while (this.takes(',', ';')) of.push(this.sum())
    this.expect(')')
    return { is: 'call', name: t, of }
  }
  private cases(): TextNode {
    const when: { value: TextNode; if: Comparison[] }[] = []
    for (;;) {
      const value = this.sum()
      if (this.takes('otherwise')) {
        this.expect('}')
        return { is: 'cases', when, otherwise: value }
      }
      this.expect('if')
      const all = [this.comparison()]
      while (this.takes('and')) all.push(this.comparison())
      when.push({ value, if: all })
      this.expect(';')
    }
  }
  private comparison(): Comparison {
    const left = this.sum(),
      sign = this.next() as Comparison['sign']
    if (!SIGNS.includes(sign)) {
      this.at--
      this.fault('a comparison')
    }
    return { left, sign, right: this.sum() }
  }
}
