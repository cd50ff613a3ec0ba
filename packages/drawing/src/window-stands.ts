import { cutTo, textWidth } from './extent.ts'
import { LINE_HEIGHT, SIZE, write } from './frame.ts'
import type { Hand } from './inks.ts'
import { laned } from './lanes.ts'
import { outcomeInk } from './marks.ts'
import { element } from './markup.ts'
import { pixelAt, type Scale, SHAPES } from './picture.ts'
import type { Drawn } from './window-bars.ts'
import type { Handle, Stand } from './windows.ts'

const RADIUS = 6
export type Stood = Drawn & { readonly bottom: number; readonly handle?: Handle }

/** Values held against all bars, each with its label below in the first row where it touches no other; one outside the axis is not drawn. */
export function standsOf(hand: Hand, stands: readonly Stand[], scale: Scale, top: number, foot: number, width: number): Stood {
  const inside = stands.filter(s => s.value >= scale.domain[0] && s.value <= scale.domain[1]),
    texts = inside.map(s => cutTo(s.outcome ? `${SHAPES[s.outcome]} ${s.label}` : s.label, SIZE.label, (width - 12) / 1.06)),
    first = foot + LINE_HEIGHT + 3
  const lanes = laned(
    inside.map((s, i) => ({
      at: pixelAt(scale, s.value),
      width: textWidth(texts[i] as string, SIZE.label) * (s.as === 'handle' ? 1.06 : 1) + 4,
    })),
    2,
    width - 2,
  )
  const handle = inside.find(s => s.as === 'handle')
  return {
    shapes: inside.flatMap(s => shapesOf(hand, s, pixelAt(scale, s.value), top, foot)),
    texts: inside.map((s, i) =>
      write(hand, lanes[i]?.centre ?? 0, first + (lanes[i]?.lane ?? 0) * LINE_HEIGHT + 13, texts[i] as string, {
        ink: s.as === 'notch' ? 'quiet' : outcomeInk(s.outcome),
        anchor: 'middle',
        class: 'drawing-label',
        ...(s.as === 'handle' ? { weight: 650 } : {}),
      }),
    ),
    bottom: first + LINE_HEIGHT * (1 + Math.max(-1, ...lanes.map(l => l.lane))),
    ...(handle ? { handle: { value: handle.value, x: pixelAt(scale, handle.value), y: top - RADIUS - 2 } } : {}),
  }
}

function shapesOf(hand: Hand, { as = 'line', outcome }: Stand, x: number, top: number, foot: number): readonly string[] {
  const ink = hand.ink(as === 'notch' ? 'quiet' : outcomeInk(outcome)),
    line = (y1: number, y2: number, more: Record<string, string>): string =>
      element('line', { x1: x, x2: x, y1, y2, stroke: ink, class: 'drawing-mark', ...more })
  if (as === 'notch') return [line(foot - 5, foot + 3, { 'stroke-width': '2' })]
  if (as === 'line') return [line(top - 2, foot + 2, { 'stroke-width': '1.5', 'stroke-dasharray': '3 3' })]
  return [
    line(top - RADIUS, foot + 2, { 'stroke-width': '2.5' }),
    element('circle', { cx: x, cy: top - RADIUS - 2, r: RADIUS, fill: ink, class: 'drawing-handle' }),
  ]
}
