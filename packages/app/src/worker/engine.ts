import { proxy, type Remote, wrap } from 'comlink'
import type { Service } from './service.ts'

/** The engine in a thread of its own. */
export type Engine = Remote<Service>
const thread = (): Worker => new Worker(new URL('./desk.worker.ts', import.meta.url), { type: 'module', name: 'engine' })

export function startEngine(hear: Parameters<Service['listen']>[0]): Engine {
  const engine = wrap<Service>(thread())
  void engine.listen(proxy(hear) as never)
  return engine
}

/** An engine without a conversion, for what needs none; it stops with the page that asked for it. */
export function startAlone(): { readonly engine: Engine; readonly stop: () => void } {
  const worker = thread()
  return { engine: wrap<Service>(worker), stop: () => worker.terminate() }
}
