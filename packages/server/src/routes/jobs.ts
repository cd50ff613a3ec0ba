import { randomBytes } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { rm } from 'node:fs/promises'
import { join } from 'node:path'
import { StoreFault } from '@ampwright/store'
import type { FastifyReply, FastifyRequest } from 'fastify'
import { z } from 'zod'
import type { ApiJob } from '../api-types.ts'
import { intoFile } from '../bodies.ts'
import type { Ended, Working } from '../jobs.ts'
import { Beginning, Job, JobId } from '../shapes.ts'
import { type Behind, bytesOf, MOST_BACKUP, REFUSED, type Routed } from './routed.ts'

/** The works that are jobs. */
export const works = ({ store, passing, now }: Pick<Behind, 'store' | 'passing' | 'now'>) => ({
  backup: async ({ file, ...watch }: Working): Promise<Ended> => {
    await store.backUp(file, watch)
    return { says: 'The backup is made.', file: `ampwright-${new Date(now()).toISOString().slice(0, 10)}.sqlite` }
  },
  check: async ({ signal, hear }: Working): Promise<Ended> => {
    const { contents, bytes, problems } = await store.check({ signal, hear })
    const all = `${contents} contents of ${(bytes / 1e6).toFixed(1)} MB are looked through`
    return {
      says: problems.length
        ? `${all}: ${problems.length} not as they were kept. Put a backup in the place of everything.`
        : `${all}: each is as it was kept.`,
      contents,
      problems: problems.slice(0, 50),
    }
  },
  /** Takes the backup from a request, then puts it in place; `taken` is told once the request is read. */
  restore:
    (request: FastifyRequest, reply: FastifyReply, taken: (e?: unknown) => void) =>
    async ({ signal, hear }: Working): Promise<Ended> => {
      const coming = join(passing, `${randomBytes(8).toString('hex')}.sqlite`)
      try {
        hear({ done: 0, of: 1, doing: 'taking the backup in' })
        const of = Number(request.headers['content-length'] ?? 0)
        await intoFile(
          request,
          reply,
          MOST_BACKUP,
          coming,
          done => hear({ done, of: Math.max(of, done), doing: 'taking the backup in' }),
          signal,
        )
        taken()
        const keptAs = await store.restoreBackup(coming, { signal, hear })
        return { says: `The backup is put back. What was here before is kept in the data folder as ${keptAs}.`, keptAs }
      } catch (e) {
        taken(e)
        throw e
      } finally {
        await rm(coming, { force: true })
      }
    },
})

/** Long work: begin it, see how far it is, cancel it, have what came of it. How it goes is told on /api/live. */
export function jobRoutes(app: Routed, behind: Behind): void {
  const { jobs } = behind,
    { backup, check, restore } = works(behind),
    ByJob = z.object({ job: JobId })
  const known = (job: ApiJob | undefined): ApiJob => {
    if (!job) throw new StoreFault('unknown', 'There is no such job; what came of one is kept for an hour.')
    return job
  }

  app.post(
    '/api/jobs',
    {
      schema: {
        summary: 'Begins a backup, or a look through everything that is kept; 409 where another job must end first',
        body: Beginning,
        response: { ...REFUSED, 202: Job },
      },
    },
    (request, reply) => {
      void reply.code(202)
      return jobs.begin(request.body.kind, request.body.kind === 'backup' ? backup : check)
    },
  )

  app.post(
    '/api/jobs/restore',
    {
      schema: {
        summary:
          'Begins to put a backup in the place of everything: the bytes are the body, the header x-ampwright: 1 is needed; what was here is kept in a file beside it',
        consumes: ['application/vnd.sqlite3'],
        body: z.any().describe('bytes'),
        response: { ...REFUSED, 202: Job },
      },
    },
    async (request, reply) => {
      let told: (e: unknown) => void = () => {}
      const taken = new Promise<unknown>(resolve => {
          told = resolve
        }),
        { id } = jobs.begin('restore', restore(request, reply, told)),
        failed = await taken
      if (failed !== undefined) {
        // Answered once the next may begin.
        await jobs.ended(id)
        throw failed
      }
      void reply.code(202)
      return known(jobs.one(id))
    },
  )

  app.get(
    '/api/jobs',
    { schema: { summary: 'The jobs that run, and those of the last hour, newest first', response: { ...REFUSED, 200: z.array(Job) } } },
    () => [...jobs.list()],
  )

  app.get(
    '/api/jobs/:job',
    { schema: { summary: 'How far a job is, or what came of it', params: ByJob, response: { ...REFUSED, 200: Job } } },
    request => known(jobs.one(request.params.job)),
  )

  app.delete(
    '/api/jobs/:job',
    {
      schema: {
        summary: 'Cancels a job that runs and gives it as it ended; nothing half-made is left',
        params: ByJob,
        response: { ...REFUSED, 200: Job },
      },
    },
    request => jobs.cancel(known(jobs.one(request.params.job)).id).then(known),
  )

  app.get(
    '/api/jobs/:job/result',
    {
      schema: {
        summary: 'The file a job made; it is kept until it is fetched, or for an hour',
        params: ByJob,
        response: { ...REFUSED, 200: bytesOf('application/vnd.sqlite3') },
      },
    },
    (request, reply) => {
      const { id, result } = known(jobs.one(request.params.job))
      if (!result?.file)
        throw new StoreFault('unknown', 'There is no file of this job: it made none, or it was fetched, or its hour is over.')
      return sentFile(reply, jobs.fileOf(id), result.file, () => void jobs.fetched(id))
    },
  )
}

/** Sends a file as a download; tells once all of it went out. */
export function sentFile(reply: FastifyReply, file: string, name: string, out: () => void): FastifyReply {
  reply.raw.on('finish', out)
  return reply.header('content-disposition', `attachment; filename="${name}"`).type('application/vnd.sqlite3').send(createReadStream(file))
}
