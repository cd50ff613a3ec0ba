import type { Clash, Outcome, RevisionLine, Saved, Store, Summary } from '@ampwright/store'
import type { FastifyReply } from 'fastify'
import type {
  ApiClash,
  ApiClashes,
  ApiConversion,
  ApiConversionLine,
  ApiIssue,
  ApiRevisionLine,
  ApiSaved,
  ApiUnreadable,
} from './api-types.ts'

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
export const unreadable = (issues: readonly Found[], what = 'the conversion'): ApiUnreadable => ({
  refused: 'unreadable',
  message: `Nothing was changed: ${what} could not be read after it.`,
  issues: issues.map(issueLine),
})
export const issueLine = ({ line, column, path, what, found, accepted, nearest }: Found): ApiIssue => ({
  line,
  column,
  path,
  what,
  found,
  accepted,
  ...(nearest === undefined ? {} : { nearest }),
})

/** Clashes as they are answered: each with both values and what was seen. */
export const clashesOf = (clashes: readonly Clash[]): ApiClash[] =>
  clashes.map(({ path, yours, theirs, was }) => ({
    path,
    yours: mutable(yours),
    theirs: mutable(theirs) as ApiClash['theirs'],
    was: mutable(was),
  }))
const mutable = (now: Clash['yours']): ApiClash['yours'] =>
  now === null || typeof now === 'string' ? now : structuredClone(now as ApiClash['yours'])

const CLASH = 'Somebody else changed the same meanwhile. Nothing was changed; both values are shown.'

/** Answers what became of a change: 200 or `made`, 409 with both values, 422 with what cannot be read. */
export function answered(reply: FastifyReply, outcome: Outcome, made = 200): ApiSaved | ApiClashes | ApiUnreadable {
  if (outcome.ok) {
    void reply.code(made)
    return saved(outcome)
  }
  if (outcome.why === 'kept out') {
    void reply.code(422)
    return unreadable(outcome.issues)
  }
  void reply.code(409)
  return clashed(outcome)
}
export const clashed = ({ clashes, revision, text }: Extract<Outcome, { why: 'clash' }>): ApiClashes => ({
  refused: 'clash',
  message: CLASH,
  clashes: clashesOf(clashes),
  revision,
  text,
})
