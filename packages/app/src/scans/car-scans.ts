import type { Surveys, Vector } from '@ampwright/engine'
import type { ScanTold } from '@ampwright/workbench'
import { proxy, type Remote, transfer, wrap } from 'comlink'
import type { Engine } from '../worker/engine.ts'
import type { Packing, ScanKnown, ScanMesh, ScanThread } from './scan-thread.ts'

/** A scan as the page knows it. */
export type ScanShown = {
  readonly scan: string
  readonly file: string
  readonly points: readonly string[]
  /** Changes whenever it lies elsewhere. */
  readonly key: string
  readonly triangles: number
  readonly lies: boolean
  /** Whether its free space is known. */
  readonly space: boolean
  readonly told?: ScanTold
  readonly fault?: string
}

/**
 * The scans of the conversion in hand: read and measured in a thread of their own, which is started with the first of them; what was measured goes to the
 * engine. Follows every assessment; the engine works out another one only when something else was measured.
 */
export class CarScans {
  private readonly engine: Engine
  private thread: { readonly worker: Worker; readonly scans: Remote<ScanThread> } | undefined
  private readonly heard = new Set<() => void>()
  private state: readonly ScanShown[] = []
  private busy = false
  private again = false

  constructor(engine: Engine) {
    this.engine = engine
  }
  subscribe = (f: () => void): (() => void) => {
    this.heard.add(f)
    return () => this.heard.delete(f)
  }
  snapshot = (): readonly ScanShown[] => this.state
  close(): void {
    this.thread?.worker.terminate()
    this.thread = undefined
  }

  /** Looks at the scans as the file names them now. One run at a time: a newer wish waits for the end of the one before. */
  async follow(): Promise<void> {
    this.again = true
    if (this.busy) return
    this.busy = true
    while (this.again) {
      this.again = false
      await this.once()
    }
    this.busy = false
  }
  private async once(): Promise<void> {
    const named = await this.engine.scans()
    if (named.length === 0 && this.state.length === 0) return
    const { scans } = named.length > 0 ? this.started() : { scans: undefined },
      surveys: Record<string, Surveys[string]> = {},
      known = new Map<string, ScanKnown>()
    for (const one of named) {
      if (!scans) break
      if (await scans.wants(one.file, one.mark)) {
        const bytes = await this.engine.fileBytes(one.file)
        if (bytes) await scans.take(one.file, one.mark, transfer(bytes, [bytes.buffer]))
      }
      const found = await scans.follow(one)
      if (found) known.set(one.scan, found)
      if (found?.survey) surveys[one.scan] = found.survey
    }
    const told = await this.engine.surveyed(surveys)
    this.set(
      named.flatMap(({ scan, file, points }): ScanShown[] => {
        const k = known.get(scan),
          says = told[scan]
        if (!k) return []
        const { key, triangles, fault } = k
        return [
          {
            scan,
            file,
            points,
            key,
            triangles,
            lies: k.survey !== undefined && k.survey.fault === undefined,
            space: k.survey?.cubes !== undefined,
            ...(says ? { told: says } : {}),
            ...(fault === undefined ? {} : { fault }),
          },
        ]
      }),
    )
  }
  /** The mesh of a scan as it is drawn. */
  mesh = async (scan: string): Promise<ScanMesh | undefined> => this.thread?.scans.mesh(scan)
  /** The point of a scan that stands first in a line of sight. */
  pick = async (scan: string, from: Vector, towards: Vector) => this.thread?.scans.pick(scan, from, towards)

  /** Packs modules of the conversion into the free space of a scan; gives why not, where that cannot be. */
  async pack(scan: string, hear: (so: Packing) => void): Promise<(Packing & { readonly nearestText?: string }) | string> {
    const size = await this.engine.moduleSize()
    if (!size) return 'Length, width and height of a module are wanted first: they stand on the page Pack.'
    try {
      const found = await this.thread?.scans.pack(scan, size, proxy(hear))
      if (!found) return 'The free space of this scan is not known yet.'
      return found.nearest === undefined ? found : { ...found, nearestText: await this.engine.lengthText(found.nearest) }
    } catch (e) {
      return (e as Error).message
    }
  }
  stopPacking = (): void => void this.thread?.scans.stop()

  private started(): NonNullable<CarScans['thread']> {
    if (this.thread) return this.thread
    const worker = new Worker(new URL('./scan.worker.ts', import.meta.url), { type: 'module', name: 'scans' })
    return (this.thread = { worker, scans: wrap<ScanThread>(worker) })
  }
  private set(state: readonly ScanShown[]): void {
    this.state = state
    for (const f of this.heard) f()
  }
}
