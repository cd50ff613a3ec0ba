import type { Hand, Ink } from './inks.ts'
import { element } from './markup.ts'

/** How much a line stands out: what the picture is about, what belongs to it, what it is held against, what is tried. */
export type Tone = 'strong' | 'plain' | 'quiet' | 'act'
const TONES: Readonly<Record<Tone, { readonly ink: Ink; readonly width: string }>> = {
  strong: { ink: 'ink', width: '2.4' },
  plain: { ink: 'ink', width: '1.4' },
  quiet: { ink: 'quiet', width: '1.3' },
  act: { ink: 'act', width: '2' },
}
const DASHES = ['', '7 4', '2 3', '10 3 2 3', '14 4', '5 2 1 2', '1 4', '9 2 2 2 2 2'] as const

export type Style = { readonly tone: Tone; readonly dash: string }
/** Lines of one plot differ in their dashes: the first of each tone is solid, and no tone repeats a dash before all were used. A line may name its own. */
export function stylesOf(lines: readonly { readonly tone?: Tone; readonly dash?: number }[]): readonly Style[] {
  const used = new Map<string, number>()
  return lines.map((line, i) => {
    const tone = line.tone ?? (i === 0 ? 'strong' : i % 2 ? 'act' : 'plain'),
      n = line.dash ?? used.get(tone) ?? 0
    used.set(tone, n + 1)
    return { tone, dash: DASHES[n % DASHES.length] as string }
  })
}

export const strokeOf = (hand: Hand, { tone, dash }: Style): Record<string, string | undefined> => ({
  fill: 'none',
  stroke: hand.ink(TONES[tone].ink),
  'stroke-width': TONES[tone].width,
  'stroke-dasharray': dash || undefined,
  'stroke-linejoin': 'round',
  class: `drawing-line drawing-${tone}`,
})
export const inkOf = (tone: Tone): Ink => TONES[tone].ink
/** A short stretch of a line, for a key. */
export const sampleOf =
  (hand: Hand, style: Style, width: number) =>
  (x: number, y: number): string =>
    element('line', { x1: x, y1: y, x2: x + width, y2: y, ...strokeOf(hand, style) })
