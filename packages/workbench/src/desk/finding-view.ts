import { type System, settingText } from '@ampwright/conversion'
import {
  type AnyValue,
  type Finding,
  findingId,
  isFigure,
  markOf,
  nameOf,
  type Outcome,
  type Remedy,
  type Stage,
  WORKS,
} from '@ampwright/engine'
import { requirementLine } from '../requirement.ts'
import { asideText, unheededText } from '../said-by-hand.ts'
import { filled, shown } from '../shown.ts'

/** A finding as a screen shows it: what was found, against what, what to do, and what it rests on. Plain data. */
export type FindingView = {
  readonly id: string
  readonly rule: string
  readonly item?: string
  readonly title: string
  readonly stage: Stage
  readonly harm: Finding['harm']
  readonly outcome: Outcome
  readonly says: string
  /** Why it came out so, where the outcome alone does not tell. */
  readonly because?: string
  /** What was found, to be opened: name of the value and its text. */
  readonly found?: Opened
  readonly required?: Opened & { readonly side: 'at most' | 'at least' }
  readonly source: string
  readonly requirement?: string
  readonly remedies: readonly RemedyView[]
  readonly caution?: string
  readonly gaps: readonly { readonly path: string; readonly label: string }[]
  readonly about: readonly string[]
  /** Somebody said by hand that it does not apply. */
  readonly byHand?: true
  /** What was said of it by hand and no longer holds, and why. */
  readonly unheeded?: string
}
export type Opened = { readonly name: string; readonly text: string; readonly figure: boolean }
export type RemedyView =
  | { readonly do: 'set'; readonly says: string; readonly edits: readonly { readonly path: string; readonly now: string | null }[] }
  | { readonly do: 'measure'; readonly says: string; readonly path: string }
  | { readonly do: 'act'; readonly says: string }

/** Findings in the order of the assessment: outcome, then harm. */
export function findingView(f: Finding, system: System): FindingView {
  const because = reasonOf(f),
    unheeded = unheededText(f)
  return {
    id: findingId(f),
    rule: f.rule,
    title: f.title,
    stage: f.stage,
    harm: f.harm,
    outcome: f.outcome,
    says:
      f.byHand?.otherwise === 'unanswered'
        ? ''
        : f.outcome === 'unanswered' && f.gaps.length
          ? `Not known yet: ${f.gaps.map(g => g.label).join('; ')}.`
          : filled(f.says, f, system),
    source: sourceText(f),
    remedies: f.outcome === 'sound' || f.outcome === 'does not apply' ? [] : f.remedies.map(r => remedyView(r, f, system)),
    gaps: f.gaps.map(g => ({ path: g.path, label: g.label })),
    about: f.about,
    ...(f.item === undefined ? {} : { item: f.item }),
    ...(because === undefined ? {} : { because }),
    ...(f.byHand ? { byHand: true } : {}),
    ...(unheeded === undefined ? {} : { unheeded }),
    ...(f.found ? { found: opened(f.found, system, f.half) } : {}),
    ...(f.required ? { required: { side: f.required.side, ...opened(f.required.limit, system) } } : {}),
    ...(f.requirement ? { requirement: requirementLine(f.requirement) } : {}),
    ...(f.caution === undefined ? {} : { caution: f.caution }),
  }
}

const opened = (v: AnyValue, system: System, half?: number): Opened => ({
  name: nameOf(v),
  text: shown(v, system, half),
  figure: isFigure(v),
})

function remedyView(r: Remedy, f: Finding, system: System): RemedyView {
  const says = filled(r.says, f, system)
  if (r.do === 'set') return { do: 'set', says, edits: r.sets.map(s => ({ path: s.path, now: settingText(s.to) })) }
  return r.do === 'measure' ? { do: 'measure', says, path: r.path } : { do: 'act', says }
}

function reasonOf(f: Finding): string | undefined {
  if (f.reason === undefined) return undefined
  const named = f.assumed.length ? `: ${f.assumed.slice(0, 4).join(', ')}` : ''
  if (f.outcome === 'unanswered') return `Unanswered: ${f.reason}${named}.`
  if (f.outcome === 'failing') return `Failing although it rests on assumed values, because it is ${f.reason}${named}.`
  if (f.outcome === 'marginal') return `Marginal and not ${f.doubted ? 'sound' : 'failing'} because ${f.reason}.`
  if (f.outcome === 'accepted') return `Accepted: ${f.reason}.`
  if (f.byHand) return asideText(f)
  return f.reason
}

const sourceText = ({ source }: Finding): string =>
  `${WORKS[source.work].title}, ${source.place}${markOf(source) === undefined ? '' : ` (${markOf(source)})`}`
