import { isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, type Remedy, rule } from '../rule.ts'
import * as gateB from '../sets/feasibility.ts'
import type { Limit } from '../sets/sets.ts'
import { bySet, inWords, silent, waiting, wordsOf } from './by-set.ts'

const keep = (path: string, says: string): readonly Remedy[] => [{ do: 'set', says, sets: [{ path, to: { word: 'yes' } }] }]

export const bodyUncut = rule({
  id: 'body-uncut',
  title: 'Body and frame are neither cut nor drilled without leave',
  stage: 'brief',
  harm: 'S2',
  hazards: ['N1'],
  source: { work: 'practice', place: 'holes in a body have cost cars their registration' },
  judgements: bySet((limits, { brief }) => {
    const about = ['brief.keeps.body'],
      row = limits('structure.body'),
      kept = brief.keeps.body
    if (!row) return silent(about)
    if (isGap(kept)) return [waiting(about, kept)]
    const whole = kept.value === 'yes',
      asked = brief.asked.inspector
    const eased =
      row.requirement.test === 'trigger'
        ? { eased: 'a cut body starts a further examination, which can be planned for' }
        : row.fellBack && !isGap(asked)
          ? { eased: 'the inspector agreed in writing' }
          : {}
    return [
      {
        about,
        holds: whole,
        rests: isGap(asked) ? [kept] : [kept, asked],
        says: whole ? 'Body and frame stay as they are.' : 'Body or frame is to be cut, drilled or welded; the rule set says: {words}.',
        slots: { words: wordsOf(row) },
        requirement: row,
        remedies: keep('brief.keeps.body', 'Bolt to points that are there already; ask first, and take photographs before and after.'),
        ...eased,
      },
    ]
  }),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'gb' },
      { path: 'brief.keeps.body', now: 'no' },
    ],
  },
})

export const dimensionsKept = rule({
  id: 'dimensions-kept',
  title: 'Outer dimensions stay as they were',
  stage: 'brief',
  harm: 'S1',
  hazards: [],
  source: { work: 'rule-set', place: 'outer dimensions' },
  judgements: bySet((limits, { brief }) => {
    const about = ['brief.keeps.dimensions'],
      row = limits('dims.change'),
      kept = brief.keeps.dimensions
    if (!row) return silent(about)
    if (isGap(kept)) return [waiting(about, kept)]
    return [
      {
        about,
        holds: kept.value === 'yes',
        rests: [kept],
        says: 'Outer dimensions kept: {kept}.',
        slots: { kept },
        requirement: row,
        remedies: keep('brief.keeps.dimensions', 'Stay within the outline of the car.'),
      },
    ]
  }),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'be' },
      { path: 'brief.keeps.dimensions', now: 'no' },
    ],
    turns: 'marginal',
  },
})

export const safetyEquipmentKept = rule({
  id: 'safety-equipment-kept',
  title: 'Airbags, anti-lock brakes and the like work as before',
  stage: 'brief',
  harm: 'S3',
  hazards: [],
  source: { work: 'rule-set', place: 'safety equipment of the donor car' },
  caution: 'Airbags and belt tensioners can go off while being worked on: leave them to trained people, battery disconnected.',
  judgements: bySet((limits, { brief }) => {
    const about = ['brief.keeps.safety-equipment', 'brief.workshop'],
      kept = brief.keeps.safetyEquipment
    const keepRow = limits('safety-systems.keep'),
      ban = limits('route.make-inoperative')
    if (!keepRow && !ban) return silent(about)
    const judged = (row: Limit, item: string): Judgement =>
      isGap(kept)
        ? waiting(about, kept, item)
        : {
            item,
            about,
            holds: kept.value === 'yes',
            rests: [kept],
            says: 'Safety equipment works as before: {kept}; the rule set says: {words}.',
            slots: { kept, words: wordsOf(row) },
            requirement: row,
            remedies: keep('brief.keeps.safety-equipment', 'Keep it working: leave its parts, wiring and signals alone.'),
          }
    const byWhom = (row: Limit): Judgement => {
      if (isGap(brief.workshop)) return waiting(about, brief.workshop, 'disabling')
      return gateB.makeInoperative(limits, brief.workshop.value)?.kind === 'stated'
        ? judged(row, 'disabling')
        : {
            item: 'disabling',
            about,
            says: 'It binds a business, not an owner on the own car.',
            doesNotApply: 'it binds a business, not an owner on the own car',
          }
    }
    return [
      ...(keepRow ? [keepRow.requirement.test === 'must' ? judged(keepRow, 'keeping') : inWords(keepRow, about, 'keeping')] : []),
      ...(ban ? [byWhom(ban)] : []),
    ]
  }),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'it' },
      { path: 'brief.keeps.safety-equipment', now: 'no' },
    ],
    item: 'keeping',
  },
})

export const immobiliserPlanned = rule({
  id: 'immobiliser-planned',
  title: 'The immobiliser has a place in the finished car',
  stage: 'brief',
  harm: 'S1',
  hazards: ['M2'],
  source: { work: 'practice', place: 'an immobiliser in the engine computer leaves with it' },
  judgements: ({ donor: { immobiliser } }) => {
    const about = ['donor.immobiliser.fitted', 'donor.immobiliser.after'],
      { fitted, after } = immobiliser
    if (isGap(fitted)) return [waiting(about, fitted)]
    if (fitted.value === 'none') return doesNotApply('the donor car has none', about)
    if (isGap(after)) return [waiting(about, after)]
    const lost = after.value === 'left out' || (after.value === 'kept' && fitted.value === 'in the engine computer')
    return [
      {
        about,
        holds: !lost,
        rests: [fitted, after],
        says: 'The immobiliser sits {fitted}; planned: {after}.',
        slots: { fitted, after },
        remedies: [
          {
            do: 'set',
            says: 'Replace it by one that blocks the drive, with its own papers.',
            sets: [{ path: 'donor.immobiliser.after', to: { word: 'replaced' } }],
          },
          { do: 'act', says: 'Or move the old one with its computer and teach it to the new drive.' },
        ],
      },
    ]
  },
  spoil: { sample: 'otter', edits: [{ path: 'donor.immobiliser.after', now: 'kept' }] },
})
