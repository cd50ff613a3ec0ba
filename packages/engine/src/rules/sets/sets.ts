import { au } from './au.ts'
import { be } from './be.ts'
import { ca } from './ca.ts'
import { caQc } from './ca-qc.ts'
import { ch } from './ch.ts'
import { de } from './de.ts'
import { es } from './es.ts'
import { fr } from './fr.ts'
import { gb } from './gb.ts'
import { ie } from './ie.ts'
import { india } from './in.ts'
import { it } from './it.ts'
import { jp } from './jp.ts'
import type { Harm, Key, Variant } from './keys.ts'
import { nl } from './nl.ts'
import { nz } from './nz.ts'
import { practice } from './practice.ts'
import type { Requirement, RuleSet, SetId } from './requirement.ts'
import { un } from './un.ts'
import { us } from './us.ts'
import { za } from './za.ts'

/** Every rule set the program holds. */
export const RULE_SETS: readonly RuleSet[] = [un, de, fr, be, it, es, nl, ch, gb, ie, au, nz, us, ca, caQc, jp, india, za, practice]

const byId = new Map<string, RuleSet>(RULE_SETS.map(set => [set.id, set]))

/** Rule set of a name that came from outside, `undefined` if there is none. */
export function ruleSet(id: string): RuleSet | undefined {
  return byId.get(id)
}

/** A row as it holds for a jurisdiction. */
export type Limit = {
  readonly requirement: Requirement
  /** Set the row stands in: the jurisdiction, its base, or `practice`. */
  readonly from: SetId
  /** Neither the set nor its base has the key; common practice stands in and is no law. */
  readonly fellBack: boolean
  /** Case in which alone the row holds, where a base counts only in that case. */
  readonly onlyWhen?: string
}

/** Look-up of one jurisdiction; `undefined` where not even common practice has the key. */
export type Limits = (key: Key, variant?: Variant) => Limit | undefined

/**
 * Look-up of the rows that hold in a jurisdiction.
 *
 * Order: the set, then its base, then `practice`, flagged as fallen back. Inside a set the variant goes before the general row; a
 * variant of a base never goes before the general row of the set itself, because a set names what it changes.
 * Throws on a set that does not exist: names from a file are to be checked with `ruleSet` first.
 */
export function limitsFor(setId: SetId): Limits {
  const before = lookUps.get(setId)
  if (before) return before
  const chain = baseChain(setId),
    met = new Map<string, Limit | undefined>()
  const limits: Limits = (key, variant) => {
    const name = `${key}@${variant ?? ''}`
    if (!met.has(name)) met.set(name, lookedUp(setId, chain, key, variant))
    return met.get(name)
  }
  lookUps.set(setId, limits)
  return limits
}
/** The sets are data and never change: each is looked up once. */
const lookUps = new Map<SetId, Limits>()

function lookedUp(setId: SetId, chain: ReturnType<typeof baseChain>, key: Key, variant: Variant | undefined): Limit | undefined {
  for (const { set, onlyWhen } of chain) {
    const requirement = rowOf(set, key, variant)
    if (requirement) {
      const fellBack = set.id === 'practice' && setId !== 'practice'
      return { requirement, from: set.id, fellBack, ...(onlyWhen === undefined ? {} : { onlyWhen }) }
    }
  }
  return undefined
}

function baseChain(setId: SetId): readonly { set: RuleSet; onlyWhen?: string | undefined }[] {
  const chain: { set: RuleSet; onlyWhen?: string | undefined }[] = []
  let onlyWhen: string | undefined
  let id: SetId | undefined = setId
  while (id !== undefined) {
    const set: RuleSet | undefined = byId.get(id)
    if (!set) throw new Error(`rule set ${id} does not exist; known are ${[...byId.keys()].join(', ')}`)
    if (chain.some(link => link.set === set)) throw new Error(`rule set ${id} is its own base`)
    chain.push({ set, onlyWhen })
    onlyWhen = set.baseOnly ?? onlyWhen
    id = set.base
  }
  if (setId !== 'practice') chain.push({ set: practice })
  return chain
}

function rowOf({ rows }: RuleSet, key: Key, variant: Variant | undefined): Requirement | undefined {
  const ofKey = rows.filter(row => row.key === key)
  return ofKey.find(row => row.variant === variant) ?? ofKey.find(row => row.variant === undefined)
}

/**
 * Whether a row may decide a rule of a given harm.
 *
 * `yes`: the outcome stands. `warning only`: a breach is shown as a warning with the mark of the row. `no`: the question stays open
 * until someone reads the text.
 * Quoted rows warn, whatever the harm. Rows from memory never decide what protects people (S3); elsewhere, being weaker than a
 * quotation, they warn. Official text, digest, the authority's own page and common practice decide; whether common practice stands in
 * for law is told apart by `fellBack`.
 */
export function decides({ read }: Pick<Requirement, 'read'>, harm: Harm): 'yes' | 'warning only' | 'no' {
  if (read === 'from memory') return harm === 'S3' ? 'no' : 'warning only'
  return read === 'Q' ? 'warning only' : 'yes'
}
