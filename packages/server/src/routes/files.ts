import { mostBytes } from '@ampwright/workbench'
import { z } from 'zod'
import { bytesIn } from '../bodies.ts'
import { Id, RevisionText, Saved } from '../shapes.ts'
import { answered } from '../told.ts'
import { type Behind, bytesOf, CHANGED, REFUSED, type Routed } from './routed.ts'

/** Files beside a conversion, kept by what they hold. A name with folders is written with %2F. */
export function fileRoutes(app: Routed, { store }: Behind): void {
  const ByName = z.object({ id: Id, name: z.string().min(1).max(300) })

  app.get(
    '/api/conversions/:id/files/:name',
    {
      schema: {
        summary: 'The bytes of a file, as they stand or as they stood',
        params: ByName,
        querystring: z.strictObject({ revision: RevisionText.optional() }),
        response: { ...REFUSED, 200: bytesOf('application/octet-stream') },
      },
    },
    (request, reply) => {
      const { id, name } = request.params,
        bytes = store.file(id, name, request.query.revision)
      return reply
        .type('application/octet-stream')
        .header('content-disposition', `attachment; filename*=UTF-8''${encodeURIComponent(name.split('/').at(-1) ?? 'file')}`)
        .send(bytes)
    },
  )

  app.put(
    '/api/conversions/:id/files/:name',
    {
      schema: {
        summary: 'Puts a file beside a conversion, as a revision; the bytes are the body, the header x-ampwright: 1 is needed',
        consumes: ['application/octet-stream'],
        params: ByName,
        querystring: z.strictObject({ by: z.string().max(100).optional() }),
        body: z.any().describe('bytes'),
        response: { ...CHANGED, 200: Saved },
      },
    },
    async (request, reply) =>
      answered(
        reply,
        store.putFile(
          request.params.id,
          request.params.name,
          await bytesIn(request, reply, mostBytes(request.params.name)),
          request.query.by,
        ),
      ),
  )

  app.delete(
    '/api/conversions/:id/files/:name',
    {
      schema: {
        summary: 'Takes a file away, as a revision; earlier revisions keep it',
        params: ByName,
        querystring: z.strictObject({ by: z.string().max(100).optional() }),
        response: { ...CHANGED, 200: Saved },
      },
    },
    (request, reply) => answered(reply, store.putFile(request.params.id, request.params.name, null, request.query.by)),
  )
}
