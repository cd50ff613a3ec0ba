import type { Edit } from '@ampwright/conversion'
import type { PackArrangement, Stage } from '@ampwright/engine'
import type { Arranging, ArrangingPlan, Log, Recipient, SurveySheet, Written } from '@ampwright/workbench'
import { type Handbook, handbookOf } from './handbook/handbook.ts'
import { CarScans } from './scans/car-scans.ts'
import type { FileKind } from './worker/drawings.ts'
import { type Engine, startEngine } from './worker/engine.ts'
import type { Compared } from './worker/service.ts'

export type AssessmentStep = Parameters<Parameters<typeof startEngine>[0]>[0]

/** What a page may ask of the engine without changing anything. */
export abstract class Asking {
  protected readonly engine: Engine = startEngine(step => this.hear(step))
  readonly handbook: Handbook = handbookOf(this.engine)
  readonly scans = new CarScans(this.engine)
  /** Hears of every step of an assessment; the engine waits a little for what comes back. */
  protected abstract hear(step: AssessmentStep): Promise<void> | undefined
  text = () => this.engine.text()
  field = (path: string) => this.engine.field(path)
  survey = (before?: SurveySheet) => this.engine.survey(before)
  letter = (to: Recipient) => this.engine.letter(to)
  letterText = (to: Recipient, written: Written) => this.engine.letterText(to, written)
  compare = (before: Compared | undefined, after: Compared | undefined) => this.engine.compare(before, after)
  files = () => this.engine.files()
  readFile = (name: string, bytes: Uint8Array) => this.engine.readFile(name, bytes)
  lot = () => this.engine.lot()
  moduleTable = () => this.engine.moduleTable()
  tryModules = (bytes: Uint8Array) => this.engine.tryModules(bytes)
  coastDown = () => this.engine.coastDown()
  tryLogs = (logs: readonly Log[]) => this.engine.tryLogs(logs)
  check = (edits: readonly Edit[]) => this.engine.check(edits)
  preview = (edits: readonly Edit[]) => this.engine.preview(edits)
  drawings = () => this.engine.drawings()
  draw = (id: string, width: number) => this.engine.draw(id, width)
  scene = () => this.engine.scene()
  gapBetween = (one: string, other: string) => this.engine.gapBetween(one, other)
  readAt = (id: string, pixel: number) => this.engine.readAt(id, pixel)
  drawingFile = (id: string, as: FileKind, width: number) => this.engine.drawingFile(id, as, width)
  arrangingPlan = (asked: Arranging) => this.engine.arrangingPlan(asked)
  circuitEdits = () => this.engine.circuitEdits()
  arrangementEdits = (plan: ArrangingPlan, one: PackArrangement) => this.engine.arrangementEdits(plan, one)
  tryout = (edits: readonly Edit[]) => this.engine.tryout(edits)
  ratioEdit = (unit: string, ratio: number) => this.engine.ratioEdit(unit, ratio)
  places = () => this.engine.places()
  partTable = (path: string | undefined, search: { readonly words?: string; readonly class?: string; readonly most?: number }) =>
    this.engine.partTable(path, search)
  partTaking = (path: string, id: string) => this.engine.partTaking(path, id)
  figures = (stage: Stage) => this.engine.figures(stage)
  tables = (ids: readonly string[]) => this.engine.tables(ids)
  working = (name: string) => this.engine.working(name)
  workingText = (name: string) => this.engine.workingText(name)
}
