import type { System } from '@ampwright/conversion'
import {
  type Assessment,
  type Figure,
  type Finding,
  type Halves,
  type HeadlineRow,
  headlineOf,
  headlineRows,
  type Outcome,
} from '@ampwright/engine'
import { headed, shown } from '../shown.ts'

/** One line of the headline, ready to print. `id` is absent while nothing could be worked out. */
export type HeadlineView = {
  readonly id?: string
  readonly label: string
  /** Best value, and with its spread; a range by its low end first. */
  readonly value?: string
  readonly band?: string
  readonly outcome?: Outcome
  readonly wanted?: string
  /** Where the value stands on a rail, and where what is wanted stands on it: shares of its length. */
  readonly rail?: { readonly at: number; readonly mark: number }
  readonly missing: readonly string[]
  readonly without: readonly string[]
}

/** The headline once everything is judged. */
export const headlineView = (a: Pick<Assessment, 'figures' | 'halves' | 'findings'>, system: System): readonly HeadlineView[] =>
  headlineRows(a).map(row => rowView(judgedByMass(row, a.findings), a.halves, system))

/** The headline figures alone, as soon as they are known: verdicts come after. */
export const earlyHeadline = (
  figures: ReadonlyMap<string, Figure>,
  system: System,
): readonly Pick<HeadlineView, 'id' | 'label' | 'value'>[] =>
  headlineOf({ figures }).map(f => ({ id: f.id, label: headed(f.label), value: shown(f, system) }))

/** What is left on the worst axle carries the verdict of its load case: the rule compares the mass with the rating, not what is left with nothing. */
function judgedByMass(row: HeadlineRow, findings: readonly Finding[]): HeadlineRow {
  const left = /^room\.to@(.*)$/.exec(row.figure?.id ?? '')?.[1],
    f =
      left === undefined || row.outcome
        ? undefined
        : findings.find(x => x.rule === 'laden-masses' && x.item?.replaceAll(', ', ' ') === left.replaceAll(', ', ' '))
  return f ? { ...row, outcome: f.outcome } : row
}

function rowView(row: HeadlineRow, halves: Halves, system: System): HeadlineView {
  const { figure, wanted } = row,
    half = figure ? halves.get(figure.id) : undefined
  return {
    label: headed(row.label),
    missing: row.missing.map(g => g.label),
    without: row.without ?? [],
    ...(figure ? { id: figure.id, value: shown(figure, system), band: shown(figure, system, half) } : {}),
    ...(row.outcome ? { outcome: row.outcome } : {}),
    ...(wanted ? { wanted: `${wanted.side} ${shown(wanted.limit, system)}` } : {}),
    ...(figure && wanted ? railOf(figure.value, wanted) : {}),
  }
}

/** Longest of the two leaves some rail beyond it. */
function railOf(value: number, { limit }: NonNullable<Finding['required']>): { rail?: NonNullable<HeadlineView['rail']> } {
  const whole = 1.25 * Math.max(Math.abs(value), Math.abs(limit.value))
  if (!(whole > 0) || !Number.isFinite(whole)) return {}
  return { rail: { at: Math.max(0, value) / whole, mark: Math.max(0, limit.value) / whole } }
}
