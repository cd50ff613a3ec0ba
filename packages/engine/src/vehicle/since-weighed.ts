import { formula } from '../working/formula.ts'

const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const

/** An axle of a car that was weighed when it was finished, and nothing has changed since. */
export const asWeighed = formula(
  {
    id: 'as-weighed',
    label: 'Axle as weighed',
    gives: mass('m', 'axle now'),
    takes: { weighed: mass('m_w', 'axle on the scales') },
    text: 'm = m_w',
    source: { work: 'definition', place: 'nothing has changed since' },
    proof: { none: 'definition' },
  },
  ({ weighed }) => weighed,
)

/** An axle of a car that was weighed when it was finished, and whose list of parts has changed since. */
export const sinceWeighed = formula(
  {
    id: 'since-weighed',
    label: 'Axle as weighed, with what has changed since',
    gives: mass('m', 'axle now'),
    takes: {
      weighed: mass('m_w', 'axle on the scales'),
      now: mass('m_1', 'axle by the ledger now'),
      before: mass('m_0', 'axle by the ledger the day it was weighed'),
    },
    text: 'm = m_w + m_1 − m_0',
    source: { work: 'statics', place: 'what the list missed stays where it was' },
    leavesOut: 'That the scales have made some of the list surer: the change since carries the ± of the whole list.',
    proof: {
      examples: [
        {
          takes: { weighed: 612, now: 623.5, before: 601 },
          gives: 634.5,
          within: 1e-9,
          source: hand('11 kg more on the scales than by the list, then 22.5 kg put in'),
        },
      ],
    },
  },
  ({ weighed, now, before }) => weighed + now - before,
)

/** A wheel of an axle that has become heavier or lighter since its wheels were weighed, both by the same share. */
export const wheelAsWeighed = formula(
  {
    id: 'wheel-as-weighed',
    label: 'Wheel by its share on the scales',
    gives: mass('m_w', 'wheel'),
    takes: {
      axle: mass('m_ax', 'its axle'),
      one: mass('m_1', 'this wheel on the scales'),
      other: mass('m_2', 'the other wheel on the scales'),
    },
    text: 'm_w = m_ax · m_1 / (m_1 + m_2)',
    source: { work: 'statics', place: 'shares of an axle' },
    leavesOut: 'On which side it was that something has changed since.',
    proof: {
      examples: [
        { takes: { axle: 420, one: 210, other: 190 }, gives: 220.5, within: 1e-9, source: hand('52.5 % of the axle was on this wheel') },
      ],
    },
  },
  ({ axle, one, other }) => (axle * one) / (one + other),
)
