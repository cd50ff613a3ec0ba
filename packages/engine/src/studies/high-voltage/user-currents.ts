import { currentOfPower } from '../../battery/pack-sums.ts'
import type { CircuitPart } from '../../model/high-voltage.ts'
import { type Field, type Gap, standard, type Value } from '../../working/value.ts'
import { continuousDraw } from '../pack/continuous-draw.ts'
import { packModel } from '../pack/pack-model.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { partsOf } from './circuit.ts'

/** What one user draws from the bus for hours, driving, or puts into it, charging. */
export type UserCurrent = { readonly drives: Value | Gaps | null; readonly charges: Value | Gaps | null }

const NO_LOSS = standard('user.no-loss', 'no loss outside what is stated', 'P_V', 0, 'W', {
  work: 'definition',
  place: 'power at the terminals',
})
type Read =
  | { readonly by: 'unit'; readonly unit: Field<string> }
  | { readonly by: 'power'; readonly power: Field }
  | { readonly by: 'charging'; readonly current: Field }
const readOf = (p: CircuitPart, charger: Field, inlet: Field): Read | undefined => {
  switch (p.kind) {
    case 'inverter':
      return { by: 'unit', unit: p.unit }
    case 'DC-DC':
    case 'heater':
    case 'compressor':
      return { by: 'power', power: p.power }
    case 'on-board charger':
      return { by: 'charging', current: charger }
    case 'DC inlet':
      return { by: 'charging', current: inlet }
    default:
      return undefined
  }
}
const noUnit = (name: string, unit: string): Gap => ({
  gap: true,
  path: `drive.units.${unit}`,
  label: `drive unit of ${name}`,
  until: 'any time',
})

/** What every user of the circuit draws or puts in for hours: the ground of every wire’s size. */
export const userCurrents = study({
  id: 'user',
  stage: 'high voltage',
  asks: 'What does each part draw from the bus for hours?',
  reads: (m, ask) => ({
    users: partsOf(m).flatMap(([name, p]) => {
      const is = readOf(p, m.charging.charger.current, m.charging.dc.inletCurrent)
      return is === undefined ? [] : [{ name, by: is.by, is: maybe(is) }]
    }),
    pack: maybe({ is: ask(packModel) }),
    draw: maybe({ units: from(ask(continuousDraw), d => d.units) }),
  }),
  answer: ({ users, pack, draw }, make): Readonly<Record<string, UserCurrent>> =>
    Object.fromEntries(
      users.map(({ name, by, is }): [string, UserCurrent] => {
        const none = { drives: null, charges: null }
        if (isGaps(is)) return [name, by === 'charging' ? { ...none, charges: is } : { ...none, drives: is }]
        const read = is as { unit?: Value<string>; power?: Value; current?: Value }
        if (read.current) return [name, { ...none, charges: read.current }]
        if (read.power) {
          if (isGaps(pack)) return [name, { ...none, drives: pack }]
          const { lowestVoltage } = (pack as { is: { lowestVoltage: Value } }).is
          return [
            name,
            {
              ...none,
              drives: make.work(
                'current',
                currentOfPower,
                { power: read.power, loss: NO_LOSS, voltage: lowestVoltage },
                { item: name, label: `Current of ${name}, pack empty` },
              ),
            },
          ]
        }
        if (isGaps(draw)) return [name, { ...none, drives: draw }]
        const unit = (read.unit as Value<string>).value,
          current = (draw as { units: Readonly<Record<string, Value>> }).units[unit]
        return [name, { ...none, drives: current ?? { gaps: [noUnit(name, unit)] } }]
      }),
    ),
})
