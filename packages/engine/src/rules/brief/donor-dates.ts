import { isGap } from '../../working/value.ts'
import { limitFact } from '../limits.ts'
import { type Judgement, type Remedy, rule } from '../rule.ts'
import type { CalendarDate, Comparison } from '../sets/feasibility.ts'
import * as gateB from '../sets/feasibility.ts'
import { bySet, silent, waiting, wordsOf } from './by-set.ts'

const SOURCE = { work: 'rule-set', place: 'age of the donor car' } as const
const OTHER: readonly Remedy[] = [{ do: 'act', says: 'Another donor car, or another route to approval.' }]

/** A date of the file, as exact as it was written. */
function calendarDate(text: string): CalendarDate {
  const [year = 0, month, day] = text.split('-').map(Number)
  return { year, ...(month === undefined ? {} : { month }), ...(day === undefined ? {} : { day }) }
}
const inside = ({ found, low = -Infinity, high = Infinity }: Comparison): boolean => low <= found && found <= high
const coarse = ({ marginalReason }: Comparison): Pick<Judgement, 'eased'> =>
  marginalReason ? { eased: 'the date is known too coarsely to tell' } : {}

export const donorAge = rule({
  id: 'donor-age',
  title: 'The donor car is old enough at conversion',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: SOURCE,
  judgements: bySet((limits, m) => {
    const about = ['brief.rules', 'donor.first-registered', 'brief.converted-on']
    if (!limits('donor.age.min')) return silent(about)
    const first = m.donor.firstRegistered,
      on = m.brief.convertedOn
    if (isGap(first)) return [waiting(about, first)]
    if (isGap(on)) return [waiting(about, on)]
    const c = gateB.donorAge(limits, { firstRegistered: calendarDate(first.value), conversion: calendarDate(on.value) })
    if (c?.low === undefined) return silent(about)
    const years = limitFact(c, c.low, { unit: '1' })
    return [
      {
        about,
        holds: inside(c),
        rests: [first, on, years],
        says: 'First registered on {first}, presented on {on}; the rule set asks for {years} full years between them.',
        slots: { first, on, years },
        requirement: c,
        remedies: OTHER,
        ...coarse(c),
      },
    ]
  }),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'fr' },
      { path: 'donor.first-registered', now: '2024-06-01' },
    ],
    turns: 'marginal',
  },
})

export const donorBuilt = rule({
  id: 'donor-built',
  title: 'The donor car was built when the rule set wants it',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: SOURCE,
  judgements: bySet((limits, m) => {
    const about = ['brief.rules', 'donor.built']
    if (!limits('donor.built.from') && !limits('donor.built.to')) return silent(about)
    const built = m.donor.built
    if (isGap(built)) return [waiting(about, built)]
    return gateB.donorBuilt(limits, calendarDate(built.value)).map(
      (c): Judgement => ({
        about,
        holds: inside(c),
        rests: [built, wordsOf(c)],
        says:
          c.low === undefined
            ? 'Built {built}; the rule set takes cars built before {words}.'
            : 'Built {built}; the rule set takes cars built on or after {words}.',
        slots: { built, words: wordsOf(c) },
        requirement: c,
        remedies: OTHER,
        ...coarse(c),
      }),
    )
  }),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'in' },
      { path: 'donor.built', now: '1989-05' },
    ],
  },
})
