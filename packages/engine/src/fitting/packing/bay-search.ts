import type { Random } from '../../numerics/random.ts'
import type { Whole } from './answer.ts'
import type { BayLattice, LatticeTurn } from './bay-lattice.ts'
import { type Clashes, type Spot, SWEEPS, type Sweep, BayPart } from './bay-part.ts'

/** Parts filled anew from one side before another side is drawn: what is pushed one way for a while leaves its air on the other side. */
const SEASON = 40
/** Fewest and most modules taken out at a time. */
const FEWEST = 2,
  MOST = 10
/** Trials for each module taken out. */
const TRIALS = 12

/** Arrangements of modules, first from each side in one sweep, then ever fuller ones; pauses often. Ends when there are as many as there can be, or when none fits. */
export function* arrangements(
  lattice: BayLattice,
  table: Clashes,
  chance: Random,
  most: number,
): Generator<{ readonly spots: readonly Spot[]; readonly steps: number }, void> {
  const part = new BayPart(lattice, table)
  let now: readonly Spot[] = []
  for (const sweep of inAnyOrder(SWEEPS, chance)) {
    part.open([0, 0, 0], lattice.counts, sweep, [])
    const spots = part.fillOnce(chance)
    if (spots.length > now.length) now = spots
    yield { spots: now, steps: part.steps }
  }
  while (now.length > 0 && now.length < most) {
    const sweep = SWEEPS[chance.below(SWEEPS.length)] as Sweep
    for (let i = 0; i < SEASON && now.length < most; i++) now = filledAnew(lattice, part, chance, now, sweep)
    yield { spots: now, steps: part.steps }
  }
}

/** The arrangement with some modules near each other taken out and their place filled anew, where that holds no fewer. */
function filledAnew(lattice: BayLattice, part: BayPart, chance: Random, now: readonly Spot[], sweep: Sweep): readonly Spot[] {
  const body = (s: Spot): Whole => (lattice.turns[s.turn] as LatticeTurn).body,
    middle = (s: Spot): number[] => s.at.map((c, i) => c + (body(s)[i] as number) / 2)
  const centre = middle(now[chance.below(now.length)] as Spot),
    count = Math.min(now.length, FEWEST + chance.below(MOST - FEWEST + 1))
  const sorted = now
    .map(spot => ({ spot, far: Math.hypot(...middle(spot).map((c, i) => c - (centre[i] as number))) }))
    .sort((a, b) => a.far - b.far)
    .map(s => s.spot)
  const out = sorted.slice(0, count),
    stay = sorted.slice(count),
    margin = chance.below(1 + Math.min(...body(out[0] as Spot)))
  const low = [0, 1, 2].map(i => Math.max(0, Math.min(...out.map(s => s.at[i] as number)) - margin)),
    high = [0, 1, 2].map(i =>
      Math.min(lattice.counts[i] as number, Math.max(...out.map(s => (s.at[i] as number) + (body(s)[i] as number))) + margin),
    )
  part.open(low as unknown as Whole, high as unknown as Whole, sweep, stay)
  const found = part.fillWell(chance, count + 1, TRIALS * count)
  return found.length >= count ? [...stay, ...found] : now
}

function inAnyOrder<T>(list: readonly T[], chance: Random): readonly T[] {
  const out = [...list]
  for (let i = out.length - 1; i > 0; i--) {
    const j = chance.below(i + 1)
    ;[out[i], out[j]] = [out[j] as T, out[i] as T]
  }
  return out
}
