import type { ApiTold } from '@ampwright/server'

type News = { readonly id: string; readonly revision: number }
type Listener = { readonly hear: (news: News) => void; readonly away: (gone: boolean) => void }

// One connection for the whole window: a browser opens only a few to one server, and each that stays open is one less for everything else.
const listeners = new Set<Listener>()
let source: EventSource | undefined

/** Hears of every revision anybody makes, until it is let go; on every new connection first where each conversion stands. */
export function live(hear: Listener['hear'], away: Listener['away']): () => void {
  const own: Listener = { hear, away }
  listeners.add(own)
  source ??= connected()
  // Who comes later finds the connection made already.
  const { readyState } = source
  if (readyState === EventSource.OPEN) queueMicrotask(() => listeners.has(own) && away(false))
  return () => {
    listeners.delete(own)
    if (listeners.size > 0) return
    source?.close()
    source = undefined
  }
}

function connected(): EventSource {
  const made = new EventSource('/api/live'),
    read = <T>(e: MessageEvent): T => JSON.parse(e.data as string) as T
  const tell = (news: News): void => [...listeners].forEach(l => l.hear(news)),
    say = (gone: boolean): void => [...listeners].forEach(l => l.away(gone))
  made.addEventListener('heads', e => read<readonly News[]>(e).forEach(tell))
  made.addEventListener('change', e => tell(read<ApiTold>(e)))
  made.addEventListener('open', () => say(false))
  made.addEventListener('error', () => say(true))
  return made
}
