/**
 * Spaces with a known best number of boxes of one kind, all worked out again for this program: a packing found and checked, the upper side by a bound or by
 * exhaustive search. Those with `published` are printed in Birgin, Lobato and Morabito, J. Oper. Res. Soc. 61 (2010) 306–320. `long` ones take a search of seconds,
 * on a busy machine many: they run in the long count.
 */
export type LayerCase = {
  readonly space: readonly [length: number, width: number]
  readonly box: readonly [length: number, width: number]
  readonly best: number
  readonly published?: true
  readonly long?: true
}
const layer = (L: number, W: number, l: number, w: number, best: number, more: Partial<LayerCase> = {}): LayerCase => ({
  space: [L, W],
  box: [l, w],
  best,
  ...more,
})
export const LAYERS: readonly LayerCase[] = [
  layer(22, 16, 5, 3, 23),
  layer(30, 22, 7, 4, 23),
  layer(46, 34, 11, 4, 35),
  layer(50, 36, 11, 7, 23),
  layer(86, 82, 15, 11, 42),
  layer(86, 52, 15, 11, 26),
  layer(34, 23, 5, 4, 38),
  layer(42, 39, 9, 4, 45, { published: true }),
  layer(43, 26, 7, 3, 53, { published: true }),
  layer(49, 28, 8, 3, 57, { published: true }),
  layer(57, 34, 7, 4, 69),
  layer(63, 44, 8, 5, 69, { long: true }),
  layer(61, 38, 10, 3, 77, { long: true }),
  layer(67, 37, 11, 3, 75),
  layer(93, 46, 13, 4, 82, { long: true }),
  layer(74, 46, 7, 5, 97, { long: true }),
  layer(120, 80, 27, 20, 16),
  layer(1200, 800, 365, 245, 9),
  layer(1200, 1000, 330, 220, 15),
  layer(1200, 800, 208, 165, 27),
  layer(1300, 900, 355, 152, 19),
  layer(1500, 1100, 390, 152, 26),
  layer(1200, 850, 590, 225, 7),
  layer(980, 620, 260, 168, 12),
  layer(640, 400, 173, 45, 31),
  layer(1100, 500, 220, 71, 35),
]

export type BoxCase = {
  readonly space: readonly [number, number, number]
  readonly box: readonly [number, number, number]
  readonly best: number
  /** What the program proves never to be passed. */
  readonly bound: number
  readonly long?: true
}
const cube = (side: number, box: readonly [number, number, number], best: number, bound: number, more: Partial<BoxCase> = {}): BoxCase => ({
  space: [side, side, side],
  box,
  best,
  bound,
  ...more,
})
/** That 15 do not go into the second takes an integer program. Slothouber and Graatsma; de Bruijn 1969; Hoffman 1978 (from memory). */
export const BOXES: readonly BoxCase[] = [
  cube(3, [1, 2, 2], 6, 6),
  cube(5, [1, 2, 4], 14, 15),
  cube(6, [1, 2, 4], 26, 26),
  cube(4, [1, 2, 3], 10, 10),
  cube(7, [1, 3, 4], 28, 28),
  cube(15, [4, 5, 6], 27, 27, { long: true }),
]
