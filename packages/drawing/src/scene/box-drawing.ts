import { unitOf } from '../axis.ts'
import { pictureSvg, SIZE, sized, titleOf, write } from '../frame.ts'
import { type Hand, handOf, type Ink } from '../inks.ts'
import { element, pixel } from '../markup.ts'
import type { Page, Picture } from '../picture.ts'
import { reading, withUnit } from '../reading.ts'
import { tidy } from '../readout.ts'
import { type BoxSizes, boxPlan, type Flat, type PlanLine, type PlanSize, reachOut } from './box-plan.ts'

export type BoxToDraw = BoxSizes & { readonly name: string; readonly material: string }

/** Room for sizes beside and above, between the views, and to a line of sizes [px]. */
const BESIDE = 70
const ABOVE = 40
const BETWEEN = 46
const OFF = 14
const RIGHT = 10
const INKS: Readonly<Record<PlanLine['is'], { readonly ink: Ink; readonly width: string; readonly dash?: string }>> = {
  outline: { ink: 'ink', width: '1.6' },
  hidden: { ink: 'quiet', width: '1', dash: '4 3' },
  lid: { ink: 'act', width: '1.6' },
  fixing: { ink: 'act', width: '1.6' },
}

/** A battery box from three sides, to scale, with its outer sizes, its wall and the line of its lid. */
export function boxDrawing(box: BoxToDraw, on: Page): Picture {
  const page = sized(on),
    hand = handOf(page.standalone),
    label = `Battery box ${box.name}`,
    title = titleOf(page, label),
    // Points beside the box take room on every side of each view.
    out = reachOut(box),
    scale = (page.width - BESIDE - BETWEEN - RIGHT) / (box.length + box.width + 4 * out),
    plan = boxPlan(box, BETWEEN / scale + 2 * out, OFF / scale + out),
    foot = title.height + ABOVE + (plan.height + 2 * out) * scale,
    fixed = (box.points ?? []).length > 0,
    height = foot + (fixed ? 62 : 44)
  const at = ([u, v]: Flat): Flat => [BESIDE + (u + out) * scale, foot - (v + out) * scale]
  const { unit, fromSI } = unitOf({ label: '', unit: 'm', shows: 'length' }, page.units, Math.max(box.length, box.width, box.height))
  const told = (m: number): string => withUnit(reading(fromSI(m)), unit)
  const text = `Three views, to scale: ${told(box.length)} long, ${told(box.width)} wide, ${told(box.height)} high outside; wall ${told(box.wall)} of ${box.material}; the lid lies on top.${fixed ? ` Fixed at ${box.points?.length} points, marked by crosses.` : ''}`
  const svg = [
    ...title.svg,
    ...plan.lines.map(l => lineOf(hand, l, at)),
    ...plan.sizes.flatMap(s => sizeOf(hand, s, at, told(s.metres))),
    ...plan.words.map(w => {
      const [x, y] = at([w.at[0], w.at[1] - out])
      return write(hand, x, y + 16, w.text, { size: SIZE.tick, anchor: w.end ? 'end' : 'start' })
    }),
    write(hand, BESIDE, foot + 36, `wall ${told(box.wall)}, ${box.material}`, { ink: 'ink' }),
    ...(fixed ? [write(hand, BESIDE, foot + 54, 'crosses: where it is fixed', { ink: 'ink' })] : []),
  ]
  const rows = (['length', 'width', 'height', 'wall'] as const).map(side => [side, tidy(fromSI(box[side]))])
  return {
    label,
    width: page.width,
    height,
    text,
    svg: pictureSvg(page, height, label, text, svg),
    table: () => ({ columns: ['outer size', unit], rows }),
  }
}

function lineOf(hand: Hand, { from, to, is }: PlanLine, at: (p: Flat) => Flat): string {
  const [[x1, y1], [x2, y2]] = [at(from), at(to)],
    { ink, width, dash } = INKS[is]
  return element('line', { x1, y1, x2, y2, stroke: hand.ink(ink), 'stroke-width': width, 'stroke-dasharray': dash })
}

/** A line with a stroke across each end, and its length beside it. */
function sizeOf(hand: Hand, { from, to }: PlanSize, at: (p: Flat) => Flat, text: string): readonly string[] {
  const [[x1, y1], [x2, y2]] = [at(from), at(to)],
    level = Math.abs(y1 - y2) < 0.01,
    stroke = (x: number, y: number): string => `M${pixel(x - 4)} ${pixel(y + 4)}L${pixel(x + 4)} ${pixel(y - 4)}`
  return [
    element('path', {
      d: `M${pixel(x1)} ${pixel(y1)}L${pixel(x2)} ${pixel(y2)}${stroke(x1, y1)}${stroke(x2, y2)}`,
      fill: 'none',
      stroke: hand.ink('quiet'),
    }),
    level
      ? write(hand, (x1 + x2) / 2, y1 - 7, text, { ink: 'ink', anchor: 'middle' })
      : write(hand, x1 - 8, (y1 + y2) / 2 + 4.5, text, { ink: 'ink', anchor: 'end' }),
  ]
}
