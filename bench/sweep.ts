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
        resourceLimits: { maxYoungGenerationSizeMb: 64 },
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

const ROUNDS = 3

/**
 * Speed on two threads against twice the speed on one, each at its best of some rounds taken turn about, and how far memory grows in the second
 * half of the sweep.
 */
export async function sweepEfficiency(count: number): Promise<{ efficiency: number; grownMB: number }> {
  let one = Infinity,
    two = Infinity,
    memory: readonly number[] = []
  for (let round = 0; round < ROUNDS; round++) {
    const alone = await onThreads(count, 1),
      both = await onThreads(count, 2)
    if (Math.abs(alone.sum - both.sum) > 1e-6 * Math.abs(alone.sum)) throw new Error('two threads and one thread disagree')
    one = Math.min(one, alone.seconds)
    two = Math.min(two, both.seconds)
    memory = alone.memory
  }
  const half = memory.slice(memory.length >> 1),
    least = (list: readonly number[]): number => Math.min(...list)
  return {
    efficiency: one / (2 * two),
    grownMB: (least(half.slice(half.length >> 1)) - least(half.slice(0, half.length >> 1))) / 1e6,
  }
}
