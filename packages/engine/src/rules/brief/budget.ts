import { cost } from '../../studies/brief/cost.ts'
import { from } from '../../studies/study.ts'
import { rule } from '../rule.ts'

export const partsWithinBudget = rule({
  id: 'parts-budget',
  title: 'The parts cost no more than the brief allows',
  stage: 'brief',
  harm: 'S1',
  hazards: [],
  source: { work: 'practice', place: 'a goal of the brief' },
  judgements: (m, ask) => {
    const about = ['brief.budget', 'brief.prices', 'donor.added', 'drive.units', 'pack.module.price']
    return [
      {
        about,
        found: from(ask(cost), c => c.parts),
        side: 'at most',
        limit: m.brief.budget,
        says: 'The parts cost {found}; the brief allows {limit}.',
        remedies: [
          {
            do: 'act',
            says: 'Fewer or cheaper modules, used parts, or a larger budget: the exchange of range against money says what each buys.',
          },
        ],
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'brief.budget', now: '12000 €' }] },
})
