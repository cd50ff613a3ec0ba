import type { System } from '@ampwright/conversion'
import { type Assessment, type Figure, type Finding, findingId, headlineOf, kindOf } from '@ampwright/engine'
import { headed, shown, shownNumber } from './shown.ts'

export type Difference = {
  readonly id: string
  readonly label: string
  readonly before?: Figure
  readonly after?: Figure
  readonly change?: number
}

/** Sums done in another order differ in their last digits: nothing about the car has changed. */
const same = (a: number, b: number): boolean =>
  Object.is(a, b) || Math.abs(a - b) <= Math.max(1e-9 * Math.max(Math.abs(a), Math.abs(b)), 1e-14)

/** What can no longer be reached, or can at last, has changed more than anything that only moved; still a number, so that it can be sorted. */
const BEYOND_ALL = Number.MAX_VALUE

/** Figures that differ between two assessments, the greatest relative change first; figures only one of them has come after. */
export function differences(a: Assessment, b: Assessment): readonly Difference[] {
  const ids = [...new Set([...a.figures.keys(), ...b.figures.keys()])],
    out: Difference[] = []
  for (const id of ids) {
    const before = a.figures.get(id),
      after = b.figures.get(id)
    if (before && after) {
      if (typeof before.value !== 'number' || typeof after.value !== 'number' || same(before.value, after.value)) continue
      out.push({ id, label: after.label, before, after, change: after.value - before.value })
    } else {
      const one = (before ?? after) as Figure
      if (typeof one.value === 'number') out.push({ id, label: one.label, ...(before ? { before } : {}), ...(after ? { after } : {}) })
    }
  }
  const size = (d: Difference): number =>
    d.change === undefined
      ? -1
      : Number.isFinite(d.change)
        ? Math.abs(d.change) / Math.max(Math.abs(d.before?.value ?? 0), Math.abs(d.after?.value ?? 0), 1e-12)
        : BEYOND_ALL
  return out.sort((x, y) => size(y) - size(x))
}

export type Turned = {
  readonly rule: string
  readonly item?: string
  readonly title: string
  readonly before: Finding['outcome'] | undefined
  readonly after: Finding['outcome'] | undefined
  readonly harm: Finding['harm']
}
/** Findings that came out differently, harm first. */
export function turned(a: Assessment, b: Assessment): readonly Turned[] {
  const before = new Map(a.findings.map(f => [findingId(f), f])),
    after = new Map(b.findings.map(f => [findingId(f), f]))
  return [...new Set([...before.keys(), ...after.keys()])]
    .map((k): Turned => {
      const x = before.get(k),
        y = after.get(k),
        one = (y ?? x) as Finding
      return {
        rule: one.rule,
        ...(one.item === undefined ? {} : { item: one.item }),
        title: one.title,
        harm: one.harm,
        before: x?.outcome,
        after: y?.outcome,
      }
    })
    .filter(t => t.before !== t.after)
    .sort((p, q) => (p.harm < q.harm ? 1 : p.harm > q.harm ? -1 : 0))
}

/** Two assessments side by side, as plain data: the headline whether moved or not, findings that turned, figures that moved. */
export function comparisonJson(a: Assessment, b: Assessment): object {
  const number = (v: unknown): unknown => (typeof v === 'number' && !Number.isFinite(v) ? String(v) : v)
  const json = (d: Difference): object => ({
    id: d.id,
    label: d.label,
    unit: (d.after ?? d.before)?.unit,
    ...(d.before ? { before: number(d.before.value) } : {}),
    ...(d.after ? { after: number(d.after.value) } : {}),
    ...(d.change === undefined || !Number.isFinite(d.change) ? {} : { change: d.change }),
  })
  return {
    headline: headlineIds(a, b).map(id => json(headlineRow(id, a, b))),
    findings: turned(a, b),
    figures: differences(a, b).map(json),
  }
}
export const headlineIds = (a: Assessment, b: Assessment): readonly string[] => [
  ...new Set([...headlineOf(a), ...headlineOf(b)].map(f => f.id)),
]

export function headlineRow(id: string, a: Assessment, b: Assessment): Difference {
  const before = a.figures.get(id),
    after = b.figures.get(id),
    { label } = (after ?? before) as Figure
  return {
    id,
    label,
    ...(before ? { before } : {}),
    ...(after ? { after } : {}),
    ...(before && after ? { change: after.value - before.value } : {}),
  }
}

export type Row = readonly [label: string, before: string, after: string, change: string]
export const rowOf = (d: Pick<Difference, 'label' | 'before' | 'after' | 'change'>, system: System): Row => [
  headed(d.label),
  d.before ? shown(d.before, system) : '–',
  d.after ? shown(d.after, system) : '–',
  // What reads the same on both sides has not changed for the reader.
  d.change === undefined || !d.before || !d.after || !Number.isFinite(d.change) || shown(d.before, system) === shown(d.after, system)
    ? ''
    : `${d.change > 0 ? '+' : ''}${shownNumber(d.change, differenceKind(d.after), d.after.unit, system)}`,
]

/** Rows of figures a reader can tell apart: none that reads the same before and after, each row once, the item where one label stands for several. */
export function shownRows(list: readonly Difference[], system: System): readonly { readonly ids: readonly string[]; readonly row: Row }[] {
  const rows = new Map<string, { ids: string[]; row: Row }>()
  for (const d of list) {
    const row = rowOf(d, system)
    if (row[1] === row[2]) continue
    const key = row.join('\n'),
      met = rows.get(key)
    if (met) met.ids.push(d.id)
    else rows.set(key, { ids: [d.id], row })
  }
  const labels = new Map<string, number>()
  for (const { row } of rows.values()) labels.set(row[0], (labels.get(row[0]) ?? 0) + 1)
  return [...rows.values()].map(r => {
    if ((labels.get(r.row[0]) ?? 0) < 2) return r
    const [label, ...rest] = r.row
    return { ids: r.ids, row: [`${label} (${r.ids[0]})`, ...rest] }
  })
}

const differenceKind = (f: Figure): ReturnType<typeof kindOf> => {
  const kind = f.shows ?? kindOf(f.unit)
  return kind === 'temperature' ? 'temperature difference' : kind
}
