import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { Answers, type Finding, findings, type Model, RULES, type Rule, type ScanTask, scanTasks } from '@ampwright/engine'
import { readMesh } from '@ampwright/exchange'
import { type CarSurvey, carSurvey, type ScanPack, unmeasured } from '@ampwright/geometry'
import { filled, Refusal } from '@ampwright/workbench'
import { load } from './load.ts'
import type { ScanOptions } from './scan.ts'
import { packed } from './scan-pack.ts'
import { effort, packJson, printEffort, printPack } from './scan-pack-print.ts'
import { many, place, saysIn, sidesText } from './scan-print.ts'
import { colours, columns, type Terminal } from './terminal.ts'

/** Rules that judge what is measured on scans. */
const JUDGING = ['clear-of-what-was-scanned', 'can-be-brought-in'].map(id => RULES.find(r => r.id === id) as Rule)

type Surveyed = { readonly task: ScanTask; readonly done: CarSurvey; readonly pack: ScanPack | undefined }

/** Surveys the scans a conversion names: how they lie, what they leave free, how near its parts come. Gives the exit code: 1 where a rule on them fails. */
export function carScans(file: string, o: ScanOptions, t: Terminal): number {
  const { model } = load(file, false)
  if (Object.keys(model.fit.scans).length === 0)
    throw new Refusal(`scan: ${file}: found no scan in it; accepted a conversion with fit.scans, or a mesh`)
  const surveyed = scanTasks(model, new Answers(model).ask).map((task): Surveyed => {
      const done = surveyOf(dirname(file), task),
        { lies, field } = done
      return { task, done, pack: o.pack === undefined || !lies || !field ? undefined : packed(o, { mesh: lies.mesh, field }) }
    }),
    found = findingsOf(model, surveyed)
  if (o.json) t.out(JSON.stringify(asJson(surveyed, found), null, 2))
  else print(surveyed, found, t, o)
  return found.some(f => f.outcome === 'failing') || surveyed.some(s => s.pack?.gaps.some(g => g.overlap)) ? 1 : 0
}

function surveyOf(folder: string, task: ScanTask): CarSurvey {
  const read = readMesh(readFileSync(join(folder, task.file)))
  if (!('issue' in read)) return carSurvey(read.mesh, task)
  const { where, what, found, accepted } = read.issue
  return { survey: unmeasured(task, `${where}: ${what}; found ${found}; accepted ${accepted}`) }
}

function findingsOf(model: Model, surveyed: readonly Surveyed[]): readonly Finding[] {
  const surveys = Object.fromEntries(surveyed.map(({ task, done }) => [task.scan, done.survey]))
  const answers = new Answers({ ...model, surveys })
  return JUDGING.flatMap(rule => {
    const found = findings(rule, answers)
    // What else stands in the way is no matter of scans.
    return rule.id === 'can-be-brought-in' ? found.filter(f => f.about.some(at => at.startsWith('fit.scans'))) : found
  })
}

function print(surveyed: readonly Surveyed[], found: readonly Finding[], t: Terminal, o: ScanOptions): void {
  const k = colours(t),
    says = saysIn(o.units)
  for (const { task, done, pack } of surveyed) {
    const { survey } = done
    t.out(k.bold(`${task.scan}: ${task.file}`))
    const rows: [string, string][] =
      survey.fault === undefined
        ? [
            ['Lies', `by ${many(task.picks.length, 'point')}, ${says(survey.residual, 'length')} left over (root of the mean square)`],
            ...(task.free && survey.cubes !== undefined
              ? [
                  [
                    'Free space',
                    `${says(survey.cubes * task.free.edge ** 3, 'volume')}, in cubes of ${says(task.free.edge, 'length')}`,
                  ] as [string, string],
                ]
              : []),
            ...(survey.reached ? [['Reaches the limits', sidesText(survey.reached)] as [string, string]] : []),
            ...(survey.noSpace === undefined ? [] : [['Free space', `not found: ${survey.noSpace}`] as [string, string]]),
            ...Object.entries(survey.gaps).map(([name, { apart, at }]): [string, string] => [
              name,
              apart === 0 ? `▲ runs into the scan at ${place(at, says)}` : `${says(apart, 'length')}, nearest at ${place(at, says)}`,
            ]),
            ...Object.entries(survey.ways).map(([name, { apart, at, out }]): [string, string] => {
              const where = `${says(out, 'length')} before it is in its place, at ${place(at, says)}`
              return [`${name}, way in`, apart === 0 ? `▲ runs into the scan ${where}` : `${says(apart, 'length')}, tightest ${where}`]
            }),
          ]
        : [['Not measured', survey.fault]]
    for (const line of columns(rows, t.width, 2)) t.out(line)
    if (pack) printPack(pack, t, o.units)
    t.out('')
  }
  for (const { id, title } of JUDGING) {
    const judged = found.filter(f => f.rule === id)
    if (judged.length === 0) continue
    t.out(k.bold(title))
    for (const line of columns(
      judged.map((f): [string, string] => [f.outcome, `${f.item ?? ''}: ${filled(f.says, f, o.units)}`]),
      t.width,
      2,
    ))
      t.out(line)
  }
  printEffort(effort(), t)
}

/** Metres and cubic metres, as the engine takes them. */
const asJson = (surveyed: readonly Surveyed[], found: readonly Finding[]): object => ({
  scans: Object.fromEntries(
    surveyed.map(({ task, done, pack }) => [task.scan, { file: task.file, ...done.survey, ...(pack && { pack: packJson(pack) }) }]),
  ),
  findings: found.map(f => ({
    rule: f.rule,
    item: f.item ?? null,
    outcome: f.outcome,
    found: f.found?.value ?? null,
    required: f.required?.limit.value ?? null,
    gaps: f.gaps.map(g => g.path),
  })),
  effort: effort(),
})
