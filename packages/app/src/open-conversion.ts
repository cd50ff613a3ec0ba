import type { Edit, Issue, System } from '@ampwright/conversion'
import type { Stage } from '@ampwright/engine'
import type { Log, Recipient, SheetNode, SurveySheet, Told, Written } from '@ampwright/workbench'
import { type Handbook, handbookOf } from './handbook/handbook.ts'
import { Away, api, type Clash, Refused } from './server/api.ts'
import { keepCounts, keepSeen, type LastSeen, lastSeen } from './server/last-seen.ts'
import { live } from './server/live.ts'
import { type Engine, startEngine } from './worker/engine.ts'
import type { Beside, Compared, Section } from './worker/service.ts'

/** What a window knows of the conversion it has open. Replaced whole at every change. */
export type Opened = {
  readonly id: string
  readonly name: string
  readonly revision: number
  readonly told: Told | undefined
  readonly early: ReadonlyMap<string, string>
  /** Figures, bands and findings are being worked out anew. */
  readonly renewing: boolean
  readonly saving: 'saved' | 'saving' | 'not saved' | 'not there' | 'server away'
  readonly sheets: Partial<Record<Section, SheetNode>>
  readonly unreadable: readonly Pick<Issue, 'line' | 'path' | 'what' | 'found' | 'accepted'>[]
  readonly clashes: readonly Clash[]
  readonly said: string | undefined
  readonly undoable: number
  readonly redoable: number
}

const STORED = 'ampwright.units'
export const storedUnits = (): System => {
  const kept = localStorage.getItem(STORED)
  return kept === 'us' || kept === 'uk' ? kept : 'metric'
}

/** What an acceptance cannot be without, in the words of the form. */
const ASKED = {
  by: 'your name is empty: who accepts a finding says who that is',
  reason: 'the reason is empty: who accepts a finding says why it may stay so',
  scope: 'what it holds for is empty: who accepts a finding says for what and until when',
  date: 'the day is empty: who accepts a finding says when',
} as const

/** One conversion open in this window: edits go to the engine at once, and to the server in their order. */
export class OpenConversion {
  private state: Opened
  private readonly heard = new Set<() => void>()
  private readonly shownSections = new Map<Section, number>()
  private readonly engine: Engine
  readonly handbook: Handbook
  private queue: Promise<void> = Promise.resolve()
  private waiting = 0
  /** The newest revision anybody was heard to make. */
  private heardOf = 0
  private readonly mine: number[] = []
  private readonly undone: number[] = []
  private readonly letGo: () => void
  private besides: readonly Beside[] = []
  private wasAway = false
  /** What the files beside the conversion were when they were fetched, by name. */
  private hashes = new Map<string, string>()
  units: System = storedUnits()

  constructor(id: string) {
    this.state = {
      id,
      name: '',
      revision: 0,
      told: undefined,
      early: new Map(),
      renewing: true,
      saving: 'saved',
      sheets: {},
      unreadable: [],
      clashes: [],
      said: undefined,
      undoable: 0,
      redoable: 0,
    }
    this.engine = startEngine(step => {
      if (step.is === 'headline') {
        this.set({ early: new Map(step.headline.flatMap(h => (h.id && h.value ? [[h.id, h.value] as const] : []))) })
        void this.layOut()
      } else {
        this.set({ told: step.told, name: step.told.name, early: new Map(), renewing: false })
        void this.layOut()
        void this.count()
      }
    })
    this.handbook = handbookOf(this.engine)
    this.letGo = live(
      news => void this.hearOf(news),
      gone => this.away(gone),
    )
    // The bench asks it how long a bare headline takes in this very thread.
    Object.assign(window, { ampwrightProbe: () => this.engine.bareHeadline() })
    void this.load()
  }
  subscribe = (f: () => void): (() => void) => {
    this.heard.add(f)
    return () => this.heard.delete(f)
  }
  snapshot = (): Opened => this.state
  close(): void {
    this.letGo()
  }
  private set(some: Partial<Opened>): void {
    this.state = { ...this.state, ...some }
    for (const f of this.heard) f()
  }

  private async load(): Promise<void> {
    const { id } = this.state
    try {
      const stored = await api.open(id),
        files = await Promise.all(stored.files.map(async f => ({ name: f.name, bytes: await api.file(id, f.name) })))
      this.besides = files
      await this.lay({ ...stored, files })
      await this.remember()
      await this.count()
      this.hashes = new Map(stored.files.map(f => [f.name, f.sha256]))
    } catch (e) {
      const seen = e instanceof Away ? await lastSeen(id) : undefined
      if (seen) await this.lay(seen)
      else this.set({ renewing: false })
      this.set({
        saving: e instanceof Refused && this.state.told === undefined ? 'not there' : 'server away',
        said: seen
          ? `The server is away. Shown is this car as it was on ${seen.at.slice(0, 16).replace('T', ' at ')}.`
          : (e as Error).message,
      })
    }
  }
  private async lay(c: Pick<LastSeen, 'name' | 'revision' | 'text' | 'files'>): Promise<void> {
    const opened = await this.engine.open(c.text, c.files, this.units)
    this.set({ name: c.name, revision: c.revision, unreadable: opened.usable ? [] : opened.issues })
    await this.layOut()
  }
  /** Keeps the car in this browser as it stands now. */
  private async remember(): Promise<void> {
    const { id, name, revision } = this.state
    await keepSeen({ id, name, revision, text: await this.engine.text(), files: this.besides, at: new Date().toISOString() })
  }

  /** Keeps what stands in the way for the list of conversions, once it is that of the revision shown. */
  private async count(): Promise<void> {
    const { id, revision, told, renewing, saving } = this.state
    if (!told || renewing || saving !== 'saved' || revision === 0) return
    const of = (outcome: string): number => told.findings.filter(f => f.outcome === outcome).length
    await keepCounts({ id, revision, failing: of('failing'), unanswered: of('unanswered') })
  }

  private away(gone: boolean): void {
    if (this.state.saving === 'not there') return
    if (gone) this.set({ saving: 'server away' })
    else if (this.wasAway) void this.load().then(() => this.set({ saving: 'saved', said: undefined }))
    else this.set({ saving: this.waiting ? 'saving' : 'saved' })
    this.wasAway = gone
  }

  /** Shows a section for as long as a screen wants it. */
  show(section: Section): () => void {
    this.shownSections.set(section, (this.shownSections.get(section) ?? 0) + 1)
    void this.layOut()
    return () => this.shownSections.set(section, (this.shownSections.get(section) ?? 1) - 1)
  }
  private async layOut(): Promise<void> {
    const wanted = [...this.shownSections].filter(([, n]) => n > 0).map(([s]) => s)
    const laid = await Promise.all(wanted.map(async s => [s, await this.engine.sheet(s)] as const))
    this.set({ sheets: { ...this.state.sheets, ...Object.fromEntries(laid) } })
  }

  /** Makes a batch of edits; gives what is wrong where they cannot be made, and nothing is changed then. */
  async edit(edits: readonly Edit[], what?: string): Promise<readonly Pick<Issue, 'path' | 'what' | 'found' | 'accepted' | 'nearest'>[]> {
    if (this.state.saving === 'server away')
      return [{ path: '', what: 'the server is away: nothing can be changed until it is back', found: '', accepted: '' }]
    this.set({ saving: 'saving' })
    const made = await this.engine.edit(edits)
    if (!made.ok) {
      if (this.waiting === 0) this.set({ saving: 'saved' })
      return made.issues
    }
    // The headline goes first: the fields are laid out anew once it stands.
    this.set({ renewing: true })
    this.undone.length = 0
    this.save(() => api.edit(this.state.id, made.edits, what), true)
    return []
  }
  undo(): void {
    const last = this.mine.at(-1)
    if (last !== undefined) this.back(last, () => (this.mine.pop(), this.undone))
  }
  redo(): void {
    const last = this.undone.at(-1)
    if (last !== undefined) this.back(last, () => (this.undone.pop(), this.mine))
  }
  private back(revision: number, onto: () => number[]): void {
    this.save(() => api.undo(this.state.id, revision), false, onto)
  }
  /** One after the other: the server sees the edits of a window in the order they were made. */
  private save(send: () => ReturnType<typeof api.edit>, edited: boolean, onto?: () => number[]): void {
    this.waiting += 1
    this.set({ saving: 'saving' })
    this.queue = this.queue.then(async () => {
      const answer = await send()
      this.waiting -= 1
      if (answer.is === 'kept') {
        ;(onto?.() ?? this.mine).push(answer.revision)
        // What others changed meanwhile comes back merged; while more of ours is on its way it would be older than what is shown.
        if (this.waiting === 0 && (!edited || answer.text !== (await this.engine.text()))) await this.take(answer.text)
        this.set({ revision: answer.revision, saving: this.waiting ? 'saving' : 'saved', ...this.counts() })
        if (this.waiting === 0) await this.remember()
        await this.count()
        // What others saved while ours was on its way was only noted until now.
        if (this.waiting === 0 && this.heardOf > this.state.revision) await this.hearOf({ id: this.state.id, revision: this.heardOf })
      } else if (answer.is === 'clash') {
        await this.take(answer.text)
        this.set({ revision: answer.revision, saving: this.waiting ? 'saving' : 'saved' })
        this.clashed(answer.clashes)
      } else if (answer.is === 'refused') {
        await this.load()
        this.set({ said: answer.says, saving: 'not saved' })
      } else this.set({ saving: 'server away', said: 'The server is away: the last change is not saved.' })
    })
  }
  private counts(): Pick<Opened, 'undoable' | 'redoable'> {
    return { undoable: this.mine.length, redoable: this.undone.length }
  }
  private async take(text: string): Promise<void> {
    this.set({ renewing: true })
    const opened = await this.engine.take(text)
    this.set({ unreadable: opened.usable ? [] : opened.issues })
    await this.layOut()
  }
  private async hearOf(news: { id: string; revision: number }): Promise<void> {
    // A backup was put in the place of everything: this car may stand otherwise, or not at all.
    if (news.id === '') return this.load()
    if (news.id !== this.state.id) return
    this.heardOf = Math.max(this.heardOf, news.revision)
    if (this.waiting > 0 || news.revision <= this.state.revision) return
    const stored = await api.open(news.id)
    if (this.waiting > 0 || stored.revision <= this.state.revision) return
    await this.fetchFiles(stored.files)
    if (stored.text !== (await this.engine.text())) await this.take(stored.text)
    this.set({ revision: stored.revision })
    await this.count()
  }
  /** Files another window put beside the conversion meanwhile: before the text that may name them. */
  private async fetchFiles(files: readonly { readonly name: string; readonly sha256: string }[]): Promise<void> {
    for (const { name, sha256: hash } of files) {
      if (this.hashes.get(name) === hash) continue
      await this.engine.addFile(name, await api.file(this.state.id, name))
      this.hashes.set(name, hash)
    }
    for (const name of this.hashes.keys()) {
      if (files.some(f => f.name === name)) continue
      await this.engine.addFile(name, null)
      this.hashes.delete(name)
    }
  }
  /** Shows both values. What is not settled yet stays shown; the same place clashing again shows the newer values. */
  clashed(clashes: readonly Clash[]): void {
    const stay = this.state.clashes.filter(c => !clashes.some(n => n.path === c.path))
    this.set({ clashes: [...stay, ...clashes] })
  }
  settle(clash: Clash, mine: boolean): void {
    this.set({ clashes: this.state.clashes.filter(c => c !== clash) })
    if (!mine) return
    void this.edit([{ path: clash.path, now: clash.yours as Edit['now'] }]).then(([i]) => {
      if (i) this.set({ said: `${clash.path}: ${i.what}${i.found && `; found ${i.found}`}${i.accepted && `; accepted ${i.accepted}`}` })
    })
  }
  /** Says what the person must know before going on. */
  say(said: string): void {
    this.set({ said })
  }
  hush(): void {
    this.set({ said: undefined })
  }
  setUnits(system: System): void {
    this.units = system
    localStorage.setItem(STORED, system)
    void this.engine.units(system).then(() => this.layOut())
  }
  /** Accepts a finding; gives what is wrong where it cannot be. */
  async accept(id: string, given: { by: string; reason: string; scope: string; date: string }): Promise<string | undefined> {
    const open = (Object.keys(ASKED) as (keyof typeof ASKED)[]).find(k => given[k].trim() === '')
    if (open) return ASKED[open]
    const made = await this.engine.acceptance(id, given)
    if ('refused' in made) return made.refused
    const issues = await this.edit([made.edit], `accepted: ${id}`)
    return issues[0]?.what
  }
  /** Brings an earlier revision back, as a new one: undo takes it away again. */
  restore(revision: number): void {
    this.undone.length = 0
    this.save(() => api.restore(this.state.id, revision), false)
  }
  text = () => this.engine.text()
  field = (path: string) => this.engine.field(path)
  survey = (before?: SurveySheet) => this.engine.survey(before)
  letter = (to: Recipient) => this.engine.letter(to)
  letterText = (to: Recipient, written: Written) => this.engine.letterText(to, written)
  compare = (before: Compared | undefined, after: Compared | undefined) => this.engine.compare(before, after)
  /** Puts a file beside the conversion, on the server and here, or takes it away; gives why not where it cannot be. */
  async addFile(name: string, bytes: Uint8Array | null): Promise<string | undefined> {
    if (this.state.saving === 'server away') return 'The server is away: nothing can be kept until it is back.'
    try {
      const { revision } = await api.putFile(this.state.id, name, bytes)
      if (revision > this.state.revision) this.set({ revision })
    } catch (e) {
      return (e as Error).message
    }
    this.set({ renewing: true })
    this.besides = [...this.besides.filter(f => f.name !== name), ...(bytes === null ? [] : [{ name, bytes }])]
    this.hashes.delete(name)
    await this.engine.addFile(name, bytes)
    await this.layOut()
    return undefined
  }
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
  readAt = (id: string, pixel: number) => this.engine.readAt(id, pixel)
  drawingFile = (id: string, as: 'svg' | 'csv', width: number) => this.engine.drawingFile(id, as, width)
  tryout = (edits: readonly Edit[]) => this.engine.tryout(edits)
  ratioEdit = (unit: string, ratio: number) => this.engine.ratioEdit(unit, ratio)
  places = () => this.engine.places()
  partTable = (path: string | undefined, search: { readonly words?: string; readonly class?: string; readonly most?: number }) =>
    this.engine.partTable(path, search)
  partTaking = (path: string, id: string) => this.engine.partTaking(path, id)
  figures = (stage: Stage) => this.engine.figures(stage)
  working = (name: string) => this.engine.working(name)
  workingText = (name: string) => this.engine.workingText(name)
}
