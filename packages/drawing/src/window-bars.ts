import { cutTo } from './extent.ts'
import { LINE_HEIGHT, SIZE, write } from './frame.ts'
import type { Hand } from './inks.ts'
import { outcomeInk } from './marks.ts'
import { element } from './markup.ts'
import { pixelAt, type Scale, SHAPES } from './picture.ts'
import type { Window } from './windows.ts'

const BAR = 12
export const PAD = 6
/** From one bar to the next; in a narrow picture each carries its name above. */
export const pitchOf = (narrow: boolean): number => (narrow ? LINE_HEIGHT + BAR + 8 : LINE_HEIGHT + 8)

/** Where bars are drawn. */
export type Place = { readonly hand: Hand; readonly scale: Scale; readonly narrow: boolean; readonly noteRoom: number }
export type Drawn = { readonly shapes: readonly string[]; readonly texts: readonly string[] }

/** How a window stands: shape and words. */
export const noteOf = ({ stands }: Window): string => (stands ? `${SHAPES[stands.outcome]} ${stands.words}` : '')
/** The pixel of a value, held at the ends of the axis. */
export const held = (scale: Scale, v: number): number => Math.min(Math.max(pixelAt(scale, v), scale.range[0]), scale.range[1])

/** One bar with its name and how it stands; texts apart, so that they can be drawn above every line. */
export function barOf(place: Place, w: Window, top: number): Drawn {
  const { hand, scale, narrow } = place,
    y = narrow ? top + LINE_HEIGHT + 1 : top + (pitchOf(false) - BAR) / 2,
    texts = named(place, w, narrow ? top + 13 : y + BAR - 1.5)
  if (w.none === undefined) return { shapes: barShapes(hand, w, scale, y), texts }
  const [from, to] = scale.range,
    none = cutTo(w.none, SIZE.label, to - from - 8)
  return { shapes: [], texts: [...texts, write(hand, from + 4, y + BAR - 1, none, { rim: true, class: 'drawing-label' })] }
}

function named({ hand, scale, narrow, noteRoom }: Place, w: Window, base: number): readonly string[] {
  const [from, to] = scale.range,
    note = noteOf(w),
    room = narrow ? to - from - (note ? noteRoom + 12 : 0) : from - PAD - 4,
    look = { rim: true, class: 'drawing-label' } as const
  const name = write(hand, narrow ? from : from - PAD, base, cutTo(w.name, SIZE.label, room), {
    ...look,
    ink: 'ink',
    anchor: narrow ? 'start' : 'end',
    ...(w.strong ? { weight: 650 } : {}),
  })
  if (!note) return [name]
  const ink = outcomeInk(w.stands?.outcome),
    text = cutTo(note, SIZE.label, noteRoom)
  return [name, write(hand, narrow ? to : to + PAD + 4, base, text, { ...look, ink, anchor: narrow ? 'end' : 'start' })]
}

/** An end inside the picture is closed, one that goes on is open; a ring stands at the best value. */
function barShapes(hand: Hand, w: Window, scale: Scale, y: number): readonly string[] {
  const [low, high] = scale.domain,
    p = w.low === undefined ? scale.range[0] : held(scale, w.low),
    q = w.high === undefined ? scale.range[1] : held(scale, w.high),
    ink = hand.ink(w.strong ? 'ink' : 'quiet')
  const end = (x: number): string => element('line', { x1: x, x2: x, y1: y - 1, y2: y + BAR + 1, stroke: ink, 'stroke-width': '2' })
  const look = { fill: ink, 'fill-opacity': w.strong ? '0.75' : '0.4', class: 'drawing-window' },
    ring = { r: 3, fill: hand.ink('sheet'), stroke: hand.ink('ink'), 'stroke-width': '1.5' }
  return [
    element('rect', { x: Math.min(p, q), y, width: Math.max(Math.abs(q - p), 1), height: BAR, ...look }),
    ...(w.low !== undefined && w.low >= low && w.low <= high ? [end(p)] : []),
    ...(w.high !== undefined && w.high >= low && w.high <= high ? [end(q)] : []),
    ...(w.best !== undefined && w.best >= low && w.best <= high
      ? [element('circle', { cx: pixelAt(scale, w.best), cy: y + BAR / 2, ...ring })]
      : []),
  ]
}
