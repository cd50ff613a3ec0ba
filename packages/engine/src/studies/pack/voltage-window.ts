import { seriesVoltage } from '../../battery/pack-arithmetic.ts'
import { meanVoltage } from '../../battery/usable-energy.ts'
import type { Model } from '../../model/model.ts'
import type { Field, Figure } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import { packModel } from './pack-model.ts'

export type VoltageUser = {
  readonly name: string
  readonly lowest: Field
  readonly highest: Field
  readonly about: readonly [lowest: string, highest: string]
}

/** Every part that hangs on the pack voltage, with the range it works in: inverters, charger, what the list of users names. */
export function voltageUsers(m: Model): readonly VoltageUser[] {
  const units = Object.entries(m.drive.units)
  return [
    ...units
      .filter(([, u]) => u.inverter.given)
      .map(([name, u]) =>
        of(units.length > 1 ? `inverter of ${name}` : 'inverter', u.inverter.lowestVoltage, u.inverter.highestVoltage, u.inverter.at),
      ),
    ...(m.charging.charger.given && !m.pack.users['charger']
      ? [of('charger', m.charging.charger.lowestVoltage, m.charging.charger.highestVoltage, m.charging.charger.at)]
      : []),
    ...Object.entries(m.pack.users).map(
      ([name, u]): VoltageUser => ({ name, lowest: u.lowest, highest: u.highest, about: [`${u.at}.lowest`, `${u.at}.highest`] }),
    ),
  ]
}
const of = (name: string, lowest: Field, highest: Field, at: string): VoltageUser => ({
  name,
  lowest,
  highest,
  about: [`${at}.lowest-voltage`, `${at}.highest-voltage`],
})

export type VoltageWindow = { readonly full: Figure; readonly empty: Figure; readonly nominal: Figure; readonly charged: Figure | Gaps }

/** Pack voltage when full, when charging stops, on the mean and when empty. */
export const voltageWindow = study({
  id: 'voltage-window',
  stage: 'pack',
  asks: 'Between which voltages does the pack work?',
  reads: (m, ask) => ({ pack: ask(packModel), chargeTo: maybe(m.pack.chargeTo) }),
  answer: ({ pack, chargeTo }, make): VoltageWindow => {
    return {
      full: pack.highestVoltage,
      empty: pack.lowestVoltage,
      nominal: make.work('nominal', meanVoltage, { openCircuit: pack.openCircuit }, { label: 'Nominal voltage of the pack' }),
      charged: isGaps(chargeTo)
        ? chargeTo
        : make.work(
            'charged',
            seriesVoltage,
            { cells: pack.cellsInSeries, each: chargeTo },
            { label: 'Pack voltage where charging stops' },
          ),
    }
  },
})
