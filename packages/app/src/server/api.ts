import type {
  ApiClash,
  ApiConversion,
  ApiConversionLine,
  ApiImported,
  ApiIssue,
  ApiJob,
  ApiMaking,
  ApiRevision,
  ApiRevisionLine,
  ApiSample,
  ApiSaved,
} from '@ampwright/server'
import type { Seen } from '@ampwright/workbench'

export type Clash = ApiClash
/** What the server answers to a batch of edits. */
export type Kept =
  | { readonly is: 'kept'; readonly revision: number; readonly text: string }
  | { readonly is: 'clash'; readonly revision: number; readonly text: string; readonly clashes: readonly Clash[] }
  | { readonly is: 'refused'; readonly says: string }
  | { readonly is: 'away' }

/** The server could not be reached. */
export class Away extends Error {}
export type Unread = ApiIssue
/** The server refused, and says why; of a text that cannot be read with every problem and its place, of a clash with both values. */
export class Refused extends Error {
  readonly issues: readonly Unread[]
  readonly clashes: readonly Clash[]
  constructor(says: string, issues: readonly Unread[] = [], clashes: readonly Clash[] = []) {
    super(says)
    this.issues = issues
    this.clashes = clashes
  }
}

const answered = async (path: string, init?: RequestInit): Promise<Response> => {
  try {
    return await fetch(path, init)
  } catch {
    throw new Away('The server does not answer.')
  }
}
const refusal = async (r: Response): Promise<Refused> => {
  const body = (await r.json().catch(() => undefined)) as
    | { message?: string; error?: string; issues?: readonly Unread[]; clashes?: readonly Clash[] }
    | undefined
  return new Refused(body?.message ?? body?.error ?? `the server answered ${r.status}`, body?.issues, body?.clashes)
}
export async function json<T>(path: string, init?: RequestInit): Promise<T> {
  const r = await answered(path, init)
  if (!r.ok) throw await refusal(r)
  return (await r.json()) as T
}
export const sent = (body: unknown, method = 'POST'): RequestInit => ({
  method,
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
})
const at = (id: string): string => `/api/conversions/${encodeURIComponent(id)}`

export const api = {
  list: (): Promise<readonly ApiConversionLine[]> => json('/api/conversions'),
  samples: (): Promise<readonly ApiSample[]> => json('/api/samples'),
  open: (id: string): Promise<ApiConversion> => json(at(id)),
  create: (making: ApiMaking): Promise<ApiSaved> => json('/api/conversions', sent(making)),
  remove: (id: string): Promise<ApiConversionLine> => json(at(id), { method: 'DELETE', headers: CHANGES }),
  undelete: (id: string): Promise<ApiConversionLine> => json(`${at(id)}/undelete`, sent({})),
  file: async (id: string, name: string): Promise<Uint8Array> =>
    new Uint8Array(await (await answered(`${at(id)}/files/${encodeURIComponent(name)}`)).arrayBuffer()),
  /** Puts a file beside a conversion, or another in its place; null takes it away. */
  putFile: (id: string, name: string, bytes: Uint8Array | null): Promise<ApiSaved> =>
    json(`${at(id)}/files/${encodeURIComponent(name)}`, {
      method: bytes === null ? 'DELETE' : 'PUT',
      headers: { ...CHANGES, 'content-type': 'application/octet-stream' },
      ...(bytes === null ? {} : { body: bytes as BodyInit }),
    }),
  revisions: (id: string): Promise<readonly ApiRevisionLine[]> => json(`${at(id)}/revisions`),
  revision: (id: string, n: number): Promise<ApiRevision> => json(`${at(id)}/revisions/${n}`),
  /** `named` is what it is called should it become a variant. */
  importText: (text: string, named: string): Promise<ApiImported> => json('/api/import', sent({ text, named })),
  importBundle: (bundle: Blob, named: string): Promise<ApiImported> =>
    json(`/api/import?named=${encodeURIComponent(named)}`, raw(bundle, 'application/zip')),
  /** Where a conversion is had as a text, as a bundle with its files, and everything as one file. */
  exported: (id: string): string => `${at(id)}/export`,
  bundle: (id: string): string => `${at(id)}/bundle`,
  /** Begins a backup or a look through everything; how it goes is told by `live`. */
  beginJob: (kind: 'backup' | 'check'): Promise<ApiJob> => json('/api/jobs', sent({ kind })),
  /** Begins to put a backup in the place of everything; answers once the file is taken in. */
  beginRestore: (backup: Blob): Promise<ApiJob> => json('/api/jobs/restore', raw(backup, 'application/vnd.sqlite3')),
  cancelJob: (id: string): Promise<ApiJob> => json(`/api/jobs/${id}`, { method: 'DELETE', headers: CHANGES }),
  /** Where the file a job made is fetched, once. */
  jobFile: (id: string): string => `/api/jobs/${id}/result`,
  restore: (id: string, revision: number): Promise<Kept> => kept(`${at(id)}/restore`, { revision }),
  undo: (id: string, revision: number): Promise<Kept> => kept(`${at(id)}/undo`, { revision }),
  edit: (id: string, edits: readonly Seen[], what?: string): Promise<Kept> =>
    kept(`${at(id)}/edits`, { edits, ...(what === undefined ? {} : { what: what.slice(0, 300) }) }),
}
/** Says that a request is meant: no form of another site can say it. */
const CHANGES = { 'x-ampwright': '1' }
const raw = (body: Blob, type: string): RequestInit => ({ method: 'POST', headers: { ...CHANGES, 'content-type': type }, body })

/** A small request goes on when its page is left; the browser takes 64 KiB of such at a time. */
const outliving = (init: RequestInit): RequestInit => ((init.body as string).length < 15_000 ? { ...init, keepalive: true } : init)

async function kept(path: string, body: object): Promise<Kept> {
  let r: Response
  try {
    r = await answered(path, outliving(sent(body)))
  } catch {
    return { is: 'away' }
  }
  if (r.status === 409) return { is: 'clash', ...((await r.json()) as { revision: number; text: string; clashes: readonly Clash[] }) }
  if (r.status >= 502) return { is: 'away' }
  if (!r.ok) return { is: 'refused', says: (await refusal(r)).message }
  return { is: 'kept', ...((await r.json()) as { revision: number; text: string }) }
}
