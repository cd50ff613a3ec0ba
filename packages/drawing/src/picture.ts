import type { Kind } from '@ampwright/engine'

/** The unit a kind is drawn in, and the way there from SI; `greatest` is the largest value the axis will show. Must be a straight line (a·v + b). */
export type Units = (kind: Kind, greatest: number) => { readonly unit: string; readonly fromSI: (value: number) => number }

/** What a picture is drawn for. */
export type Page = {
  /** Pixels. Text keeps its size at any width; a narrow picture gets fewer ticks and a key below. */
  readonly width: number
  /** Pixels of the plots together; a key below adds to it. Left out: what suits the width. */
  readonly height?: number
  readonly units: Units
  /** For a file of its own: colours and font names written out, the title drawn. Else colours are custom properties with fallbacks. */
  readonly standalone?: boolean
}

/** From SI to pixels, a straight line: plain data, so that a screen can keep it and drag along it. */
export type Scale = {
  readonly domain: readonly [low: number, high: number]
  readonly range: readonly [from: number, to: number]
  readonly unit: string
}
export const pixelAt = ({ domain: [a, b], range: [p, q] }: Scale, value: number): number => p + ((value - a) / (b - a)) * (q - p)
export const valueAt = ({ domain: [a, b], range: [p, q] }: Scale, pixel: number): number => a + ((pixel - p) / (q - p)) * (b - a)

/** What the picture shows as columns and rows, in the units of its axes: for a file of comma-separated values, and for who cannot see it. */
export type Listing = { readonly columns: readonly string[]; readonly rows: readonly (readonly (string | number | undefined)[])[] }

/** One value under the cursor: in SI, as text with its unit, and where it lies. */
export type Read = {
  readonly name: string
  readonly label: string
  readonly value: number | undefined
  readonly text: string
  readonly y: number | undefined
}
export type Readout = { readonly x: number; readonly text: string; readonly pixel: number; readonly values: readonly Read[] }

/** A finished drawing. */
export type Picture = {
  readonly label: string
  readonly width: number
  readonly height: number
  readonly svg: string
  /** The text alternative: what is drawn, over which range, the extremes, where the marks lie. */
  readonly text: string
  readonly table: () => Listing
}
/** A picture with a common axis along which a cursor runs. */
export type Chart = Picture & {
  readonly scales: { readonly x: Scale; readonly y: readonly Scale[] }
  /** Values of every line at a pixel across the picture, held at the ends of the axis. */
  readonly readout: (pixel: number) => Readout
}

/** Outcomes as the whole program marks them: a shape and a word, never colour alone. */
export const SHAPES = { sound: '●', marginal: '◐', failing: '▲', unanswered: '◌', 'does not apply': '–', accepted: '✓' } as const
export type Outcome = keyof typeof SHAPES
