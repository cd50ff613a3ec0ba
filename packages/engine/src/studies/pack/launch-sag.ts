import { sagAtCurrent } from '../../battery/pack-power.ts'
import { currentsTogether, lesserCurrent } from '../../battery/pack-sums.ts'
import type { Figure, Value } from '../../working/value.ts'
import { study } from '../study.ts'
import { packModel } from './pack-model.ts'
import { coldestCells, DURATIONS } from './pack-points.ts'

export type LaunchSag = { readonly wanted: Figure; readonly drawn: Figure; readonly voltage: Figure }

/**
 * Pack voltage 2 s into the hardest launch that can be asked, at the reserve and with cells as cold as any trip starts. The current is the most that
 * inverters, cells and BMS let through: motors that are still turning slowly take less.
 */
export const launchSag = study({
  id: 'sag',
  stage: 'pack',
  asks: 'How far can the voltage sag at a launch with little charge on a cold day?',
  reads: (m, ask) => ({
    pack: ask(packModel),
    inverters:
      Object.values(m.drive.units).length > 0
        ? Object.values(m.drive.units).map(u => u.inverter.peakCurrent)
        : { gaps: [{ gap: true as const, path: 'drive.units', label: 'drive units', until: 'any time' as const }] },
    reserve: m.brief.reserve,
    coldest: coldestCells(m),
  }),
  answer: ({ pack, inverters, reserve, coldest }, make): LaunchSag => {
    const list = inverters as readonly Value[]
    const wanted = make.work('wanted', currentsTogether, { each: list }, { label: 'Peak battery current of all inverters' })
    const drawn = make.work(
      'drawn',
      lesserCurrent,
      { one: wanted, other: pack.held.peak },
      { label: 'Most battery current inverters, cells and BMS let through' },
    )
    return {
      wanted,
      drawn,
      voltage: make.work(
        'voltage',
        sagAtCurrent,
        {
          openCircuit: pack.openCircuit,
          resistance: pack.resistance,
          factor: pack.resistanceFactor,
          branch: pack.branchResistance,
          time: pack.branchTime,
          cold: pack.coldFactor,
          charge: reserve,
          temperature: coldest,
          after: DURATIONS['2 s'],
          current: drawn,
        },
        { label: 'Pack voltage at the most current let through, 2 s, cold and on the reserve' },
      ),
    }
  },
})
