import { cutTo, textWidth } from './extent.ts'
import { SIZE, write } from './frame.ts'
import { type Ground, TEXT_HEIGHT } from './label-places.ts'
import type { Panel } from './line-chart.ts'
import { element } from './markup.ts'
import { pixelAt } from './picture.ts'
import type { Frame } from './plot.ts'

/** Shaded stretches of an axis, and their labels; of several panels only the first says what an upright stretch is. */
export function bandsOf(f: Frame, { bands = [] }: Panel, ground: Ground, first: boolean): { under: string[]; over: string[] } {
  const under: string[] = [],
    over: string[] = [],
    { box, hand } = f
  for (const b of bands) {
    const scale = b.along === 'x' ? f.xScale : f.yScale,
      held = (v: number): number =>
        Math.min(Math.max(pixelAt(scale, v), b.along === 'x' ? box.left : box.top), b.along === 'x' ? box.right : box.bottom)
    const [p, q] = [held(b.from), held(b.to)].sort((m, n) => m - n) as [number, number],
      [x, y, width, height] = b.along === 'x' ? [p, box.top, q - p, box.bottom - box.top] : [box.left, p, box.right - box.left, q - p]
    under.push(element('rect', { x, y, width, height, fill: hand.ink('hair'), class: 'drawing-band' }))
    const text = cutTo(b.label, SIZE.label, box.right - box.left - 6),
      w = textWidth(text, SIZE.label),
      left = Math.max(box.left, Math.min(x + 4, box.right - w)),
      place = { left, right: left + w, top: y + 2, bottom: y + 2 + TEXT_HEIGHT }
    if ((b.along === 'x' && !first) || !ground.fits(place)) continue
    ground.take(place)
    over.push(write(hand, place.left, place.bottom - 3.5, text, { rim: true, class: 'drawing-label' }))
  }
  return { under, over }
}
