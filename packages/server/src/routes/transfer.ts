import { Readable } from 'node:stream'
import { StoreFault, slugOf, type Imported as Taken, unbundled } from '@ampwright/store'
import type { FastifyReply } from 'fastify'
import { z } from 'zod'
import type { ApiImported, ApiUnreadable } from '../api-types.ts'
import { bytesIn } from '../bodies.ts'
import { Id, Imported, Importing, RestoredBackup, RevisionText } from '../shapes.ts'
import { clashesOf, unreadable } from '../told.ts'
import { defined, fromBase64 } from './conversions.ts'
import { sentFile, works } from './jobs.ts'
import { type Behind, ById, bytesOf, CHANGED, MOST_BUNDLE_FILE, MOST_JSON, REFUSED, type Routed } from './routed.ts'

/** What leaves and comes back: texts, bundles, backups. */
export function transferRoutes(app: Routed, behind: Behind): void {
  const { store, jobs } = behind,
    { backup, restore } = works(behind)
  const OfRevision = z.strictObject({ revision: RevisionText.optional() })
  const named = (reply: FastifyReply, file: string): FastifyReply => reply.header('content-disposition', `attachment; filename="${file}"`)
  const nameOf = (id: string): string => slugOf(store.conversion(id).name)

  app.get(
    '/api/conversions/:id/export',
    {
      schema: {
        summary: 'The text as a file; its last line says where it comes from, so that it can be merged when it comes back',
        params: ById,
        querystring: OfRevision,
        response: { ...REFUSED, 200: bytesOf('application/yaml') },
      },
    },
    (request, reply) => {
      const { id } = request.params
      return named(reply, `${nameOf(id)}.conversion.yaml`)
        .type('application/yaml; charset=utf-8')
        .send(Buffer.from(store.exported(id, request.query.revision)))
    },
  )

  app.get(
    '/api/conversions/:id/bundle',
    {
      schema: {
        summary: 'The text and its files in one zip file',
        params: ById,
        querystring: OfRevision,
        response: { ...REFUSED, 200: bytesOf('application/zip') },
      },
    },
    (request, reply) => {
      const { id } = request.params
      return named(reply, `${nameOf(id)}.zip`)
        .type('application/zip')
        .send(store.bundle(id, request.query.revision))
    },
  )

  app.post(
    '/api/import',
    {
      bodyLimit: MOST_JSON,
      schema: {
        summary:
          'Takes in a text (JSON) or a bundle (bytes, with the header x-ampwright: 1, and `into`, `from`, `as`, `named`, `by` in the address)',
        consumes: ['application/json', 'application/zip'],
        querystring: z.strictObject({
          into: Id.optional(),
          from: RevisionText.optional(),
          as: z.enum(['merge', 'variant', 'new']).optional(),
          named: z.string().min(1).max(100).optional(),
          by: z.string().max(100).optional(),
        }),
        body: z.union([Importing, z.instanceof(Readable).meta({ type: 'string', description: 'bytes of a bundle' })]),
        response: { ...CHANGED, 200: Imported, 201: Imported },
      },
    },
    async (request, reply) => {
      const { body } = request
      if (!(body instanceof Readable)) {
        const { text, files, ...how } = body
        return taken(reply, store.take({ text, files: fromBase64(files), ...coming(how) }))
      }
      return taken(reply, store.take({ ...unbundled(await bytesIn(request, reply, MOST_BUNDLE_FILE)), ...coming(request.query) }))
    },
  )

  app.get(
    '/api/backup',
    {
      schema: {
        summary: 'Everything in one file, made while it is waited for; /api/jobs makes it in the background',
        response: { ...REFUSED, 200: bytesOf('application/vnd.sqlite3') },
      },
    },
    async (_, reply) => {
      const { id } = jobs.begin('backup', backup)
      // Nobody waits for it any more.
      reply.raw.on('close', () => void jobs.cancel(id))
      const { state, says, result } = await jobs.ended(id)
      if (!result?.file) throw new StoreFault(state === 'failed' ? 'full' : 'in use', says ?? '')
      return sentFile(reply, jobs.fileOf(id), result.file, () => void jobs.fetched(id))
    },
  )

  app.post(
    '/api/restore-backup',
    {
      schema: {
        summary: 'Puts a backup in the place of everything; what was here is kept in a file beside it. The header x-ampwright: 1 is needed',
        consumes: ['application/vnd.sqlite3'],
        body: z.any().describe('bytes'),
        response: { ...REFUSED, 200: RestoredBackup },
      },
    },
    async (request, reply) => {
      let failed: unknown
      const { id } = jobs.begin('restore', async working => {
        try {
          return await restore(request, reply, () => {})(working)
        } catch (e) {
          failed = e
          throw e
        }
      })
      const { result } = await jobs.ended(id)
      if (!result?.keptAs) throw failed
      return { keptAs: result.keptAs }
    },
  )
}

type How = {
  into?: string | undefined
  from?: number | undefined
  as?: 'merge' | 'variant' | 'new' | undefined
  named?: string | undefined
  by?: string | undefined
}
const coming = ({ from, as, ...rest }: How) =>
  ({ ...defined(rest), ...(from === undefined ? {} : { fromRevision: from }), asVariant: as === 'variant', alone: as === 'new' }) as {
    into?: string
    fromRevision?: number
    named?: string
    by?: string
    asVariant: boolean
    alone: boolean
  }

function taken(reply: FastifyReply, outcome: Taken): ApiImported | ApiUnreadable {
  if (!outcome.ok) {
    void reply.code(422)
    return unreadable(outcome.issues)
  }
  const { as, id, revision, text, layoutLeftOut } = outcome
  void reply.code(as === 'new' || as === 'variant' ? 201 : 200)
  return { as, id, revision, text, layoutLeftOut, clashes: clashesOf(outcome.clashes) }
}
