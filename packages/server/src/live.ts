import type { ServerResponse } from 'node:http'
import type { Change, Store } from '@ampwright/store'
import type { FastifyReply } from 'fastify'
import type { ApiJob } from './api-types.ts'
import { HEADERS } from './guard.ts'

const MOST = 200
const QUIET = 15_000

/** Those who listen. Each gets first where every conversion and every job stands, then every change and every step of a job as it comes. */
export function liveTo(store: Store, jobs: () => readonly ApiJob[]) {
  const open = new Set<ServerResponse>()
  const send = (to: ServerResponse, event: string, data: unknown): void =>
    void to.write(`event: ${event}\ndata: ${JSON.stringify(data)}\n\n`)
  const stop = store.heard((change: Change) => open.forEach(to => send(to, 'change', change)))
  const beat = setInterval(() => open.forEach(to => void to.write(': here\n\n')), QUIET)
  beat.unref()

  return {
    /** Takes the answer over for as long as whoever asked stays. */
    join(reply: FastifyReply): void {
      if (open.size >= MOST) return void reply.code(503).send({ refused: 'full', message: 'Too many windows are open; close some.' })
      reply.hijack()
      const to = reply.raw
      to.writeHead(200, { ...HEADERS, 'content-type': 'text/event-stream', 'cache-control': 'no-store', connection: 'keep-alive' })
      to.write('retry: 1000\n\n')
      send(
        to,
        'heads',
        store.conversions().map(({ id, revision }) => ({ id, revision })),
      )
      const known = jobs()
      if (known.length) send(to, 'jobs', known)
      open.add(to)
      to.on('close', () => open.delete(to))
      to.on('error', () => open.delete(to))
    },
    /** Tells everybody of a step of a job. */
    job: (job: ApiJob): void => open.forEach(to => send(to, 'job', job)),
    close(): void {
      stop()
      clearInterval(beat)
      open.forEach(to => to.end())
    },
  }
}
