import type { System } from '@ampwright/conversion'
import { Answers, type Finding, findings, isGap, type Model, type ModuleRecord, type Outcome, RULES } from '@ampwright/engine'
import { countedAs } from '../counted.ts'
import { filled } from '../shown.ts'

/** What the rules say of one module. */
export type Grade = { readonly outcome: Outcome; readonly says: readonly string[] }

/** Rules that may speak against one module of a lot. */
const OF_ONE = new Set([
  'salvaged-module-holds-charge',
  'salvaged-cells-never-flat',
  'salvaged-capacity-matched',
  'salvaged-resistance-matched',
  'salvaged-module-insulated',
])
const READINGS = ['capacity', 'resistance', 'restVoltage', 'restVoltageLater', 'daysApart', 'insulation'] as const
/** How many readings a record has when it is complete. */
export const ALL = READINGS.length
/** Readings a record still lacks, by path and label. */
export const lacking = (record: ModuleRecord): readonly { readonly path: string; readonly label: string }[] =>
  READINGS.map(key => record[key])
    .filter(isGap)
    .map(({ path, label }) => ({ path, label }))

/**
 * A verdict on each module in the pack, by name. The rules name only the module that stands out most; it is put aside and the others are judged again by the
 * same rules, until nothing is left to say. Nothing here compares a value with a limit.
 */
export function moduleGrades(model: Model, system: System): ReadonlyMap<string, Grade> {
  const rules = RULES.filter(r => OF_ONE.has(r.id)),
    answers = new Answers(model),
    grades = new Map<string, { outcome: Outcome; says: string[] }>()
  const judged = (): readonly Finding[] => rules.flatMap(r => findings(r, answers, new Map()))
  const first = judged()
  for (const counted of ['failing', 'marginal', 'accepted', 'said not to apply'] as const) {
    const outcome = counted === 'said not to apply' ? 'does not apply' : counted
    let rest = model
    for (const [name, g] of grades) if (g.outcome === 'failing') rest = without(rest, name)
    answers.next(rest)
    for (;;) {
      const against = byModule(judged().filter(f => countedAs(f) === counted))
      if (against.size === 0) break
      for (const [name, found] of against) {
        if (!grades.has(name)) grades.set(name, { outcome, says: found.map(f => filled(f.says, f, system)) })
        rest = without(rest, name)
      }
      answers.next(rest)
    }
  }
  for (const [name, record] of Object.entries(model.pack.salvage)) {
    if (!grades.has(name)) grades.set(name, unspokenAgainst(record, first))
  }
  return grades
}

/** A module no rule speaks against: set aside by somebody, still to be measured, or sound as far as every rule could answer. */
function unspokenAgainst(record: ModuleRecord, all: readonly Finding[]): { outcome: Outcome; says: string[] } {
  if (!isGap(record.use) && record.use.value !== 'in the pack') return { outcome: 'does not apply', says: [] }
  const gaps = lacking(record)
  if (gaps.length) return { outcome: 'unanswered', says: [] }
  // A rule somebody set aside was not answered: the module is not called fit by it.
  const aside = all.filter(f => f.byHand?.otherwise === 'unanswered')
  if (aside.length) return { outcome: 'does not apply', says: [...new Set(aside.map(f => `${f.title}.`))] }
  const answered = new Set(all.filter(f => f.outcome !== 'unanswered').map(f => f.rule)),
    open = all.filter(f => f.outcome === 'unanswered' && !answered.has(f.rule))
  if (open.length === 0) return { outcome: 'sound', says: [] }
  // What the other modules lack is asked for beside them.
  const waits = open.flatMap(f => f.gaps.filter(g => !g.path.startsWith('pack.salvage')).slice(0, 1))
  return { outcome: 'unanswered', says: [...new Set(waits.map(g => g.label))] }
}

/** What stands against each module, by the record a finding is about. */
function byModule(found: readonly Finding[]): ReadonlyMap<string, readonly Finding[]> {
  const out = new Map<string, Finding[]>()
  for (const f of found) {
    const name = moduleOf(f)
    if (name !== undefined) out.set(name, [...(out.get(name) ?? []), f])
  }
  return out
}
const moduleOf = (f: Finding): string | undefined => /^pack\.salvage\.(.+)\.[^.]+$/.exec(f.about[0] ?? '')?.[1]

/** The car with one module on the shelf. */
function without(model: Model, name: string): Model {
  const record = model.pack.salvage[name]
  if (!record) return model
  const use = { path: `pack.salvage.${name}.use`, label: 'use', symbol: '', unit: '', value: 'rejected' as const }
  return { ...model, pack: { ...model.pack, salvage: { ...model.pack.salvage, [name]: { ...record, use } } } }
}
