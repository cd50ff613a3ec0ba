import type { Edit, Issue, System } from '@ampwright/conversion'
import type { Saying } from '@ampwright/workbench'
import { Asking, type AssessmentStep } from './asking.ts'
import { clashesAfter, placeCalled } from './clashes.ts'
import { FilesBeside } from './files-beside.ts'
import { InView } from './in-view.ts'
import { forgetTyped, halfTyped } from './kept/half-typed.ts'
import { putOut, takeOut, unsent } from './kept/outbox.ts'
import { StepsBack } from './kept/steps-back.ts'
import { atLeaving } from './leaving.ts'
import { ASKED, type Opened, STORED, storedUnits, type Typed, unopened } from './opened.ts'
import { painted } from './painted.ts'
import { Away, api, type Clash, type Kept, Refused } from './server/api.ts'
import { keepCounts, keepSeen, type LastSeen, lastSeen } from './server/last-seen.ts'
import { live } from './server/live.ts'
import type { Section } from './worker/service.ts'

type Saving = {
  readonly batch?: { readonly key: string; readonly edits: readonly Edit[] }
  /** The revision it takes back, once it is known. */
  readonly takesBack?: () => number | undefined
}
/** Sent once, however often it is asked for. */
function once<T>(send: () => Promise<T>): () => Promise<T> {
  let sent: Promise<T> | undefined
  return () => (sent ??= send())
}

/** One conversion open in this window: edits go to the engine at once, and to the server in their order. */
export class OpenConversion extends Asking {
  private readonly view: InView<Opened>
  private readonly shownSections = new Map<Section, number>()
  private queue: Promise<void> = Promise.resolve()
  private waiting = 0
  /** The newest revision anybody was heard to make. */
  private heardOf = 0
  private readonly steps: StepsBack
  /** What stands typed in a field and is not on its way yet, by path. */
  private readonly typed = new Map<string, Typed>()
  /** Batches that wait for those before them: when the page is left they are sent at once. */
  private readonly due = new Set<() => unknown>()
  /** The undo a clash came of, by path. */
  private readonly undoOf = new Map<string, number>()
  private readonly letGo: () => void
  private readonly beside: FilesBeside
  private wasAway = false
  units: System = storedUnits()

  constructor(id: string) {
    super()
    this.steps = new StepsBack(id)
    this.view = new InView(unopened(id))
    this.beside = new FilesBeside(id, this.engine)
    const letGo = live({ hear: news => void this.hearOf(news), away: gone => this.away(gone) }),
      stay = atLeaving({ hidden: () => this.rest(), left: () => this.leave(), back: () => void this.load() })
    this.letGo = () => {
      letGo()
      stay()
    }
    // The bench asks it how long a bare headline takes in this very thread, browser tests whether a change is on its way.
    Object.assign(window, { ampwrightProbe: { headline: () => this.engine.bareHeadline(), changing: () => this.view.isWaiting } })
    void this.load()
  }
  protected hear(step: AssessmentStep): Promise<void> | undefined {
    if (step.is === 'headline') {
      this.set({ early: new Map(step.headline.flatMap(h => (h.id && h.value ? [[h.id, h.value] as const] : []))) })
      // The headline stands on the screen before the fields are laid out anew, or anything else is worked out.
      const shown = painted()
      void shown.then(() => this.layOut())
      return shown
    }
    this.set({ told: step.told, name: step.told.name, early: new Map(), renewing: false })
    void this.count()
    void this.layOut()
    void this.scans.follow()
    return undefined
  }
  subscribe = (f: () => void): (() => void) => this.view.subscribe(f)
  snapshot = (): Opened => this.state
  close(): void {
    this.letGo()
    this.scans.close()
  }
  private get state(): Opened {
    return this.view.now
  }
  private set(some: Partial<Opened>): void {
    this.view.put(some)
  }

  /** Gives whether the conversion stands here as the server has it. */
  private async load(): Promise<boolean> {
    const { id } = this.state
    try {
      const sent = unsent(id)
      await this.sendAgain()
      const [stored, lines] = await Promise.all([api.open(id), api.revisions(id)]),
        files = await this.beside.fetched(stored.files)
      this.steps.recall(lines, sent)
      await this.lay({ ...stored, files })
      await this.remember()
      await this.count()
      return true
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
      return false
    }
  }
  private async lay(c: Pick<LastSeen, 'name' | 'revision' | 'text' | 'files'>): Promise<void> {
    const opened = await this.engine.open(c.text, c.files, this.units)
    this.set({ name: c.name, revision: c.revision, unreadable: opened.usable ? [] : opened.issues, ...this.counts() })
    await this.layOut()
  }
  /** Sends once more what nobody answered: the page was left, or the server was away. */
  private async sendAgain(): Promise<void> {
    const { id } = this.state
    for (const batch of unsent(id)) {
      const answer = await api.edit(id, batch.edits, batch.what)
      if (answer.is === 'away') throw new Away('The server does not answer.')
      takeOut(id, batch.key)
      if (answer.is === 'kept') this.saved(batch.edits)
      if (answer.is === 'clash') this.clashed(answer.clashes)
      // What is wrong with what was typed is said in its field.
      const isTyped = batch.edits.every(e => typeof e.path === 'string' && halfTyped(id, e.path))
      if (answer.is === 'refused' && !isTyped) this.set({ said: `${batch.what ?? 'A change'} is not saved: ${answer.says}` })
    }
  }
  /** What is saved is no longer only typed. */
  private saved(edits: readonly Edit[]): void {
    for (const { path, now } of edits)
      if (typeof path === 'string' && (now === null || typeof now === 'string')) forgetTyped(this.state.id, path, now ?? '')
  }
  /** What a field holds that is typed and not on its way; undefined where there is nothing any more. */
  typing(path: string, typed: Typed | undefined): void {
    if (typed) this.typed.set(path, typed)
    else this.typed.delete(path)
  }
  /** The window is put aside: what is typed is committed without waiting for its second of rest. */
  private rest(): void {
    const typed = [...this.typed]
    this.typed.clear()
    for (const [path, { now, what }] of typed) void this.edit([{ path, now }], what)
  }
  /** The page is left: what waits and what is typed goes out at once, and stays in the outbox until somebody hears the answer. */
  private leave(): void {
    const { id, revision } = this.state
    for (const send of this.due) send()
    for (const [path, { now, was, what }] of this.typed) {
      const { edits } = putOut(id, { edits: [{ path, now, was }], what, after: revision })
      void api.edit(id, edits, what)
    }
    this.typed.clear()
  }
  /** Keeps the car in this browser as it stands now. */
  private async remember(): Promise<void> {
    const { id, name, revision } = this.state
    await keepSeen({ id, name, revision, text: await this.engine.text(), files: this.beside.files, at: new Date().toISOString() })
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
    else if (this.wasAway) this.backAgain()
    else this.set({ saving: this.waiting ? 'saving' : 'saved' })
    this.wasAway = gone
  }

  /** The server is back: what it never answered goes first, in its turn. */
  private backAgain(): void {
    this.queue = this.queue.then(async () => {
      this.set({ said: undefined })
      if (await this.load()) this.set({ saving: this.waiting ? 'saving' : 'saved' })
    })
  }

  /** Shows a section for as long as a screen wants it. */
  show(section: Section): () => void {
    this.shownSections.set(section, (this.shownSections.get(section) ?? 0) + 1)
    void this.layOut()
    return () => this.shownSections.set(section, (this.shownSections.get(section) ?? 1) - 1)
  }
  private async layOut(): Promise<void> {
    // Before the text is there every field would stand empty.
    if (this.state.revision === 0) return
    const wanted = [...this.shownSections].filter(([, n]) => n > 0).map(([s]) => s)
    const laid = await Promise.all(wanted.map(async s => [s, await this.engine.sheet(s)] as const))
    this.set({ sheets: { ...this.state.sheets, ...Object.fromEntries(laid) } })
  }

  /** Makes a batch of edits, `withNaming` together with the shapes of what it takes out; gives what is wrong where they cannot be made, and nothing is changed then. */
  async edit(
    edits: readonly Edit[],
    what?: string,
    withNaming = false,
  ): Promise<readonly Pick<Issue, 'path' | 'what' | 'found' | 'accepted' | 'nearest'>[]> {
    if (this.state.saving === 'server away')
      return [{ path: '', what: 'the server is away: nothing can be changed until it is back', found: '', accepted: '' }]
    const asked = this.engine.edit(edits, withNaming),
      { renewing } = this.state
    this.view.putQuietly({ saving: 'saving', renewing: true })
    const made = await asked
    if (!made.ok) {
      this.set({ renewing, ...(this.waiting === 0 ? { saving: 'saved' } : {}) })
      return made.issues
    }
    const { id, revision } = this.state,
      { key } = putOut(id, { edits: made.edits, what, after: revision })
    const left = clashesAfter(this.state.clashes, made.edits)
    if (left.length < this.state.clashes.length) this.set({ clashes: left })
    this.save(
      once(() => api.edit(id, made.edits, what)),
      { batch: { key, edits: made.edits } },
    )
    return []
  }
  undo(): void {
    this.takeBack('undo')
  }
  redo(): void {
    this.takeBack('redo')
  }
  /** Which revision it is is known only when those before it are answered. */
  private takeBack(way: 'undo' | 'redo'): void {
    let of: number | undefined
    const send = async (): Promise<Kept | undefined> => {
      of = this.steps.next(way)
      return of === undefined ? undefined : api.undo(this.state.id, of)
    }
    this.save(send, { takesBack: () => of })
  }
  /** One after the other: the server sees the edits of a window in the order they were made. */
  private save(send: () => Promise<Kept | undefined>, { batch, takesBack }: Saving): void {
    const { id } = this.state
    this.waiting += 1
    this.set({ saving: 'saving' })
    if (batch) this.due.add(send)
    this.queue = this.queue.then(async () => {
      // The headline is painted before anything is sent; who leaves meanwhile takes along what is due.
      if (batch) await painted()
      const answer = await send()
      this.due.delete(send)
      this.waiting -= 1
      if (answer && answer.is !== 'away' && batch) takeOut(id, batch.key)
      if (answer === undefined) this.set({ saving: this.waiting ? 'saving' : 'saved' })
      else if (answer.is === 'kept') await this.wasKept(answer, batch, takesBack?.())
      else if (answer.is === 'clash') {
        await this.take(answer.text)
        this.set({ revision: answer.revision, saving: this.waiting ? 'saving' : 'saved' })
        const of = takesBack?.()
        if (of !== undefined) for (const { path } of answer.clashes) this.undoOf.set(path, of)
        this.clashed(answer.clashes)
      } else if (answer.is === 'refused') {
        await this.load()
        this.set({ said: answer.says, saving: 'not saved' })
      } else
        this.set({
          saving: 'server away',
          said: batch
            ? 'The server is away: the last change is not saved. It is kept in this window and sent again when the server is back.'
            : 'The server is away: the last step was not taken.',
        })
    })
  }
  private async wasKept(answer: Kept & { is: 'kept' }, batch: Saving['batch'], of: number | undefined): Promise<void> {
    if (of !== undefined) this.steps.tookBack(of, answer.revision > this.state.revision ? answer.revision : of)
    else if (answer.revision > this.state.revision) this.steps.changed(answer.revision)
    if (batch) this.saved(batch.edits)
    // What others changed meanwhile comes back merged; while more of ours is on its way it would be older than what is shown.
    if (this.waiting === 0 && !batch) await this.beside.follow((await api.open(this.state.id)).files)
    if (this.waiting === 0 && (!batch || answer.text !== (await this.engine.text()))) await this.take(answer.text)
    this.set({ revision: answer.revision, saving: this.waiting ? 'saving' : 'saved', ...this.counts() })
    if (this.waiting === 0) await this.remember()
    await this.count()
    // What others saved while ours was on its way was only noted until now.
    if (this.waiting === 0 && this.heardOf > this.state.revision) await this.hearOf({ id: this.state.id, revision: this.heardOf })
  }
  private counts(): Pick<Opened, 'undoable' | 'redoable'> {
    return { undoable: this.steps.undoable, redoable: this.steps.redoable }
  }
  private async take(text: string): Promise<void> {
    this.set({ renewing: true })
    const opened = await this.engine.take(text)
    this.set({ unreadable: opened.usable ? [] : opened.issues })
    await this.layOut()
  }
  private async hearOf(news: { id: string; revision: number }): Promise<void> {
    // A backup was put in the place of everything: this car may stand otherwise, or not at all.
    if (news.id === '') {
      this.steps.forget()
      await this.load()
      return
    }
    if (news.id !== this.state.id) return
    this.heardOf = Math.max(this.heardOf, news.revision)
    if (this.waiting > 0 || news.revision <= this.state.revision) return
    const stored = await api.open(news.id)
    if (this.waiting > 0 || stored.revision <= this.state.revision) return
    await this.beside.follow(stored.files)
    if (stored.text !== (await this.engine.text())) await this.take(stored.text)
    this.set({ revision: stored.revision })
    await this.remember()
    await this.count()
  }
  /** Shows both values. What is not settled yet stays shown; the same place clashing again shows the newer values. */
  clashed(clashes: readonly Clash[]): void {
    const stay = this.state.clashes.filter(c => !clashes.some(n => n.path === c.path))
    this.set({ clashes: [...stay, ...clashes] })
    void this.nameClashes()
  }
  /** Calls each place that clashed by the label of its field. */
  private async nameClashes(): Promise<void> {
    for (const { path } of this.state.clashes) {
      if (path in this.state.called) continue
      const field = await this.engine.field(path)
      if (field) this.set({ called: { ...this.state.called, [path]: placeCalled(field, path) } })
    }
  }
  settle(clash: Clash, mine: boolean): void {
    this.set({ clashes: this.state.clashes.filter(c => c !== clash) })
    forgetTyped(this.state.id, clash.path)
    // A step that cannot be taken is out of the way of those before it.
    const of = this.undoOf.get(clash.path)
    if (of !== undefined) {
      this.undoOf.delete(clash.path)
      this.steps.drop(of)
      this.set(this.counts())
    }
    if (!mine) return
    void this.edit([{ path: clash.path, now: clash.yours as Edit['now'] }]).then(([i]) => {
      if (i)
        this.set({
          said: `${this.state.called[clash.path] ?? clash.path}: ${i.what}${i.found && `; found ${i.found}`}${i.accepted && `; accepted ${i.accepted}`}`,
        })
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
  /** Says something of a finding by hand, or takes it back; gives what is wrong where it cannot be. */
  async sayByHand(id: string, saying: Saying): Promise<string | undefined> {
    const open = Object.entries<string>(ASKED[saying.as]).find(([k]) => String((saying as Record<string, string>)[k] ?? '').trim() === '')
    if (open) return open[1]
    const made = await this.engine.saying(id, saying)
    if ('refused' in made) return made.refused
    const issues = await this.edit(made.edits, `${saying.as}: ${id}`)
    return issues[0]?.what
  }
  /** Brings an earlier revision back, as a new one: undo takes it away again. */
  restore(revision: number): void {
    this.save(() => api.restore(this.state.id, revision), {})
  }
  /** Puts a file beside the conversion, on the server and here, or takes it away; gives why not where it cannot be. */
  async addFile(name: string, bytes: Uint8Array | null): Promise<string | undefined> {
    if (this.state.saving === 'server away') return 'The server is away: nothing can be kept until it is back.'
    try {
      const { revision } = await api.putFile(this.state.id, name, bytes)
      if (revision > this.state.revision) {
        this.steps.changed(revision)
        this.set({ revision, ...this.counts() })
      }
    } catch (e) {
      return (e as Error).message
    }
    this.set({ renewing: true })
    await this.beside.lay(name, bytes)
    await this.layOut()
    return undefined
  }
}
