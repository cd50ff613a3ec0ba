import type { Assessment } from '@ampwright/engine'
import { type Desk, type HeadlineView, turned } from '@ampwright/workbench'
import { inSlices } from './slices.ts'

/** What a change would do: the whole car assessed with it. */
export type Preview = {
  readonly cures: readonly string[]
  readonly worsens: readonly string[]
  readonly headline: readonly { readonly label: string; readonly before: string; readonly after: string }[]
  /** A change after which a rule that protects people fails is not offered. */
  readonly offered: boolean
  readonly refused?: string
}

const NOTHING = { cures: [], worsens: [], headline: [], offered: false } as const
/** A preview that could not be made, and why. */
export const noPreview = (refused: string): Preview => ({ ...NOTHING, refused })

/** Assesses the car as `trial` has it, and says what becomes better and worse against how it stands. */
export async function previewOf(desk: Desk, before: Assessment, trial: Desk): Promise<Preview> {
  const after = await inSlices(trial),
    changed = turned(before, after)
  const named = (t: (typeof changed)[number]): string => `${t.title}${t.item ? ` (${t.item})` : ''}`
  const cured = changed.filter(t => t.before === 'failing' && t.after !== 'failing'),
    worse = changed.filter(t => t.after === 'failing' && t.before !== 'failing'),
    harms = worse.some(t => t.harm === 'S3')
  const told = trial.told(after),
    then = new Map(told.headline.map(h => [h.id, h]))
  const said = (rule: string, item: string | undefined): string => {
    const f = told.findings.find(x => x.rule === rule && x.item === item)
    return f?.found && f.required ? `: ${f.found.text}, ${f.required.side} ${f.required.text} wanted` : ''
  }
  return {
    cures: cured.map(named),
    worsens: worse.map(t => named(t) + said(t.rule, t.item)),
    headline: desk.told(before).headline.flatMap(h => moved(h, then.get(h.id))),
    offered: !harms,
    ...(harms ? { refused: 'It would break a rule that protects people.' } : {}),
  }
}
const moved = (h: HeadlineView, after: HeadlineView | undefined): Preview['headline'] =>
  h.value === undefined || after?.value === undefined || h.value === after.value
    ? []
    : [{ label: h.label, before: h.value, after: after.value }]
