import type { Edit, SECTIONS, System } from '@ampwright/conversion'
import type { Readout } from '@ampwright/drawing'
import { type Assessment, type Figure, findingId, formulaById, isFigure, type Stage } from '@ampwright/engine'
import {
  sayingEdits,
  type Saying,
  type CardView,
  type CoastDownView,
  type ComparisonView,
  type ConceptsView,
  cardView,
  coastDownView,
  comparisonView,
  concepts,
  conceptsView,
  conversionText,
  Desk,
  type Edited,
  enquiryLetter,
  type FieldView,
  type FigureView,
  type FileBeside,
  type FilePlace,
  type FileReading,
  type FormulaWorked,
  figureTexts,
  fileDatum,
  filePlaces,
  fileReading,
  filesBeside,
  type Given,
  type HandbookEntry,
  type HeadlineView,
  handbookEntries,
  type Letter,
  type Log,
  type LogTrial,
  type LotView,
  letterText,
  logTrial,
  lotView,
  moduleTable,
  type PartPlace,
  type PartSearch,
  type PartTable,
  partTable,
  partTaking,
  placesIn,
  type QuestionView,
  questionViews,
  type Recipient,
  Refusal,
  type Seen,
  type SheetNode,
  type Side,
  type Standing,
  type Step,
  type SurveySheet,
  standing,
  type TableTrial,
  type TripRoute,
  tableTrial,
  tripRoutes,
  turned,
  type WorkingView,
  type Written,
  workingTree,
  workTyped,
} from '@ampwright/workbench'
import { type DrawingLine, Drawings, type Drawn } from './drawings.ts'

export type Section = Exclude<keyof typeof SECTIONS, 'car' | 'accepted' | 'does-not-apply'>
/** A file that stands beside a conversion, fetched before it is opened. */
export type Beside = { readonly name: string; readonly bytes: Uint8Array }
export type Opened = {
  readonly usable: boolean
  readonly issues: readonly {
    readonly line: number
    readonly path: string
    readonly what: string
    readonly found: string
    readonly accepted: string
  }[]
}

/** What a change would do: the whole car assessed with it. */
export type Preview = {
  readonly cures: readonly string[]
  readonly worsens: readonly string[]
  readonly headline: readonly { readonly label: string; readonly before: string; readonly after: string }[]
  /** A change after which a rule that protects people fails is not offered. */
  readonly offered: boolean
  readonly refused?: string
}

/** Sections of the file in which things stand that can be chosen. */
const PART_SECTIONS = ['drive', 'pack', 'charging', 'donor'] as const
/** One side of a comparison: a revision or another conversion, with its files where it has its own. */
export type Compared = { readonly text: string; readonly files?: readonly Beside[] }
export type Comparison = { readonly ok: true; readonly view: ComparisonView } | { readonly ok: false; readonly says: string }

type Hear = (step: Exclude<Step, { is: 'working' }>) => void

/**
 * The engine behind the screen, in a thread of its own: one conversion laid open. Typing never waits for it; a newer edit stops the assessment that runs.
 */
export class Service {
  private desk = new Desk('')
  private turn = 0
  private searching = 0
  private hear: Hear = () => {}
  private attachments = new Map<string, Uint8Array>()
  private readonly pictures = new Drawings()
  private trial: Desk | undefined
  private readonly readings = new WeakMap<Uint8Array, { readonly system: System; readonly reading: FileReading }>()

  listen(hear: Hear): void {
    this.hear = hear
  }
  open(text: string, files: readonly Beside[], system: System): Opened {
    this.trial = undefined
    this.attachments = new Map(files.map(f => [f.name, f.bytes]))
    this.desk = new Desk(text, { attachments: (name, format) => this.beside(name, format), files: [...this.attachments.keys()], system })
    this.begin()
    return this.state()
  }
  private beside(name: string, format: string, files = this.attachments): ReturnType<typeof fileDatum> | undefined {
    const bytes = files.get(name)
    return bytes === undefined ? undefined : fileDatum(bytes, format)
  }
  private state(): Opened {
    return {
      usable: this.desk.usable,
      issues: this.desk.issues.map(({ line, path, what, found, accepted }) => ({ line, path, what, found, accepted })),
    }
  }
  edit(edits: readonly Edit[]): Edited {
    const made = this.desk.edit(edits)
    if (made.ok) this.begin()
    return made
  }
  /** Whether edits could be made, without making them: what a field asks while somebody types. */
  check(
    edits: readonly Edit[],
  ): readonly { readonly what: string; readonly found: string; readonly accepted: string; readonly nearest?: string }[] {
    const tried = this.desk.tried(edits)
    return tried.ok ? [] : tried.issues
  }
  take(text: string): Opened {
    this.desk.take(text)
    this.begin()
    return this.state()
  }
  units(system: System): void {
    this.desk.system = system
    const a = this.desk.assessment
    if (a) this.hear({ is: 'told', told: this.desk.told(a) })
  }
  text(): string {
    return this.desk.source
  }
  sheet(section: Section): SheetNode {
    return this.desk.sheet(section)
  }
  figures(stage: Stage): readonly FigureView[] {
    return this.desk.figures(stage)
  }
  working(name: string): WorkingView | undefined {
    return this.desk.working(name)
  }
  workingText(name: string): string | undefined {
    const v = this.desk.value(name),
      a = this.desk.assessment
    return v && a ? workingTree(v, a, this.desk.system, { quiet: s => s, strong: s => s }).join('\n') : undefined
  }
  drawings(): readonly DrawingLine[] {
    const a = this.desk.assessment
    return a ? this.pictures.list(a) : []
  }
  draw(id: string, width: number): Drawn | undefined {
    const a = this.desk.assessment
    return a && this.pictures.draw(a, id, width, this.desk.system)
  }
  readAt(id: string, pixel: number): Readout | undefined {
    return this.pictures.read(id, pixel)
  }
  drawingFile(id: string, as: 'svg' | 'csv', width: number): string | undefined {
    const a = this.desk.assessment
    return a && this.pictures.file(a, id, as, width, this.desk.system)
  }
  /** The headline with edits that are not made: what a handle shows while it is dragged. */
  tryout(edits: readonly Edit[]): readonly { readonly id?: string; readonly label: string; readonly value?: string }[] {
    const tried = this.desk.tried(edits)
    if (!tried.ok) return []
    this.trial ??= new Desk(this.desk.source, { attachments: (name, format) => this.beside(name, format) })
    this.trial.system = this.desk.system
    this.trial.take(tried.text)
    return this.trial.headlineOnly()
  }
  /** How long one bare headline takes here [ms]: the middle of many. A measure for the bench; the page does not use it. */
  bareHeadline(): number {
    const times = Array.from({ length: 15 }, () => {
      const fresh = new Desk(this.desk.source, { attachments: (name, format) => this.beside(name, format) }),
        began = performance.now()
      fresh.headlineOnly()
      return performance.now() - began
    })
    return times.toSorted((a, b) => a - b)[7] ?? Number.NaN
  }
  /** The edit that changes the total ratio of a unit: its reduction where it has one, else the kept gear that comes nearest. */
  ratioEdit(unit: string, ratio: number): Edit | undefined {
    return this.desk.ratioEdit(unit, ratio)
  }
  /** Every place of the file that takes a part, with what stands there. */
  places(): readonly PartPlace[] {
    return PART_SECTIONS.flatMap(s => placesIn(this.desk.sheet(s)))
  }
  /** Records side by side: those that fit a place, or all there are. */
  partTable(path: string | undefined, search: Omit<PartSearch, 'classes'>): { readonly table: PartTable; readonly now?: Standing } {
    if (path === undefined) return { table: partTable({ ...search, classes: [] }, this.desk.system) }
    return {
      table: partTable({ ...search, classes: this.desk.partClasses(path) }, this.desk.system),
      now: standing(this.desk, path),
    }
  }
  /** What choosing a part would fill and leave. */
  partTaking(path: string, id: string): ReturnType<typeof partTaking> {
    return partTaking(this.desk, path, id)
  }
  /** Every card of the handbook: it needs no conversion. */
  handbook(): readonly HandbookEntry[] {
    return handbookEntries()
  }
  card(id: string, system: System): CardView | undefined {
    return cardView(id, system)
  }
  /** A formula worked with texts as typed. */
  workFormula(id: string, texts: Readonly<Record<string, string>>, system: System): FormulaWorked | undefined {
    const f = formulaById(id)
    return f && workTyped(f, texts, system)
  }
  /** What went into a figure of this conversion, to work its formula with; undefined where it is none of this formula. */
  figureTexts(
    name: string,
    formula: string,
    system: System,
  ): { readonly label: string; readonly texts: Readonly<Record<string, string>> } | undefined {
    const v = this.desk.value(name)
    return v && isFigure(v) && v.because.formula.card.id === formula
      ? { label: v.label, texts: figureTexts(v as Figure, system) }
      : undefined
  }
  field(path: string): FieldView | undefined {
    return this.desk.field(path)
  }
  /** What to measure; with the sheet somebody is filling in, its rows stay where they stand. */
  survey(before?: SurveySheet): SurveySheet {
    return this.desk.survey(before)
  }
  letter(to: Recipient): Letter | undefined {
    const a = this.desk.assessment
    return a && enquiryLetter(a, this.desk.current(), to, this.desk.system)
  }
  letterText(to: Recipient, written: Written): string | undefined {
    const letter = this.letter(to)
    return letter && letterText(letter, written)
  }
  /** Two conversions side by side; undefined is the one in hand as it stands. */
  async compare(before: Compared | undefined, after: Compared | undefined): Promise<Comparison> {
    const a = await this.side(before),
      b = await this.side(after)
    if ('refused' in a) return { ok: false, says: a.refused }
    return 'refused' in b ? { ok: false, says: b.refused } : { ok: true, view: comparisonView(a, b, this.desk.system) }
  }
  private async side(of: Compared | undefined): Promise<Side | { readonly refused: string }> {
    const text = of?.text ?? this.desk.source,
      standing = this.desk.assessment
    if (of === undefined && standing) return { text, assessment: standing }
    const files = of?.files && new Map(of.files.map(f => [f.name, f.bytes]))
    const desk = new Desk(text, { attachments: (name, format) => this.beside(name, format, files), system: this.desk.system })
    if (!desk.usable)
      return {
        refused: `This text cannot be assessed: ${desk.issues.map(i => `line ${i.line}, ${i.path}: ${i.what}; found ${i.found}`)[0]}`,
      }
    return { text, assessment: await inSlices(desk) }
  }
  /** The questions of the guided start, with what is wrong with the answers. */
  questions(given: Given): readonly QuestionView[] {
    return questionViews(given)
  }
  /** Concepts for the answers, told of on the way; a newer request stops an older one. */
  async concepts(
    given: Given,
    system: System,
    hear: (step: string) => void,
  ): Promise<ConceptsView | { readonly refused: string } | undefined> {
    const turn = ++this.searching
    try {
      const steps = concepts(conversionText(given))
      for (let told = 0; ; ) {
        const step = steps.next()
        if (step.done) return conceptsView(step.value, system)
        if (performance.now() - told > 150) {
          told = performance.now()
          hear(`Trying ${step.value.concept}: ${step.value.did}, ${step.value.trials} designs so far`)
          await breath()
          if (turn !== this.searching) return undefined
        }
      }
    } catch (e) {
      if (e instanceof Refusal) return { refused: e.message }
      throw e
    }
  }
  /** The text of a new conversion from the answers, and a concept as edits that say what they saw there. */
  begun(given: Given, edits: readonly Edit[]): { readonly text: string; readonly edits: readonly Seen[] } {
    const text = conversionText(given),
      made = new Desk(text).edit(edits)
    return { text, edits: made.ok ? made.edits : [] }
  }
  /** The edits that say something of a finding by hand, or why it cannot be said. */
  saying(id: string, given: Saying): { readonly edits: readonly Edit[] } | { readonly refused: string } {
    const f = this.desk.assessment?.findings.find(x => findingId(x) === id)
    if (f === undefined) return { refused: 'This finding is no longer there.' }
    try {
      return { edits: sayingEdits(f, given) }
    } catch (e) {
      if (e instanceof Refusal) return { refused: e.message }
      throw e
    }
  }
  /** Assesses the car with edits that are not made, in full; whatever else is asked meanwhile goes first. */
  async preview(edits: readonly Edit[]): Promise<Preview> {
    const tried = this.desk.tried(edits),
      before = this.desk.assessment
    if (!tried.ok)
      return { cures: [], worsens: [], headline: [], offered: false, refused: tried.issues.map(i => `${i.path}: ${i.what}`).join('; ') }
    if (!before) return { cures: [], worsens: [], headline: [], offered: false, refused: 'The car is still being worked out.' }
    const trial = new Desk(tried.text, { attachments: (name, format) => this.beside(name, format), system: this.desk.system })
    return previewOf(this.desk, before, trial)
  }

  /** The salvaged modules with a verdict on each, once they are assessed. */
  lot(): LotView | undefined {
    const a = this.desk.assessment
    return a && lotView(this.desk.current().model, a, this.desk.system)
  }
  /** The salvaged modules as a table for a spreadsheet. */
  moduleTable(): string {
    return moduleTable(this.desk.current().model)
  }
  tryModules(bytes: Uint8Array): TableTrial {
    return tableTrial(this.desk, bytes)
  }
  coastDown(): CoastDownView | undefined {
    const a = this.desk.assessment
    return a && coastDownView(Object.keys(this.desk.current().model.donor.coastDown.steps), a, this.desk.system)
  }
  tryLogs(logs: readonly Log[]): LogTrial {
    return logTrial(this.desk, logs)
  }
  /** The files beside the conversion, and the places that take one. */
  files(): { readonly files: readonly FileBeside[]; readonly places: readonly FilePlace[]; readonly routes: readonly TripRoute[] } {
    const places = filePlaces(this.desk.current().text.tree),
      readings = [...this.attachments].map(([name, bytes]) => this.reading(name, bytes))
    return { files: filesBeside(readings, places), places, routes: tripRoutes(readings, places) }
  }
  /** A large file is read once, not after every edit. */
  private reading(name: string, bytes: Uint8Array): FileReading {
    const { system } = this.desk,
      kept = this.readings.get(bytes)
    if (kept?.system === system) return kept.reading
    const reading = fileReading(name, bytes, system)
    this.readings.set(bytes, { system, reading })
    return reading
  }
  /** What a file holds that is not beside the conversion yet. */
  readFile(name: string, bytes: Uint8Array): FileReading {
    return fileReading(name, bytes, this.desk.system)
  }
  /** A file now stands beside the conversion, or no longer: look-ups see it at once. */
  addFile(name: string, bytes: Uint8Array | null): void {
    if (bytes === null) this.attachments.delete(name)
    else this.attachments.set(name, bytes)
    this.desk.filesChanged([...this.attachments.keys()])
    this.begin()
  }

  private begin(): void {
    void this.run(++this.turn)
  }
  private async run(turn: number): Promise<void> {
    const steps = this.desk.assess()
    let began = performance.now()
    for (;;) {
      const step = steps.next()
      if (turn !== this.turn) return
      if (!step.done && step.value.is !== 'working') this.hear(step.value)
      if (step.done) return
      if (performance.now() - began > SLICE) {
        await breath()
        if (turn !== this.turn) return
        began = performance.now()
      }
    }
  }
}
/** A whole assessment that lets other messages in between. */
async function inSlices(desk: Desk): Promise<Assessment> {
  let began = performance.now()
  for (const steps = desk.assess(); ; ) {
    const step = steps.next()
    if (step.done) return step.value
    if (performance.now() - began < SLICE) continue
    await breath()
    began = performance.now()
  }
}
/** Longest the thread works before it looks for a newer edit [ms]. */
const SLICE = 8
/** Lets waiting messages in; a timer would be held back by the browser. */
const breath = (): Promise<void> =>
  new Promise(done => {
    const { port1, port2 } = new MessageChannel()
    port1.addEventListener('message', () => {
      port1.close()
      done()
    })
    port1.start()
    port2.postMessage(0)
  })

const BAD = new Set(['failing'])
async function previewOf(desk: Desk, before: Assessment, trial: Desk): Promise<Preview> {
  let after: Assessment | undefined,
    began = performance.now()
  for (const steps = trial.assess(); ; ) {
    const step = steps.next()
    if (step.done) {
      after = step.value
      break
    }
    if (performance.now() - began > SLICE) {
      await breath()
      began = performance.now()
    }
  }
  const changed = turned(before, after)
  const named = (t: (typeof changed)[number]): string => `${t.title}${t.item ? ` (${t.item})` : ''}`
  const cured = changed.filter(t => t.before && BAD.has(t.before) && !(t.after && BAD.has(t.after))),
    worse = changed.filter(t => t.after && BAD.has(t.after) && !(t.before && BAD.has(t.before)))
  const a = desk.told(before).headline,
    b = new Map(trial.told(after).headline.map(h => [h.id, h]))
  return {
    cures: cured.map(named),
    worsens: worse.map(t => named(t) + said(trial, after, t.rule, t.item)),
    headline: a.flatMap(h => moved(h, b.get(h.id))),
    offered: !worse.some(t => t.harm === 'S3'),
    ...(worse.some(t => t.harm === 'S3') ? { refused: 'It would break a rule that protects people.' } : {}),
  }
}
const said = (trial: Desk, a: Assessment, rule: string, item: string | undefined): string => {
  const f = trial.told(a).findings.find(x => x.rule === rule && x.item === item)
  return f?.found && f.required ? `: ${f.found.text}, ${f.required.side} ${f.required.text} wanted` : ''
}
const moved = (h: HeadlineView, after: HeadlineView | undefined): Preview['headline'] =>
  h.value === undefined || after?.value === undefined || h.value === after.value
    ? []
    : [{ label: h.label, before: h.value, after: after.value }]
