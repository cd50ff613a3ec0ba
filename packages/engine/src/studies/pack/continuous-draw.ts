import { currentOfPower, currentsTogether, lesserCurrent } from '../../battery/pack-sums.ts'
import { lossAt } from '../../drive/motor-loss.ts'
import { ratedSpeed } from '../../drive/winding.ts'
import type { Figure } from '../../working/value.ts'
import { driveUnits } from '../drive/drive-units.ts'
import type { UnitFigures } from '../drive/unit-figures.ts'
import { from, type Gaps, isGaps, study } from '../study.ts'
import { bmsLimits } from './bms-limits.ts'
import { voltageWindow } from './voltage-window.ts'

/** Battery current when every motor gives its continuous rating, at the nominal voltage. */
export const continuousDraw = study({
  id: 'draw',
  stage: 'pack',
  asks: 'What do the motors draw at their continuous rating?',
  reads: (m, ask) => {
    const names = Object.keys(m.drive.units)
    return {
      voltages: ask(voltageWindow),
      units: ask(driveUnits),
      set: bmsLimits(m.pack).drive.pull,
      ready:
        names.length > 0
          ? names.map(name =>
              from(ask(driveUnits), d => {
                const u = d.units[name] as UnitFigures | Gaps
                return isGaps(u) ? u : { name }
              }),
            )
          : { gaps: [{ gap: true as const, path: 'drive.units', label: 'drive units', until: 'any time' as const }] },
    }
  },
  answer: ({ voltages, units, set, ready }, make): { current: Figure; held: Figure; units: Readonly<Record<string, Figure>> } => {
    const each = (ready as readonly { name: string }[]).map(({ name }) => {
      const u = units.units[name] as UnitFigures
      const speed = make.work(
        'speed',
        ratedSpeed,
        { power: u.continuousPower, torque: u.continuousTorque, baseSpeed: u.baseSpeed },
        { item: name, label: `Speed of the continuous rating of ${name}` },
      )
      const loss = make.work(
        'loss',
        lossAt,
        { losses: u.losses, factor: u.lossFactor, speed, torque: u.continuousTorque },
        { item: name, label: `Loss of ${name} at its continuous rating` },
      )
      return make.work(
        'each',
        currentOfPower,
        { power: u.continuousPower, loss, voltage: voltages.nominal },
        { item: name, label: `Battery current of ${name} at its continuous rating` },
      )
    })
    const current = make.work('current', currentsTogether, { each }, { label: 'Battery current of all motors at their continuous rating' })
    return {
      current,
      units: Object.fromEntries((ready as readonly { name: string }[]).map(({ name }, i) => [name, each[i] as Figure])),
      held:
        set === null
          ? current
          : make.work(
              'held',
              lesserCurrent,
              { one: current, other: set },
              { label: 'Battery current the BMS lets all motors draw for ever' },
            ),
    }
  },
})
