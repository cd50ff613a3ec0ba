import type { ApiJob, ApiTold } from '@ampwright/server'

type News = { readonly id: string; readonly revision: number }
type Listener = {
  readonly hear: (news: News) => void
  readonly away: (gone: boolean) => void
  /** Hears of every step of every job, on every new connection first of all jobs of the last hour. */
  readonly job?: (job: ApiJob) => void
}

// One connection for the whole window: a browser opens only a few to one server, and each that stays open is one less for everything else.
const listeners = new Set<Listener>()
const jobs = new Map<string, ApiJob>()
let source: EventSource | undefined, again: ReturnType<typeof setTimeout>
/** When a refused stream is asked for again [ms]. */
const AGAIN = 1000

/** Hears of every revision anybody makes, until it is let go; on every new connection first where each conversion stands. */
export function live(given: Listener): () => void {
  const own: Listener = { ...given }
  listeners.add(own)
  if (source === undefined) connect()
  // Who comes later finds the connection made already.
  else if (source.readyState === EventSource.OPEN)
    queueMicrotask(() => {
      if (!listeners.has(own)) return
      own.away(false)
      for (const job of jobs.values()) own.job?.(job)
    })
  return () => {
    listeners.delete(own)
    if (listeners.size > 0) return
    clearTimeout(again)
    source?.close()
    source = undefined
    jobs.clear()
  }
}

function connect(): void {
  const made = new EventSource('/api/live'),
    read = <T>(e: MessageEvent): T => JSON.parse(e.data as string) as T
  source = made
  const tell = (news: News): void => [...listeners].forEach(l => l.hear(news)),
    say = (gone: boolean): void => [...listeners].forEach(l => l.away(gone))
  const tellOf = (job: ApiJob): void => {
    jobs.set(job.id, job)
    for (const l of listeners) l.job?.(job)
  }
  made.addEventListener('heads', e => read<readonly News[]>(e).forEach(tell))
  made.addEventListener('change', e => tell(read<ApiTold>(e)))
  made.addEventListener('jobs', e => read<readonly ApiJob[]>(e).forEach(tellOf))
  made.addEventListener('job', e => tellOf(read<ApiJob>(e)))
  made.addEventListener('open', () => say(false))
  made.addEventListener('error', () => {
    // A server that is just ending refuses, and a browser that was refused asks no more by itself.
    if (made.readyState === EventSource.CLOSED && source === made) again = setTimeout(connect, AGAIN)
    say(true)
  })
}
