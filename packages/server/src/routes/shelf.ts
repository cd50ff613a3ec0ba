import { isError, readWorkshop } from '@ampwright/conversion'
import type { Store, WorkshopOutcome } from '@ampwright/store'
import { lookUps, shelfView } from '@ampwright/workbench'
import type { FastifyReply } from 'fastify'
import { z } from 'zod'
import type { ApiClashes, ApiShelf, ApiShelfSaved, ApiUnreadable } from '../api-types.ts'
import { Batch, Clashes, KeptForAnother, Reserving, ShelfRevisionLine, ShelfSaved, ShelfShape, ToRevision } from '../shapes.ts'
import { clashed, issueLine, unreadable } from '../told.ts'
import { defined } from './conversions.ts'
import { type Behind, CHANGED, REFUSED, type Routed } from './routed.ts'

/** The shelf of the workshop: what lies there, changing it, and keeping a piece for a car. */
export function shelfRoutes(app: Routed, { store, now }: Behind): void {
  app.get(
    '/api/shelf',
    {
      schema: {
        summary: 'What lies on the shelf of the workshop, and whom each piece is kept for',
        response: { ...REFUSED, 200: ShelfShape },
      },
    },
    () => shelf(store, now()),
  )

  app.get(
    '/api/shelf/revisions',
    { schema: { summary: 'Every revision of the workshop file, newest first', response: { ...REFUSED, 200: z.array(ShelfRevisionLine) } } },
    () =>
      store
        .workshopRevisions()
        .map(({ revision, at, by, kind, what, hash }) => ({ revision, at: new Date(at).toISOString(), by, kind, what, sha256: hash })),
  )

  app.post(
    '/api/shelf/edits',
    {
      bodyLimit: 8_000_000,
      schema: {
        summary: 'A batch of edits of the workshop file, all or none; each applies where what was seen still stands',
        body: Batch,
        response: { ...CHANGED, 200: ShelfSaved },
      },
    },
    (request, reply) => saved(reply, store.editWorkshop(defined(request.body))),
  )

  app.post(
    '/api/shelf/undo',
    {
      schema: {
        summary:
          'Takes back what one revision of the workshop file changed; refused with both values where somebody changed the same since',
        body: ToRevision,
        response: { ...CHANGED, 200: ShelfSaved },
      },
    },
    (request, reply) => saved(reply, store.undoWorkshop(request.body.revision, request.body.by)),
  )

  app.post(
    '/api/shelf/reserve',
    {
      schema: {
        summary: 'Keeps a piece for a car; refused, with its name, where the piece is kept for another',
        body: Reserving,
        response: { ...CHANGED, 409: z.union([KeptForAnother, Clashes]), 200: ShelfSaved },
      },
    },
    (request, reply) => {
      const { piece, conversion, by } = request.body,
        outcome = store.reserve(piece, conversion, by)
      if (outcome.ok || outcome.why !== 'reserved') return saved(reply, outcome)
      void reply.code(409)
      const { name, car } = outcome.holder,
        message = car
          ? `«${piece}» is reserved for ${name}. Nothing was changed; free it on the shelf first, or choose another piece.`
          : `«${piece}» is reserved for ${name}, a car that is not here. Nothing was changed; free it on the shelf first.`
      return { refused: 'reserved' as const, message, piece, car: name }
    },
  )
}

/** The shelf as it stands, the quotes held against the day of the clock [ms since 1970]. */
function shelf(store: Store, now: number): ApiShelf {
  const { revision, at, text } = store.workshop(),
    read = readWorkshop(text, { lookUps: lookUps() }),
    view = shelfView(read, { cars: store.shelfCars(), today: new Date(now).toISOString().slice(0, 10) })
  return {
    revision,
    at: at === null ? null : new Date(at).toISOString(),
    name: view.name,
    text,
    pieces: view.pieces.map(p => ({ ...p })),
    classes: view.classes.map(c => ({ ...c })),
    notes: read.issues.filter(i => !isError(i)).map(issueLine),
  }
}

function saved(reply: FastifyReply, outcome: WorkshopOutcome): ApiShelfSaved | ApiClashes | ApiUnreadable {
  if (outcome.ok) return { revision: outcome.revision, text: outcome.text }
  if (outcome.why === 'kept out') {
    void reply.code(422)
    return unreadable(outcome.issues, 'the workshop file')
  }
  void reply.code(409)
  return clashed(outcome)
}
