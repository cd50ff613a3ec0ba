import { type Comparison, compared, demandPositive, type Item, type Role, type Statement, stated } from './comparison.ts'
import { NAMED } from './requirement.ts'
import type { Limit, Limits } from './sets.ts'

/** Permitted masses of a car [kg]. */
export type Ratings = { readonly gross: number; readonly front: number; readonly rear: number }

/** Masses of a loaded car [kg]. */
export type LadenMasses = { readonly total: number; readonly front: number; readonly rear: number }

type Part = readonly [Item, keyof Ratings]
const WHOLE: readonly Part[] = [['total', 'gross']]
const AXLES: readonly Part[] = [
  ['front axle', 'front'],
  ['rear axle', 'rear'],
]
const PARTS = [...WHOLE, ...AXLES]

/**
 * Permitted masses planned for the finished car against those of the donor.
 *
 * A set that speaks of lowering, raising or guaranteeing masses has said what it has to say on change: common practice does not stand in
 * for it then. A ban on change covers the axles too where the set has no row of their own, which is how each of its texts reads.
 */
export function permittedMasses(
  limits: Limits,
  { donor, planned }: { readonly donor: Ratings; readonly planned: Ratings },
): readonly (Comparison | Statement)[] {
  demandRatings('donor', donor)
  demandRatings('planned', planned)
  const beside = (limit: Limit, role: Role, ends: readonly ('low' | 'high')[], parts: readonly Part[] = PARTS) =>
    parts.map(([item, part]) => {
      const band = Object.fromEntries(ends.map(end => [end, donor[part]]))
      return compared(limit, { item, role, found: planned[part], ...band, unit: 'kg' })
    })
  const lower = limits('mass.gross.lower')
  const raise = limits('mass.gross.raise.trigger')
  const guarantee = limits('mass.gross.guarantee')
  const own = [
    ...(lower?.requirement.test === 'must-not' ? beside(lower, 'limit', ['low'], WHOLE) : []),
    ...(raise ? beside(raise, 'trigger', ['high']) : []),
    ...(guarantee ? (guarantee.requirement.test === 'must' ? beside(guarantee, 'trigger', ['low', 'high']) : [stated(guarantee)]) : []),
  ]
  const change = limits('mass.gross.change')
  if (!change || (change.fellBack && own.length)) return own
  const axles = limits('mass.axle-limit.change') ?? change
  return [...own, ...beside(change, 'limit', ['low', 'high'], WHOLE), ...beside(axles, 'limit', ['low', 'high'], AXLES)]
}

/** Masses of the loaded car against the ratings of its maker, in the sets that name them; other wording is stated as it stands. */
export function ladenMasses(
  limits: Limits,
  { laden, ratings }: { readonly laden: LadenMasses; readonly ratings: Ratings },
): readonly (Comparison | Statement)[] {
  demandRatings('ratings', ratings)
  demandPositive({ ladenTotal: laden.total, ladenFront: laden.front, ladenRear: laden.rear })
  const total = (limit: Limit | undefined, role: Role) =>
    limit ? [named(limit, NAMED.makerGross, { item: 'total', role, found: laden.total, high: ratings.gross })] : []
  const axles = limits('mass.axle.max')
  return [
    ...total(limits('mass.gross.max'), 'limit'),
    ...total(limits('mass.gross.exceed.trigger'), 'trigger'),
    ...(axles ? axleAnswers(axles, laden, ratings) : []),
  ]
}

function axleAnswers(limit: Limit, laden: LadenMasses, ratings: Ratings): readonly (Comparison | Statement)[] {
  if (limit.requirement.value !== NAMED.makerAxles) return [stated(limit)]
  return (['front', 'rear'] as const).map(axle =>
    compared(limit, { item: `${axle} axle`, role: 'limit', found: laden[axle], high: ratings[axle], unit: 'kg' }),
  )
}

function named(limit: Limit, name: string, shape: { item: Item; role: Role; found: number; high: number }): Comparison | Statement {
  return limit.requirement.value === name ? compared(limit, { ...shape, unit: 'kg' }) : stated(limit)
}

function demandRatings(name: string, { gross, front, rear }: Ratings): void {
  demandPositive({ [`${name} gross`]: gross, [`${name} front`]: front, [`${name} rear`]: rear })
}
