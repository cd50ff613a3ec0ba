import type { ApiBatch, ApiReserving, ApiShelf, ApiShelfSaved } from '@ampwright/server'
import type { ShelfLine } from '@ampwright/workbench'
import { type Clash, json, Refused, sent, type Unread } from '../server/api.ts'

export type Piece = ShelfLine
export type Shelf = Omit<ApiShelf, 'pieces'> & { readonly pieces: readonly Piece[] }
export type SeenEdits = ApiBatch['edits']

/** What the server answers to a change of the shelf: the revision, or why nothing was changed, with every problem and every clash. */
export type ShelfAnswer =
  | { readonly is: 'kept'; readonly revision: number }
  | { readonly is: 'refused'; readonly says: string; readonly issues: readonly Unread[]; readonly clashes: readonly Clash[] }

async function answer(path: string, body: object): Promise<ShelfAnswer> {
  try {
    const { revision } = await json<ApiShelfSaved>(path, sent(body))
    return { is: 'kept', revision }
  } catch (e) {
    const { issues, clashes } = e instanceof Refused ? e : { issues: [], clashes: [] }
    return { is: 'refused', says: (e as Error).message, issues, clashes }
  }
}

/** The shelf of the workshop, as the server has it. */
export const shelfApi = {
  read: (): Promise<Shelf> => json('/api/shelf'),
  edit: (edits: SeenEdits, what: string): Promise<ShelfAnswer> => answer('/api/shelf/edits', { edits, what: what.slice(0, 300) }),
  undo: (revision: number): Promise<ShelfAnswer> => answer('/api/shelf/undo', { revision }),
  reserve: (asked: ApiReserving): Promise<ShelfAnswer> => answer('/api/shelf/reserve', asked),
  /** Takes away whom a piece is kept for. */
  free: (p: Piece): Promise<ShelfAnswer> =>
    shelfApi.edit([{ path: ['shelf', p.key, 'reserved'], was: p.typed['reserved'] ?? null, now: null }], `«${p.key}» freed`),
  takeAway: (p: Piece): Promise<ShelfAnswer> =>
    shelfApi.edit([{ path: ['shelf', p.key], was: p.stands, now: null }], `«${p.key}» taken away`),
}
