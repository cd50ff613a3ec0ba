import type { VoxelField } from '../voxel-field.ts'
import { type BayModule, stripOf, type Turn } from './bay-module.ts'
import type { Whole } from './answer.ts'

/** A turn in steps of the lattice: the body, the body with its clearance, and the strip as low corner and sides from the low corner of the body. */
export type LatticeTurn = {
  readonly turn: Turn
  readonly body: Whole
  readonly pitch: Whole
  readonly strip: { readonly from: Whole; readonly to: Whole } | undefined
}

/** The places a module may have: low corners on steps of the lattice, each cube of the field cut into `cut` steps a side. */
export type BayLattice = {
  readonly field: VoxelField
  /** One step [m]. */
  readonly step: number
  readonly cut: number
  readonly counts: Whole
  readonly turns: readonly LatticeTurn[]
  /** For each turn, 1 where its body and its strip are free, x first, then y, then z. */
  readonly open: readonly Uint8Array[]
  /** The same with strips rounded inwards: no module anywhere between two steps covers what these do not, so bounds are drawn from them. */
  readonly reach: readonly Uint8Array[]
}

/** Most places held in memory, all turns together. */
export const MOST_PLACES = 12e6
/** Cubes are cut no finer than this, and only while so many places are not passed: a finer lattice is searched more slowly. */
const CUT_PLACES = 2e6
const FINEST = 5
/** What binary fractions may be off by, in steps. */
export const HAIR = 1e-6

/** Steps a length takes, rounded up. */
export const stepsOf = (length: number, step: number): number => Math.ceil(length / step - HAIR)

/** The cut of the cubes that wastes least when sides with clearance are rounded up; of equal ones the coarsest. */
export function bestCut(field: VoxelField, { size, clearance }: BayModule, turns: number): number {
  const cubes = field.counts[0] * field.counts[1] * field.counts[2]
  let best = 1,
    least = Infinity
  for (let cut = 1; cut <= FINEST && (cut === 1 || cubes * cut ** 3 * turns <= CUT_PLACES); cut++) {
    const step = field.edge / cut
    const waste = size.reduce((sum, s) => sum + (stepsOf(s + clearance, step) * step) / (s + clearance) - 1, 0)
    if (waste < least - 0.003) {
      least = waste
      best = cut
    }
  }
  return best
}

/** Lays the lattice over a field of free cubes. Throws RangeError where field and turns make too many places. */
export function bayLattice(field: VoxelField, module: BayModule, turns: readonly Turn[]): BayLattice {
  const cubes = field.counts[0] * field.counts[1] * field.counts[2]
  if (cubes * turns.length > MOST_PLACES)
    throw new RangeError(`packing: the bay has ${cubes} cubes, with ${turns.length} ways round more than are searched; use larger cubes`)
  const cut = bestCut(field, module, turns.length),
    step = field.edge / cut,
    counts = field.counts.map(n => n * cut) as unknown as Whole
  const sums = blockedSums(field)
  const lattice = turns.map(turn => latticeTurn(turn, module, step)),
    open = lattice.map(t => openPlaces(field, sums, cut, counts, t.body, t.strip))
  const reach = lattice.map((t, i) => {
    const inner = stripIn(t.turn, module, step, Math.ceil, Math.floor)
    return sameStrip(inner, t.strip) ? (open[i] as Uint8Array) : openPlaces(field, sums, cut, counts, t.body, inner)
  })
  return { field, step, cut, counts, turns: lattice, open, reach }
}

function latticeTurn(turn: Turn, module: BayModule, step: number): LatticeTurn {
  const body = turn.sides.map(s => stepsOf(s, step)) as unknown as Whole,
    pitch = turn.sides.map(s => stepsOf(s + module.clearance, step)) as unknown as Whole
  // Rounded outwards, so that a strip free on the lattice is free.
  return { turn, body, pitch, strip: stripIn(turn, module, step, Math.floor, Math.ceil) }
}

type Round = (x: number) => number
/** The strip in whole steps from the low corner of the body, its ends rounded so; undefined where there is none. */
function stripIn(turn: Turn, module: BayModule, step: number, low: Round, high: Round): LatticeTurn['strip'] {
  const strip = stripOf({ low: [0, 0, 0], high: turn.sides }, turn, module),
    rounded = (c: number, round: Round): number => round(c / step + (round === Math.floor ? HAIR : -HAIR))
  if (!strip) return undefined
  const from = strip.low.map(c => rounded(c, low)) as unknown as Whole,
    to = strip.high.map(c => rounded(c, high)) as unknown as Whole
  return from.every((c, i) => c < (to[i] as number)) ? { from, to } : undefined
}

const sameStrip = (a: LatticeTurn['strip'], b: LatticeTurn['strip']): boolean => `${a?.from} ${a?.to}` === `${b?.from} ${b?.to}`

/** Number of blocked cubes with all three places below each corner. */
function blockedSums({ counts: [nx, ny, nz], free }: VoxelField): Int32Array {
  const mx = nx + 1,
    my = ny + 1,
    sums = new Int32Array(mx * my * (nz + 1))
  for (let z = 1, i = 0; z <= nz; z++)
    for (let y = 1; y <= ny; y++) {
      let row = 0
      for (let x = 1, p = 1 + mx * (y + my * z); x <= nx; x++, p++) {
        if (!free[i++]) row++
        sums[p] = row + (sums[p - mx] as number) + (sums[p - mx * my] as number) - (sums[p - mx - mx * my] as number)
      }
    }
  return sums
}

function openPlaces(
  field: VoxelField,
  sums: Int32Array,
  cut: number,
  [NX, NY, NZ]: Whole,
  body: Whole,
  strip: LatticeTurn['strip'],
): Uint8Array {
  const out = new Uint8Array(NX * NY * NZ),
    [nx, ny] = field.counts,
    mx = nx + 1,
    mxy = mx * (ny + 1)
  /** Blocked cubes in a box of steps; Infinity where it leaves the field. */
  const blocked = (x1: number, y1: number, z1: number, x2: number, y2: number, z2: number): number => {
    if (x1 < 0 || y1 < 0 || z1 < 0 || x2 > NX || y2 > NY || z2 > NZ) return Infinity
    const a1 = Math.floor(x1 / cut),
      a2 = Math.ceil(x2 / cut),
      b1 = Math.floor(y1 / cut) * mx,
      b2 = Math.ceil(y2 / cut) * mx,
      c1 = Math.floor(z1 / cut) * mxy,
      c2 = Math.ceil(z2 / cut) * mxy
    const at = (i: number): number => sums[i] as number
    return (
      at(a2 + b2 + c2) -
      at(a1 + b2 + c2) -
      at(a2 + b1 + c2) -
      at(a2 + b2 + c1) +
      at(a1 + b1 + c2) +
      at(a1 + b2 + c1) +
      at(a2 + b1 + c1) -
      at(a1 + b1 + c1)
    )
  }
  for (let z = 0; z + body[2] <= NZ; z++)
    for (let y = 0; y + body[1] <= NY; y++)
      for (let x = 0; x + body[0] <= NX; x++) {
        if (blocked(x, y, z, x + body[0], y + body[1], z + body[2]) > 0) continue
        if (
          strip &&
          blocked(x + strip.from[0], y + strip.from[1], z + strip.from[2], x + strip.to[0], y + strip.to[1], z + strip.to[2]) > 0
        )
          continue
        out[x + NX * (y + NY * z)] = 1
      }
  return out
}
