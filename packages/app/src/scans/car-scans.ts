import type { MeshesTask, Surveys, Vector } from '@ampwright/engine'
import type { ScanTold } from '@ampwright/workbench'
import { proxy, type Remote, transfer, wrap } from 'comlink'
import type { Engine } from '../worker/engine.ts'
import type { MeshesKnown, Packing, ScanDrawn, ScanKnown, ScanMesh, ScanThread } from './scan-thread.ts'

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

/** The mesh of a part as the page knows it; `key` changes whenever it is another one. */
export type PartShown = {
  readonly shape: string
  readonly file: string
  readonly key: string
  readonly triangles: number
  readonly closed: boolean
  /** It is as large as its sides say, and stands for the part in place of its box. */
  readonly stands: boolean
  readonly fault?: string
}

/**
 * The scans of the conversion in hand and the meshes of its parts: read and measured in a thread of their own, which is started with the first of them; what was measured goes to the
 * engine. Follows every assessment; the engine works out another one only when something else was measured.
 */
export class CarScans {
  private readonly engine: Engine
  private thread: { readonly worker: Worker; readonly scans: Remote<ScanThread> } | undefined
  private readonly heard = new Set<() => void>()
  private state: readonly ScanShown[] = []
  private meshed: readonly PartShown[] = []
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
  parts = (): readonly PartShown[] => this.meshed
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
    const [named, task] = await Promise.all([this.engine.scans(), this.engine.meshes()]),
      any = named.length > 0 || task.meshes.length > 0
    if (!any && this.state.length === 0 && this.meshed.length === 0) return
    const scans = any ? this.started().scans : undefined,
      surveys: Record<string, Surveys[string]> = {},
      known = new Map<string, ScanKnown>()
    if (scans) for (const { file, mark } of [...task.meshes, ...named]) await this.bring(scans, file, mark)
    // Meshes of parts first: scans are measured against them.
    const meshes: MeshesKnown = scans ? await scans.meshes(task) : { survey: { shapes: {}, pairs: {} }, stand: [] }
    for (const one of named) {
      const found = await scans?.follow(one)
      if (found) known.set(one.scan, found)
      if (found?.survey) surveys[one.scan] = found.survey
    }
    this.setMeshed(task, meshes)
    const told = await this.engine.surveyed({ surveys, meshes: meshes.survey })
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
  /** Brings the bytes of a file that stands beside the conversion, unless they are there. */
  private async bring(scans: Remote<ScanThread>, file: string, mark: string): Promise<void> {
    if (!(await scans.wants(file, mark))) return
    const bytes = await this.engine.fileBytes(file)
    if (bytes) await scans.take(file, mark, transfer(bytes, [bytes.buffer]))
  }
  private setMeshed({ meshes }: MeshesTask, { survey, stand }: MeshesKnown): void {
    const now = meshes.flatMap(({ shape, file, pose }): PartShown[] => {
      const found = survey.shapes[shape]
      if (!found) return []
      const { fault, triangles, closed } = found
      return [{ shape, file, key: pose, triangles, closed, stands: stand.includes(shape), ...(fault === undefined ? {} : { fault }) }]
    })
    // Who looks at it draws anew only where something is else.
    if (JSON.stringify(now) !== JSON.stringify(this.meshed)) this.meshed = now
  }
  /** The mesh that stands for a part, in the axes of this. */
  partMesh = async (shape: string): Promise<ScanMesh | undefined> => this.thread?.scans.partMesh(shape)
  /** The mesh of a scan as it is drawn. */
  mesh = async (scan: string): Promise<ScanDrawn | undefined> => this.thread?.scans.mesh(scan)
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
