import { soakTime, warmUpTime } from '../../battery/box-heat.ts'
import { adiabaticRise, lumpedTemperature, resistanceHeat } from '../../battery/cell-heat.ts'
import { sagResistance } from '../../battery/pack-power.ts'
import { type Figure, standard } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import { packModel } from './pack-model.ts'
import { coldestCells, DURATIONS, HALF } from './pack-points.ts'

const TWENTY_MINUTES = {
  ...standard('load.1200', 'twenty minutes', 't', 1200, 's', { work: 'definition', place: 'operating point' }),
  shows: 'duration',
} as const

export type PackTemperature = { readonly heat: Figure; readonly after: Figure; readonly warmUp: Figure | Gaps }

/** Heat at the continuous current, how warm the pack gets by it, how slowly it follows the weather, how long the heater needs. */
export const packTemperature = study({
  id: 'pack-temperature',
  stage: 'pack',
  asks: 'How warm does the pack get, and how long does its heater need?',
  reads: (m, ask) => ({
    pack: ask(packModel),
    around: m.brief.conditions.temperature,
    heater: m.pack.heater.given ? maybe({ power: m.pack.heater.power, to: m.pack.heater.to, from: coldestCells(m) }) : null,
  }),
  answer: ({ pack, around, heater }, make): PackTemperature => {
    const body = { capacity: pack.heatCapacity, conductance: pack.conductance }
    const resistance = make.work(
      'resistance',
      sagResistance,
      {
        resistance: pack.resistance,
        factor: pack.resistanceFactor,
        branch: pack.branchResistance,
        time: pack.branchTime,
        cold: pack.coldFactor,
        charge: HALF,
        temperature: around,
        after: DURATIONS.continuous,
      },
      { label: 'Resistance of the pack, settled' },
    )
    const heat = make.work(
      'heat',
      resistanceHeat,
      { current: pack.continuousCurrent, resistance },
      { label: 'Heat at the continuous current' },
    )
    make.work(
      'rise',
      adiabaticRise,
      { heat, time: TWENTY_MINUTES, capacity: pack.heatCapacity },
      { label: 'Rise in twenty minutes without cooling' },
    )
    make.work('soak', soakTime, { ...body }, { label: 'Time constant of the pack towards the weather' })
    return {
      heat,
      after: make.work(
        'after',
        lumpedTemperature,
        { before: around, around, heat, ...body, time: TWENTY_MINUTES },
        { label: 'Pack after twenty minutes at the continuous current' },
      ),
      warmUp:
        heater === null
          ? { gaps: [] }
          : isGaps(heater)
            ? heater
            : make.work(
                'warm-up',
                warmUpTime,
                { power: heater.power, from: heater.from, to: heater.to, outside: heater.from, ...body },
                { label: 'Warming the coldest pack with its heater' },
              ),
    }
  },
})
