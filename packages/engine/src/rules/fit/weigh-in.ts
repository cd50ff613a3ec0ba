import type { OnScales } from '../../model/fit.ts'
import type { Source } from '../../sources.ts'
import { type Finished, finished } from '../../studies/fit/finished.ts'
import { isGaps } from '../../studies/study.ts'
import { type Fact, isGap, type Value } from '../../working/value.ts'
import { limitOf } from '../pack/answers.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

const WEIGH_IN: Source = {
  work: 'practice',
  place: 'weigh-in of the stripped and of the finished car: within 1 % of the mass and 2 % of each axle',
  mark: 'common practice',
}
const OF_THE_MASS = limitOf('weigh-in-mass', 'car off its ledger, mass', 0.01, '1', WEIGH_IN, 'share')
const OF_AN_AXLE = limitOf('weigh-in-axle', 'car off its ledger, each axle', 0.02, '1', WEIGH_IN, 'share')
/** So many are named: who has weighed these looks at the table. */
const NAMED = 4

export const weighsAsReckoned = rule({
  id: 'weighs-as-reckoned',
  title: 'The car weighs what was reckoned',
  stage: 'fit',
  harm: 'S2',
  hazards: [],
  source: WEIGH_IN,
  judgements: (m, ask) => {
    const { stripped, weighed } = m.fit,
      about = [...(stripped.given ? ['fit.stripped'] : []), ...(weighed.given ? ['fit.weighed'] : [])]
    if (about.length === 0) return doesNotApply('the car has not been on the scales yet, stripped or finished', ['fit.weighed'])
    const found = ask(finished)
    if (isGaps(found)) return [{ about, says: 'The scales cannot be held against the ledger yet.', missing: found }]
    return [...held(found, found.stripped, stripped, 'fit.stripped'), ...held(found, found.against, weighed, 'fit.weighed')]
  },
  spoil: { sample: 'wren', edits: [{ path: 'fit.weighed.rear', now: '430 kg' }], item: 'rear axle' },
})

/** What the scales say of the car, stripped or finished, against the ledger. */
function held({ unsure }: Finished, against: Finished['against'], { with: had }: OnScales, place: string): readonly Judgement[] {
  const about = [place]
  if (against === null) return []
  if (isGaps(against)) return [{ item: place, about, says: 'The scales cannot be held against the ledger yet.', missing: against }]
  const aboard = isGap(had) ? undefined : had,
    first = unsure.slice(0, NAMED)
  return against.map(
    ({ name, weighed: scales, expected, off }): Judgement => ({
      item: name,
      about,
      found: off,
      side: 'at most',
      limit: name.endsWith('whole car') ? OF_THE_MASS : OF_AN_AXLE,
      says: `On the scales${aboard ? ', with {aboard},' : ''} {scales}; by the ledger {expected}: {found} apart, {limit} is let stand.${first.length ? ' Not weighed so far, the widest first: {unsure}.' : ''}`,
      slots: { scales, expected, ...(aboard ? { aboard } : {}), ...(first.length ? { unsure: named(first) } : {}) },
      remedies: [
        { do: 'act', says: 'Weigh what nobody has weighed, look for what the list lacks, and say what was in the car on the scales.' },
      ],
    }),
  )
}

const FROM_SCALES: Source = {
  work: 'practice',
  place: 'once a car is finished its masses are those of the scales, no longer those of the list',
  mark: 'common practice',
}

export const reckonedFromScales = rule({
  id: 'reckoned-from-the-scales',
  title: 'A finished car that was weighed is reckoned from the scales',
  stage: 'fit',
  harm: 'S1',
  hazards: [],
  source: FROM_SCALES,
  judgements: (m, ask) => {
    const { weighed } = m.fit,
      about = ['fit.weighed']
    if (!weighed.given) return doesNotApply('the finished car has not been on the scales yet', about)
    const found = ask(finished),
      missing = isGaps(found) ? found : isGaps(found.against) ? found.against : undefined
    if (missing || isGaps(found) || found.against === null || isGaps(found.against))
      return [{ about, says: 'The scales cannot be held against the ledger yet.', missing: missing ?? { gaps: [] } }]
    const [whole, front, rear] = found.against.map(a => a.expected) as [Value, Value, Value],
      { reckonedFront, reckonedRear } = weighed,
      half = isGap(reckonedFront) !== isGap(reckonedRear)
    return [
      {
        about,
        rests: [whole, ...[reckonedFront, reckonedRear].flatMap(f => (isGap(f) ? [] : [f]))],
        holds: true,
        marginal: isGap(reckonedFront) || isGap(reckonedRear),
        says: half
          ? 'What the ledger said the day it was weighed is known of one axle only: masses and axle loads still rest on the list, by which the car weighs {whole}.'
          : isGap(reckonedFront)
            ? 'Masses and axle loads still rest on the list, by which the car weighs {whole}.'
            : 'Masses and axle loads rest on the scales and on what the list says has changed since; by the list alone it would weigh {whole}.',
        slots: { whole },
        remedies: [
          {
            do: 'set',
            says: 'Reckon from the scales: what the list says today is noted as that of the day it was weighed. Only while nothing has been put in, taken out or moved since.',
            sets: [
              { path: 'fit.weighed.reckoned-front', to: { value: front.value, kind: 'mass' } },
              { path: 'fit.weighed.reckoned-rear', to: { value: rear.value, kind: 'mass' } },
            ],
          },
        ],
      },
    ]
  },
  spoil: { sample: 'otter', edits: [{ path: 'fit.weighed.reckoned-rear', now: null }], turns: 'marginal' },
})

const named = (names: readonly string[]): Fact<string> => ({
  path: 'fit.weighed',
  label: 'not weighed so far',
  symbol: '',
  unit: '',
  value: names.join('; '),
})
