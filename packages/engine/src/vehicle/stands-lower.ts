import { formula } from '../working/formula.ts'
import { GRAVITY } from './gravity.ts'

const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const stiffness = (symbol: string, label: string) => ({ symbol, unit: 'N/m', label, shows: 'stiffness' }) as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const

/** How much lower an axle stands with other springs under another mass. */
export const standsLower = formula(
  {
    id: 'stands-lower',
    label: 'An axle stands lower on other springs',
    gives: length('Δz', 'stands lower by'),
    takes: {
      before: mass('m_1', 'sprung mass on a wheel before'),
      now: mass('m_2', 'sprung mass on a wheel now'),
      more: mass('Δm', 'more on the axle'),
      springBefore: stiffness('k_1', 'rate at the wheel before'),
      spring: stiffness('k_2', 'rate at the wheel of the new spring'),
      tyre: stiffness('k_t', 'rate of a tyre'),
      raised: length('Δh', 'new spring raised, at the wheel'),
    },
    uses: [GRAVITY],
    text: 'Δz = g · (m_2 / k_2 − m_1 / k_1) + g · Δm / (2 · k_t) − Δh',
    source: { work: 'statics', place: 'springs of one free length under load, tyre in series' },
    leavesOut: 'New springs of another free length: say by how much they raise the car at the wheel. Springs that stiffen as they go.',
    proof: {
      examples: [
        {
          takes: { before: 280, now: 330, more: 100, springBefore: 22e3, spring: 22e3, tyre: 180e3, raised: 0 },
          gives: 0.0223 + 0.00272,
          within: 0.0001,
          source: hand('50 kg more on 22 N/mm: 22.3 mm, and 2.7 mm of tyre'),
        },
        {
          takes: { before: 280, now: 330, more: 100, springBefore: 22e3, spring: 22e3 * (330 / 280), tyre: 180e3, raised: 0 },
          gives: 0.00272,
          within: 0.00001,
          source: hand('a spring stiffer as the mass is larger: the tyre alone gives'),
        },
      ],
    },
  },
  ({ before, now, more, springBefore, spring, tyre, raised }) =>
    GRAVITY.value * (now / spring - before / springBefore) + (GRAVITY.value * more) / (2 * tyre) - raised,
)
