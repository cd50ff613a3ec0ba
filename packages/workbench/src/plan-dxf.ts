import type { Plan } from '@ampwright/drawing'
import { type DxfLine, type DxfText, writeDxf } from '@ampwright/exchange'

const LAYERS = [
  { name: 'OUTLINE', colour: 7 },
  { name: 'HIDDEN', colour: 8 },
  { name: 'LID', colour: 5 },
  { name: 'FIXING', colour: 1 },
  { name: 'SIZES', colour: 3 },
] as const
const LAYER_OF = { outline: 'OUTLINE', hidden: 'HIDDEN', lid: 'LID', fixing: 'FIXING' } as const
const MM = 1000
type Flat = readonly [number, number]
const mm = ([u, v]: Flat): Flat => [u * MM, v * MM]

/** A plan as a DXF file in millimetres, its lines, its lid and its sizes on layers of their own. */
export function planDxf(label: string, plan: Plan): string {
  const letter = (plan.width * MM) / 60
  const sizes = plan.sizes.map(s => ({ from: mm(s.from), to: mm(s.to), text: `${Math.round(s.metres * 1e4) / 10}` }))
  const lines: readonly DxfLine[] = [
    ...plan.lines.map(l => ({ layer: LAYER_OF[l.is], from: mm(l.from), to: mm(l.to) })),
    ...sizes.flatMap(({ from, to }) => [{ layer: 'SIZES', from, to }, ...[from, to].map(p => stroke(p, letter / 2))]),
  ]
  const texts: readonly DxfText[] = [
    ...sizes.map(({ from: [u1, v1], to: [u2, v2], text }): DxfText => {
      const level = v1 === v2
      return {
        layer: 'SIZES',
        at: level ? [(u1 + u2) / 2, v1 + letter / 2] : [u1 - letter / 2, (v1 + v2) / 2],
        height: letter,
        text,
        end: !level,
      }
    }),
    ...plan.words.map(({ at, text, end }): DxfText => {
      const [u, v] = mm(at)
      return { layer: 'SIZES', at: [u, v - 1.5 * letter], height: letter, text, end }
    }),
    { layer: 'SIZES', at: [0, -4 * letter], height: letter, text: `${label}, outer sizes in mm` },
  ]
  return writeDxf({ layers: LAYERS, lines, texts, note: 'millimetres' })
}

/** The stroke across an end of a size. */
const stroke = ([u, v]: Flat, reach: number): DxfLine => ({ layer: 'SIZES', from: [u - reach, v - reach], to: [u + reach, v + reach] })
