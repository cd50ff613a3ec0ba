import { type NotCompared, type Statement, stated } from './comparison.ts'
import type { Key } from './keys.ts'
import type { SetId } from './requirement.ts'
import { type Limit, type Limits, limitsFor } from './sets.ts'

/**
 * Whether one car alone can be approved. `kit only`: systems and types are approved, single cars are not. `divisions decide`: regions,
 * states or provinces, each in its own way. `not stated`: nothing read answers it.
 */
export type SingleCar = 'yes' | 'kit only' | 'divisions decide' | 'not stated'

const SINGLE_CAR: Readonly<Record<SetId, SingleCar>> = {
  un: 'not stated',
  de: 'yes',
  fr: 'kit only',
  be: 'divisions decide',
  it: 'kit only',
  es: 'yes',
  nl: 'yes',
  ch: 'yes',
  gb: 'yes',
  ie: 'not stated',
  au: 'yes',
  nz: 'yes',
  us: 'divisions decide',
  ca: 'divisions decide',
  'ca-qc': 'yes',
  jp: 'yes',
  in: 'kit only',
  za: 'not stated',
  practice: 'not stated',
}

/**
 * Whether a plan for one car can reach approval. Where kits and types are approved it stops here, unless an approved kit for the model
 * exists. `open` is left out where nobody can say from the set. `row` is the row to show, if the set has one.
 */
export function singleCar(
  setId: SetId,
  { approvedKit }: { readonly approvedKit: boolean },
): { readonly key: 'route.single-car'; readonly answer: SingleCar; readonly open?: boolean; readonly row?: Limit } {
  const limits = limitsFor(setId)
  const answer = SINGLE_CAR[setId]
  const kit = limits('route.kit')
  const row = limits('route.single-car') ?? (kit?.requirement.test === 'must' ? kit : undefined) ?? limits('route.allowed')
  const open = answer === 'yes' ? true : answer === 'kit only' ? approvedKit : undefined
  return { key: 'route.single-car', answer, ...(open === undefined ? {} : { open }), ...(row ? { row } : {}) }
}

const SIGNATURES = [
  'ask.before',
  'sign.install',
  'sign.install.condition',
  'sign.install.check',
  'sign.technical',
  'sign.approval',
] as const satisfies readonly Key[]

/** Who is asked, works, examines and approves, in that order. Keys without a row are left out. */
export function signatures(limits: Limits): readonly Statement[] {
  return SIGNATURES.flatMap(key => limits(key) ?? []).map(stated)
}

/** The law of which day holds for the electric part and for the rest of the car: two dates to keep. */
export function lawInTime(limits: Limits): { readonly electric?: Limit; readonly rest?: Limit } {
  const electric = limits('law.as-of', 'electric')
  const rest = limits('law.as-of')
  return { ...(electric ? { electric } : {}), ...(rest ? { rest } : {}) }
}

/** Rule against disabling safety equipment: it binds a business, not an owner on the own car. */
export function makeInoperative(limits: Limits, by: 'business' | 'owner'): Statement | NotCompared | undefined {
  const limit = limits('route.make-inoperative')
  if (!limit) return undefined
  return by === 'business' ? stated(limit) : { kind: 'not compared', key: 'route.make-inoperative', ...limit, because: 'owner-on-own-car' }
}

/** Entries of the register each of which starts an approval: where there are such, no percentage makes an approval needless. */
export function registerTriggers(limits: Limits): Statement | undefined {
  const limit = limits('register.fields')
  return limit?.requirement.eachTriggers ? stated(limit) : undefined
}
