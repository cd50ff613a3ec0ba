import type { Whole } from './answer.ts'

/** Boxes of one kind: three sides, which of them may stand upright, and how many there are. */
export type BoxKind = { readonly sides: Whole; readonly upright: readonly [boolean, boolean, boolean]; readonly count: number }
/** `full`: every box stands with its whole floor on boxes below or on the floor of the space. `none`: it need not. */
export type Support = 'full' | 'none'

/** A cuboid of boxes laid out together, a list of columns. Made once for each problem, largest first. */
export type Blocks = {
  readonly count: number
  readonly length: Int32Array
  readonly width: Int32Array
  readonly height: Int32Array
  /** Rectangle on its top, from the low corner, that carries what stands on it. */
  readonly topLength: Int32Array
  readonly topWidth: Int32Array
  /** Volume of its boxes. */
  readonly volume: Float64Array
  readonly boxes: Int32Array
  /** What it takes: kinds and how many of each, from `from[b]` to `from[b + 1]`. */
  readonly from: Int32Array
  readonly kind: Int32Array
  readonly takes: Int32Array
  /** Its boxes from its low corner, as kind, x, y, z and three sides. */
  readonly layout: (block: number) => readonly BlockBox[]
}
export type BlockBox = { readonly kind: number; readonly at: Whole; readonly sides: Whole }

type Block = {
  readonly sides: Whole
  readonly top: readonly [number, number]
  readonly volume: number
  readonly boxes: number
  readonly needs: readonly (readonly [kind: number, count: number])[]
  /** A grid of one kind one way round, or two blocks along an axis. */
  readonly made:
    | { readonly kind: number; readonly box: Whole; readonly grid: Whole }
    | { readonly first: Block; readonly second: Block; readonly axis: 0 | 1 | 2 }
}

/** Most blocks kept: more take longer to look through than they gain. */
const MOST = 6000
/** Least part of a block of several kinds that must be boxes. */
const FILLED = 0.98

/** The ways round a kind may lie that differ: the upright side last. */
export function waysRound({ sides: [a, b, c], upright }: BoxKind): readonly Whole[] {
  const all: Whole[] = []
  if (upright[0]) all.push([b, c, a], [c, b, a])
  if (upright[1]) all.push([a, c, b], [c, a, b])
  if (upright[2]) all.push([a, b, c], [b, a, c])
  return all.filter((t, i) => all.findIndex(o => o[0] === t[0] && o[1] === t[1] && o[2] === t[2]) === i)
}

/**
 * Blocks for a space: grids of one kind one way round, and blocks of several kinds, each made of two smaller ones side by side or one upon the other with hardly
 * any air (2 in 100). With full support one stands upon another only within the rectangle that carries.
 *
 * Source: Fanslau and Bortfeldt, INFORMS J. Computing 22 (2010) 222–235, simple and general blocks.
 */
export function blocksFor(space: Whole, kinds: readonly BoxKind[], support: Support): Blocks {
  const grown = grow(space, kinds, support),
    seen = new Set(grown.map(keyOf))
  const grids = kinds.flatMap((kind, k) => waysRound(kind).flatMap(box => gridsOf(space, k, kind.count, box)))
  const more = grids.filter(g => !seen.has(keyOf(g))).sort((a, b) => b.volume - a.volume)
  return listed([...grown, ...more.slice(0, MOST - Math.min(MOST, grown.length))])
}

function gridsOf(space: Whole, kind: number, count: number, box: Whole): Block[] {
  const out: Block[] = [],
    most = space.map((s, i) => Math.floor(s / (box[i] as number))) as unknown as Whole
  for (let i = 1; i <= most[0] && i <= count; i++)
    for (let j = 1; j <= most[1] && i * j <= count; j++)
      for (let k = 1; k <= most[2] && i * j * k <= count; k++) out.push(grid(kind, box, [i, j, k]))
  return out
}

function grid(kind: number, box: Whole, [i, j, k]: Whole): Block {
  const boxes = i * j * k
  return {
    sides: [box[0] * i, box[1] * j, box[2] * k],
    top: [box[0] * i, box[1] * j],
    volume: boxes * box[0] * box[1] * box[2],
    boxes,
    needs: [[kind, boxes]],
    made: { kind, box, grid: [i, j, k] },
  }
}

/** From single boxes, each block joined with all before it, until there are half as many as may be kept. */
function grow(space: Whole, kinds: readonly BoxKind[], support: Support): Block[] {
  const out: Block[] = [],
    seen = new Set<string>(),
    most = MOST / 2,
    sides = [new Int32Array(most), new Int32Array(most), new Int32Array(most)] as const,
    volumes = new Float64Array(most)
  const add = (block: Block | undefined): void => {
    if (!block || out.length === most) return
    const key = keyOf(block)
    if (seen.has(key)) return
    seen.add(key)
    volumes[out.length] = block.volume
    sides.forEach((s, i) => {
      s[out.length] = block.sides[i] as number
    })
    out.push(block)
  }
  kinds.forEach((kind, k) => {
    if (kind.count < 1) return
    for (const box of waysRound(kind)) if (box.every((s, i) => s <= (space[i] as number))) add(grid(k, box, [1, 1, 1]))
  })
  for (let i = 0; i < out.length && out.length < most; i++)
    for (const axis of [0, 1, 2] as const) {
      const along = sides[axis],
        one = sides[axis === 0 ? 1 : 0],
        other = sides[axis === 2 ? 1 : 2],
        [l, w, h, v] = [along[i] as number, one[i] as number, other[i] as number, volumes[i] as number]
      for (let j = 0; j <= i; j++) {
        // Most pairs leave too much air: that is seen by numbers alone.
        const length = l + (along[j] as number)
        if (length > space[axis]) continue
        const w2 = one[j] as number,
          h2 = other[j] as number
        if (v + (volumes[j] as number) < FILLED * length * (w > w2 ? w : w2) * (h > h2 ? h : h2)) continue
        add(joined(kinds, support, out[i] as Block, out[j] as Block, axis))
        if (axis === 2 && support === 'full') add(joined(kinds, support, out[j] as Block, out[i] as Block, axis))
      }
    }
  return out
}

/** Two blocks along an axis, or undefined where that takes more boxes than there are or the upper one stands on air. */
function joined(kinds: readonly BoxKind[], support: Support, a: Block, b: Block, axis: 0 | 1 | 2): Block | undefined {
  const side = (i: 0 | 1 | 2): number => (i === axis ? a.sides[i] + b.sides[i] : Math.max(a.sides[i], b.sides[i])),
    sides: Whole = [side(0), side(1), side(2)]
  const top = support === 'full' ? carrying(a, b, axis) : ([sides[0], sides[1]] as const),
    needs = top && together(kinds, a, b)
  return needs && { sides, top, volume: a.volume + b.volume, boxes: a.boxes + b.boxes, needs, made: { first: a, second: b, axis } }
}

function carrying(a: Block, b: Block, axis: 0 | 1 | 2): readonly [number, number] | undefined {
  if (axis === 2) return b.sides[0] <= a.top[0] && b.sides[1] <= a.top[1] ? b.top : undefined
  if (a.sides[2] !== b.sides[2] || a.top[axis] !== a.sides[axis]) return undefined
  return axis === 0 ? [a.top[0] + b.top[0], Math.min(a.top[1], b.top[1])] : [Math.min(a.top[0], b.top[0]), a.top[1] + b.top[1]]
}

function together(kinds: readonly BoxKind[], a: Block, b: Block): Block['needs'] | undefined {
  const sum = new Map(a.needs)
  for (const [kind, count] of b.needs) {
    const all = (sum.get(kind) ?? 0) + count
    if (all > (kinds[kind] as BoxKind).count) return undefined
    sum.set(kind, all)
  }
  return [...sum].sort((x, y) => x[0] - y[0])
}

const keyOf = ({ sides, top, needs }: Block): string => `${sides};${top};${needs.join(' ')}`

function listed(blocks: Block[]): Blocks {
  blocks.sort((a, b) => b.volume - a.volume || a.boxes - b.boxes)
  const from = new Int32Array(blocks.length + 1)
  blocks.forEach((b, i) => {
    from[i + 1] = (from[i] as number) + b.needs.length
  })
  const needs = blocks.flatMap(b => b.needs)
  return {
    count: blocks.length,
    length: Int32Array.from(blocks, b => b.sides[0]),
    width: Int32Array.from(blocks, b => b.sides[1]),
    height: Int32Array.from(blocks, b => b.sides[2]),
    topLength: Int32Array.from(blocks, b => b.top[0]),
    topWidth: Int32Array.from(blocks, b => b.top[1]),
    volume: Float64Array.from(blocks, b => b.volume),
    boxes: Int32Array.from(blocks, b => b.boxes),
    from,
    kind: Int32Array.from(needs, n => n[0]),
    takes: Int32Array.from(needs, n => n[1]),
    layout: block => laidOut(blocks[block] as Block, [0, 0, 0]),
  }
}

function laidOut({ made }: Block, at: Whole): BlockBox[] {
  if ('first' in made) {
    const next = at.map((c, i) => c + (i === made.axis ? (made.first.sides[i] as number) : 0)) as unknown as Whole
    return [...laidOut(made.first, at), ...laidOut(made.second, next)]
  }
  const out: BlockBox[] = [],
    [a, b, c] = made.box
  for (let k = 0; k < made.grid[2]; k++)
    for (let j = 0; j < made.grid[1]; j++)
      for (let i = 0; i < made.grid[0]; i++)
        out.push({ kind: made.kind, at: [at[0] + i * a, at[1] + j * b, at[2] + k * c], sides: made.box })
  return out
}
