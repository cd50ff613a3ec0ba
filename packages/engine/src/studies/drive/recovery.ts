import { lossAt } from '../../drive/motor-loss.ts'
import { generatedPower, recoveryAtBattery, recoverySpeed, recoveryTorque } from '../../drive/recovery.ts'
import type { Figure, Value } from '../../working/value.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { driveUnits } from './drive-units.ts'
import type { UnitFigures } from './unit-figures.ts'

export type Recovered = {
  /** What reaches the battery at most: what all motors give back, up to what recovery is set to. */
  readonly atBattery: Figure | Gaps
  /** Electrical power each motor gives back at its strongest recovery. */
  readonly generated: Readonly<Record<string, Figure | Gaps>>
}

/** What the motors give back braking at their strongest, once their own loss is taken off. */
export const recovery = study({
  id: 'recovery',
  stage: 'drive',
  asks: 'What do the motors give back at most, and how much of it may reach the battery?',
  reads: (m, ask) => {
    const names = Object.keys(m.drive.units)
    const ready = (name: string) =>
      from(ask(driveUnits), d => {
        const u = d.units[name] as UnitFigures | Gaps
        return isGaps(u) ? u : { name }
      })
    return {
      names,
      all: maybe(ask(driveUnits)),
      units: names.map(name => maybe({ ready: ready(name), share: m.drive.regeneration.torqueShare })),
      together: maybe({ ready: names.map(ready), share: m.drive.regeneration.torqueShare, set: m.drive.regeneration.power }),
    }
  },
  answer: ({ names, all, units, together }, make): Recovered => {
    const generated = Object.fromEntries(
      units.map((u, i): [string, Figure | Gaps] => {
        const name = names[i] as string
        return [name, isGaps(u) ? u : givenBack(make, (all as { units: Record<string, UnitFigures> }).units[name] as UnitFigures, u.share)]
      }),
    )
    return {
      generated,
      atBattery: isGaps(together)
        ? together
        : make.work('at-battery', recoveryAtBattery, { generated: names.map(n => generated[n] as Figure), set: together.set }),
    }
  },
})

function givenBack(make: Maker, u: UnitFigures, share: Value): Figure {
  const item = u.name
  const torque = make.work(
    'torque',
    recoveryTorque,
    { share, torque: u.peakTorque },
    { item, label: `Torque ${item} recovers with at its strongest` },
  )
  const speed = make.work(
    'speed',
    recoverySpeed,
    { torque, power: u.peakPower, topSpeed: u.topSpeed },
    { item, label: `Motor speed of the strongest recovery of ${item}` },
  )
  const loss = make.work(
    'loss',
    lossAt,
    { losses: u.losses, factor: u.lossFactor, speed, torque },
    { item, label: `Loss of ${item} at its strongest recovery` },
  )
  return make.work(
    'generated',
    generatedPower,
    { torque, speed, loss },
    { item, label: `Electrical power ${item} gives back at its strongest` },
  )
}
