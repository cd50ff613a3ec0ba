import { judged, madeOf, SHARES } from './pack-arrange.ts'
import type { PlacedModule } from './bay-module.ts'
import type { Filling } from './pack-fillings.ts'
import { type PackMixedTask, waysToMix } from './pack-mixed.ts'
import { together } from './pack-mixed-bound.ts'
import { othersOf } from './pack-mixed-fillings.ts'
import { bestOf, type Judged } from './pack-rank.ts'
import { farIn, FILL_ORDERS, filledWith, type FillOrder, inOrder, type PartFilled, standsOn } from './pack-table.ts'
import type { PackArrangement, PackSpace } from './pack-types.ts'

/** Modules of each form in one space. */
type Share = { readonly main: number; readonly other: number }
const NONE: Share = { main: 0, other: 0 }
/** Fewest ways to share out that are looked at for each way to make a string. */
const FEWEST = 16

/** The arrangements that fillings with two forms allow: every way to make a string, every subset of spaces, many ways to share the modules out, three orders to fill in; the best of them. */
export function mixedArrangements(
  task: PackMixedTask,
  spaces: readonly PackSpace[],
  fillings: readonly (readonly Filling[])[],
): readonly PackArrangement[] {
  const found: Judged[] = [],
    { strings, mix, module } = task,
    tables = FILL_ORDERS.map(order => fillings.map(f => new MixedTable(f, order, task)))
  for (let p = strings.least; p <= strings.most; p++) {
    const ways = waysToMix(task, p)
    for (const way of ways)
      for (const shares of sharesOf(task, tables[0] as readonly MixedTable[], way, p, Math.max(FEWEST, Math.floor(SHARES / ways.length))))
        for (const inOneOrder of tables)
          found.push(
            judged(
              task,
              shares.map((s, i) => (s.main + s.other > 0 ? inOneOrder[i]?.at(s) : undefined)),
              p,
              (p * mix.groups.string * module.energy) / mix.groups.main,
            ),
          )
  }
  return bestOf(found).map(({ at: _, ...one }) => {
    const made = madeOf(task, spaces, one),
      others = made.boxes.reduce((n, b) => n + othersOf(b.modules), 0)
    return { ...made, inString: { main: (made.modules - others) / made.strings, other: others / made.strings } }
  })
}

/** Modules of each form for each space: whole groups in each, or single modules where groups may be split. */
function* sharesOf(
  { splitGroups }: PackMixedTask,
  tables: readonly MixedTable[],
  way: Share,
  strings: number,
  most: number,
): Generator<readonly Share[], void> {
  const unit = splitGroups ? 1 : strings,
    times = splitGroups ? strings : 1,
    wanted: Share = { main: way.main * times, other: way.other * times }
  const beside = tables.map(t => (mains: number) => Math.floor(t.othersBeside(mains * unit) / unit))
  for (let subset = 1; subset < 1 << tables.length; subset++) {
    const members = tables.flatMap((_, i) => (subset & (1 << i) ? [i] : [])),
      room = members.map(i => beside[i] as (mains: number) => number)
    const rows = together(room, wanted.main)
    if ((rows[0]?.[wanted.main] as number) < wanted.other) continue
    const fine = members.length < 2 ? 1 : Math.max(2, Math.floor(most ** (1 / (members.length - 1))))
    for (const shares of shared(room, rows, wanted, fine)) {
      const out = tables.map(() => NONE)
      members.forEach((i, k) => {
        const s = shares[k] as Share
        out[i] = { main: s.main * unit, other: s.other * unit }
      })
      yield out
    }
  }
}

/** Ways to share both forms out, at least one module to each space, that leave the spaces after it room for the rest. Of very many some, evenly, the outermost always among them. */
function* shared(
  room: readonly ((mains: number) => number)[],
  rows: readonly Float64Array[],
  { main, other }: Share,
  fine: number,
): Generator<readonly Share[], void> {
  const [first, ...others] = room
  if (!first) {
    if (main === 0 && other === 0) yield []
    return
  }
  const may: Share[] = []
  for (let a = 0; a <= main; a++) {
    const left = rows[1]?.[main - a] as number
    for (let b = Math.max(a === 0 ? 1 : 0, other - left); b <= Math.min(other, first(a)); b++)
      if (main - a + other - b >= others.length) may.push({ main: a, other: b })
  }
  const stride = others.length === 0 ? 1 : Math.max(1, (may.length - 1) / (fine - 1))
  for (let k = 0; k < may.length; k = k < may.length - 1 ? Math.min(may.length - 1, k + stride) : may.length) {
    const one = may[Math.round(k)] as Share
    for (const rest of shared(others, rows.slice(1), { main: main - one.main, other: other - one.other }, fine)) yield [one, ...rest]
  }
}

/** A space with so many modules of each form in it, filled in an order: of all fillings the one that goes furthest that way. Worked out when it is asked for. */
class MixedTable {
  private readonly fillings: readonly {
    readonly sorted: readonly PlacedModule[]
    readonly main: number
    readonly other: number
    readonly busbars: Filling['busbars']
  }[]
  private readonly order: FillOrder
  private readonly task: PackMixedTask
  private readonly known = new Map<string, PartFilled | undefined>()

  constructor(fillings: readonly Filling[], order: FillOrder, task: PackMixedTask) {
    this.order = order
    this.task = task
    this.fillings = fillings.map(({ modules, busbars }) => {
      const other = othersOf(modules)
      return { sorted: inOrder(modules, order), main: modules.length - other, other, busbars }
    })
  }

  /** Most of the other form beside so many of the main one; −1 where not even those have room. */
  othersBeside(mains: number): number {
    return Math.max(-1, ...this.fillings.filter(f => f.main >= mains).map(f => f.other))
  }

  at(share: Share): PartFilled | undefined {
    const key = `${share.main} ${share.other}`
    if (!this.known.has(key)) this.known.set(key, this.best(share))
    return this.known.get(key)
  }

  private best({ main, other }: Share): PartFilled | undefined {
    const { module, mix, box } = this.task
    let best: PartFilled | undefined
    for (const f of this.fillings) {
      if (f.main < main || f.other < other) continue
      const one = filledWith(taken(f.sorted, { main, other }), f.busbars, module, box, mix.other)
      if (!best || farIn(this.order, one) < farIn(this.order, best) - 1e-9) best = one
    }
    return best
  }
}

/** So many modules of each form, in their order, none without those it stands on, as far as that can be. */
function taken(sorted: readonly PlacedModule[], { main, other }: Share): readonly PlacedModule[] {
  const picked = (resting: boolean): readonly PlacedModule[] => {
    const left = { main, other },
      out = new Set<PlacedModule>()
    for (const m of sorted) {
      const form = m.other ? 'other' : 'main'
      if (left[form] === 0 || (resting && sorted.some(o => o !== m && !out.has(o) && standsOn(m, o)))) continue
      left[form]--
      out.add(m)
    }
    return [...out]
  }
  const standing = picked(true)
  return standing.length === main + other ? standing : picked(false)
}
