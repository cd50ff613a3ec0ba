import { textLines, textWidth } from './extent.ts'
import { type Face, type Hand, handOf, type Ink } from './inks.ts'
import { element, escaped } from './markup.ts'
import type { Page } from './picture.ts'

/** Type sizes [px]. */
export const SIZE = { tick: 12, label: 13, title: 15 } as const
export const LINE_HEIGHT = 17
/** From this width down a picture is a narrow one: fewer ticks, letters beside the lines, a key below. */
export const NARROW = 460
export const isNarrow = (width: number): boolean => width < NARROW

export type Anchor = 'start' | 'middle' | 'end'
export type Writing = {
  readonly ink?: Ink
  readonly face?: Face
  readonly size?: number
  readonly anchor?: Anchor
  readonly weight?: number
  /** A rim in the colour of the sheet, so that a line behind does not cut the letters. */
  readonly rim?: boolean
  readonly class?: string
}

/** Narrower than this nothing can be told; a page not yet laid out says 0. */
const NARROWEST = 200
/** The page with a width that can be drawn for. Throws a RangeError where the width is no number. */
export function sized(page: Page): Page {
  if (!Number.isFinite(page.width)) throw new RangeError(`a drawing was asked for ${page.width} px; widths are numbers of pixels`)
  return { ...page, width: Math.max(NARROWEST, Math.floor(page.width)) }
}

/** One line of text; x is its start, middle or end, y its foot. */
export function write(hand: Hand, x: number, y: number, text: string, w: Writing = {}): string {
  const { ink = 'quiet', face = 'text', size = SIZE.label, anchor = 'start' } = w
  return element(
    'text',
    {
      x,
      y,
      class: w.class,
      fill: hand.ink(ink),
      'font-family': hand.face(face),
      'font-size': String(size),
      'font-weight': w.weight === undefined ? undefined : String(w.weight),
      'text-anchor': anchor === 'start' ? undefined : anchor,
      ...(w.rim ? { stroke: hand.ink('sheet'), 'stroke-width': '4', 'stroke-linejoin': 'round', 'paint-order': 'stroke' } : {}),
    },
    escaped(text),
  )
}

/** Where a title ends: it is drawn only in a file of its own, for on a page the caption stands beside the picture. */
export function titleOf(page: Page, label: string): { readonly svg: readonly string[]; readonly height: number } {
  if (!page.standalone) return { svg: [], height: 0 }
  const hand = handOf(true),
    lines = textLines(label, SIZE.title * 1.08, page.width - 4)
  return {
    svg: lines.map((line, i) => write(hand, 2, 16 + i * 20, line, { ink: 'ink', size: SIZE.title, weight: 650, class: 'drawing-title' })),
    height: lines.length * 20 + 6,
  }
}

/** The picture around its content: size, a name for who hears it, a sheet behind it in a file of its own. */
export function pictureSvg(page: Page, height: number, label: string, text: string, content: readonly string[]): string {
  const { width } = page,
    hand = handOf(page.standalone)
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${Math.ceil(width)} ${Math.ceil(height)}`,
      width: String(Math.ceil(width)),
      height: String(Math.ceil(height)),
      role: 'img',
      'aria-label': `${label}. ${text}`,
      class: 'drawing',
      'font-variant': 'tabular-nums',
    },
    ...(page.standalone ? [element('rect', { width: Math.ceil(width), height: Math.ceil(height), fill: hand.ink('sheet') })] : []),
    ...content,
  )
}

/** One entry of a key: a letter where the line carries one, how the line is drawn, what it is. */
export type Entry = { readonly letter?: string; readonly sample: (x: number, y: number) => string; readonly label: string }
const SAMPLE = 26

/** A key in as many columns as fit; long labels go on below. */
export function keyOf(hand: Hand, entries: readonly Entry[], left: number, top: number, width: number): { svg: string[]; height: number } {
  if (entries.length === 0) return { svg: [], height: 0 }
  const letters = entries.some(e => e.letter !== undefined) ? 16 : 0,
    before = letters + SAMPLE + 6,
    widest = Math.max(...entries.map(e => before + textWidth(e.label, SIZE.label))) + 14
  const columns = Math.max(1, Math.min(entries.length, Math.floor(width / widest))),
    room = width / columns - before - 4,
    svg: string[] = []
  const rows = Math.ceil(entries.length / columns)
  let height = 0
  const tops: number[] = []
  for (let r = 0; r < rows; r++) {
    tops.push(height)
    height += LINE_HEIGHT * Math.max(...[...Array(columns).keys()].map(c => lines(entries[c * rows + r]?.label ?? '', room).length)) + 2
  }
  entries.forEach((e, i) => {
    const x = left + Math.floor(i / rows) * (width / columns),
      y = top + (tops[i % rows] as number) + 13
    if (e.letter !== undefined) svg.push(write(hand, x, y, e.letter, { ink: 'ink', weight: 700 }))
    svg.push(e.sample(x + letters, y - 4.5))
    lines(e.label, room).forEach((line, n) => svg.push(write(hand, x + before, y + n * LINE_HEIGHT, line, { ink: 'ink' })))
  })
  return { svg, height: height + 4 }
}
const lines = (label: string, room: number): readonly string[] => textLines(label, SIZE.label, room)
export const SAMPLE_WIDTH = SAMPLE
