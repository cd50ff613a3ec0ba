import type { DriversHandle, Handle, OutsideHandle } from '../../model/fit.ts'
import type { Source } from '../../sources.ts'
import { ARM_IN, handlesOf, type Reach, reach, type Reaches, ROUND_ARM } from '../../studies/fit/reach.ts'
import { type Gaps, isGaps } from '../../studies/study.ts'
import { type AnyValue, type Field, type Gap, isGap } from '../../working/value.ts'
import { type Judgement, rule } from '../rule.ts'
import { anyShape, nameOfShape, NO_SHAPE, pathOf } from './shapes.ts'

const IN_REACH: Source = {
  work: 'practice',
  place: 'the belted driver reaches a main switch; rescuers find a cut point by its label, from outside, without lifting the car',
  mark: 'common practice',
}
const atOf = (name: string): string => `fit.handles.${name}`
const WANTED = ['main switch of the driver', 'cut point for rescuers'] as const

export const powerCutInReach = rule({
  id: 'power-cut-in-reach',
  title: 'Driver and rescuers reach what cuts the power',
  stage: 'fit',
  harm: 'S3',
  hazards: ['C13'],
  source: IN_REACH,
  caution:
    'Somebody who must cut the power has seconds. Try it: belted in the seat, and from outside by the label alone. Rescuers follow local guidance; the sheet in the car shows them where.',
  judgements: (m, ask) => {
    if (!anyShape(m)) return NO_SHAPE()
    const handles = handlesOf(m),
      found = ask(reach)
    return [
      ...WANTED.filter(kind => !handles.some(([, h]) => h.kind === kind)).map(
        (kind): Judgement => ({ item: kind, about: ['fit.handles'], says: 'Where it goes is not said yet.', missing: placeFor(kind) }),
      ),
      ...handles.flatMap(([name, h]): readonly Judgement[] => {
        const r = isGaps(found) ? found : ((found as Reaches).of[name] as Reach | Gaps)
        if (isGaps(r)) return [{ item: name, about: [atOf(name)], says: 'How far it is to reach cannot be told yet.', missing: r }]
        return byHand(h) ? [driverReaches(name, r, m.fit.driver.arm)] : outsideReaches(name, h, r)
      }),
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'fit.handles.main-switch.x', now: '600 mm' }], item: 'main-switch' },
})
const byHand = (h: Handle): h is DriversHandle => h.kind === 'main switch of the driver'

const placeFor = (kind: string): Gap => ({
  gap: true,
  path: 'fit.handles',
  label: `place of the ${kind}`,
  until: 'before the part is bought',
  measure: { tool: 'sit in, belted, and reach; then tape', accuracy: '± 10 mm', minutes: 15 },
})

const driverReaches = (item: string, { far }: Reach, arm: Field): Judgement => ({
  item,
  about: [atOf(item), 'fit.driver'],
  found: far,
  side: 'at most',
  limit: arm,
  says: 'From the shoulder of the belted driver it is {found}; the arm reaches {limit}.',
  remedies: [{ do: 'act', says: 'Put it nearer, or lead a pull cable to where the hand falls; try it belted.' }],
})

function outsideReaches(name: string, h: OutsideHandle, { far, beside }: Reach): readonly Judgement[] {
  const about = [atOf(name)],
    { reached, label } = h,
    way = isGap(reached) ? undefined : reached
  const below = way?.value === 'from below'
  return [
    {
      item: `${name}, depth`,
      about,
      found: far,
      side: 'at most',
      limit: ARM_IN,
      says: 'Reached {way}, it lies {found} behind the opening; an arm reaches {limit}.',
      slots: { way },
      remedies: [{ do: 'act', says: 'Bring it nearer to the opening.' }],
    },
    {
      item: `${name}, way`,
      about,
      holds: !below,
      rests: way ? [way as AnyValue] : [],
      says: below ? 'It is reached {way}: nobody lifts a car that burns.' : 'It is reached {way}, without lifting the car.',
      slots: { way },
      remedies: [{ do: 'act', says: 'Put it where an arm reaches it from above, ahead, behind or a side.' }],
    },
    ...(beside
      ? [
          {
            item: `${name}, room`,
            about: [...about, pathOf(beside.what)],
            found: beside.air,
            side: 'at least',
            limit: ROUND_ARM,
            says: 'The arm passes {what} {found} from its middle line; with a thick glove it needs {limit}.',
            slots: { what: nameOfShape(beside.what) },
            remedies: [{ do: 'act', says: 'Move what stands beside the way of the arm, or say what the handle is part of.' }],
          } as const,
        ]
      : []),
    isGap(label)
      ? { item: `${name}, label`, about, says: 'Whether a label outside shows where it is, is not said yet.', missing: label }
      : {
          item: `${name}, label`,
          about,
          holds: label.value === 'yes',
          rests: [label],
          says: label.value === 'yes' ? 'A label outside and the rescue sheet show where it is.' : 'No label outside shows where it is.',
          remedies: [{ do: 'act', says: 'A label where it is seen from outside, and the place on the rescue sheet.' }],
        },
  ]
}
