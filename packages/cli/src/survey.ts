import { type Conversion, fieldAt, type System } from '@ampwright/conversion'
import { type Assessment, type Fact, type Figure, type Measure, type SpreadMemo, type Until, widest } from '@ampwright/engine'
import { headed, shown } from './shown.ts'
import { colours, type Terminal, wrapped } from './terminal.ts'

/** One thing worth measuring: a value nobody has yet, or one whose spread widens a headline figure. */
export type Wanted = {
  readonly path: string
  readonly label: string
  readonly until: Until
  readonly measure?: Measure
  readonly unlocks: readonly string[]
  /** Greatest share of a headline figure's band that this fact makes up, and whose. */
  readonly widens?: { readonly share: number; readonly figure: string }
  readonly now?: string
}
const HASTE: Readonly<Record<Until, number>> = {
  'before the engine comes out': 0,
  'before the body is apart': 1,
  'before the part is bought': 2,
  'any time': 3,
}

/**
 * What to measure next. Values that are missing come first, those that can soon no longer be had ahead of the others, then by how much they
 * unlock; after them values in hand, by the share they have in the band of a headline figure.
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
  const facts = new Map((c.facts as readonly Fact[]).map(f => [f.path, f]))
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
        now: `${shown(fact, system, fact.half)}${fact.origin?.how === 'assumed' ? ', assumed' : ''}`,
        ...(field?.measure ? { measure: field.measure } : {}),
      },
    ]
  })
  return [
    ...missing.sort((x, y) => HASTE[x.until] - HASTE[y.until] || y.unlocks.length - x.unlocks.length),
    ...narrowing.sort((x, y) => (y.widens?.share ?? 0) - (x.widens?.share ?? 0)),
  ]
}

export function printSurvey(list: readonly Wanted[], t: Terminal): void {
  const k = colours(t),
    missing = list.filter(w => !w.widens),
    narrowing = list.filter(w => w.widens)
  if (list.length === 0) return t.out('Nothing is missing, and nothing widens a headline figure.')
  const how = (w: Wanted): string => (w.measure ? `${w.measure.tool}, ${w.measure.accuracy}, ${w.measure.minutes} min` : DECIDED)
  const entry = (head: string, below: readonly string[]): void => {
    for (const line of wrapped(head, t.width, '  ')) t.out(line)
    for (const line of wrapped(below.filter(Boolean).join(' · '), t.width - 2)) t.out(`  ${k.dim(line)}`)
  }
  if (missing.length) {
    t.out(k.bold('Missing'))
    for (const w of missing) {
      const { unlocks } = w
      entry(`◌ ${headed(w.label)}  ${k.dim(w.path)}`, [
        w.until,
        how(w),
        unlocks.length ? `unlocks: ${unlocks.slice(0, 2).join('; ')}${unlocks.length > 2 ? ` and ${unlocks.length - 2} more` : ''}` : '',
      ])
    }
  }
  if (narrowing.length) {
    if (missing.length) t.out('')
    t.out(k.bold('Worth measuring better'))
    for (const w of narrowing)
      entry(`${headed(w.label)}  ${k.bold(w.now ?? '')}  ${k.dim(w.path)}`, [
        `${Math.round((w.widens?.share ?? 0) * 100)} % of the band of ${w.widens?.figure ?? ''}`,
        w.until,
        w.measure ? how(w) : '',
      ])
  }
  t.out('')
  for (const line of wrapped('Tools, accuracies and times are common practice.', t.width)) t.out(k.dim(line))
}
/** What no tool can tell. */
const DECIDED = 'yours to decide or to look up'
