import { assistAtStop, columnAssist } from '../../steering/column-assist.ts'
import { hydraulicAssist, steeringPumpPower } from '../../steering/hydraulic-assist.ts'
import { type Figure, isGap, type Value } from '../../working/value.ts'
import { TWELVE_VOLTS } from '../brakes/electric-booster.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { steeringEffort } from './effort.ts'

export type SteeringAssist = {
  readonly hydraulic: { readonly pressure: Figure; readonly needed: Figure; readonly current: Figure | Gaps } | Gaps | null
  readonly electric: { readonly current: Figure; readonly atStop: Figure | Gaps } | Gaps | null
}

/** What the assist that takes the engine’s place must give while parking, and what it takes from the 12 V supply. */
export const steeringAssistance = study({
  id: 'steering-assist',
  stage: 'brakes & steering',
  asks: 'What must the steering assist give while parking, and what does it draw?',
  reads: (m, ask) => {
    const s = m.steering,
      before = m.donor.steering.assist,
      after = m.donor.steering.assistAfter
    const chosen = isGap(after) ? undefined : after.value,
      electric = chosen === 'electric column' || chosen === 'electric rack'
    return {
      hydraulic:
        chosen === 'electro-hydraulic' || (!electric && !isGap(before) && before.value === 'hydraulic')
          ? maybe({
              bore: s.hydraulic.bore,
              rod: s.hydraulic.rod,
              leakage: s.hydraulic.leakage,
              travel: s.rackTravel,
              turns: s.turns,
              force: from(ask(steeringEffort), e => e.rack),
            })
          : null,
      pump: chosen === 'electro-hydraulic' ? maybe({ pump: s.hydraulic.pumpEfficiency, motor: s.hydraulic.motorEfficiency }) : null,
      electric: electric
        ? maybe({
            driver: s.column.driverTorque,
            efficiency: s.column.efficiency,
            turns: s.turns,
            needed: from(ask(steeringEffort), e => e.torque),
          })
        : null,
      atStop: electric ? maybe({ motor: s.column.motorCurrent, winding: s.column.windingResistance }) : null,
    }
  },
  answer: (k, make): SteeringAssist => {
    const hydraulic = (): SteeringAssist['hydraulic'] => {
      if (k.hydraulic === null || isGaps(k.hydraulic)) return k.hydraulic as Gaps | null
      const h = make.all('hydraulic', hydraulicAssist, k.hydraulic as never, {
        labels: {
          area: 'Area of the steering piston',
          pressure: 'Pressure the rack needs while parking',
          flow: 'Flow the rack takes',
          needed: 'Flow the pump must give',
          power: 'Hydraulic power while parking',
        },
      }).figures
      const current =
        k.pump === null
          ? ({ gaps: [] } as Gaps)
          : isGaps(k.pump)
            ? k.pump
            : make.all(
                'pump',
                steeringPumpPower,
                { pressure: h.pressure, flow: h.needed, ...(k.pump as { pump: Value; motor: Value }), voltage: TWELVE_VOLTS },
                {
                  labels: { power: 'Electric power of the steering pump', current: 'Current of the steering pump while parking' },
                },
              ).figures.current
      return { pressure: h.pressure, needed: h.needed, current }
    }
    const electric = (): SteeringAssist['electric'] => {
      if (k.electric === null || isGaps(k.electric)) return k.electric as Gaps | null
      const { current } = make.all(
        'electric',
        columnAssist,
        { ...(k.electric as never as Record<'driver' | 'efficiency' | 'turns' | 'needed', Value>), voltage: TWELVE_VOLTS },
        {
          labels: {
            assist: 'Torque of the assist while parking',
            shaft: 'Its power at the column',
            power: 'Its electric power',
            current: 'Current of the assist while parking',
          },
        },
      ).figures
      const held = k.atStop as { motor: Value; winding: Value } | Gaps
      return {
        current,
        atStop: isGaps(held)
          ? held
          : make.work('at-stop', assistAtStop, { ...held, voltage: TWELVE_VOLTS }, { label: 'Current of the assist held at its stop' }),
      }
    }
    return { hydraulic: hydraulic(), electric: electric() }
  },
})
