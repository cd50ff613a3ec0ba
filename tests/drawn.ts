import { XmlReader } from '../packages/exchange/src/xml.ts'

export type Element = { readonly name: string; readonly of: (attribute: string) => string; readonly at: (attribute: string) => number }
export type Box = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number }
export type Text = { readonly text: string; readonly box: Box; readonly size: number }
export type Drawn = {
  readonly width: number
  readonly height: number
  readonly label: string
  readonly elements: readonly Element[]
  readonly texts: readonly Text[]
}

/** Reads SVG text with the reader of exchanged files; throws where it is not well formed. */
export function readSvg(svg: string): Drawn {
  const elements: Element[] = [],
    texts: Text[] = [],
    open: Element[] = []
  const reader = new XmlReader({
    open: (name, attributes) => {
      const element: Element = { name, of: a => attributes.get(a) ?? '', at: a => Number(attributes.get(a) ?? 0) }
      elements.push(element)
      open.push(element)
      return name === 'text'
    },
    close: (name, text) => {
      const element = open.pop() as Element
      if (name === 'text') texts.push(textOf(element, text))
    },
  })
  reader.take(svg)
  reader.end()
  const [root] = elements as [Element],
    [, , width = 0, height = 0] = root.of('viewBox').split(' ').map(Number)
  return { width, height, label: root.of('aria-label'), elements, texts }
}

/** Narrow, wide and other letters, or all equally wide: a plain estimate of its own, not that of the drawing. */
const letter = (c: string): number => (/[fijlrtI .,:;|'()\u202f]/.test(c) ? 0.29 : /[mwMW▲◐◌]/.test(c) ? 0.8 : 0.52)
function textOf(element: Element, text: string): Text {
  const size = element.at('font-size'),
    width = size * (element.of('font-family').includes('Mono') ? 0.6 * text.length : [...text].reduce((w, c) => w + letter(c), 0)),
    anchor = element.of('text-anchor'),
    left = element.at('x') - (anchor === 'end' ? width : anchor === 'middle' ? width / 2 : 0)
  return { text, size, box: { left, right: left + width, top: element.at('y') - 0.72 * size, bottom: element.at('y') + 0.1 * size } }
}

/** Every place an element reaches, as [x, y]. */
function places(e: Element): readonly (readonly [number, number])[] {
  switch (e.name) {
    case 'line':
      return [
        [e.at('x1'), e.at('y1')],
        [e.at('x2'), e.at('y2')],
      ]
    case 'rect':
      return [
        [e.at('x'), e.at('y')],
        [e.at('x') + e.at('width'), e.at('y') + e.at('height')],
      ]
    case 'circle':
      return [
        [e.at('cx') - e.at('r'), e.at('cy') - e.at('r')],
        [e.at('cx') + e.at('r'), e.at('cy') + e.at('r')],
      ]
    case 'path': {
      const numbers = (e.of('d').match(/-?\d+(\.\d+)?(e-?\d+)?/g) ?? []).map(Number)
      return Array.from({ length: numbers.length / 2 }, (_, i) => [numbers[2 * i] as number, numbers[2 * i + 1] as number])
    }
    default:
      return []
  }
}

/** What is wrong with a picture: something outside it, a text over another, a number that is none. */
export function faults(svg: string): readonly string[] {
  const { width, height, elements, texts } = readSvg(svg),
    out: string[] = []
  for (const word of ['NaN', 'Infinity', 'undefined', 'null']) if (svg.includes(word)) out.push(`contains ${word}`)
  const inside = (x: number, y: number): boolean => x >= -0.5 && y >= -0.5 && x <= width + 0.5 && y <= height + 0.5
  for (const e of elements) for (const [x, y] of places(e)) if (!inside(x, y)) out.push(`${e.name} at ${x}, ${y} lies outside`)
  for (const { text, box } of texts) {
    if (text.trim() === '') out.push('an empty text')
    if (!inside(box.left, box.top) || !inside(box.right, box.bottom)) out.push(`«${text}» leaves the picture`)
  }
  for (const [i, a] of texts.entries())
    for (const b of texts.slice(0, i)) if (over(a.box, b.box)) out.push(`«${a.text}» lies over «${b.text}»`)
  return out
}
const over = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
