import { moduleGrouping, stringSorting } from '../../battery/module-grouping.ts'
import { sortedStrings } from '../../battery/module-lot.ts'
import { packCapacity, weakestModule } from '../../battery/pack-arithmetic.ts'
import { type Figure, isGap, type Value } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import { othersInStrings } from './other-module.ts'
import { missingRecords } from './salvaged-modules.ts'

export type Sorting = { readonly sorted: Figure; readonly asTaken: Figure }

/** Which tested modules go into which string so that the strings together hold the most; spares count, rejected ones do not. */
export const moduleSorting = study({
  id: 'sorting',
  stage: 'pack',
  asks: 'Which module goes into which string?',
  reads: m => {
    const records = Object.entries(m.pack.salvage).filter(([, r]) => isGap(r.use) || r.use.value !== 'rejected')
    return {
      names: records.map(([name]) => name),
      lot:
        // Strings of two forms are not sorted yet.
        records.length === 0 || othersInStrings(m) !== null
          ? null
          : maybe({
              each: records.map(([, r]) => r.capacity),
              missing: missingRecords(m.pack),
              inSeries: m.pack.modulesInSeries,
              strings: m.pack.strings,
            }),
    }
  },
  answer: ({ names, lot }, make): Sorting | Gaps => {
    if (lot === null || isGaps(lot)) return lot ?? { gaps: [] }
    const { each, inSeries, strings } = lot
    const size = Math.round(inSeries.value),
      n = Math.round(strings.value),
      values = each.map(v => v.value)
    const { strings: sorted } = stringSorting(values, n, size),
      groups = moduleGrouping(values, size, n).groups
    make.table('places', {
      label: 'Modules sorted into strings, strongest first; joined side by side before they are put in series, each place takes one group',
      columns: [
        { key: 'strings', label: 'strings joined at their ends' },
        { key: 'groups', label: 'modules side by side in each place' },
      ],
      rows: [
        ...sorted.map((s, i) => ({ name: `string ${i + 1}`, cells: { strings: s.map(k => names[k]).join(', ') } })),
        ...(n > 1 ? groups.map((g, i) => ({ name: `place ${i + 1}`, cells: { groups: g.map(k => names[k]).join(' + ') } })) : []),
      ],
    })
    const taken: readonly Value[] = each.slice(0, size * n)
    return {
      sorted: make.work('sorted', sortedStrings, { each, size: inSeries, strings }, { label: 'Capacity of the pack, modules sorted' }),
      asTaken: make.work(
        'as-taken',
        packCapacity,
        { strings, string: make.work('weakest', weakestModule, { modules: taken }, { label: 'Weakest module in the order of the list' }) },
        { label: 'Capacity of the pack, modules in the order of the list, each string by the weakest of all' },
      ),
    }
  },
})
