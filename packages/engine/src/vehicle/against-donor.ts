import { formula, type One } from '../working/formula.ts'

const RATIO = { work: 'definition', place: 'ratio' } as const
const SUM = { work: 'definition', place: 'sum' } as const
const power = (symbol: string, label: string) => ({ symbol, unit: 'W', label }) as const
const torque = (symbol: string, label: string) => ({ symbol, unit: 'N·m', label }) as const
const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const ratio = { symbol: 'r', unit: '1', label: 'new over old', shows: 'ratio' } as const satisfies One

/** Peak power that counts where a limit is set in software and sealed: never more than the motor can give. */
export const limitedPower = formula(
  {
    id: 'limited-power',
    label: 'Peak power with a sealed limit',
    gives: power('P', 'peak power'),
    takes: { peak: power('P_max', 'peak power of the motor'), limit: power('P_lim', 'limit set in software') },
    text: 'P = min(P_max, P_lim)',
    source: { work: 'practice', place: 'a fixed and sealed limit counts in place of the peak' },
    leavesOut: 'Whether the signing body agrees that a sealed limit counts.',
    proof: { none: 'definition' },
  },
  ({ peak, limit }) => Math.min(peak, limit),
)
/** Peak torque that counts where a limit is set in software and sealed. */
export const limitedTorque = formula(
  {
    id: 'limited-torque',
    label: 'Peak torque with a sealed limit',
    gives: torque('M', 'peak torque'),
    takes: { peak: torque('M_max', 'peak torque of the motor'), limit: torque('M_lim', 'limit set in software') },
    text: 'M = min(M_max, M_lim)',
    source: { work: 'practice', place: 'a fixed and sealed limit counts in place of the peak' },
    leavesOut: 'Whether the signing body agrees that a sealed limit counts.',
    proof: { none: 'definition' },
  },
  ({ peak, limit }) => Math.min(peak, limit),
)
/** Power of all motors that can act at the same time. */
export const powerTogether = formula(
  {
    id: 'power-together',
    label: 'Power of all motors',
    gives: power('P', 'power'),
    takes: { each: { ...power('P_i', 'each motor'), many: true } },
    text: 'P = Σ P_i',
    source: SUM,
    proof: { none: 'definition' },
  },
  ({ each }) => each.reduce((a, b) => a + b, 0),
)
/** Torque at the shafts of all motors that can act at the same time, whatever the ratio behind them. */
export const torqueTogether = formula(
  {
    id: 'torque-together',
    label: 'Shaft torque of all motors',
    gives: torque('M', 'torque'),
    takes: { each: { ...torque('M_i', 'each motor'), many: true } },
    text: 'M = Σ M_i',
    source: SUM,
    proof: { none: 'definition' },
  },
  ({ each }) => each.reduce((a, b) => a + b, 0),
)
export const powerRatio = formula(
  {
    id: 'power-ratio',
    label: 'Power, new over old',
    gives: ratio,
    takes: { now: power('P', 'new power'), before: power('P_0', 'power of the old engine') },
    text: 'r = P / P_0',
    source: RATIO,
    proof: { none: 'definition' },
  },
  ({ now, before }) => now / before,
)
export const torqueRatio = formula(
  {
    id: 'torque-ratio',
    label: 'Torque, new over old',
    gives: ratio,
    takes: { now: torque('M', 'new torque'), before: torque('M_0', 'torque of the old engine') },
    text: 'r = M / M_0',
    source: RATIO,
    proof: { none: 'definition' },
  },
  ({ now, before }) => now / before,
)
export const massRatio = formula(
  {
    id: 'mass-ratio',
    label: 'Mass, new over old',
    gives: ratio,
    takes: { now: mass('m', 'new mass'), before: mass('m_0', 'mass before') },
    text: 'r = m / m_0',
    source: RATIO,
    proof: { none: 'definition' },
  },
  ({ now, before }) => now / before,
)
/** Power to weight of the finished car over that of the donor car. */
export const powerToWeightRatio = formula(
  {
    id: 'power-to-weight-ratio',
    label: 'Power to weight, new over old',
    gives: ratio,
    takes: {
      power: power('P', 'new power'),
      mass: mass('m', 'new mass'),
      powerBefore: power('P_0', 'power of the old engine'),
      massBefore: mass('m_0', 'mass before'),
    },
    text: 'r = P / m / (P_0 / m_0)',
    source: RATIO,
    proof: { none: 'definition' },
  },
  ({ power, mass, powerBefore, massBefore }) => power / mass / (powerBefore / massBefore),
)
/** Change against what was, as a share of it. */
export const changeOfRatio = formula(
  {
    id: 'change-of-ratio',
    label: 'Change',
    gives: { symbol: 'c', unit: '1', label: 'change', shows: 'share' },
    takes: { ratio: { ...ratio, symbol: 'r' } },
    text: 'c = r − 1',
    source: { work: 'definition', place: 'relative change' },
    proof: { none: 'definition' },
  },
  ({ ratio }) => ratio - 1,
)
/** Places of all seat rows. */
export const placesTogether = formula(
  {
    id: 'places-together',
    label: 'Seats',
    gives: { symbol: 'n', unit: '1', label: 'seats', shows: 'count' },
    takes: { rows: { symbol: 'p', unit: '1', label: 'places in each row', many: true, shows: 'count' } },
    text: 'n = Σ p',
    source: SUM,
    proof: { none: 'definition' },
  },
  ({ rows }) => rows.reduce((a, b) => a + b, 0),
)
/** Share of a car's mass that stands on one of its two axles. */
export const axleShare = formula(
  {
    id: 'axle-share',
    label: 'Share of the mass on an axle',
    gives: { symbol: 's', unit: '1', label: 'share', shows: 'share' },
    takes: { axle: mass('m_a', 'axle'), other: mass('m_b', 'other axle') },
    text: 's = m_a / (m_a + m_b)',
    source: { work: 'definition', place: 'share' },
    proof: { none: 'definition' },
  },
  ({ axle, other }) => axle / (axle + other),
)
