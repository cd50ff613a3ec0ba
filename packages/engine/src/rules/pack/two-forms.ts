import { moduleStock, type Stock } from '../../studies/pack/module-stock.ts'
import { othersInStrings } from '../../studies/pack/other-module.ts'
import { type Gaps, isGaps } from '../../studies/study.ts'
import { isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { open, PRACTICE } from './answers.ts'

export const sameCells = rule({
  id: 'one-kind-of-cell-in-a-string',
  title: 'Modules of two forms in one string are of the same cells, as many side by side',
  stage: 'pack',
  harm: 'S3',
  hazards: [],
  source: PRACTICE,
  caution:
    'Cells of another make, capacity or number side by side are emptied and filled past their limits by the others, and burn. No BMS makes up for it.',
  judgements: m => {
    const about = ['pack.other-module.same-cells', 'pack.other-module.in-series'],
      { sameCells: same } = m.pack.otherModule
    if (othersInStrings(m) === null) return doesNotApply('all modules of a string are of one form', about)
    if (isGap(same)) return [open(about, same)]
    return [
      {
        about,
        holds: same.value === 'yes',
        rests: [same],
        says: 'The modules of the other form are of the same cells, as many side by side: {same}.',
        slots: { same },
        remedies: [
          {
            do: 'set',
            says: 'Leave the other form out of the strings.',
            sets: [{ path: 'pack.other-module.in-series', to: { value: 0, kind: 'count' } }],
          },
          { do: 'act', says: 'Take modules of the very same cells, from cars of one kind and age.' },
        ],
      },
    ]
  },
  spoil: { sample: 'otter', edits: [{ path: 'pack.other-module.same-cells', now: 'no' }] },
})

export const enoughModules = rule({
  id: 'enough-modules',
  title: 'There are as many modules as the pack takes',
  stage: 'pack',
  harm: 'S1',
  hazards: [],
  source: { work: 'definition', place: 'counting' },
  judgements: (_, ask) => {
    const about = ['pack.module.have', 'pack.modules-in-series', 'pack.strings'],
      otherAbout = ['pack.other-module.have', 'pack.other-module.in-series', 'pack.strings'],
      found = ask(moduleStock)
    if (isGaps(found)) return [open(about, found)]
    const judged = (stock: Stock | Gaps | null, where: readonly string[], item?: string): readonly Judgement[] => {
      if (stock === null) return []
      if (isGaps(stock)) return [open(where, stock, item)]
      return [
        {
          ...(item === undefined ? {} : { item }),
          about: where,
          found: stock.wanted,
          side: 'at most',
          limit: stock.have,
          says: 'The pack takes {found} modules of this form; there are {limit}.',
          remedies: [{ do: 'act', says: 'Look for an arrangement with the modules there are, or find more of the same.' }],
        },
      ]
    }
    const all = [...judged(found.main, about), ...judged(found.other, otherAbout, 'other form')]
    return all.length ? all : doesNotApply('how many modules there are is not said', about)
  },
  spoil: { sample: 'otter', edits: [{ path: 'pack.module.have', now: '19' }] },
})
