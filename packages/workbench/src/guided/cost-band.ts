import { type Assessment, cost, type Fact, isFigure, isGap, type Model } from '@ampwright/engine'

/** What the parts cost between the low and the high end of every price, and what has no price yet. */
export type CostBand = {
  readonly low: number
  readonly high: number
  readonly unit: '€'
  readonly priced: number
  /** Not in the sum: it only gets dearer. */
  readonly without: readonly string[]
  readonly budget?: number
}

/** Every price at its low end together, and at its high end; prices of parts made for this car are in no catalogue and are named. */
export function costBand(a: Assessment, m: Model, without: readonly string[]): CostBand {
  const rows = (a.tables.get('cost.list')?.rows ?? []).flatMap(({ cells: { price } }) =>
    price && typeof price === 'object' ? [price] : [],
  )
  const ends = rows.map(p => {
    const half = (isFigure(p) ? a.halves.get(p.id) : (p as Fact).half) ?? 0,
      value = p.value as number
    return { low: Math.max(0, value - half), high: value + half }
  })
  const open = a.gaps.filter(g => g.unlocks.includes(cost.asks)).map(g => g.label)
  return {
    low: ends.reduce((sum, e) => sum + e.low, 0),
    high: ends.reduce((sum, e) => sum + e.high, 0),
    unit: '€',
    priced: rows.length,
    without: [...new Set([...open, ...without])],
    ...(isGap(m.brief.budget) ? {} : { budget: m.brief.budget.value }),
  }
}
