import { type Conversion, fieldAt, type System } from '@ampwright/conversion'
import { type Assessment, type Fact, type Figure, type Measure, type SpreadMemo, type Until, widest } from '@ampwright/engine'
import { type Narrowing, narrowings } from './narrowing.ts'
import { shown } from './shown.ts'

/** One thing worth measuring: a value nobody has yet, or one whose spread widens a headline figure. */
export type Wanted = {
  readonly path: string
  readonly label: string
  readonly until: Until
  readonly measure?: Measure
  readonly unlocks: readonly string[]
  /** Greatest share of a headline figure's band that this fact makes up, and whose. */
  readonly widens?: { readonly share: number; readonly figure: string }
  /** Of range, mass and cost: how much narrower each becomes when it is measured as well as its tool states. */
  readonly narrows?: readonly Narrowing[]
  readonly now?: string
}
export const HASTE: Readonly<Record<Until, number>> = {
  'before the engine comes out': 0,
  'before the body is apart': 1,
  'before the part is bought': 2,
  'any time': 3,
}

/**
 * What to measure next. Values that are missing come first, those that can soon no longer be had ahead of the others, then by how much they
 * unlock; after them values in hand: by how much measuring narrows range, mass or cost, then by the share they have in the band of any headline figure.
 */
export function survey(c: Conversion, a: Assessment, headline: readonly Figure[], system: System): readonly Wanted[] {
  const missing: Wanted[] = a.gaps.map(g => ({
    path: g.path,
    label: g.label,
    until: g.until,
    unlocks: g.unlocks,
    ...(g.measure ? { measure: g.measure } : {}),
  }))
  const memo: SpreadMemo = new Map(),
    best = new Map<string, { share: number; figure: string }>()
  for (const figure of headline) {
    const parts = widest(figure, memo),
      all = Math.hypot(...parts.map(p => p.half))
    for (const p of parts) {
      const share = all > 0 ? (p.half / all) ** 2 : 0
      if (share > (best.get(p.path)?.share ?? 0.02)) best.set(p.path, { share, figure: figure.label })
    }
  }
  const facts = new Map((c.facts as readonly Fact[]).map(f => [f.path, f])),
    narrowed = narrowings(headline, facts, system, memo)
  const narrowing = [...best].flatMap(([path, widens]): Wanted[] => {
    const fact = facts.get(path),
      field = fieldAt(path)
    if (!fact) return []
    return [
      {
        path,
        label: fact.label,
        until: field?.until ?? 'any time',
        unlocks: [],
        widens,
        narrows: narrowed.get(path) ?? [],
        now: `${shown(fact, system, fact.half)}${fact.origin?.how === 'assumed' ? ', assumed' : ''}`,
        ...(field?.measure ? { measure: field.measure } : {}),
      },
    ]
  })
  return [
    ...missing.sort((x, y) => HASTE[x.until] - HASTE[y.until] || y.unlocks.length - x.unlocks.length),
    ...narrowing.sort((x, y) => gain(y) - gain(x) || (y.widens?.share ?? 0) - (x.widens?.share ?? 0)),
  ]
}
/** The greatest part of a band of range, mass or cost that measuring takes away. */
export const gain = ({ narrows = [] }: Pick<Wanted, 'narrows'>): number => Math.max(0, ...narrows.map(n => n.by))
