/** How far a long work is: so many of so many, and what it does now. */
export type Progress = { readonly done: number; readonly of: number; readonly doing: string }

/** How a long work is watched, and stopped. */
export type Watch = { readonly hear?: (progress: Progress) => void; readonly signal?: AbortSignal }

/** A long work was stopped on the way; nothing of it stays. */
export class Stopped extends Error {
  constructor() {
    super('stopped on the way')
  }
}

/** Throws `Stopped` where the work shall not go on. */
export function goOn({ signal }: Watch): void {
  if (signal?.aborted) throw new Stopped()
}

/** Longest a step works before others are let in [ms]. */
const SLICE = 15

/** Works on a list one by one, others let in between; tells how far it is before each. */
export async function oneByOne<T>(list: readonly T[], doing: string, watch: Watch, work: (item: T) => void): Promise<void> {
  let began = performance.now()
  for (const [done, item] of list.entries()) {
    if (performance.now() - began > SLICE) {
      await new Promise(resolve => setImmediate(resolve))
      began = performance.now()
    }
    goOn(watch)
    watch.hear?.({ done, of: list.length, doing })
    work(item)
  }
  watch.hear?.({ done: list.length, of: list.length, doing })
}
