import type { Vector } from '../vector.ts'
import { between } from '../vector.ts'
import type { Filling } from './pack-fillings.ts'
import { bestOf, type Judged } from './pack-rank.ts'
import { FILL_ORDERS, type PartFilled, partFilled } from './pack-table.ts'
import type { PackArrangement, PackedBox, PackSpace, PackTask } from './pack-types.ts'

/** Ways to share modules out over the same spaces, at most: with more, every second or third is looked at. */
export const SHARES = 400

/** The arrangements that fillings allow: whole strings, every subset of spaces, many ways to share modules out, three orders to fill in; the best of them, different ones. */
export function arrangementsOf(
  task: PackTask,
  spaces: readonly PackSpace[],
  fillings: readonly (readonly Filling[])[],
): readonly PackArrangement[] {
  const found: Judged[] = []
  for (const order of FILL_ORDERS) {
    const tables = fillings.map(f => partFilled(f, order, task.module, task.box)),
      room = tables.map(t => t.length - 1)
    const all = room.reduce((a, b) => a + b, 0)
    for (let p = task.strings.least; p <= task.strings.most && p * task.series <= all; p++)
      for (const shares of sharesOf(task, room, p))
        found.push(
          judged(
            task,
            shares.map((n, i) => (n > 0 ? tables[i]?.[n] : undefined)),
            p,
            task.series * p * task.module.energy,
          ),
        )
  }
  return bestOf(found).map(({ at: _, ...one }) => madeOf(task, spaces, one))
}

/** Modules for each space: whole groups in each, or single modules where groups may be split. */
function* sharesOf({ series, splitGroups }: PackTask, room: readonly number[], strings: number): Generator<readonly number[], void> {
  const unit = splitGroups ? 1 : strings,
    wanted = splitGroups ? series * strings : series,
    most = room.map(r => Math.floor(r / unit))
  for (let subset = 1; subset < 1 << room.length; subset++) {
    const used = most.map((m, i) => (subset & (1 << i) ? m : 0))
    if (used.some((m, i) => subset & (1 << i) && m < 1) || used.reduce((a, b) => a + b, 0) < wanted) continue
    const members = used.flatMap((m, i) => (m > 0 ? [i] : []))
    if (members.length > wanted) continue
    for (const counts of splits(
      members.map(i => used[i] as number),
      wanted,
    )) {
      const out = room.map(() => 0)
      members.forEach((i, k) => {
        out[i] = (counts[k] as number) * unit
      })
      yield out
    }
  }
}

/** Ways to split a number into parts of at least one and at most so many each. Where there are very many, in coarser steps, the outermost always among them. */
function* splits(most: readonly number[], wanted: number): Generator<readonly number[], void> {
  const [first = 0, ...others] = most
  if (others.length === 0) {
    if (wanted >= 1 && wanted <= first) yield [wanted]
    return
  }
  const rest = others.reduce((a, b) => a + b, 0),
    low = Math.max(1, wanted - rest),
    high = Math.min(first, wanted - others.length)
  const fine = Math.max(2, Math.floor(SHARES ** (1 / others.length))),
    stride = Math.max(1, Math.ceil((high - low) / (fine - 1)))
  for (let n = low; n <= high; n = n < high ? Math.min(high, n + stride) : high + 1)
    for (const more of splits(others, wanted - n)) yield [n, ...more]
}

/** Filled spaces as one battery: what it weighs, where that rests, how high and how far apart. */
export function judged(
  { wheelbase, front, rear }: PackTask,
  parts: readonly (PartFilled | undefined)[],
  strings: number,
  energy: number,
): Judged {
  let mass = 0,
    along = 0,
    up = 0
  for (const part of parts) {
    if (!part) continue
    mass += part.mass
    along += part.along
    up += part.up
  }
  const atRear = along / wheelbase,
    frontMargin = front.limit - front.mass - (mass - atRear),
    rearMargin = rear.limit - rear.mass - atRear,
    centres = parts.flatMap(p => (p ? [p.centre] : []))
  const height = up / mass,
    cable = shortestWay(centres)
  return {
    parts,
    strings,
    energy,
    mass,
    frontMargin,
    rearMargin,
    height,
    cable,
    // What is weighed against each other, less is better, to what a workshop can tell apart: 100 g, 1 kg, 1 mm, 10 mm.
    at: [
      -energy,
      Math.round(mass * 10),
      -Math.round(Math.min(frontMargin, rearMargin)),
      Math.round(height * 1000),
      centres.length,
      Math.round(cable * 100),
    ],
  }
}

/** The shortest way through all places, begun and ended anywhere [m]. */
export function shortestWay(places: readonly Vector[]): number {
  let best = Infinity
  const go = (here: Vector | undefined, left: readonly Vector[], length: number): void => {
    if (length >= best) return
    if (left.length === 0) best = length
    for (const next of left)
      go(
        next,
        left.filter(p => p !== next),
        length + (here ? between(here, next) : 0),
      )
  }
  go(undefined, places, 0)
  return best
}

export function madeOf(
  task: PackTask,
  spaces: readonly PackSpace[],
  one: Omit<Judged, 'at'> & Pick<PackArrangement, 'bestIn'>,
): PackArrangement {
  const { parts, ...figures } = one
  const boxes = parts.flatMap((part, i): PackedBox[] =>
    part
      ? [
          {
            space: (spaces[i] as PackSpace).name,
            modules: part.modules,
            groups: task.splitGroups ? undefined : part.modules.length / one.strings,
            outer: part.outer,
            busbars: part.busbars,
            mass: part.mass,
          },
        ]
      : [],
  )
  return { ...figures, modules: parts.reduce((n, p) => n + (p?.modules.length ?? 0), 0), boxes }
}
