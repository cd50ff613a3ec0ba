import type { System } from '@ampwright/conversion'
import { type Assessment, type Figure, type Finding, headlineOf, kindOf } from '@ampwright/engine'
import { MARKS } from './assess.ts'
import { shown, shownNumber } from './shown.ts'
import { colours, columns, type Terminal, wrapped } from './terminal.ts'

export type Difference = {
  readonly id: string
  readonly label: string
  readonly before?: Figure
  readonly after?: Figure
  readonly change?: number
}

/** Figures that differ between two assessments, the greatest relative change first; figures only one of them has come after. */
export function differences(a: Assessment, b: Assessment): readonly Difference[] {
  const ids = [...new Set([...a.figures.keys(), ...b.figures.keys()])],
    out: Difference[] = []
  for (const id of ids) {
    const before = a.figures.get(id),
      after = b.figures.get(id)
    if (before && after) {
      if (typeof before.value !== 'number' || typeof after.value !== 'number' || Object.is(before.value, after.value)) continue
      out.push({ id, label: after.label, before, after, change: after.value - before.value })
    } else {
      const one = (before ?? after) as Figure
      if (typeof one.value === 'number') out.push({ id, label: one.label, ...(before ? { before } : {}), ...(after ? { after } : {}) })
    }
  }
  const size = (d: Difference): number =>
    d.change === undefined ? -1 : Math.abs(d.change) / Math.max(Math.abs(d.before?.value ?? 0), Math.abs(d.after?.value ?? 0), 1e-12)
  return out.sort((x, y) => size(y) - size(x))
}

const keyOf = (f: Finding): string => `${f.rule}@${f.item ?? ''}`
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
  const before = new Map(a.findings.map(f => [keyOf(f), f])),
    after = new Map(b.findings.map(f => [keyOf(f), f]))
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

export function printComparison(a: Assessment, b: Assessment, names: readonly [string, string], t: Terminal, system: System): void {
  const k = colours(t),
    found = turned(a, b),
    figures = differences(a, b)
  t.out(k.bold(`${names[0]} → ${names[1]}`))
  if (found.length === 0 && figures.length === 0) return t.out('No difference.')
  const view = [...new Set([...headlineOf(a), ...headlineOf(b)].map(f => f.id))]
  const row = (d: { label: string; before?: Figure; after?: Figure; change?: number }): string[] => [
    d.label,
    d.before ? shown(d.before, system) : '–',
    d.after ? shown(d.after, system) : '–',
    d.change === undefined || !d.after || d.change === 0
      ? ''
      : `${d.change > 0 ? '+' : ''}${shownNumber(d.change, differenceKind(d.after), d.after.unit, system)}`,
  ]
  t.out('')
  for (const line of columns(view.map(id => headlineRow(id, a, b)).map(row), t.width, 1)) t.out(line)
  if (found.length) {
    t.out('')
    t.out(k.bold('Findings'))
    for (const f of found)
      for (const line of wrapped(
        `${f.before ? `${MARKS[f.before]} ${f.before}` : 'not asked'} → ${f.after ? `${MARKS[f.after]} ${f.after}` : 'not asked'}  ${f.harm}  ${f.title}${f.item ? ` (${f.item})` : ''}`,
        t.width,
        '  ',
      ))
        t.out(f.after === 'failing' ? k.red(line) : f.before === 'failing' ? k.green(line) : line)
  }
  if (figures.length) {
    t.out('')
    t.out(k.bold('Figures'))
    for (const line of columns(figures.filter(d => !view.includes(d.id)).map(row), t.width, 1)) t.out(line)
  }
}
function headlineRow(id: string, a: Assessment, b: Assessment): { label: string; before?: Figure; after?: Figure; change?: number } {
  const before = a.figures.get(id),
    after = b.figures.get(id),
    label = ((after ?? before) as Figure).label
  return {
    label,
    ...(before ? { before } : {}),
    ...(after ? { after } : {}),
    ...(before && after ? { change: after.value - before.value } : {}),
  }
}
const differenceKind = (f: Figure): ReturnType<typeof kindOf> => {
  const kind = f.shows ?? kindOf(f.unit)
  return kind === 'temperature' ? 'temperature difference' : kind
}
