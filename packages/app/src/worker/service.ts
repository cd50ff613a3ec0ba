import type { Edit, SECTIONS, System } from '@ampwright/conversion'
import type { Readout } from '@ampwright/drawing'
import { type Assessment, findingId, type PackArrangement, type Stage } from '@ampwright/engine'
import {
  type Arranging,
  type ArrangingPlan,
  type CardView,
  type CoastDownView,
  type ConceptsView,
  Desk,
  type Edited,
  type FieldView,
  type FigureView,
  type FileReading,
  type FormulaWorked,
  fileDatum,
  type Given,
  type HandbookEntry,
  type Letter,
  type Log,
  type LogTrial,
  type LotView,
  type Measured,
  type PartPlace,
  type PartSearch,
  type PartTable,
  type PartTaking,
  type QuestionView,
  type Recipient,
  Refusal,
  type Saying,
  type ScanNamed,
  type ScanTold,
  type Seen,
  type SheetNode,
  type Side,
  type Standing,
  type SurveySheet,
  sayingEdits,
  scansTold,
  shownNumber,
  type TableTrial,
  type TableView,
  type WorkingView,
  type Written,
  workingTree,
} from '@ampwright/workbench'
import { transfer } from 'comlink'
import type { Arranged, Looking } from './arranging.ts'
import type { Comparison, FileList } from './beside.ts'
import type { DrawingLine, Drawings, Drawn, FileKind, SceneView } from './drawings.ts'
import { noPreview, type Preview, previewOf } from './preview.ts'
import { Rehearsal } from './rehearsal.ts'
import { type Hear, headlineFirst, howSure, inSlices } from './slices.ts'
import { type Attached, TrialDesk } from './trial-desk.ts'

// What the headline and the stages do not need is fetched when somebody first asks for it.
const beside = () => import('./beside.ts')
const book = () => import('./book.ts')
const guided = () => import('./guided.ts')
const arranging = () => import('./arranging.ts')

export type { Preview } from './preview.ts'
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

/** Sections of the file in which things stand that can be chosen. */
const PART_SECTIONS = ['drive', 'pack', 'charging', 'donor'] as const
/** One side of a comparison: a revision or another conversion, with its files where it has its own. */
export type Compared = { readonly text: string; readonly files?: readonly Beside[] }

const datumOf = (bytes: Uint8Array | undefined, format: string) => (bytes === undefined ? undefined : fileDatum(bytes, format))
/**
 * The engine behind the screen, in a thread of its own: one conversion laid open. Typing never waits for it; a newer edit stops the assessment that runs.
 */
export class Service {
  private desk = new Desk('')
  private turn = 0
  private searching = 0
  private hear: Hear = () => {}
  private attachments = new Map<string, Uint8Array>()
  private pictures: Promise<Drawings> | undefined
  private drawn: Drawings | undefined
  private measured = ''
  listen(hear: Hear): void {
    this.hear = hear
  }
  open(text: string, files: readonly Beside[], system: System): Opened {
    this.trial.forget()
    this.measured = ''
    this.attachments = new Map(files.map(f => [f.name, f.bytes]))
    this.desk = new Desk(text, { attachments: this.attached, files: [...this.attachments.keys()], system })
    this.begin()
    return this.state()
  }
  private readonly attached: Attached = (name, format) => datumOf(this.attachments.get(name), format)
  private readonly trial = new TrialDesk(this.attached)
  private readonly rehearsal = new Rehearsal(this.trial)
  private state(): Opened {
    return {
      usable: this.desk.usable,
      issues: this.desk.issues.map(({ line, path, what, found, accepted }) => ({ line, path, what, found, accepted })),
    }
  }
  edit(edits: readonly Edit[], withNaming = false): Edited {
    const made = this.desk.edit(edits, withNaming)
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
  async figures(stage: Stage): Promise<readonly FigureView[]> {
    await howSure(this.desk, () => this.desk.figureIds(stage))
    return this.desk.figures(stage)
  }
  async tables(ids: readonly string[]): Promise<readonly TableView[]> {
    await howSure(this.desk, () => this.desk.tableFigures(ids))
    return this.desk.tables(ids)
  }
  working(name: string): WorkingView | undefined {
    return this.desk.working(name)
  }
  workingText(name: string): string | undefined {
    const v = this.desk.value(name),
      a = this.desk.assessment
    return v && a ? workingTree(v, a, this.desk.system, { quiet: s => s, strong: s => s }).join('\n') : undefined
  }
  /** Reads something off the drawings, which are fetched when they are first asked for; undefined until the car is assessed. */
  private async drawing<T>(read: (drawings: Drawings, a: Assessment, system: System) => T): Promise<T | undefined> {
    this.pictures ??= import('./drawings.ts').then(m => (this.drawn = new m.Drawings()))
    const pictures = await this.pictures,
      a = this.desk.assessment
    return a && read(pictures, a, this.desk.system)
  }
  async drawings(): Promise<readonly DrawingLine[]> {
    return (await this.drawing((d, a) => d.list(a))) ?? []
  }
  async draw(id: string, width: number): Promise<Drawn | undefined> {
    if (await this.drawing((d, a) => d.tellsHowSure(a, id))) await howSure(this.desk, () => this.desk.tableFigures([id]))
    return this.drawing((d, a, system) => d.draw(a, id, width, system))
  }
  /** The car in three dimensions, once something has a shape. */
  scene(): Promise<SceneView | undefined> {
    return this.drawing((d, a, system) => d.scene(a, system))
  }
  gapBetween(one: string, other: string): Promise<string | undefined> {
    return this.drawing((d, a, system) => d.gap(a, one, other, system))
  }
  readAt(id: string, pixel: number): Readout | undefined {
    return this.drawn?.read(id, pixel)
  }
  drawingFile(id: string, as: FileKind, width: number): Promise<string | undefined> {
    return this.drawing((d, a, system) => d.file(a, id, as, width, system))
  }
  /** The headline with edits that are not made: what a handle shows while it is dragged. */
  tryout(edits: readonly Edit[]): readonly { readonly id?: string; readonly label: string; readonly value?: string }[] {
    const tried = this.desk.tried(edits)
    if (!tried.ok) return []
    return this.trial.headline(tried.text, this.desk.system)
  }
  bareHeadline(): number {
    return this.trial.bare(this.desk.source)
  }
  /** The edit that changes the total ratio of a unit: its reduction where it has one, else the kept gear that comes nearest. */
  ratioEdit(unit: string, ratio: number): Edit | undefined {
    return this.desk.ratioEdit(unit, ratio)
  }
  /** Every place of the file that takes a part, with what stands there. */
  async places(): Promise<readonly PartPlace[]> {
    const { placesIn } = await beside()
    return PART_SECTIONS.flatMap(s => placesIn(this.desk.sheet(s)))
  }
  /** Records side by side: those that fit a place, or all there are. */
  async partTable(
    path: string | undefined,
    search: Omit<PartSearch, 'classes'>,
  ): Promise<{ readonly table: PartTable; readonly now?: Standing }> {
    const { partTable, standing } = await beside()
    if (path === undefined) return { table: partTable({ ...search, classes: [] }, this.desk.system) }
    return { table: partTable({ ...search, classes: this.desk.partClasses(path) }, this.desk.system), now: standing(this.desk, path) }
  }
  /** What choosing a part would fill and leave. */
  async partTaking(path: string, id: string): Promise<PartTaking | { readonly refused: string }> {
    return (await beside()).partTaking(this.desk, path, id)
  }
  /** Every card of the handbook: it needs no conversion. */
  async handbook(): Promise<readonly HandbookEntry[]> {
    return (await book()).handbookEntries()
  }
  async card(id: string, system: System): Promise<CardView | undefined> {
    return (await book()).cardView(id, system)
  }
  /** A formula worked with texts as typed. */
  async workFormula(id: string, texts: Readonly<Record<string, string>>, system: System): Promise<FormulaWorked | undefined> {
    return (await book()).worked(id, texts, system)
  }
  /** What went into a figure of this conversion, to work its formula with; undefined where it is none of this formula. */
  async figureTexts(
    name: string,
    formula: string,
    system: System,
  ): Promise<{ readonly label: string; readonly texts: Readonly<Record<string, string>> } | undefined> {
    return (await book()).textsOf(this.desk.value(name), formula, system)
  }
  field(path: string): FieldView | undefined {
    return this.desk.field(path)
  }
  /** What to measure; with the sheet somebody is filling in, its rows stay where they stand. */
  survey(before?: SurveySheet): SurveySheet {
    return this.desk.survey(before)
  }
  async letter(to: Recipient): Promise<Letter | undefined> {
    return (await beside()).letterOf(this.desk, to)
  }
  async letterText(to: Recipient, written: Written): Promise<string | undefined> {
    const { letterOf, letterText } = await beside(),
      letter = letterOf(this.desk, to)
    return letter && letterText(letter, written)
  }
  /** Two conversions side by side; undefined is the one in hand as it stands. */
  async compare(before: Compared | undefined, after: Compared | undefined): Promise<Comparison> {
    const { compared } = await beside()
    return compared(await this.side(before), await this.side(after), this.desk.system)
  }
  private async side(of: Compared | undefined): Promise<Side | { readonly refused: string }> {
    const text = of?.text ?? this.desk.source,
      standing = this.desk.assessment
    if (of === undefined && standing) return { text, assessment: standing }
    const files = of?.files && new Map(of.files.map(f => [f.name, f.bytes]))
    const desk = new Desk(text, {
      attachments: (name, format) => (files ? datumOf(files.get(name), format) : this.attached(name, format)),
      system: this.desk.system,
    })
    if (!desk.usable)
      return {
        refused: `This text cannot be assessed: ${desk.issues.map(i => `line ${i.line}, ${i.path}: ${i.what}; found ${i.found}`)[0]}`,
      }
    return { text, assessment: await inSlices(desk) }
  }
  /** The questions of the guided start, with what is wrong with the answers. */
  async questions(given: Given): Promise<readonly QuestionView[]> {
    return (await guided()).questionViews(given)
  }
  /** Concepts for the answers, told of on the way; a newer request stops an older one. */
  async concepts(
    given: Given,
    system: System,
    hear: (step: string) => void,
  ): Promise<ConceptsView | { readonly refused: string } | undefined> {
    const turn = ++this.searching
    return (await guided()).searched(given, system, { hear, wanted: () => turn === this.searching })
  }
  /** The text of a new conversion from the answers, and a concept as edits that say what they saw there. */
  async begun(given: Given, edits: readonly Edit[]): Promise<{ readonly text: string; readonly edits: readonly Seen[] }> {
    return (await guided()).begun(given, edits)
  }
  /** What there is to arrange of the battery, or what is missing for it. */
  async arrangingPlan(asked: Arranging): Promise<ArrangingPlan | { readonly refused: string }> {
    return (await arranging()).planned(this.desk, asked)
  }
  /** Looks for arrangements of the battery, told of on the way: in a thread of its own, which is ended to stop it. */
  async arrange(plan: ArrangingPlan, looking: Looking, system: System, hear: (found: Arranged) => void): Promise<Arranged> {
    return (await arranging()).arranged(plan, looking, system, hear)
  }
  /** An arrangement as edits of the conversion. */
  async arrangementEdits(plan: ArrangingPlan, one: PackArrangement): Promise<readonly Edit[]> {
    return (await arranging()).taken(this.desk, plan, one)
  }
  /** A circuit for what the car has, as edits, or why none can be laid out. */
  async circuitEdits(): Promise<readonly Edit[] | { readonly refused: string }> {
    return (await arranging()).laidOut(this.desk)
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
    if (!tried.ok) return noPreview(tried.issues.map(i => `${i.path}: ${i.what}`).join('; '))
    if (!before) return noPreview('The car is still being worked out.')
    const trial = new Desk(tried.text, {
      attachments: this.attached,
      measured: this.desk.measured,
      system: this.desk.system,
    })
    return previewOf(this.desk, before, trial)
  }
  /** The salvaged modules with a verdict on each, once they are assessed. */
  async lot(): Promise<LotView | undefined> {
    const { lotView } = await beside(),
      a = this.desk.assessment
    return a && lotView(this.desk.current().model, a, this.desk.system)
  }
  /** The salvaged modules as a table for a spreadsheet. */
  async moduleTable(): Promise<string> {
    return (await beside()).moduleTable(this.desk.current().model)
  }
  async tryModules(bytes: Uint8Array): Promise<TableTrial> {
    return (await beside()).tableTrial(this.desk, bytes)
  }
  async coastDown(): Promise<CoastDownView | undefined> {
    const { coastDownView } = await beside(),
      a = this.desk.assessment
    return a && coastDownView(Object.keys(this.desk.current().model.donor.coastDown.steps), a, this.desk.system)
  }
  async tryLogs(logs: readonly Log[]): Promise<LogTrial> {
    return (await beside()).logTrial(this.desk, logs)
  }
  /** The files beside the conversion, and the places that take one. */
  async files(): Promise<FileList> {
    return (await beside()).fileList(this.desk, this.attachments)
  }
  /** What a file holds that is not beside the conversion yet. */
  async readFile(name: string, bytes: Uint8Array): Promise<FileReading> {
    return (await beside()).readingOf(name, bytes, this.desk.system)
  }
  /** The scans the file names, and what is to be measured of them. */
  scans(): readonly ScanNamed[] {
    return this.desk.scans()
  }
  /** The same of the meshes of parts. */
  meshes(): ReturnType<Desk['meshes']> {
    return this.desk.meshes()
  }
  moduleSize(): readonly [number, number, number] | undefined {
    return this.desk.moduleSize()
  }
  /** A gap as it is told. */
  lengthText(metres: number): string {
    return shownNumber(metres, 'length', 'm', this.desk.system)
  }
  /** The bytes of a file beside the conversion, as a copy that may go to another thread. */
  fileBytes(name: string): Uint8Array | undefined {
    const bytes = this.attachments.get(name)?.slice()
    return bytes && transfer(bytes, [bytes.buffer])
  }
  /** Takes what was measured of scans and meshes, works everything out anew where that is something else, and tells the scans for people. */
  surveyed(measured: Required<Measured>): Readonly<Record<string, ScanTold>> {
    const now = JSON.stringify(measured)
    if (now !== this.measured) {
      this.measured = now
      this.desk.surveyed(measured)
      this.begin()
    }
    return scansTold(measured.surveys, this.desk.system)
  }
  /** A file now stands beside the conversion, or no longer: look-ups see it at once. */
  addFile(name: string, bytes: Uint8Array | null): void {
    if (bytes === null) this.attachments.delete(name)
    else this.attachments.set(name, bytes)
    this.desk.filesChanged([...this.attachments.keys()])
    this.begin()
  }
  private begin(): void {
    const turn = ++this.turn,
      wanted = () => turn === this.turn
    void headlineFirst(this.desk, wanted, this.hear).then(() => this.rehearsal.after(this.desk, wanted))
  }
}
