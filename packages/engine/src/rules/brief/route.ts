import type { Fact, Field } from '../../working/value.ts'
import { isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, type Remedy, rule } from '../rule.ts'
import * as gateB from '../sets/feasibility.ts'
import type { SetId } from '../sets/requirement.ts'
import type { Limit } from '../sets/sets.ts'
import { bySet, silent, waiting, wordsOf } from './by-set.ts'

const WRITE: readonly Remedy[] = [
  { do: 'act', says: 'Write to whoever will sign, and wait for the answer, before the first part is bought.' },
]

export const singleCar = rule({
  id: 'single-car',
  title: 'One car alone can be approved',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: { work: 'rule-set', place: 'route to approval' },
  judgements: bySet((_, m) => {
    const { rules, approvedKit, asked } = m.brief
    const about = ['brief.rules', 'brief.approved-kit']
    if (isGap(rules)) return [waiting(about, rules)]
    const { answer, row } = gateB.singleCar(rules.value as SetId, { approvedKit: !isGap(approvedKit) && approvedKit.value === 'yes' })
    const said = row ? { requirement: row, slots: { words: wordsOf(row) } } : {}
    switch (answer) {
      case 'yes':
        return [{ about, holds: true, rests: [rules], says: 'The rule set approves single cars: {words}.', ...said }]
      case 'kit only':
        if (isGap(approvedKit)) return [waiting(about, approvedKit)]
        return [
          {
            about,
            holds: approvedKit.value === 'yes',
            rests: [rules, approvedKit],
            says: 'Kits and types are approved here, single cars are not: {words}.',
            remedies: [
              { do: 'act', says: 'Find an approved kit for this model, or approve the car elsewhere; ask before anything is bought.' },
            ],
            ...said,
          },
        ]
      case 'divisions decide':
        if (isGap(asked.inspector)) return [waiting(['brief.rules', 'brief.asked.inspector'], asked.inspector)]
        return [
          {
            about,
            holds: true,
            rests: [rules, asked.inspector],
            says: 'States, provinces or regions decide, and the inspector agreed in writing on {on}.',
            slots: { ...said.slots, on: asked.inspector },
            ...(row ? { requirement: row } : {}),
          },
        ]
      default:
        return doesNotApply('the rule set does not say whether one car alone can be approved: ask', about)
    }
  }),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'it' },
      { path: 'brief.approved-kit', now: 'no' },
    ],
  },
})

/** Days written year first sort as words do. */
function askedAhead(item: 'inspector' | 'insurer', asked: Field<string>, bought: Field<string>, row: Limit | undefined): Judgement {
  const about = [`brief.asked.${item}`, 'brief.parts-bought-from']
  if (isGap(asked)) return waiting(about, asked, item)
  if (isGap(bought)) return waiting(about, bought, item)
  const slots: Record<string, Fact<string>> = { asked, bought }
  return {
    item,
    about,
    holds: asked.value <= bought.value,
    rests: [asked, bought],
    says:
      item === 'inspector'
        ? 'Whoever will sign agreed on {asked}; the first part is bought on {bought}.'
        : 'The insurer agreed on {asked}; the first part is bought on {bought}.',
    slots,
    remedies: WRITE,
    ...(row && item === 'inspector' ? { requirement: row } : {}),
  }
}

export const askedBefore = rule({
  id: 'asked-before',
  title: 'Inspector and insurer agreed in writing before the first part was bought',
  stage: 'brief',
  harm: 'S2',
  hazards: ['N1', 'N2'],
  source: { work: 'practice', place: 'found out after the money is spent, a refusal costs the car' },
  judgements: bySet((limits, { brief }) => {
    const row = limits('ask.before')
    if (!row) return silent(['brief.asked'])
    return [
      askedAhead('inspector', brief.asked.inspector, brief.partsBoughtFrom, row),
      askedAhead('insurer', brief.asked.insurer, brief.partsBoughtFrom, row),
    ]
  }),
  spoil: { sample: 'lapwing', edits: [{ path: 'brief.asked.inspector', now: '2027-03-01' }], item: 'inspector' },
})

/** An approval is of the pack as its maker closed it. */
const asBuilt = (state: Fact<string>, plan: Fact<string>): Judgement => ({
  item: 'as built',
  about: ['brief.pack-approval', 'pack.module.state'],
  holds: state.value !== 'used',
  rests: [state, plan],
  says: 'The modules are {state}. An approval covers a pack as its maker closed it; modules taken out of one and boxed anew make a new pack.',
  slots: { state },
  remedies: [{ do: 'act', says: 'Agree with the technical service on tests of the car as a whole, or buy a pack that stays closed.' }],
})

export const packApproval = rule({
  id: 'pack-approval',
  title: 'There is a way to get the pack approved',
  stage: 'brief',
  harm: 'S3',
  hazards: [],
  source: { work: 'rule-set', place: 'approval of the traction battery' },
  caution: 'A pack without proof of its tests may burn; a certificate cannot be had for a pack of mixed modules afterwards.',
  judgements: bySet((limits, { brief, pack }) => {
    const about = ['brief.pack-approval'],
      row = limits('battery.approval'),
      plan = brief.packApproval
    if (!row) return silent(about)
    if (isGap(plan)) return [waiting(about, plan)]
    return [
      {
        about,
        holds: plan.value !== 'none',
        rests: [plan],
        says: 'Planned approval of the pack: {plan}; the rule set asks: {words}.',
        slots: { plan, words: wordsOf(row) },
        requirement: row,
        remedies: [{ do: 'act', says: 'Buy an approved pack, or agree with the technical service on tests of the car as a whole.' }],
      },
      ...(plan.value === 'approved pack' && !isGap(pack.module.state) ? [asBuilt(pack.module.state, plan)] : []),
    ]
  }),
  spoil: { sample: 'lapwing', edits: [{ path: 'brief.pack-approval', now: 'none' }] },
})
