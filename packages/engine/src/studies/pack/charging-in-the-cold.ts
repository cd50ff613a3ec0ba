import { chargeAcceptance } from '../../battery/charge-acceptance.ts'
import { cellTemperature } from '../../battery/pack-sums.ts'
import type { Figure } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import { packModel } from './pack-model.ts'
import { coldestCells } from './pack-points.ts'

const CELSIUS = [-10, 0, 5, 10, 20, 30, 40, 50] as const

/** Charging current the cells take by temperature of the coldest one; regeneration is charging too. */
export const chargingInTheCold = study({
  id: 'acceptance',
  stage: 'pack',
  asks: 'How much charging current do cold cells take?',
  reads: (m, ask) => ({ pack: ask(packModel), rate: m.pack.module.chargeTable, coldest: maybe(coldestCells(m)) }),
  answer: ({ pack, rate, coldest }, make): { coldest: Figure | Gaps } => {
    const taken = { rate, capacity: pack.capacity, most: pack.chargeCurrent }
    make.table('by-temperature', {
      label: 'Charging current the cells take, by the coldest cell',
      columns: [{ key: 'current', label: 'current', unit: 'A' }],
      rows: CELSIUS.map(c => ({
        name: `${c} °C`,
        cells: {
          current: make.work(
            'current',
            chargeAcceptance,
            { ...taken, temperature: cellTemperature(c) },
            { item: `${c} °C`, label: `Charging current taken, coldest cell at ${c} °C` },
          ),
        },
      })),
    })
    return {
      coldest: isGaps(coldest)
        ? coldest
        : make.work(
            'at-start',
            chargeAcceptance,
            { ...taken, temperature: coldest },
            { label: 'Charging current taken, cells as cold as any trip starts' },
          ),
    }
  },
})
