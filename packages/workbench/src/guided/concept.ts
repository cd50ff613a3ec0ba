import type { Edit } from '@ampwright/conversion'
import {
  type Assessment,
  type Finding,
  findingId,
  type Harm,
  type HeadlineRow,
  headlineRows,
  isGap,
  type Model,
  type OpenGap,
  type Outcome,
} from '@ampwright/engine'
import { type Alters, alters } from './alters.ts'
import type { Base } from './base.ts'
import { conceptEdits, type Design } from './compose.ts'
import { type CostBand, costBand } from './cost-band.ts'
import { type Hours, hours } from './hours.ts'
import type { ConceptKind } from './layouts.ts'
import { notTakenOff } from './removed.ts'
import { type RuleRow, ruleRows } from './rule-rows.ts'
import { type Lighter, PULL, packLabel } from './search.ts'

export type Chosen = { readonly role: string; readonly part: string; readonly label: string }
/** A finding that stands in the way; `planned` where it rests on values the concept is only planned with. */
export type InTheWay = {
  readonly id: string
  readonly harm: Harm
  readonly title: string
  readonly item?: string
  readonly planned: boolean
}

/** One way to convert this car for this brief, worked out in full. */
export type Concept = {
  readonly id: string
  readonly title: string
  readonly parts: readonly Chosen[]
  /** Choosing the concept: these edits, in this order. */
  readonly edits: readonly Edit[]
  readonly text: string
  readonly model: Model
  readonly assessment: Assessment
  /** The headline line by line, goals with what is wanted. */
  readonly headline: readonly HeadlineRow[]
  readonly cost: CostBand
  readonly hours: Hours
  readonly alters: readonly Alters[]
  readonly counts: Readonly<Partial<Record<Outcome, number>>>
  /** Failing with harm S2 or S3. */
  readonly failing: readonly InTheWay[]
  readonly rules: readonly RuleRow[]
  readonly gaps: readonly OpenGap[]
  /** What masses and cost leave out, by name. */
  readonly leftOut: { readonly of: 'mass' | 'cost' | 'mass and cost'; readonly what: string }[]
  /** Paths of values that are only planned with. */
  readonly planned: readonly string[]
  /** Where the pack that reaches is too heavy: the one the permitted masses allow. */
  readonly lighter?: Lighter
  /** What was not searched for, because no goal of the kind could be answered, and what is planned in its place. */
  readonly unsearched: readonly { readonly goal: string; readonly planned: string }[]
  readonly trials: number
}

const NO_RECORD: Readonly<Record<ConceptKind['way'], readonly string[]>> = {
  'drive unit': ['half-shafts', 'mounts'],
  'two drive units': ['half-shafts', 'mounts', 'rear cradle'],
  'kept gearbox, one gear': ['mounts'],
  'kept gearbox, shifting': ['mounts'],
  'single reduction': ['reduction gear', 'shaft altered', 'mounts'],
}

/** What a design comes to, from its full assessment. */
export function conceptOf(
  base: Base,
  design: Design,
  worked: Pick<Concept, 'text' | 'model' | 'assessment' | 'trials' | 'lighter'>,
): Concept {
  const { kind } = design,
    { model, assessment: a } = worked,
    usual = a.findings.flatMap(f => (f.rule === 'usual-parts-listed' && f.outcome === 'unanswered' && f.item ? [f.item] : [])),
    made = NO_RECORD[kind.way]
  const { workshop } = model.brief,
    edits = conceptEdits(base, design)
  return {
    id: kind.id,
    title: kind.title,
    parts: chosen(design),
    edits,
    ...worked,
    headline: headlineRows(a),
    cost: costBand(a, model, [...usual, ...made]),
    hours: hours(isGap(workshop) ? undefined : (workshop.value as 'business' | 'owner')),
    alters: alters(model, kind),
    counts: counted(a.findings),
    failing: a.findings.filter(f => f.outcome === 'failing' && f.harm !== 'S1').map(inTheWay),
    rules: ruleRows(a),
    gaps: a.gaps,
    leftOut: [
      ...notTakenOff(model, kind).map(what => ({ of: 'mass' as const, what: `${what}, not taken off` })),
      ...[...usual, ...made].map(what => ({ of: 'mass and cost' as const, what })),
    ],
    planned: plannedPaths(edits),
    unsearched: SOUGHT.flatMap(({ rules, goal, planned }) => (isTold(a.findings, rules) ? [] : [{ goal, planned }])),
  }
}

function chosen({ drive, pack, charger, kind }: Design): readonly Chosen[] {
  const two = drive.length > 1
  return [
    ...drive.flatMap(({ part, inverter }, i): Chosen[] => [
      {
        role: two ? (i === 0 ? 'front unit' : 'rear unit') : kind.way === 'drive unit' ? 'drive unit' : 'motor',
        part: part.id,
        label: part.label,
      },
      ...(inverter ? [{ role: 'inverter', part: inverter.id, label: inverter.label }] : []),
    ]),
    {
      role: 'pack',
      part: pack.part.id,
      label: packLabel(pack),
    },
    { role: 'charger', part: charger.id, label: charger.label },
  ]
}
const SOUGHT: readonly { readonly rules: readonly string[]; readonly goal: string; readonly planned: string }[] = [
  { rules: ['range'], goal: 'range', planned: 'the smallest pack' },
  { rules: PULL, goal: 'speed and pull', planned: 'the weakest motor' },
  { rules: ['charging'], goal: 'charging', planned: 'the smallest charger' },
]
const isTold = (findings: readonly Finding[], rules: readonly string[]): boolean =>
  findings.some(f => rules.includes(f.rule) && f.outcome !== 'unanswered' && f.outcome !== 'does not apply')
const counted = (findings: readonly Finding[]): Concept['counts'] => {
  const out: Partial<Record<Outcome, number>> = {}
  for (const f of findings) out[f.outcome] = (out[f.outcome] ?? 0) + 1
  return out
}
const inTheWay = (f: Finding): InTheWay => ({
  id: findingId(f),
  harm: f.harm,
  title: f.title,
  planned: f.assumed.length > 0,
  ...(f.item === undefined ? {} : { item: f.item }),
})

/** Paths whose value the edits write as assumed. */
function plannedPaths(edits: readonly Edit[]): readonly string[] {
  const at = (path: Edit['path']): string => (typeof path === 'string' ? path : path.join('.'))
  const assumed = (text: string): boolean => text.includes('(assumed, ')
  return edits.flatMap(({ path, now }) => {
    if (typeof now === 'string') return assumed(now) ? [at(path)] : []
    if (now === null || Array.isArray(now)) return []
    return Object.entries(now as Readonly<Record<string, string>>).flatMap(([key, text]) => (assumed(text) ? [`${at(path)}.${key}`] : []))
  })
}
