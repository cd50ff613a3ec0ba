/** What the server answers to a batch of edits. */
export type Kept =
  | { readonly is: 'kept'; readonly revision: number; readonly text: string }
  | { readonly is: 'clash'; readonly revision: number; readonly text: string; readonly clashes: readonly Clash[] }
  | { readonly is: 'refused'; readonly says: string }
  | { readonly is: 'away' }
export type Clash = { readonly path: string; readonly yours: unknown; readonly theirs: string | null; readonly was: string | null }
export type Listed = {
  readonly id: string
  readonly name: string
  readonly variant?: string | null
  readonly variantOf?: string | null
  readonly revision: number
  readonly at: string
  readonly deletedUntil?: string | null
}
export type Stored = {
  readonly id: string
  readonly name: string
  readonly revision: number
  readonly text: string
  readonly files: readonly { readonly name: string; readonly hash: string }[]
}

/** The server could not be reached. */
export class Away extends Error {}
/** The server refused, and says why. */
export class Refused extends Error {}

const answered = async (path: string, init?: RequestInit): Promise<Response> => {
  try {
    return await fetch(path, init)
  } catch {
    throw new Away('The server does not answer.')
  }
}
const says = async (r: Response): Promise<string> => {
  const body = (await r.json().catch(() => undefined)) as { message?: string; error?: string } | undefined
  return body?.message ?? body?.error ?? `the server answered ${r.status}`
}
async function json<T>(path: string, init?: RequestInit): Promise<T> {
  const r = await answered(path, init)
  if (!r.ok) throw new Refused(await says(r))
  return (await r.json()) as T
}
const sent = (body: unknown, method = 'POST'): RequestInit => ({
  method,
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
})
const at = (id: string): string => `/api/conversions/${encodeURIComponent(id)}`

export const api = {
  list: async (): Promise<readonly Listed[]> => (await json<{ conversions: readonly Listed[] }>('/api/conversions')).conversions,
  samples: async (): Promise<readonly { id: string; name: string }[]> =>
    (await json<{ samples: readonly { id: string; name: string }[] }>('/api/samples')).samples,
  open: (id: string): Promise<Stored> => json<Stored>(at(id)),
  create: (body: object): Promise<{ id: string }> => json('/api/conversions', sent(body)),
  remove: (id: string): Promise<unknown> => json(at(id), { method: 'DELETE', headers: { 'content-type': 'application/json' }, body: '{}' }),
  undelete: (id: string): Promise<unknown> => json(`${at(id)}/undelete`, sent({})),
  file: async (id: string, name: string): Promise<Uint8Array> =>
    new Uint8Array(await (await answered(`${at(id)}/files/${encodeURIComponent(name)}`)).arrayBuffer()),
  /** Puts a file beside a conversion, or another in its place; null takes it away. */
  putFile: (id: string, name: string, bytes: Uint8Array | null): Promise<{ revision?: number }> =>
    json(`${at(id)}/files/${encodeURIComponent(name)}`, {
      method: bytes === null ? 'DELETE' : 'PUT',
      headers: { 'content-type': 'application/octet-stream', 'x-ampwright': '1' },
      ...(bytes === null ? {} : { body: bytes as BodyInit }),
    }),
  revisions: (id: string): Promise<{ revisions: readonly { revision: number; at: string; by?: string | null; what?: string | null }[] }> =>
    json(`${at(id)}/revisions`),
  revision: (id: string, n: number): Promise<{ revision: number; text: string }> => json(`${at(id)}/revisions/${n}`),
  restore: (id: string, revision: number): Promise<{ revision: number; text: string }> => json(`${at(id)}/restore`, sent({ revision })),
  undo: (id: string, revision: number): Promise<Kept> => kept(`${at(id)}/undo`, { revision }),
  edit: (id: string, edits: readonly object[], what?: string): Promise<Kept> =>
    kept(`${at(id)}/edits`, { edits, ...(what === undefined ? {} : { what }) }),
}

async function kept(path: string, body: object): Promise<Kept> {
  let r: Response
  try {
    r = await answered(path, sent(body))
  } catch {
    return { is: 'away' }
  }
  if (r.status === 409) return { is: 'clash', ...((await r.json()) as { revision: number; text: string; clashes: readonly Clash[] }) }
  if (r.status >= 502) return { is: 'away' }
  if (!r.ok) return { is: 'refused', says: await says(r) }
  return { is: 'kept', ...((await r.json()) as { revision: number; text: string }) }
}

/** Hears of every revision anybody makes, until it is let go. */
export function live(hear: (news: { id: string; revision: number }) => void, away: (gone: boolean) => void): () => void {
  const source = new EventSource('/api/live')
  source.addEventListener('message', e => hear(JSON.parse(e.data as string) as { id: string; revision: number }))
  source.addEventListener('open', () => away(false))
  source.addEventListener('error', () => away(true))
  return () => source.close()
}
