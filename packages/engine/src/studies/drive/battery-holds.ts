import { powerForTime } from '../../battery/pack-power.ts'
import { powerFromPack, powerHeld } from '../../drive/battery-pull.ts'
import type { Figure, Value } from '../../working/value.ts'
import { packModel } from '../pack/pack-model.ts'
import { DURATIONS } from '../pack/pack-points.ts'
import { type Limit, powerLimits } from '../pack/power-limits.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { batteryPull } from './battery-pull.ts'
import { driveUnits } from './drive-units.ts'
import { CHARGES, NORMAL, POINTS, TEMPERATURES } from './operating-points.ts'
import type { UnitFigures } from './unit-figures.ts'

export type Held = {
  /** Continuous power of the motor, or less where the pack gives less for as long. */
  readonly power: Figure
  /** What the pack alone would let it give: for 30 s where the cells state a time for their peak, and for ever. */
  readonly half: Figure | Gaps
  readonly ever: Figure
  /** The same as `ever` at every charge and temperature the drive is looked at. */
  readonly points: Readonly<Record<string, Figure>>
}
export type BatteryHolds = Readonly<Record<string, Held>>

/** What the battery lets the motors hold: half charged, mild cells. */
export const batteryHolds = study({
  id: 'held',
  stage: 'drive',
  asks: 'What power does the battery hold for as long as the motors could?',
  reads: (m, ask) => ({
    pack: ask(packModel),
    limit: from(ask(powerLimits), p => p.mild.continuous),
    half: maybe(from(ask(powerLimits), p => p.mild['30 s'])),
    peak: from(ask(batteryPull), b => b),
    units: ask(driveUnits),
    ready: Object.keys(m.drive.units).map(name =>
      from(ask(driveUnits), d => {
        const u = d.units[name] as UnitFigures | Gaps
        return isGaps(u) ? u : { name }
      }),
    ),
  }),
  answer: ({ pack, limit, half, peak, units, ready }, make): BatteryHolds => {
    const list = ready.map(r => units.units[r.name] as UnitFigures),
      all: readonly Value[] = list.map(u => u.continuousPower),
      losses: readonly Value[] = list.map(u => u.ratedLoss)
    const limits = POINTS.map(
      ({ charge, cells, name }): Limit =>
        make.all(
          'pack',
          powerForTime,
          {
            openCircuit: pack.openCircuit,
            resistance: pack.resistance,
            factor: pack.resistanceFactor,
            branch: pack.branchResistance,
            time: pack.branchTime,
            cold: pack.coldFactor,
            capacity: pack.capacity,
            charge: CHARGES[charge],
            temperature: TEMPERATURES[cells],
            after: DURATIONS.continuous,
            floor: pack.lowestVoltage,
            most: pack.continuousCurrent,
          },
          {
            item: name,
            labels: {
              current: `Battery current for ever, ${charge} charge, ${cells} cells`,
              power: `Battery power for ever, ${charge} charge, ${cells} cells`,
            },
          },
        ).figures,
    )
    return Object.fromEntries(
      list.map((u): [string, Held] => {
        const part = (key: string, label: string, { power }: Limit, point?: string): Figure =>
          make.work(
            key,
            powerFromPack,
            { limit: power, rated: u.continuousPower, all, losses },
            { item: point ? `${u.name} ${point}` : u.name, label: `Power of ${u.name} from what the pack gives ${label}` },
          )
        const ever = part('ever', 'for ever', limit as Limit)
        return [
          u.name,
          {
            ever,
            points: Object.fromEntries(
              POINTS.map(({ charge, cells, name }, i) => [
                name,
                part('at', `for ever, ${charge} charge, ${cells} cells`, limits[i] as Limit, name),
              ]),
            ),
            half: isGaps(half) ? half : part('half', 'for 30 s', half as Limit),
            power: make.work(
              'power',
              powerHeld,
              { motor: u.continuousPower, pack: ever, peak: peak[NORMAL]?.units[u.name]?.power as Value },
              { item: u.name, label: `Continuous power of ${u.name} with this battery` },
            ),
          },
        ]
      }),
    )
  },
})
