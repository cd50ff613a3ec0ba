import { dirname } from 'node:path'
import { Worker } from 'node:worker_threads'
import { fileOf } from '../tests/cars.ts'

type Part = { readonly sum: number; readonly memory: readonly number[] }

/** Times a sweep on so many threads, from the moment all are warm. */
async function onThreads(count: number, threads: number): Promise<{ seconds: number; sum: number; memory: readonly number[] }> {
  const file = fileOf('lapwing'),
    each = Math.ceil(count / threads)
  const workers = Array.from(
    { length: threads },
    (_, k) =>
      new Worker(new URL('./sweep-worker.mjs', import.meta.url), {
        workerData: { file, folder: dirname(file), from: k * each, to: Math.min(count, (k + 1) * each) },
        execArgv: [],
      }),
  )
  const next = <T>(w: Worker): Promise<T> =>
    new Promise((done, failed) => {
      w.once('message', done)
      w.once('error', failed)
    })
  await Promise.all(workers.map(w => next(w)))
  const began = performance.now(),
    waiting = workers.map(w => next<Part>(w))
  for (const w of workers) w.postMessage('go')
  const parts = await Promise.all(waiting),
    seconds = (performance.now() - began) / 1000
  await Promise.all(workers.map(w => w.terminate()))
  return { seconds, sum: parts.reduce((s, p) => s + p.sum, 0), memory: parts[0]?.memory ?? [] }
}

/** Speed on two threads against twice the speed on one, and how far memory grows in the second half of the sweep. */
export async function sweepEfficiency(count: number): Promise<{ efficiency: number; grownMB: number }> {
  const one = await onThreads(count, 1),
    two = await onThreads(count, 2)
  if (Math.abs(one.sum - two.sum) > 1e-6 * Math.abs(one.sum)) throw new Error('two threads and one thread disagree')
  const half = one.memory.slice(one.memory.length >> 1),
    least = (list: readonly number[]): number => Math.min(...list)
  return {
    efficiency: one.seconds / (2 * two.seconds),
    grownMB: (least(half.slice(half.length >> 1)) - least(half.slice(0, half.length >> 1))) / 1e6,
  }
}
