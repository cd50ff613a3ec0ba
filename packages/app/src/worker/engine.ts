import { proxy, type Remote, wrap } from 'comlink'
import type { Service } from './service.ts'

/** The engine in a thread of its own. */
export type Engine = Remote<Service>
export function startEngine(hear: Parameters<Service['listen']>[0]): Engine {
  const worker = new Worker(new URL('./desk.worker.ts', import.meta.url), { type: 'module', name: 'engine' }),
    engine = wrap<Service>(worker)
  void engine.listen(proxy(hear) as never)
  return engine
}
