import { leastService, type Printed, prints } from '../../studies/brakes/prints.ts'
import { type Gaps, isGaps } from '../../studies/study.ts'
import { isGap, standard } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

const UNEVEN = {
  ...standard('brake-unevenness', 'greatest unevenness of an axle', 'u', 0.3, '1', {
    work: 'uk-mot',
    place: '1.2.1, weaker wheel at least 70 % of the stronger',
  }),
  shows: 'share',
} as const
const PULLS = 'Brakes that pull to one side steer the car. Have both wheels of the axle overhauled together.'
const withoutPrint = () => doesNotApply('no print of a roller tester is in the file', ['brakes.prints'])

export const brakeEfficiency = rule({
  id: 'brake-efficiency',
  title: 'The brakes reach the efficiency of the yearly test under the new mass',
  stage: 'brakes & steering',
  harm: 'S3',
  hazards: [],
  source: { work: 'uk-mot', place: '1.2.2, service brake: 50 % of the weight, 58 % for cars first used from September 2010' },
  caution: 'A heavier car with the same brakes stops later. Wheels that locked on the rollers prove their grip, not the brakes.',
  judgements: (m, ask) => {
    const names = Object.keys(m.brakes.prints)
    if (names.length === 0) return withoutPrint()
    const answer = ask(prints),
      used = m.donor.firstRegistered
    if (isGaps(answer)) return [{ about: ['brakes.prints'], says: 'The prints cannot be read yet.', missing: answer }]
    if (isGap(used))
      return [{ about: ['donor.first-registered'], says: 'Which limit holds depends on when the car was first used.', missing: used }]
    const all = answer.prints as Readonly<Record<string, Printed | Gaps>>,
      finished = Object.values(all).some(p => !isGaps(p) && p.when === 'after')
    return names.flatMap((item): readonly Judgement[] => {
      const p = all[item] as Printed | Gaps,
        about = [`brakes.prints.${item}`]
      if (isGaps(p)) return [{ item, about, says: 'This print is not complete.', missing: p }]
      // Once the finished car was on the rollers, what was foretold from the donor says nothing more.
      if (p.when === 'before' && finished) return []
      const before = p.when === 'before'
      return [
        {
          item,
          about,
          found: before ? p.now : p.efficiency,
          side: 'at least',
          limit: leastService(used.value),
          says: before
            ? 'At the same pedal force the finished car brakes with {found} of its weight; the yearly test asks for {limit}.'
            : 'On the rollers the finished car brakes with {found} of its weight; the yearly test asks for {limit}.',
          remedies: [
            { do: 'act', says: 'Overhaul, other pads, or larger brakes; print again at a firmer pedal where the wheels did not lock.' },
          ],
        },
      ]
    })
  },
  spoil: {
    sample: 'wren',
    edits: [
      { path: 'brakes.prints.donor.front-left', now: '1.4 kN' },
      { path: 'brakes.prints.donor.front-right', now: '1.4 kN' },
    ],
    item: 'donor',
  },
})

export const brakesEven = rule({
  id: 'brakes-even',
  title: 'Both brakes of an axle pull alike',
  stage: 'brakes & steering',
  harm: 'S3',
  hazards: [],
  source: { work: 'uk-mot', place: '1.2.1, difference between the wheels of an axle' },
  caution: PULLS,
  judgements: (m, ask) => {
    const names = Object.keys(m.brakes.prints)
    if (names.length === 0) return withoutPrint()
    const answer = ask(prints)
    if (isGaps(answer)) return [{ about: ['brakes.prints'], says: 'The prints cannot be read yet.', missing: answer }]
    return names.flatMap((name): readonly Judgement[] => {
      const p = answer.prints[name] as Printed | Gaps,
        about = [`brakes.prints.${name}`]
      if (isGaps(p)) return [{ item: name, about, says: 'This print is not complete.', missing: p }]
      return (['front', 'rear'] as const).map(axle => ({
        item: `${name}, ${axle}`,
        about,
        found: p[axle],
        side: 'at most',
        limit: UNEVEN,
        says: `The weaker brake of the ${axle} axle is {found} below the stronger; {limit} is accepted.`,
        remedies: [{ do: 'act', says: 'Free what sticks, then pads, hose and cylinder of both wheels.' }],
      }))
    })
  },
  spoil: { sample: 'otter', edits: [{ path: 'brakes.prints.donor.rear-left', now: '0.8 kN' }], item: 'donor, rear' },
})
