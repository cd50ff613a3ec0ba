import { cutTo, textLines, textWidth } from '../extent.ts'
import { isNarrow, LINE_HEIGHT, SIZE, write } from '../frame.ts'
import type { Hand } from '../inks.ts'
import { element, pixel } from '../markup.ts'

/** One way the energy went: its name, its share of the whole, and both as they are said. */
export type Flow = {
  readonly name: string
  readonly energy: number
  readonly share: number
  readonly percent: string
  readonly said: string
}
type Branch = { readonly flow: Flow; readonly thick: number; readonly lines: readonly string[]; readonly slot: number }

const BLOCK = 12
/** Column of the percentages. */
const PERCENT = 52
const TALL = 230
const LABEL = { ink: 'ink', class: 'drawing-label' } as const

/**
 * A stream that parts, drawn from `top` down; gives its foot. Each branch is as thick as its share, and has room for its label, so that none
 * touches another however thin the branches are. What was given back is a block of its own below the charge.
 */
export function flowBranches(
  hand: Hand,
  out: readonly Flow[],
  back: readonly Flow[],
  top: number,
  width: number,
  tallest = TALL,
): { readonly svg: readonly string[]; readonly foot: number } {
  const split = width * (isNarrow(width) ? 0.3 : 0.42),
    tall = tallest / (out.reduce((s, f) => s + f.share, 0) || 1),
    branches = out.map(f => branchOf(f, tall, width - split - BLOCK - PERCENT - 14))
  const foot =
      top +
      Math.max(
        20,
        branches.reduce((s, b) => s + b.slot, 0),
      ),
    trunk = branches.reduce((s, b) => s + b.thick, 0),
    start = (top + foot - trunk) / 2
  const svg = sources(hand, back, start, trunk, tall)
  let from = start,
    to = top
  for (const b of branches) {
    const y = to + (b.slot - b.thick) / 2
    svg.push(
      band(hand, 2 + BLOCK, from, split, y, b.thick),
      block(hand, split, y, b.thick),
      ...labelled(hand, b, split + BLOCK + PERCENT, to),
    )
    from += b.thick
    to += b.slot
  }
  return { svg, foot }
}

/** Name and energy in one line where they fit, else the name in as many as it needs and the energy below. */
function branchOf(flow: Flow, tall: number, room: number): Branch {
  const whole = `${flow.name}, ${flow.said}`,
    lines =
      textWidth(whole, SIZE.label) <= room ? [whole] : [...textLines(flow.name, SIZE.label, room), cutTo(flow.said, SIZE.label, room)],
    thick = Math.max(1, flow.share * tall)
  return { flow, thick, lines, slot: Math.max(thick + 4, lines.length * LINE_HEIGHT + 2) }
}
function labelled(hand: Hand, { flow, lines, slot }: Branch, x: number, top: number): readonly string[] {
  const first = top + slot / 2 + 4.5 - ((lines.length - 1) / 2) * LINE_HEIGHT
  return [
    write(hand, x, first, flow.percent, { ...LABEL, weight: 650, anchor: 'end' }),
    ...lines.map((line, i) => write(hand, x + 10, first + i * LINE_HEIGHT, line, LABEL)),
  ]
}
function sources(hand: Hand, back: readonly Flow[], top: number, trunk: number, tall: number): string[] {
  const given = Math.min(
    trunk,
    back.reduce((s, f) => s - f.share * tall, 0),
  )
  return [block(hand, 2, top, trunk - given), ...(given > 0 ? [block(hand, 2, top + trunk - given, given, 'act')] : [])]
}
const block = (hand: Hand, x: number, y: number, height: number, ink: 'ink' | 'act' = 'ink'): string =>
  element('rect', { x, y, width: BLOCK, height, fill: hand.ink(ink), class: 'drawing-flow' })

/** A band from one block to another, level at both ends. */
function band(hand: Hand, x0: number, y0: number, x1: number, y1: number, thick: number): string {
  const [a, b, c] = [x0, (x0 + x1) / 2, x1].map(pixel) as [string, string, string],
    [p, q, r, s] = [y0, y1, y1 + thick, y0 + thick].map(pixel) as [string, string, string, string],
    d = `M${a},${p}C${b},${p},${b},${q},${c},${q}L${c},${r}C${b},${r},${b},${s},${a},${s}Z`
  return element('path', { d, fill: hand.ink('quiet'), 'fill-opacity': '0.35', class: 'drawing-branch' })
}
