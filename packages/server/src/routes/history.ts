import { z } from 'zod'
import { Compared, Id, RevisionLineShape, RevisionShape, RevisionText } from '../shapes.ts'
import { revisionLine } from '../told.ts'
import { type Behind, ById, REFUSED, type Routed } from './routed.ts'

/** The revisions of a conversion: browse, read, compare. */
export function historyRoutes(app: Routed, { store }: Behind): void {
  app.get(
    '/api/conversions/:id/revisions',
    { schema: { summary: 'Every revision, newest first', params: ById, response: { ...REFUSED, 200: z.array(RevisionLineShape) } } },
    request => store.revisions(request.params.id).map(revisionLine),
  )

  const ByRevision = z.object({ id: Id, n: RevisionText })
  app.get(
    '/api/conversions/:id/revisions/:n',
    { schema: { summary: 'One revision with its text', params: ByRevision, response: { ...REFUSED, 200: RevisionShape } } },
    request => {
      const r = store.revision(request.params.id, request.params.n)
      return { ...revisionLine(r), text: r.text, files: [...store.listed(r.files)] }
    },
  )

  app.get(
    '/api/conversions/:id/revisions/:n/changes',
    {
      schema: {
        summary:
          'What a revision says differently from the one before it, from `since`, or from the same or another revision `of` another conversion',
        params: ByRevision,
        querystring: z.strictObject({ since: RevisionText.optional(), of: Id.optional() }),
        response: { ...REFUSED, 200: Compared },
      },
    },
    request => {
      const { id, n } = request.params,
        { since, of } = request.query
      const before = { id: of ?? id, revision: since ?? (of === undefined ? Math.max(1, n - 1) : store.conversion(of).revision) },
        { edits, files } = store.compare(before, { id, revision: n })
      return {
        edits: edits?.map(({ path, was, now }) => ({ path, was: was as string, now: now as string })) ?? null,
        files: [...files],
      }
    },
  )
}
