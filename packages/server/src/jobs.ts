import { randomBytes } from 'node:crypto'
import { statSync } from 'node:fs'
import { rm } from 'node:fs/promises'
import { type Progress, Stopped } from '@ampwright/store'
import type { ApiJob } from './api-types.ts'
import { type JobKind, KEPT, readRecord, resultIn, writeRecord } from './job-record.ts'
import { Busy, told } from './refusals.ts'

export type Ended = { readonly says: string } & Partial<NonNullable<ApiJob['result']>>
export type Working = {
  readonly signal: AbortSignal
  readonly hear: (p: Progress) => void /** Where a file that is the result goes. */
  readonly file: string
}
export type Jobs = ReturnType<typeof jobsIn>

/** What each job is while it runs, and what must not run beside it. */
const KINDS: Readonly<Record<JobKind, { readonly runs: string; readonly not: readonly JobKind[] }>> = {
  backup: { runs: 'A backup is being made', not: ['backup', 'restore'] },
  restore: { runs: 'A backup is being put back', not: ['backup', 'restore', 'check'] },
  check: { runs: 'Everything is being looked through', not: ['restore', 'check'] },
}
const NOTHING = { file: null, size: null, keptAs: null, contents: null, problems: [] }

export type JobsOptions = {
  /** A folder for what passes through. */
  readonly passing: string
  /** Name of the data folder, not told to anybody. */
  readonly folder: string
  readonly now: () => number
  readonly tell: (job: ApiJob) => void
  readonly fault?: (e: unknown) => void
}

/**
 * The jobs of a server: long work in the background, each with its progress told as it goes. What came of one is kept for an hour, a file until it is fetched. A job
 * that runs when the server ends is stopped and said to have been.
 */
export function jobsIn({ passing, folder, now, tell, fault }: JobsOptions) {
  const jobs = new Map<string, ApiJob>(readRecord(passing, now()).map(job => [job.id, job])),
    running = new Map<string, { readonly stop: AbortController; ended: Promise<void>; why: 'cancelled' | 'stopped' }>()
  const time = (): string => new Date(now()).toISOString()

  function set(id: string, some: Partial<ApiJob>): ApiJob {
    const job = { ...(jobs.get(id) as ApiJob), ...some }
    jobs.set(id, job)
    return job
  }
  const record = (): void => writeRecord(passing, [...jobs.values()])
  function forgetOld(): void {
    for (const { id, ended } of jobs.values())
      if (ended !== null && now() - Date.parse(ended) >= KEPT) {
        jobs.delete(id)
        void rm(resultIn(passing, id), { force: true })
      }
  }
  const hear = (id: string) => (p: Progress) => {
    const { done, of, doing } = jobs.get(id) as ApiJob
    const part = (d: number, o: number): number => Math.floor((100 * d) / Math.max(1, o))
    const next = set(id, p)
    // Each percent is told once, not every page.
    if (doing !== p.doing || part(done, of) !== part(p.done, p.of)) tell(next)
  }
  function end(id: string, some: Pick<ApiJob, 'state' | 'says' | 'result'>): void {
    const job = set(id, { ...some, ended: time() })
    running.delete(id)
    record()
    tell(job)
  }

  async function worked(id: string, work: (w: Working) => Promise<Ended>, signal: AbortSignal): Promise<void> {
    const file = resultIn(passing, id)
    try {
      const { says, ...result } = await work({ signal, hear: hear(id), file })
      const size = result.file ? statSync(file).size : null
      end(id, { state: 'done', says, result: { ...NOTHING, ...result, size } })
    } catch (e) {
      await rm(file, { force: true })
      const { why } = running.get(id) ?? { why: 'stopped' as const },
        { kind } = jobs.get(id) as ApiJob
      if (e instanceof Stopped || signal.aborted) end(id, { state: why, says: STOPPED[why](kind), result: null })
      else {
        const { status, message } = told(e, folder)
        if (status === 500) fault?.(e)
        end(id, { state: 'failed', says: message, result: null })
      }
    }
  }

  return {
    /** Begins a job; throws `Busy`, with the name of the one that runs, where it must wait. */
    begin(kind: JobKind, work: (w: Working) => Promise<Ended>): ApiJob {
      forgetOld()
      const other = [...running.keys()].map(r => (jobs.get(r) as ApiJob).kind).find(k => KINDS[kind].not.includes(k))
      if (other) throw new Busy(`${KINDS[other].runs}. Wait until that is done, or cancel it.`)
      const id = randomBytes(8).toString('hex'),
        stop = new AbortController()
      const job: ApiJob = {
        id,
        kind,
        state: 'running',
        doing: 'beginning',
        done: 0,
        of: 1,
        begun: time(),
        ended: null,
        says: null,
        result: null,
      }
      jobs.set(id, job)
      const entry = { stop, ended: Promise.resolve(), why: 'cancelled' as const }
      running.set(id, entry)
      record()
      tell(job)
      entry.ended = worked(id, work, stop.signal)
      return job
    },
    /** Newest first. */
    list(): readonly ApiJob[] {
      forgetOld()
      return [...jobs.values()].reverse()
    },
    one(id: string): ApiJob | undefined {
      forgetOld()
      return jobs.get(id)
    },
    /** Stops a job that runs, and gives it once it has ended. */
    async cancel(id: string): Promise<ApiJob | undefined> {
      const entry = running.get(id)
      entry?.stop.abort()
      await entry?.ended
      return jobs.get(id)
    },
    /** Waits for the end of a job. */
    async ended(id: string): Promise<ApiJob> {
      await running.get(id)?.ended
      return jobs.get(id) as ApiJob
    },
    fileOf: (id: string): string => resultIn(passing, id),
    /** The file a job made was fetched: it is kept no longer. */
    async fetched(id: string): Promise<void> {
      const job = jobs.get(id)
      if (!job?.result) return
      tell(set(id, { result: { ...job.result, file: null } }))
      record()
      await rm(resultIn(passing, id), { force: true })
    },
    /** Stops every job; the server ends. */
    async stop(): Promise<void> {
      const entries = [...running.values()]
      for (const entry of entries) {
        entry.why = 'stopped'
        entry.stop.abort()
      }
      await Promise.all(entries.map(e => e.ended))
    },
  }
}

const WHAT: Readonly<Record<JobKind, string>> = {
  backup: 'The backup is not made',
  restore: 'The backup is not put back',
  check: 'Not everything is looked through',
}
/** The sentence of a job that did not come to its end. */
const STOPPED = {
  cancelled: (kind: JobKind): string => `${WHAT[kind]}: it was cancelled. Nothing was changed.`,
  stopped: (kind: JobKind): string => `${WHAT[kind]}: the server was stopped on the way. Nothing was changed.`,
} as const
