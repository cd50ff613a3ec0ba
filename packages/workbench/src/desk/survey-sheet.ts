import type { Measure, Until } from '@ampwright/engine'
import { narrowed } from '../narrowing.ts'
import { headed } from '../shown.ts'
import { HASTE, type Wanted } from '../survey.ts'
import type { FieldView } from './field-view.ts'

/** One thing to measure, as a sheet to fill in shows it. Plain data, texts ready to print. */
export type SurveyRow = {
  readonly path: string
  readonly label: string
  /** Nobody has it yet; else a value in hand that is worth knowing better. */
  readonly missing: boolean
  readonly measure?: Measure
  readonly unlocks: readonly string[]
  /** What measuring it gains: the band of range, mass and cost before and after, or its share in a band. */
  readonly gains: readonly string[]
  readonly now?: string
  /** Absent where a whole list is missing: that is begun on the page of its stage. */
  readonly field?: FieldView
  /** No longer asked for: filled in since the sheet was laid out. */
  readonly done?: true
}
/** Rows that share the moment after which they can no longer be had. */
export type SurveyGroup = { readonly until: Until; readonly rows: readonly SurveyRow[] }
export type SurveySheet = readonly SurveyGroup[]

type FieldAt = (path: string) => FieldView | undefined
const ORDER = (Object.keys(HASTE) as Until[]).sort((a, b) => HASTE[a] - HASTE[b])

/** What to measure, grouped by until when, in the order of the survey within each group. */
export const surveySheet = (wanted: readonly Wanted[], field: FieldAt): SurveySheet =>
  ORDER.map(until => ({ until, rows: wanted.filter(w => w.until === until).map(w => rowOf(w, field)) })).filter(g => g.rows.length > 0)

function rowOf(w: Wanted, field: FieldAt): SurveyRow {
  const f = field(w.path)
  return {
    path: w.path,
    label: headed(w.label),
    missing: w.widens === undefined,
    unlocks: w.unlocks,
    gains: gainsOf(w),
    ...(w.measure === undefined ? {} : { measure: w.measure }),
    ...(w.now === undefined ? {} : { now: w.now }),
    ...(f === undefined ? {} : { field: f }),
  }
}

const gainsOf = ({ narrows, widens }: Wanted): readonly string[] =>
  narrows?.length
    ? narrows.map(narrowed)
    : widens === undefined
      ? []
      : [`${Math.round(100 * widens.share)} % of the band of ${widens.figure}`]

/**
 * The sheet renewed while somebody fills it in: every row stays where it stands, so that nothing moves under the hands. What is no longer asked for is
 * marked done; what is asked for anew comes last in its group.
 */
export function inPlace(before: SurveySheet, now: SurveySheet, field: FieldAt): SurveySheet {
  const fresh = new Map(now.flatMap(g => g.rows.map(r => [r.path, r] as const))),
    stood = new Set(before.flatMap(g => g.rows.map(r => r.path)))
  return ORDER.map(until => ({
    until,
    rows: [
      ...rowsIn(before, until).map(r => fresh.get(r.path) ?? filledIn(r, field)),
      ...rowsIn(now, until).filter(r => !stood.has(r.path)),
    ],
  })).filter(g => g.rows.length > 0)
}
const rowsIn = (sheet: SurveySheet, until: Until): readonly SurveyRow[] => sheet.find(g => g.until === until)?.rows ?? []

function filledIn(row: SurveyRow, field: FieldAt): SurveyRow {
  const { field: _, ...rest } = row,
    f = field(row.path)
  return { ...rest, unlocks: [], gains: [], done: true, ...(f === undefined ? {} : { field: f }) }
}
