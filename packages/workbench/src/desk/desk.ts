import {
  applyEdits,
  type Conversion,
  type Edit,
  entryAt,
  fieldAt,
  type Issue,
  isSound,
  isUsable,
  type KindAt,
  type LookUps,
  pathKeys,
  pathText,
  readConversion,
  type SECTIONS,
  type Standing,
  type System,
  standingAt,
  type TextTree,
} from '@ampwright/conversion'
import {
  Answers,
  type AnyValue,
  type Assessment,
  assess,
  type Fact,
  type Figure,
  HEADLINE,
  headlineOf,
  isFigure,
  isGap,
  type MeshesTask,
  meshesTask,
  type Model,
  nameOf,
  STUDIES,
  type Stage,
} from '@ampwright/engine'
import { freed } from '../freed.ts'
import { lookUps } from '../look-ups.ts'
import { partsFor } from '../parts/fitting.ts'
import { headed, shown } from '../shown.ts'
import { survey } from '../survey.ts'
import { type FieldView, fieldView, type Known } from './field-view.ts'
import { type FindingView, findingView } from './finding-view.ts'
import { earlyHeadline, type HeadlineView, headlineView } from './headline-view.ts'
import { type ScanNamed, scansNamed } from './scans-named.ts'
import { type SheetNode, sheet } from './sheet.ts'
import { inPlace, type SurveySheet, surveySheet } from './survey-sheet.ts'
import { type TableView, tableView } from './table-view.ts'
import { type WorkingView, workingView } from './working-view.ts'

/** What stands at a path, as a batch of edits says it saw it. */
export type Seen = Edit & { readonly path: string; readonly was: Standing }
export type Edited =
  | { readonly ok: true; readonly text: string; readonly edits: readonly Seen[]; readonly notes: readonly Issue[] }
  | { readonly ok: false; readonly issues: readonly Issue[] }

/** A figure as a screen lists it, under the question it answers. */
export type FigureView = { readonly id: string; readonly label: string; readonly text: string; readonly asks: string }

/** What is told once everything is worked out and judged. */
export type Told = {
  readonly name: string
  readonly headline: readonly HeadlineView[]
  readonly findings: readonly FindingView[]
  readonly gaps: readonly { readonly path: string; readonly label: string; readonly until: string; readonly unlocks: readonly string[] }[]
  readonly notes: readonly Issue[]
}
/** A step of the assessment: the headline figures first, all of it last. */
export type Step =
  | { readonly is: 'working' }
  | { readonly is: 'headline'; readonly headline: ReturnType<typeof earlyHeadline> }
  | { readonly is: 'told'; readonly told: Told }

type Tried =
  | { readonly ok: true; readonly text: string; readonly conversion: Conversion }
  | { readonly ok: false; readonly issues: readonly Issue[] }

/** What was measured outside of the engine: scans of the car, meshes of its parts. */
export type Measured = Pick<Model, 'surveys' | 'meshes'>

export type Opening = {
  readonly attachments?: LookUps['attachments']
  readonly files?: readonly string[]
  readonly measured?: Measured
  readonly system?: System
}

/**
 * One conversion laid open: its text, what it resolves to, what was answered. Edits are tried on the text and refused whole where it could not be read
 * afterwards; the assessment runs in steps, so that a newer edit may stop it.
 */
export class Desk {
  private text: string
  private conversion: Conversion
  private answers: Answers
  private last: Assessment | undefined
  private lastTried: { readonly asked: string; readonly on: Conversion; readonly tried: Tried } | undefined
  private readonly look: LookUps
  private files: readonly string[]
  private outside: Measured
  system: System

  constructor(text: string, { attachments, files = [], measured = {}, system = 'metric' }: Opening = {}) {
    this.text = text
    this.look = lookUps(attachments)
    this.files = files
    this.outside = measured
    this.system = system
    this.conversion = readConversion(text, { lookUps: this.look })
    this.answers = new Answers(this.surveyedModel())
  }

  get issues(): readonly Issue[] {
    return this.conversion.issues
  }
  get usable(): boolean {
    return isUsable(this.conversion)
  }
  get source(): string {
    return this.text
  }
  get assessment(): Assessment | undefined {
    return this.last
  }

  /** Tries edits without keeping them. */
  tried(edits: readonly Edit[]): Tried {
    // What a field asks while somebody types is asked once more as it is committed.
    const asked = JSON.stringify(edits)
    if (this.lastTried?.asked !== asked || this.lastTried.on !== this.conversion)
      this.lastTried = { asked, on: this.conversion, tried: this.trying(edits) }
    return this.lastTried.tried
  }
  private trying(edits: readonly Edit[]): Tried {
    const applied = applyEdits(this.text, edits, this.conversion.text)
    if (!applied.ok) return { ok: false, issues: [applied.problem] }
    const conversion = readConversion(applied.text, { lookUps: this.look, before: this.conversion.text })
    if (!isUsable(conversion)) return { ok: false, issues: conversion.issues.filter(i => i.harm !== 'note') }
    const unknown = conversion.issues.filter(i => i.about === 'part' && edits.some(e => i.path === at(e) || i.path.startsWith(`${at(e)}.`)))
    return unknown.length ? { ok: false, issues: unknown } : { ok: true, text: applied.text, conversion }
  }

  /** Makes edits, all or none, and says what stood there: what a store compares with. */
  edit(asked: readonly Edit[], withNaming = false): Edited {
    const edits = withNaming ? [...freed(this.conversion, asked), ...asked] : asked,
      tried = this.tried(edits)
    if (!tried.ok) return tried
    const seen = edits.map((e): Seen => ({ ...e, path: at(e), was: this.at(at(e)) }))
    this.take(tried.text, tried.conversion)
    return { ok: true, text: tried.text, edits: seen, notes: tried.conversion.issues }
  }

  /** Takes a text that came from elsewhere: another window, a restored revision. */
  take(text: string, conversion = readConversion(text, { lookUps: this.look, before: this.conversion.text })): void {
    this.text = text
    this.conversion = conversion
    this.answers.next(this.surveyedModel())
  }

  /** The scans the file names, and what is to be measured of them outside of the engine. */
  scans(): readonly ScanNamed[] {
    return scansNamed(this.answers)
  }
  /** Sides of one module of the pack [m]; undefined while one is not known. */
  moduleSize(): readonly [number, number, number] | undefined {
    const { length, width, height } = this.answers.current().pack.module
    return isGap(length) || isGap(width) || isGap(height) ? undefined : [length.value, width.value, height.value]
  }
  /** The meshes parts have, and what is to be measured of them. */
  meshes(): MeshesTask {
    return meshesTask(this.answers.current(), this.answers.ask)
  }
  /** What was measured of scans and meshes so far. */
  get measured(): Measured {
    return this.outside
  }
  /** Takes what was measured of scans and meshes. Of what has moved since, nothing holds. */
  surveyed(measured: Measured): void {
    this.outside = measured
    this.answers.next(this.surveyedModel())
  }
  private surveyedModel(): Conversion['model'] {
    const { model } = this.conversion
    return Object.keys(this.outside).length === 0 ? model : { ...model, ...this.outside }
  }

  /** What stands at a path, as typed: a value, a row, the text of a whole group, or null for nothing. */
  at(path: string): Standing {
    const { text } = this.conversion
    return isSound(text) ? standingAt(text, path) : null
  }

  /** Other files stand beside the conversion now: what names one is read anew. */
  filesChanged(names: readonly string[]): void {
    this.files = names
    this.take(this.text)
  }

  /** Works everything out, headline first. How sure a figure is, it leaves to whoever reads it: `figureIds`, `tableFigures` say which those are. */
  *assess(): Generator<Step, Assessment> {
    const steps = assess(this.answers)
    let n = 0
    for (;;) {
      const step = steps.next()
      if (step.done) {
        this.last = step.value
        yield { is: 'told', told: this.told(step.value) }
        return step.value
      }
      n += 1
      yield n === HEADLINE.length ? { is: 'headline', headline: earlyHeadline(this.early(), this.system) } : { is: 'working' }
    }
  }
  private early(): ReadonlyMap<string, Figure> {
    return new Map(HEADLINE.flatMap(s => (this.answers.of(s)?.figures ?? []).map(f => [f.id, f] as const)))
  }
  /** The headline figures alone. */
  headlineOnly(): ReturnType<typeof earlyHeadline> {
    return earlyHeadline(this.early(), this.system)
  }
  /** The edit that changes the total ratio of a drive unit: its reduction where it has one, else the kept gear that comes nearest. */
  ratioEdit(unit: string, ratio: number): Edit | undefined {
    const a = this.last,
      now = a?.figures.get(`ratio.total@${unit}`)?.value,
      reduction = `drive.units.${unit}.reduction`
    const stated = (this.conversion.facts as readonly Fact[]).find(f => f.path === reduction)
    if (now === undefined || !(now > 0)) return undefined
    if (stated) return { path: reduction, now: String(Number(((stated.value * ratio) / now).toPrecision(4))) }
    const gears = (a?.tables.get(`gear.gears@${unit}`)?.rows ?? []).flatMap(({ name, cells }) => {
      const of = cells['ratio'],
        value = typeof of === 'object' ? of.value : of
      return typeof value === 'number' ? [{ name, value }] : []
    })
    const nearest = gears.toSorted((x, y) => Math.abs(Math.log(x.value / ratio)) - Math.abs(Math.log(y.value / ratio)))[0]
    return nearest && { path: `drive.units.${unit}.gear`, now: nearest.name }
  }
  /** The last assessment as a screen shows it, in the units of the day. */
  told(a: Assessment): Told {
    const { car } = this.conversion.model
    return {
      name: 'value' in car ? car.value : '',
      headline: headlineView(a, this.system),
      findings: a.findings.map(f => findingView(f, this.system)),
      gaps: a.gaps.map(g => ({ path: g.path, label: g.label, until: g.until, unlocks: g.unlocks })),
      notes: this.conversion.issues,
    }
  }

  /** A section of the file with every field there is. */
  sheet(section: keyof typeof SECTIONS): SheetNode {
    return sheet(section, this.conversion.text.tree, this.known())
  }
  private known(): Known {
    const { facts, issues, text } = this.conversion
    return {
      facts: new Map((facts as readonly Fact[]).map(f => [f.path, f])),
      unlocks: new Map((this.last?.gaps ?? []).map(g => [g.path, g.unlocks])),
      issues: new Map(issues.map(i => [i.path, i])),
      names: path => {
        const node = text.tree === undefined ? undefined : entryAt(text.tree, pathKeys(path) ?? [])?.node
        return node?.kind === 'group' ? [...node.entries.keys()].filter(k => k !== 'note') : []
      },
      parts: classes => partsFor(classes).map(p => p.id),
      files: this.files,
      system: this.system,
    }
  }

  /** Classes of parts that a place of the file takes; none where it takes any. */
  partClasses(path: string): readonly string[] {
    const leaf = fieldAt(path)
    return leaf?.is === 'part' ? leaf.classes : []
  }
  /** The field at a path of the file, typed or not; undefined where the schema has none, or a whole group. */
  field(path: string): FieldView | undefined {
    return fieldIn(this.known(), this.conversion.text.tree)(path)
  }
  /** What to measure next, as a sheet to fill in; rows of one that is being filled in stay where they stand. */
  survey(before?: SurveySheet): SurveySheet {
    const a = this.last
    if (a === undefined) return before ?? []
    const field = fieldIn(this.known(), this.conversion.text.tree),
      now = surveySheet(survey(this.conversion, a, headlineOf(a), this.system), field)
    return before === undefined ? now : inPlace(before, now, field)
  }

  /** The figures of a stage, in the order of its studies. */
  figures(stage: Stage): readonly FigureView[] {
    const a = this.last
    if (a === undefined) return []
    const of = new Map(STUDIES.filter(s => s.stage === stage).map(s => [s.id, s.asks]))
    return [...a.figures.values()].flatMap(f => {
      const asks = of.get(f.id.slice(0, f.id.indexOf('.')))
      return asks === undefined || typeof f.value !== 'number'
        ? []
        : [{ id: f.id, label: headed(f.label), text: shown(f, this.system, a.halves.get(f.id)), asks }]
    })
  }

  /** Ids of the figures of a stage. */
  figureIds(stage: Stage): readonly string[] {
    const of = new Set(STUDIES.filter(s => s.stage === stage).map(s => s.id))
    return [...(this.last?.figures.keys() ?? [])].filter(id => of.has(id.slice(0, id.indexOf('.'))))
  }
  /** Ids of the figures in tables. */
  tableFigures(ids: readonly string[]): readonly string[] {
    const rows = ids.flatMap(id => this.last?.tables.get(id)?.rows ?? [])
    return rows.flatMap(r => Object.values(r.cells).flatMap(c => (typeof c === 'object' && isFigure(c) ? [c.id] : [])))
  }

  /** The tables of a stage by their ids, in that order; one nobody could answer yet is left out. */
  tables(ids: readonly string[]): readonly TableView[] {
    const a = this.last
    if (a === undefined) return []
    return ids.flatMap(id => {
      const table = a.tables.get(id)
      return table === undefined || table.rows.length === 0 ? [] : [tableView(table, a, this.system)]
    })
  }

  /** The working of a figure by its id, or of a fact by its path. */
  working(name: string): WorkingView | undefined {
    const v = this.value(name)
    return v === undefined || this.last === undefined ? undefined : workingView(v, this.last, this.system)
  }
  value(name: string): AnyValue | undefined {
    const a = this.last
    if (a === undefined) return undefined
    const found = a.figures.get(name) ?? (this.conversion.facts as readonly Fact[]).find(f => f.path === name)
    return found ?? inputNamed(a, name)
  }
  current(): Conversion {
    return this.conversion
  }
}

/** Which kind of goal or trip stands where in a text. */
export const kindsIn =
  (tree: TextTree | undefined): KindAt =>
  path => {
    const node = tree === undefined ? undefined : entryAt(tree, pathKeys(path) ?? [])?.node
    return node?.kind === 'value' ? node.source : undefined
  }

/** Fields by their path, as they stand in a text. */
const fieldIn =
  (known: Known, tree: TextTree | undefined) =>
  (path: string): FieldView | undefined => {
    const leaf = fieldAt(path, kindsIn(tree)),
      keys = pathKeys(path) ?? []
    return leaf && fieldView(leaf, keys, tree === undefined ? undefined : entryAt(tree, keys)?.node, known)
  }

/** A path of an edit as text. */
const at = (e: Edit): string => (typeof e.path === 'string' ? e.path : pathText(e.path))

/** Constants and rows of rule sets are in no list: they are found where a working uses them. */
function inputNamed(a: Assessment, name: string): AnyValue | undefined {
  for (const f of a.figures.values()) for (const x of Object.values(f.because.inputs).flat() as AnyValue[]) if (nameOf(x) === name) return x
  for (const f of a.findings) for (const x of [f.found, f.required?.limit, ...Object.values(f.slots)]) if (x && nameOf(x) === name) return x
  return undefined
}
