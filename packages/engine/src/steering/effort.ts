import { formula } from '../working/formula.ts'
import { force, ratio, share } from './symbols.ts'

/** Pull at the rim now, by what was measured before and what load and tyres changed. */
export const effortAfter = formula(
  {
    id: 'steering-effort-after',
    label: 'Pull at the rim after the change',
    gives: force('F_2', 'pull at the rim now'),
    takes: { before: force('F_1', 'pull measured before'), change: ratio('q', 'effort now over effort before') },
    text: 'F_2 = F_1 · q',
    source: { work: 'definition', place: 'in proportion' },
    leavesOut: 'Other tyres, another geometry.',
    proof: { none: 'definition' },
  },
  ({ before, change }) => before * change,
)
/** Pull at the rim while rolling slowly, as a share of that at a standstill. */
export const rollingEffort = formula(
  {
    id: 'steering-effort-rolling',
    label: 'Pull at the rim, rolling',
    gives: force('F_r', 'pull at the rim at 10 km/h'),
    takes: { standing: force('F_s', 'pull at a standstill'), share: share('q_r', 'rolling over standing') },
    text: 'F_r = q_r · F_s',
    source: { work: 'practice', place: '25 to 40 % of the pull at a standstill' },
    leavesOut: 'The bend: measure with a spring balance.',
    proof: { none: 'in proportion' },
  },
  ({ standing, share }) => share * standing,
)
/** Moments of both wheels of an axle. */
export const bothWheels = formula(
  {
    id: 'both-wheels',
    label: 'Moment of both wheels',
    gives: { symbol: 'M_2', unit: 'N·m', label: 'both wheels', shows: 'torque' },
    takes: { one: { symbol: 'M', unit: 'N·m', label: 'one wheel', shows: 'torque' } },
    text: 'M_2 = 2 · M',
    source: { work: 'definition', place: 'sum' },
    proof: { none: 'definition' },
  },
  ({ one }) => 2 * one,
)
/** Load on one tyre of an axle. */
export const tyreLoadHalf = formula(
  {
    id: 'half-axle-load',
    label: 'Load on one tyre of the axle',
    gives: force('W', 'load on the tyre'),
    takes: {
      axle: { symbol: 'm_F', unit: 'kg', label: 'mass on the axle', shows: 'mass' },
      gravity: { symbol: 'g', unit: 'm/s²', label: 'free fall', shows: 'acceleration' },
    },
    text: 'W = max(0, m_F) · g / 2',
    source: { work: 'definition', place: 'half the load of the axle; an axle that would lift carries none' },
    proof: { none: 'definition' },
  },
  ({ axle, gravity }) => (Math.max(0, axle) * gravity) / 2,
)
