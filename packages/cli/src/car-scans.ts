import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { Answers, type Finding, findings, meshesTask, type Model, RULES, type Rule, type ScanTask, scanTasks } from '@ampwright/engine'
import { readMesh } from '@ampwright/exchange'
import { type CarMeshes, type CarSurvey, carMeshes, carSurvey, type PartFile, type ScanPack, unmeasured } from '@ampwright/geometry'
import { filled, Refusal } from '@ampwright/workbench'
import { load } from './load.ts'
import type { ScanOptions } from './scan.ts'
import { packed } from './scan-pack.ts'
import { effort, packJson, printEffort, printPack } from './scan-pack-print.ts'
import { printMeshes } from './mesh-print.ts'
import { many, place, saysIn, sidesText } from './scan-print.ts'
import { colours, columns, type Terminal } from './terminal.ts'

/** Rules that judge what is measured on scans, and on meshes of parts. */
const JUDGING = ['clear-of-what-was-scanned', 'can-be-brought-in', 'meshes-as-large-as-said', 'parts-clear-of-each-other'].map(
  id => RULES.find(r => r.id === id) as Rule,
)

type Surveyed = { readonly task: ScanTask; readonly done: CarSurvey; readonly pack: ScanPack | undefined }

/**
 * Surveys the scans a conversion names and the meshes of its parts: how the scans lie, what they leave free, how near parts come to them and to each other, and how
 * these come in. Gives the exit code: 1 where a rule on them fails.
 */
export function carScans(file: string, o: ScanOptions, t: Terminal): number {
  const { model } = load(file, false),
    { ask } = new Answers(model),
    toMesh = meshesTask(model, ask)
  if (Object.keys(model.fit.scans).length === 0 && toMesh.meshes.length === 0)
    throw new Refusal(`scan: ${file}: found no scan in it; accepted a conversion with fit.scans or the mesh of a part, or a mesh`)
  const meshes = carMeshes(toMesh, mesh => partFile(dirname(file), mesh.file)),
    surveyed = scanTasks(model, ask).map((task): Surveyed => {
      const done = surveyOf(dirname(file), task, meshes.parts),
        { lies, field } = done
      return { task, done, pack: o.pack === undefined || !lies || !field ? undefined : packed(o, { mesh: lies.mesh, field }) }
    }),
    found = findingsOf(model, surveyed, meshes)
  if (o.json) t.out(JSON.stringify(asJson(surveyed, meshes, found), null, 2))
  else {
    printMeshes(toMesh, meshes, t, o.units)
    print(surveyed, found, t, o)
  }
  return found.some(f => f.outcome === 'failing') || surveyed.some(s => s.pack?.gaps.some(g => g.overlap)) ? 1 : 0
}

function surveyOf(folder: string, task: ScanTask, parts: CarMeshes['parts']): CarSurvey {
  const read = partFile(folder, task.file)
  return typeof read === 'string' ? { survey: unmeasured(task, read) } : carSurvey(read.mesh, task, parts)
}
/** What a mesh beside the conversion holds, or why it cannot be read. */
function partFile(folder: string, name: string): PartFile | string {
  const read = readMesh(readFileSync(join(folder, name)))
  if (!('issue' in read)) return read
  const { where, what, found, accepted } = read.issue
  return `${where}: ${what}; found ${found}; accepted ${accepted}`
}

function findingsOf(model: Model, surveyed: readonly Surveyed[], { survey }: CarMeshes): readonly Finding[] {
  const surveys = Object.fromEntries(surveyed.map(({ task, done }) => [task.scan, done.survey])),
    answers = new Answers({ ...model, surveys, meshes: survey })
  return JUDGING.flatMap(rule => findings(rule, answers).filter(f => isOnMeshes(f, survey)))
}

/** Whether a finding rests on a scan or a mesh: what else is in the way or near is no matter of this command. */
function isOnMeshes({ rule, item = '', about, outcome }: Finding, { pairs }: CarMeshes['survey']): boolean {
  if (rule === 'can-be-brought-in') return about.some(at => at.startsWith('fit.scans'))
  if (rule === 'parts-clear-of-each-other') return item in pairs
  return outcome !== 'does not apply'
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
const asJson = (surveyed: readonly Surveyed[], { survey }: CarMeshes, found: readonly Finding[]): object => ({
  scans: Object.fromEntries(
    surveyed.map(({ task, done, pack }) => [task.scan, { file: task.file, ...done.survey, ...(pack && { pack: packJson(pack) }) }]),
  ),
  meshes: survey,
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
