import type { Source } from '../../sources.ts'
import { type Passage, partsWithWay, SEAT, type WaysIn, waysIn } from '../../studies/fit/way-in.ts'
import { isGaps } from '../../studies/study.ts'
import { type AnyValue, isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { judgedPastScans } from './past-scans.ts'
import { FITTING, pathOf, placeOf, wordAt } from './shapes.ts'

const NO_WAY = (): readonly Judgement[] => doesNotApply('no part says which way it goes in', ['fit.bodies'])
const named = (label: string, value: string) => wordAt(pathOf(value), label, value)

export const canBeBroughtIn = rule({
  id: 'can-be-brought-in',
  title: 'Each part can be brought in the way it is meant to',
  stage: 'fit',
  harm: 'S1',
  hazards: [],
  source: FITTING,
  judgements: (m, ask) => {
    if (partsWithWay(m).length === 0) return NO_WAY()
    const found = ask(waysIn)
    if (isGaps(found)) return [{ about: ['fit.bodies'], says: 'Whether the parts can be brought in cannot be told yet.', missing: found }]
    const { passages, open } = found as WaysIn
    return [
      ...passages.flatMap((p): readonly Judgement[] => {
        const about = [`${pathOf(p.name)}.way-in`, ...placeOf(m, p.name)]
        return [passed(p, about), ...(p.circle ? [circled(p, about)] : [])]
      }),
      ...Object.entries(open).map(
        ([item, missing]): Judgement => ({
          item,
          about: [pathOf(item)],
          says: 'Whether it can be brought in cannot be told yet.',
          missing,
        }),
      ),
      ...judgedPastScans(m, ask),
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.bodies.booster.y', now: '-200 mm' }], item: 'motor' },
})

function passed({ name: item, way, beside }: Passage, about: readonly string[]): Judgement {
  if (!beside)
    return { item, about, holds: true, rests: [way as AnyValue], says: 'It comes {way}; nothing that stays stands there.', slots: { way } }
  return {
    item,
    about,
    found: beside.air,
    side: 'at least',
    limit: SEAT,
    says: 'Coming {way} it passes {what} with {found} of air; leave {limit} on each side for hands and straps.',
    slots: { way, what: named('what it passes', beside.what) },
    remedies: [{ do: 'act', says: 'Another way in, or take off first what is in the way, and say so in the order of work.' }],
  }
}
const circled = ({ name, way, before }: Passage, about: readonly string[]): Judgement => ({
  item: `${name}, order`,
  about,
  holds: false,
  rests: [way as AnyValue],
  says: 'It must go in before {others}, and these or what waits for them must go in before it: none can be the first.',
  slots: { others: named('what stands in its way', before.join(', ')) },
  remedies: [{ do: 'act', says: 'Let one of them come in another way, or bring them in as one.' }],
})

const BY_HAND: Source = { work: 'practice', place: 'masses lifted by hand: 25 kg for each person', mark: 'common practice' }
export const canBeLifted = rule({
  id: 'can-be-lifted',
  title: 'Whoever brings a part in can lift it',
  stage: 'fit',
  harm: 'S2',
  hazards: [],
  source: BY_HAND,
  caution: 'Nobody stands under a box that hangs. A box that slips crushes hands, and cells that were dropped may burn hours later.',
  judgements: (m, ask) => {
    if (partsWithWay(m).length === 0) return NO_WAY()
    const { people, hoist } = m.fit.lifting,
      about = ['fit.lifting']
    if (isGap(people) && isGap(hoist)) return [{ about, says: 'Who lifts the parts is not said yet.', missing: { gaps: [people, hoist] } }]
    const found = ask(waysIn)
    if (isGaps(found)) return [{ about: ['fit.bodies'], says: 'What has to be lifted cannot be told yet.', missing: found }]
    const { passages, byHand } = found as WaysIn
    return passages.map(({ name: item, mass }): Judgement => {
      const of = [...about, ...placeOf(m, item)]
      if (isGaps(mass)) return { item, about: of, says: 'What it weighs is not known yet.', missing: mass }
      const hands = byHand !== undefined && (isGap(hoist) || mass.value <= byHand.value)
      return {
        item,
        about: of,
        found: mass,
        side: 'at most',
        limit: hands ? byHand : isGap(hoist) ? { gaps: [hoist] } : hoist,
        says: hands
          ? 'It weighs {found}; these people lift {limit} together.'
          : 'It weighs {found}, too much for the hands there are; the hoist is rated for {limit}.',
        remedies: [
          {
            do: 'act',
            says: 'A hoist, a lift table under the car, or one person more; a battery box may go in empty and be filled in its place.',
          },
        ],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.lifting.hoist', now: '60 kg' }], item: 'front-box' },
})
