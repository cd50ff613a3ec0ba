import { type Random, random } from '../../numerics/random.ts'
import { checkSides, type Whole } from './answer.ts'
import { type BlockBox, type Blocks, type BoxKind, blocksFor, type Support, waysRound } from './container-blocks.ts'
import { type Load, Loader, PLAIN, type Taste } from './container-search.ts'
import { searchContainerThrough } from './container-small.ts'
import { WIDE } from './container-spaces.ts'

/** One answer of a search for volume: each holds at least as much as the one before. */
export type ContainerAnswer = {
  readonly placed: readonly BlockBox[]
  /** Volume of the boxes placed, in cubed units. */
  readonly volume: number
  /** No arrangement holds more. Where it equals the volume, the answer is proven best. */
  readonly bound: number
  /** What lies between the two, as part of the bound. */
  readonly gap: number
  /** Whether every box of this answer stands with its whole floor on others or on the floor of the space. */
  readonly support: Support
  readonly seed: number
  /** Work done so far: the same seed and the same steps give the same answer, anywhere. */
  readonly steps: number
}

type Found = { volume: number; placed: readonly BlockBox[] }

/** Ways to value blocks that are tried, each once without looking ahead; the best of them then look ahead. */
const TASTES = 32
/** Most half-filled spaces side by side. */
const WIDEST = 1000
/** Most boxes of all kinds together that are laid out. */
const MANY = 5000

/**
 * Boxes of several kinds in one space, for as much volume as can be: ever better answers, until the best is proven, which for most spaces is never. Small spaces are searched
 * through. Others are filled block by block, at first with the block that looks best each time, then by looking ahead on more and more half-filled spaces side by side: each
 * is judged by what it holds when filled up.
 *
 * Whole units, gaps counted into the boxes; the third side of the space is upright. Throws RangeError on a side that is none, a count that is none, or above 5000 boxes.
 * Source: Araya and Riff, A beam search approach to the container loading problem, Computers & Operations Research 43 (2014) 100–107 (from memory).
 */
export function* packContainer(
  space: Whole,
  kinds: readonly BoxKind[],
  { seed, support }: { readonly seed: number; readonly support: Support },
): Generator<ContainerAnswer, void> {
  checkContainer(space, kinds)
  // Seeds are checked before work begins.
  const chance = random(seed),
    usable = kinds.map(kind =>
      waysRound(kind).some(way => way.every((s, i) => s <= (space[i] as number))) ? kind : { ...kind, count: 0 },
    ),
    small = searchContainerThrough(space, usable, support)
  const best: Found = { volume: small?.volume ?? 0, placed: small?.placed ?? [] },
    bound = small?.proven ? small.volume : volumeBound(space, usable)
  const answer = (steps: number): ContainerAnswer => ({
    ...best,
    bound,
    gap: bound === 0 ? 0 : 1 - best.volume / bound,
    support,
    seed,
    steps: steps + (small?.steps ?? 0),
  })
  if (small) yield answer(0)
  if (bound === best.volume) {
    if (!small) yield answer(0)
    return
  }
  const blocks = blocksFor(space, usable, support),
    loader = new Loader(space, usable, blocks, support)
  const tastes = Array.from({ length: TASTES }, (_, i) => ({ taste: i === 0 ? PLAIN : drawn(chance), volume: 0 }))
  function* pass(one: (typeof tastes)[number], width: number): Generator<ContainerAnswer, void> {
    loader.prefer(one.taste)
    const now: Found = { volume: 0, placed: [] }
    for (const _ of beam(loader, blocks, width, now)) {
      if (now.volume > best.volume) Object.assign(best, now)
      yield answer(loader.steps)
      if (best.volume === bound) return
    }
    one.volume = now.volume
  }
  for (const one of tastes) {
    yield* pass(one, 1)
    if (best.volume === bound) return
  }
  let last: (typeof tastes)[number] | undefined
  for (let width = 2; ; width = Math.min(WIDEST, width * Math.SQRT2)) {
    // The taste that came furthest, but not twice running.
    const [next] = tastes.filter(t => t !== last).sort((a, b) => b.volume - a.volume)
    last = next as (typeof tastes)[number]
    yield* pass(last, Math.floor(width))
    if (best.volume === bound) return
  }
}

/** The last answer of a search that has proven its best, or has done so many steps. */
export function containerWithin(search: Generator<ContainerAnswer, void>, steps: number): ContainerAnswer {
  let last: ContainerAnswer | undefined
  for (const answer of search) {
    last = answer
    if (answer.steps >= steps) break
  }
  if (!last) throw new RangeError('packing: the search gave no answer')
  return last
}

function checkContainer(space: Whole, kinds: readonly BoxKind[]): void {
  checkSides({ 'space length': space[0], 'space width': space[1], 'space height': space[2] })
  kinds.forEach(({ sides, count }, i) => {
    checkSides({ [`length of box ${i + 1}`]: sides[0], [`width of box ${i + 1}`]: sides[1], [`height of box ${i + 1}`]: sides[2] })
    if (!Number.isInteger(count) || count < 0)
      throw new RangeError(`packing: the count of box ${i + 1} must be a whole number of at least 0, found ${count}`)
  })
  const all = kinds.reduce((sum, k) => sum + k.count, 0)
  if (all > MANY) throw new RangeError(`packing: at most ${MANY} boxes of several kinds are laid out, found ${all}`)
}

/** What no arrangement passes: all boxes together, or the space. */
function volumeBound(space: Whole, kinds: readonly BoxKind[]): number {
  const cargo = kinds.reduce((sum, { count, sides }) => sum + count * sides[0] * sides[1] * sides[2], 0)
  return Math.min(space[0] * space[1] * space[2], cargo)
}

/** Another way to value blocks: which suits a problem shows only when it is tried. */
function drawn(chance: Random): Taste {
  const any = (list: readonly number[]): number => list[chance.below(list.length)] as number
  return {
    contact: any([1, 2, 4, 4]),
    boxes: any([0, 0.1, 0.2, 0.3, 0.4]),
    loss: any([1, 1, 2]),
    near: any([0, 0.01, 0.02, 0.03, 0.04]),
    largest: any([1, 0.3, 0.1, 0.04]),
  }
}

type Child = { readonly load: Load; readonly volume: number }

/** Fills from nothing with so many half-filled spaces side by side; pauses after each that was taken a block further. */
function* beam(loader: Loader, blocks: Blocks, width: number, best: Found): Generator<void, void> {
  const out = new Int32Array(width),
    values = new Float64Array(width),
    trial = loader.empty()
  let level: Child[] = [{ load: loader.empty(), volume: -1 }]
  while (level.length > 0) {
    const children: Child[] = []
    for (const { load, volume } of level) {
      const n = loader.next(load, width, out, values)
      for (let k = 0; k < n; k++) {
        const child = loader.empty()
        child.copyFrom(load)
        loader.place(child, out[k] as number)
        // The first is what filling up its parent has met already.
        const full = k === 0 && volume >= 0 ? volume : filledUp(loader, blocks, child, trial, best)
        children.push({ load: child, volume: full })
      }
      yield
    }
    children.sort((a, b) => b.volume - a.volume)
    // Of those that come to the same volume one is kept: they are mostly the same boxes in another order.
    level = children.filter((c, i) => i === 0 || c.volume !== (children[i - 1] as Child).volume).slice(0, width)
  }
}

function filledUp(loader: Loader, blocks: Blocks, load: Load, trial: Load, best: Found): number {
  trial.copyFrom(load)
  loader.fillUp(trial)
  if (trial.volume > best.volume) {
    best.volume = trial.volume
    best.placed = boxesOf(trial, blocks)
  }
  return trial.volume
}

function boxesOf(load: Load, blocks: Blocks): BlockBox[] {
  const out: BlockBox[] = []
  for (let i = 0; i < load.placedCount * WIDE; i += WIDE)
    for (const box of blocks.layout(load.placed[i + 6] as number))
      out.push({ ...box, at: box.at.map((c, k) => c + (load.placed[i + k] as number)) as unknown as Whole })
  return out
}
