import { seriesVoltage } from '../../battery/pack-arithmetic.ts'
import { meanVoltage } from '../../battery/usable-energy.ts'
import type { Model } from '../../model/model.ts'
import type { VoltageUser as VoltageUserOfFile } from '../../model/pack.ts'
import { type Field, type Figure, type Gap, isGap, type Value } from '../../working/value.ts'
import { type Ask, from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { packModel } from './pack-model.ts'

export type VoltageUser = {
  readonly name: string
  readonly lowest: Field
  readonly highest: Field
  readonly about: readonly [lowest: string, highest: string]
}

/** A DC-DC by the name or part it has in the list of users. */
const isDcDc = (name: string, { part }: VoltageUserOfFile): boolean =>
  /dc.?dc/i.test(name) || (!isGap(part) && part.value.startsWith('dc-dc'))
const label = (key: 'lowest' | 'highest'): Gap => ({
  gap: true,
  path: `pack.users.dc-dc.${key}`,
  label: `${key} input voltage of the DC-DC that feeds the 12 V side`,
  until: 'before the part is bought',
  measure: { tool: 'label of the DC-DC, seller’s list or datasheet: its input range in volts', accuracy: 'as stated', minutes: 15 },
})
/** Every car with a traction pack needs one, listed or not. */
const DC_DC: VoltageUser = {
  name: 'dc-dc',
  lowest: label('lowest'),
  highest: label('highest'),
  about: ['pack.users.dc-dc.lowest', 'pack.users.dc-dc.highest'],
}

/**
 * Every part that hangs on the pack voltage, with the range it works in: inverters, charger, what the list of users names, and the DC-DC even where it
 * is not listed yet.
 */
export function voltageUsers(m: Model): readonly VoltageUser[] {
  const units = Object.entries(m.drive.units),
    listed = Object.entries(m.pack.users),
    { part } = m.charging.charger,
    // Some chargers hold the DC-DC too, on the same pack voltage.
    combined = !isGap(part) && part.value.startsWith('charger-combined')
  return [
    ...units
      .filter(([, u]) => u.inverter.given)
      .map(([name, u]) =>
        of(units.length > 1 ? `inverter of ${name}` : 'inverter', u.inverter.lowestVoltage, u.inverter.highestVoltage, u.inverter.at),
      ),
    ...(m.charging.charger.given && !m.pack.users['charger']
      ? [of('charger', m.charging.charger.lowestVoltage, m.charging.charger.highestVoltage, m.charging.charger.at)]
      : []),
    ...(m.pack.module.given && !combined && !listed.some(([name, u]) => isDcDc(name, u)) ? [DC_DC] : []),
    ...listed.map(
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
  reads: (m, ask) => ({
    pack: ask(packModel),
    chargeTo: maybe(m.pack.chargeTo),
    users: voltageUsers(m).map(({ name, lowest, highest }) => ({ name, lowest: maybe(lowest), highest: maybe(highest) })),
  }),
  answer: ({ pack, chargeTo, users }, make): VoltageWindow => {
    const known = (v: Value | Gaps): Value | undefined => (isGaps(v) ? undefined : (v as Value))
    make.table('parts', {
      label: 'Voltage of the pack and of every part on it',
      columns: [
        { key: 'lowest', label: 'lowest', unit: 'V' },
        { key: 'highest', label: 'highest', unit: 'V' },
      ],
      rows: [
        { name: 'pack', cells: { lowest: pack.lowestVoltage, highest: pack.highestVoltage } },
        ...users.map(u => ({
          name: u.name,
          cells: { lowest: known(u.lowest as Value | Gaps), highest: known(u.highest as Value | Gaps) },
        })),
      ],
    })
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

/** Where charging is to stop: what the file types for a cell, else the highest voltage of the cells. Never above that. */
export const stopVoltage = (ask: Ask): Figure | Gaps =>
  from(ask(voltageWindow), ({ full, charged }) => (isGaps(charged) || charged.value > full.value ? full : charged))
