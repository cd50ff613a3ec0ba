import type { Outcome, RevisionLine, Saved, Store, Summary } from '@ampwright/store'
import type { FastifyReply } from 'fastify'
import type { ApiClashes, ApiConversion, ApiConversionLine, ApiIssue, ApiRevisionLine, ApiSaved, ApiUnreadable } from './api-types.ts'

/** What the store knows, in the shapes of the interface. */

const time = (ms: number): string => new Date(ms).toISOString()

export const line = (s: Summary): ApiConversionLine => ({
  id: s.id,
  name: s.name,
  variant: s.variant,
  revision: s.revision,
  made: time(s.made),
  at: time(s.at),
  deletedUntil: s.deletedUntil === null ? null : time(s.deletedUntil),
})

export function whole(store: Store, id: string): ApiConversion {
  const head = store.conversion(id)
  return { ...line(head), text: head.text, files: [...store.listed(head.files)] }
}

export const revisionLine = (r: RevisionLine): ApiRevisionLine => ({
  revision: r.revision,
  at: time(r.at),
  by: r.by,
  kind: r.kind,
  what: r.what,
  sha256: r.hash,
})

export const saved = ({ id, revision, text }: Saved): ApiSaved => ({ id, revision, text })

type Found = ApiIssue & { readonly file?: string; readonly harm?: string; readonly about?: string }
export const unreadable = (issues: readonly Found[]): ApiUnreadable => ({
  refused: 'unreadable',
  message: 'Nothing was changed: the conversion could not be read after it.',
  issues: issues.map(({ line, column, path, what, found, accepted, nearest }) => ({
    line,
    column,
    path,
    what,
    found,
    accepted,
    ...(nearest === undefined ? {} : { nearest }),
  })),
})

type Refusing = Extract<Outcome, { ok: false }>
const clashing = ({ clashes, revision, text }: Extract<Refusing, { why: 'clash' }>): ApiClashes => ({
  refused: 'clash',
  message: 'Somebody else changed the same meanwhile. Nothing was changed; both values are shown.',
  clashes: clashes.map(c => ({ path: c.path, yours: plain(c.yours), theirs: plainStanding(c.theirs), was: plain(c.was) })),
  revision,
  text,
})
type Clash = Extract<Refusing, { why: 'clash' }>['clashes'][number]
const plain = (now: Clash['yours']): ApiClashes['clashes'][number]['yours'] => (Array.isArray(now) ? [...now] : (now as string))
const plainStanding = (now: Clash['theirs']): ApiClashes['clashes'][number]['theirs'] => (Array.isArray(now) ? [...now] : (now as string))
export const clashesOf = (clashes: readonly Clash[]): ApiClashes['clashes'] =>
  clashing({ ok: false, why: 'clash', clashes, revision: 1, text: '' }).clashes

/** Answers what became of a change: 200 or `made`, 409 with both values, 422 with what cannot be read. */
export function answered(reply: FastifyReply, outcome: Outcome, made = 200): ApiSaved | ApiClashes | ApiUnreadable {
  if (outcome.ok) {
    void reply.code(made)
    return saved(outcome)
  }
  void reply.code(outcome.why === 'clash' ? 409 : 422)
  return outcome.why === 'clash' ? clashing(outcome) : unreadable(outcome.issues)
}
