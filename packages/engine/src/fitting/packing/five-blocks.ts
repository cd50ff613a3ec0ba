import type { Placed } from './answer.ts'

type Block = { readonly x: number; readonly y: number; readonly length: number; readonly width: number }

/**
 * The best packing of a rectangle by five blocks: four about a fifth in the middle, like the sails of a windmill, the boxes of each all one way round.
 * Blocks may be empty, so fewer are among them. It misses the best by a box in a few spaces of many boxes.
 */
export function fiveBlocks(length: number, width: number, boxLength: number, boxWidth: number): readonly Placed[] {
  const held = (l: number, w: number): number =>
    Math.max(Math.floor(l / boxLength) * Math.floor(w / boxWidth), Math.floor(l / boxWidth) * Math.floor(w / boxLength))
  // A block one way round is as long as a number of one side, or nothing is lost by making it so.
  const cuts = (limit: number): number[] => {
    const all = new Set([0, limit])
    for (const side of [boxLength, boxWidth]) for (let n = side; n <= limit; n += side) all.add(n)
    return [...all].sort((a, b) => a - b)
  }
  const xs = cuts(length),
    ys = cuts(width)
  let most = -1,
    best: readonly [number, number, number, number] = [0, 0, 0, 0]
  xs.forEach((x1, i) => {
    for (const x2 of xs.slice(i))
      ys.forEach((y1, j) => {
        const low = held(x2, y1) + held(x1, width - y1)
        for (const y2 of ys.slice(j)) {
          const n = low + held(length - x1, width - y2) + held(length - x2, y2) + held(x2 - x1, y2 - y1)
          if (n > most) {
            most = n
            best = [x1, x2, y1, y2]
          }
        }
      })
  })
  const [x1, x2, y1, y2] = best
  const blocks: readonly Block[] = [
    { x: 0, y: 0, length: x2, width: y1 },
    { x: 0, y: y1, length: x1, width: width - y1 },
    { x: x1, y: y2, length: length - x1, width: width - y2 },
    { x: x2, y: 0, length: length - x2, width: y2 },
    { x: x1, y: y1, length: x2 - x1, width: y2 - y1 },
  ]
  return blocks.flatMap(block => oneWayRound(block, boxLength, boxWidth))
}

/** Boxes of one block, the way round that holds more. */
function oneWayRound({ x, y, length, width }: Block, boxLength: number, boxWidth: number): Placed[] {
  const along = Math.floor(length / boxLength) * Math.floor(width / boxWidth),
    across = Math.floor(length / boxWidth) * Math.floor(width / boxLength)
  const [l, w] = along >= across ? [boxLength, boxWidth] : [boxWidth, boxLength]
  const out: Placed[] = []
  for (let j = 0; (j + 1) * w <= width; j++)
    for (let i = 0; (i + 1) * l <= length; i++) out.push({ at: [x + i * l, y + j * w, 0], sides: [l, w, 1] })
  return out
}
