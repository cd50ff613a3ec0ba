import type { ApiFileLine } from '@ampwright/server'
import { api } from './server/api.ts'
import type { Engine } from './worker/engine.ts'
import type { Beside } from './worker/service.ts'

/** The files beside one conversion as this window has them, and the engine with it. */
export class FilesBeside {
  /** With what each was when it was fetched; one laid here has none yet. */
  private held = new Map<string, { readonly bytes: Uint8Array; readonly hash?: string }>()

  private readonly id: string
  private readonly engine: Pick<Engine, 'addFile'>

  constructor(id: string, engine: Pick<Engine, 'addFile'>) {
    this.id = id
    this.engine = engine
  }

  get files(): readonly Beside[] {
    return [...this.held].map(([name, { bytes }]) => ({ name, bytes }))
  }
  /** Fetches them all, for a conversion that is laid open. */
  async fetched(stored: readonly ApiFileLine[]): Promise<readonly Beside[]> {
    const all = await Promise.all(
      stored.map(async ({ name, sha256 }) => [name, { bytes: await api.file(this.id, name), hash: sha256 }] as const),
    )
    this.held = new Map(all)
    return this.files
  }
  /** Takes over what another window put beside the conversion meanwhile: before the text that may name it. */
  async follow(stored: readonly ApiFileLine[]): Promise<void> {
    for (const { name, sha256: hash } of stored) {
      if (this.held.get(name)?.hash === hash) continue
      const bytes = await api.file(this.id, name)
      await this.engine.addFile(name, bytes)
      this.held.set(name, { bytes, hash })
    }
    for (const name of this.held.keys()) if (!stored.some(f => f.name === name)) await this.lay(name, null)
  }
  /** Lays one beside the conversion that the server has taken, or takes it away. */
  async lay(name: string, bytes: Uint8Array | null): Promise<void> {
    if (bytes === null) this.held.delete(name)
    else this.held.set(name, { bytes })
    await this.engine.addFile(name, bytes)
  }
}
