// Two threads against one, on the built packages. A process of its own, to be run with `--single-threaded --expose-gc`: with a thread of ours on every core the
// helper threads of V8 would only take turns with them, and alone a thread would borrow the other core.
import { dirname } from 'node:path'
import { Worker } from 'node:worker_threads'

/** Variants a thread takes at a time: few, so that none waits long for the other at the end. */
const CHUNK = 5,
  /** Variants worked through by one thread and by two, turn about: a machine that is slow for a while is slow for both. */
  BLOCK = 200,
  /** Variants until the threads are counted as warm. */
  WARM = 1000

class Thread {
  #worker
  #done
  #failed
  constructor(file) {
    this.#worker = new Worker(new URL('./sweep-worker.mjs', import.meta.url), {
      workerData: { file, folder: dirname(file) },
      execArgv: [],
      resourceLimits: { maxYoungGenerationSizeMb: 64 },
    })
    this.#worker.on('message', answer => this.#done(answer))
    this.#worker.on('error', error => this.#failed(error))
  }
  #ask(question) {
    return new Promise((done, failed) => {
      this.#done = done
      this.#failed = failed
      this.#worker.postMessage(question)
    })
  }
  /** What the variants from `from` up to `to` add up to. */
  work = (from, to) => this.#ask({ from, to })
  /** Bytes still in use once rubbish is cleared away. */
  memory = () => this.#ask('memory')
  end = () => this.#worker.terminate()
}

/** Threads work through a block, each taking the next chunk as it is done with the last. */
async function block(threads, from, to) {
  const began = performance.now(),
    sums = []
  let next = from
  await Promise.all(
    threads.map(async thread => {
      while (next < to) {
        const at = next
        next += CHUNK
        sums[(at - from) / CHUNK] = await thread.work(at, Math.min(to, next))
      }
    }),
  )
  return { seconds: (performance.now() - began) / 1000, sum: sums.reduce((a, b) => a + b, 0) }
}

const [file, count] = [process.argv[2], Number(process.argv[3])],
  [a, b] = [new Thread(file), new Thread(file)]
await Promise.all([a.work(0, WARM), b.work(0, WARM)])
let one = 0,
  two = 0
const memory = []
for (let from = 0, turn = 0; from < count; from += BLOCK, turn++) {
  const to = Math.min(count, from + BLOCK),
    alone = () => block([turn % 4 < 2 ? a : b], from, to),
    both = () => block([a, b], from, to),
    bothFirst = turn % 2 === 1 ? await both() : undefined,
    x = await alone(),
    y = bothFirst ?? (await both())
  if (x.sum !== y.sum) throw new Error(`one thread and two disagree on variants ${from} to ${to}`)
  one += x.seconds
  two += y.seconds
  memory.push((await a.memory()) + (await b.memory()))
}
await Promise.all([a.end(), b.end()])
console.log(JSON.stringify({ efficiency: one / (2 * two), grownMB: (memory.at(-1) - memory[memory.length >> 1]) / 1e6, seconds: { one, two } }))
