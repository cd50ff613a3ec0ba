import { batteryUnderPull, drawTogether, peakDraw, powerFromBattery } from '../../drive/battery-pull.ts'
import { baseSpeedAtVoltage } from '../../drive/envelope.ts'
import { lossAt } from '../../drive/motor-loss.ts'
import type { Figure, Value } from '../../working/value.ts'
import { packModel } from '../pack/pack-model.ts'
import { from, type Gaps, isGaps, study } from '../study.ts'
import { driveUnits } from './drive-units.ts'
import { CHARGES, POINTS, TEMPERATURES } from './operating-points.ts'
import type { UnitFigures } from './unit-figures.ts'

export type FromBattery = {
  readonly voltage: Figure
  readonly current: Figure
  readonly units: Readonly<Record<string, { readonly power: Figure; readonly baseSpeed: Figure }>>
}

/** What the battery lets the motors do: full, half and low charge, cells at −10, 20 and 40 °C. */
export const batteryPull = study({
  id: 'battery-pull',
  stage: 'drive',
  asks: 'What does the battery leave of the motors’ power, by charge and temperature?',
  reads: (m, ask) => ({
    pack: ask(packModel),
    units: ask(driveUnits),
    ready: Object.keys(m.drive.units).map(name =>
      from(ask(driveUnits), d => {
        const u = d.units[name] as UnitFigures | Gaps
        return isGaps(u) ? u : { name }
      }),
    ),
  }),
  answer: ({ pack, units, ready }, make): Readonly<Record<string, FromBattery>> => {
    const list = ready.map(r => units.units[r.name] as UnitFigures)
    const draws = list.map(u => {
      const loss = make.work(
        'peak-loss',
        lossAt,
        { losses: u.losses, factor: u.lossFactor, speed: u.baseSpeed, torque: u.peakTorque },
        { item: u.name, label: `Loss of ${u.name} at full pull` },
      )
      return make.work(
        'draw',
        peakDraw,
        { power: u.peakPower, loss, stated: u.statedVoltage },
        { item: u.name, label: `Battery current of ${u.name} at full pull` },
      )
    })
    const draw: Value =
      draws.length === 1
        ? (draws[0] as Value)
        : make.work('draw-together', drawTogether, { currents: draws }, { label: 'Battery current of all motors at full pull' })
    const out: Record<string, FromBattery> = {}
    for (const { charge, cells, name } of POINTS) {
      const under = make.all(
        '',
        batteryUnderPull,
        {
          draw,
          openCircuit: pack.openCircuit,
          resistance: pack.resistance,
          factor: pack.resistanceFactor,
          branch: pack.branchResistance,
          cold: pack.coldFactor,
          charge: CHARGES[charge],
          temperature: TEMPERATURES[cells],
          lowest: pack.lowestVoltage,
          most: pack.held.peak,
        },
        {
          item: name,
          labels: {
            voltage: `Battery voltage at full pull, ${charge} charge, ${cells} cells`,
            current: `Battery current at full pull, ${charge} charge, ${cells} cells`,
          },
        },
      ).figures
      out[name] = {
        ...under,
        units: Object.fromEntries(
          list.map((u, i) => {
            const item = `${u.name} ${name}`
            return [
              u.name,
              {
                power: make.work(
                  'power',
                  powerFromBattery,
                  {
                    power: u.peakPower,
                    voltage: under.voltage,
                    stated: u.statedVoltage,
                    current: under.current,
                    draw: draws.length === 1 ? (draws[i] as Value) : draw,
                  },
                  { item, label: `Power of ${u.name}, ${charge} charge, ${cells} cells` },
                ),
                baseSpeed: make.work(
                  'base-speed',
                  baseSpeedAtVoltage,
                  { baseSpeed: u.baseSpeed, voltage: under.voltage, stated: u.statedVoltage },
                  { item, label: `Base speed of ${u.name}, ${charge} charge, ${cells} cells` },
                ),
              },
            ]
          }),
        ),
      }
    }
    make.table('by-charge', {
      label: 'Motors at full pull by charge and temperature of the cells',
      columns: [
        { key: 'voltage', label: 'battery voltage', unit: 'V' },
        { key: 'current', label: 'battery current', unit: 'A' },
        ...list.flatMap(u => [
          { key: `${u.name} power`, label: `power of ${u.name}`, unit: 'W' },
          { key: `${u.name} base`, label: `base speed of ${u.name}`, unit: 'rad/s', shows: 'rotational speed' },
        ]),
      ],
      rows: POINTS.map(({ name }) => {
        const p = out[name] as FromBattery
        return {
          name,
          cells: {
            voltage: p.voltage,
            current: p.current,
            ...Object.fromEntries(
              list.flatMap(u => [
                [`${u.name} power`, p.units[u.name]?.power],
                [`${u.name} base`, p.units[u.name]?.baseSpeed],
              ]),
            ),
          },
        }
      }),
    })
    return out
  },
})
