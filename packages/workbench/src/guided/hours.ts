/** Hours of one piece of the work, from the quickest to the slowest shop. */
export type HoursItem = { readonly what: string; readonly low: number; readonly high: number }
export type Hours = {
  readonly low: number
  readonly high: number
  readonly for: string
  readonly items: readonly HoursItem[]
  readonly mark: 'common practice'
}

/** First car of a model in a workshop (common practice). */
const SHOP: readonly HoursItem[] = [
  { what: 'survey', low: 8, high: 16 },
  { what: 'design', low: 60, high: 200 },
  { what: 'strip', low: 16, high: 30 },
  { what: 'adapter and mounts', low: 30, high: 80 },
  { what: 'battery boxes', low: 60, high: 150 },
  { what: 'battery assembly', low: 30, high: 60 },
  { what: 'looms', low: 60, high: 120 },
  { what: 'cooling', low: 15, high: 30 },
  { what: 'brakes, steering and heat', low: 20, high: 50 },
  { what: 'software and dash', low: 30, high: 120 },
  { what: 'commissioning', low: 30, high: 60 },
  { what: 'papers', low: 20, high: 60 },
]
/** One car, evenings and weekends (common practice); no split is known. */
const HOME = { low: 300, high: 1500 } as const

/**
 * Hours of the whole job. No figure is known that tells one way of the torque from another, nor a large pack from a small one: every concept of a car gets the
 * same band.
 */
export function hours(workshop: 'business' | 'owner' | undefined): Hours {
  if (workshop === 'owner') return { ...HOME, for: 'one car at home', items: [], mark: 'common practice' }
  const sum = (end: 'low' | 'high'): number => SHOP.reduce((all, item) => all + item[end], 0)
  return { low: sum('low'), high: sum('high'), for: 'the first car of a model in a workshop', items: SHOP, mark: 'common practice' }
}
