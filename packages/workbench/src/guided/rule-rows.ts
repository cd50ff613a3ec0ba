import { type Assessment, type Finding, findingId, type Outcome, SET_WORKS, type Table } from '@ampwright/engine'

/** A row of the rule set that decides whether the car can be approved, with how the concept stands to it where a rule judges that. */
export type RuleRow = {
  readonly key: string
  readonly about: string
  readonly says: string
  readonly clause?: string
  readonly work: string
  readonly from: string
  readonly outcome?: Outcome
  readonly findings: readonly string[]
}

/** What decides before a part is bought: who signs, whether it may be done at all, power, masses, axle share, seats, age. */
const DECIDES =
  /^(route\.allowed|route\.single-car|route\.kit|ask\.before|sign\.|donor\.|power\.ratio|torque\.ratio|mass\.kerb\.ratio|mass\.gross\.|mass\.axle|axle\.|seats\.change|structure\.body)/
const WORST: readonly Outcome[] = ['failing', 'unanswered', 'marginal', 'accepted', 'sound', 'does not apply']

/** The rows of the chosen set that decide feasibility; none while the brief names no set. */
export function ruleRows(a: Assessment): readonly RuleRow[] {
  const table = a.tables.get('brief.requirements')
  return (table?.rows ?? []).filter(r => DECIDES.test(r.name)).map(r => rowOf(r, judging(a.findings, r.name)))
}
/** Findings that hold the car against this row. */
const judging = (findings: readonly Finding[], name: string): readonly Finding[] =>
  findings.filter(({ requirement: r }) => {
    if (!r) return false
    const { key, variant } = r.requirement
    return name === (variant === undefined ? key : `${key}@${variant}`)
  })

function rowOf({ name, cells }: Table['rows'][number], found: readonly Finding[]): RuleRow {
  const word = (key: string): string | undefined => {
    const cell = cells[key]
    return cell === undefined || typeof cell === 'object' ? undefined : String(cell)
  }
  const low = word('low'),
    high = word('high'),
    unit = word('unit')
  const ends = low === high ? low : [low && `at least ${low}`, high && `at most ${high}`].filter(Boolean).join(', '),
    outcome = WORST.find(o => found.some(f => f.outcome === o)),
    clause = word('clause')
  return {
    key: name,
    about: word('asks') ?? name,
    says: word('value') ?? `${ends ?? ''}${unit && unit !== '1' ? ` ${unit}` : ''}`,
    work: word('work') ?? '',
    from: word('from') ?? '',
    ...(clause === undefined ? {} : { clause }),
    ...(outcome === undefined ? {} : { outcome }),
    findings: found.map(findingId),
  }
}
/** Title of the text a finding's limit was taken from. */
export const workOf = ({ requirement }: Finding): string | undefined => requirement && SET_WORKS[requirement.requirement.work].title
