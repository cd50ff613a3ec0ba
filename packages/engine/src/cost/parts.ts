import { formula } from '../working/formula.ts'

const SUM = { work: 'definition', place: 'sum' } as const
const money = (symbol: string, label: string) => ({ symbol, unit: '€', label }) as const

/** Several parts of one price. */
export const severalPriced = formula(
  {
    id: 'several-priced',
    label: 'Price of several alike',
    gives: money('K', 'together'),
    takes: { count: { symbol: 'n', unit: '1', label: 'how many', many: true, shows: 'count' }, each: money('k', 'price of one') },
    text: 'K = k · (Σ n)',
    source: SUM,
    proof: { none: 'definition' },
  },
  ({ count, each }) => each * count.reduce((a, b) => a + b, 0),
)
/** What all parts cost together. */
export const partsCost = formula(
  {
    id: 'parts-cost',
    label: 'Parts cost',
    gives: money('K', 'parts cost'),
    takes: { prices: { ...money('k_i', 'each part'), many: true } },
    text: 'K = Σ k_i',
    source: SUM,
    leavesOut: 'Hours, tools, and what the old engine sells for.',
    proof: { none: 'definition' },
  },
  ({ prices }) => prices.reduce((a, b) => a + b, 0),
)
/** What is left of the budget. */
export const budgetLeft = formula(
  {
    id: 'budget-left',
    label: 'Left of the budget',
    gives: money('ΔK', 'left'),
    takes: { budget: money('K_max', 'budget'), cost: money('K', 'parts cost') },
    text: 'ΔK = K_max − K',
    source: { work: 'definition', place: 'difference' },
    proof: { none: 'definition' },
  },
  ({ budget, cost }) => budget - cost,
)
