import type { Key } from './keys.ts'
import type { Requirement } from './requirement.ts'
import type { Limit } from './sets.ts'

/**
 * What a row does to a plan. `limit`: it has to hold. `trigger`: beyond it a further approval starts. `equivalence`: beyond it a proof of
 * the donor no longer counts and has to be given anew.
 */
export type Role = 'limit' | 'trigger' | 'equivalence'

/** Why a figure outside its band is not plainly out: a wider reading of the text, or a date too coarse to tell. */
export type MarginalReason = 'within-wider-reading' | 'date-too-coarse'

/** What has to be said beside a comparison, whatever it gives. */
export type Caveat =
  /** Power or torque counts by a fixed and sealed limit; the signing body has to agree that it does. */
  | 'limited-figure'
  /** A gearbox held in one gear may be taken for a changed driveline. */
  | 'locked-gear-may-count-as-change'
  /** Masses are as weighed, not on the basis the law means. */
  | 'mass-as-weighed'
  /** The band on axle masses may mean the share instead. */
  | 'axle-band-may-mean-share'
  /** Share may be read as a ratio or as points. */
  | 'share-has-two-readings'

/** Part of the car a comparison is about, where there are several. */
export type Item = 'front axle' | 'rear axle' | 'total'

/** Ends are included; a missing end is open. */
export type Band = { readonly low?: number; readonly high?: number }

/** A figure of the plan beside the band of a row. It holds no verdict: one judge decides outcomes. */
export type Comparison = Limit &
  Band & {
    readonly kind: 'compared'
    readonly key: Key
    readonly item?: Item
    readonly role: Role
    readonly found: number
    /** Unit of `found`, `low` and `high`. */
    readonly unit: string
    /** The same in the quantity itself (W, N·m, kg), from which a remedy can be read. */
    readonly quantity?: Band & { readonly found: number; readonly unit: string }
    /** Band of the milder reading, where the text has two. */
    readonly wider?: Band
    readonly marginalReason?: MarginalReason
    readonly caveats: readonly Caveat[]
  }

/** A row in words, to be shown and answered by a person. */
export type Statement = Limit & { readonly kind: 'stated'; readonly key: Key }

/** A row that does not apply to this plan, and the comparison that would hold under a disputed reading. */
export type NotCompared = Limit & {
  readonly kind: 'not compared'
  readonly key: Key
  readonly because: 'driveline-kept' | 'owner-on-own-car'
  readonly otherReading?: Comparison
}

export type Answer = Comparison | Statement | NotCompared

/** A row as it stands. */
export const stated = (limit: Limit): Statement => ({ kind: 'stated', key: limit.requirement.key, ...limit })

type Shape = Omit<Comparison, 'kind' | 'key' | keyof Limit | 'caveats'> & { readonly caveats?: readonly Caveat[] }

/** A figure beside the band of a row. */
export function compared(limit: Limit, shape: Shape): Comparison {
  return { kind: 'compared', key: limit.requirement.key, ...limit, caveats: [], ...shape }
}

/** Band of a row that gives figures, `undefined` where it speaks in words. */
export function bandOf({ test, value }: Requirement): Band | undefined {
  if (typeof value === 'number') return test === 'min' ? { low: value } : { high: value }
  const [low, high] = Array.isArray(value) ? (value as readonly unknown[]) : []
  return typeof low === 'number' && typeof high === 'number' ? { low, high } : undefined
}

/** Both ends of a band multiplied; an open end stays open. */
export function scaled({ low, high }: Band, factor: number): Band {
  return { ...(low === undefined ? {} : { low: low * factor }), ...(high === undefined ? {} : { high: high * factor }) }
}

/** Whether a figure lies in a band, ends included. */
export const lies = (found: number, { low = -Infinity, high = Infinity }: Band): boolean => found >= low && found <= high

/** Stops on a figure that cannot be divided by or compared. */
export function demandPositive(figures: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(figures))
    if (!(value > 0 && value < Infinity)) throw new RangeError(`${name} must be a positive number, got ${value}`)
}

/** A ratio to the donor beside a row that bounds it, with the same band in the quantity itself; words stay words. */
export function ratioToDonor(
  limit: Limit,
  {
    found,
    donor,
    unit,
    role = 'limit',
    caveats = [],
  }: { found: number; donor: number; unit: string; role?: Role; caveats?: readonly Caveat[] },
): Comparison | Statement {
  const band = bandOf(limit.requirement)
  if (!band) return stated(limit)
  return compared(limit, {
    role,
    found: found / donor,
    ...band,
    unit: '1',
    quantity: { found, ...scaled(band, donor), unit },
    caveats,
  })
}

/** A change against the donor in per cent beside a row that bounds it both ways. */
export function changeFromDonor(
  limit: Limit,
  {
    found,
    donor,
    unit,
    role = 'trigger',
    caveats = [],
  }: { found: number; donor: number; unit: string; role?: Role; caveats?: readonly Caveat[] },
): Comparison | Statement {
  const { value } = limit.requirement
  if (typeof value !== 'number') return stated(limit)
  return compared(limit, {
    role,
    found: (100 * (found - donor)) / donor,
    low: -value,
    high: value,
    unit: '%',
    quantity: { found, low: donor * (1 - value / 100), high: donor * (1 + value / 100), unit },
    caveats,
  })
}
