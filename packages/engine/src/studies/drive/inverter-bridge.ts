import {
  bridgeEfficiency,
  bridgeLoss,
  bridgePower,
  diodeConduction,
  diodeRecovery,
  phaseAmplitude,
  transistorConduction,
  transistorSwitching,
} from '../../drive/inverter-bridge.ts'
import type { DriveUnit } from '../../model/drive.ts'
import type { Figure } from '../../working/value.ts'
import { type Gaps, isGaps, type Known, type Maker, maybe, study } from '../study.ts'

const reads = ({ inverter: { bridge: b }, motor }: DriveUnit) => ({
  current: b.phaseCurrent,
  modulation: b.modulation,
  powerFactor: b.powerFactor,
  voltage: motor.statedVoltage,
  transistor: { threshold: b.threshold, resistance: b.resistance },
  diode: { threshold: b.diodeThreshold, resistance: b.diodeResistance },
  switching: b.switchingEnergy,
  recovery: b.recoveryEnergy,
  stated: { atCurrent: b.atCurrent, atVoltage: b.atVoltage },
  frequency: b.frequency,
})

/** What an inverter loses by the sheet of its power module, for those who have no efficiency of the whole. */
export const inverterBridges = study({
  id: 'bridge',
  stage: 'drive',
  asks: 'What does the inverter lose, by the sheet of its power module?',
  reads: m => {
    const stated = Object.entries(m.drive.units).filter(([, u]) => u.inverter.bridge.given)
    return { names: stated.map(([name]) => name), units: stated.map(([, u]) => maybe(reads(u))) }
  },
  answer: ({ names, units }, make): { units: Readonly<Record<string, Figure | Gaps>> } => ({
    units: Object.fromEntries(units.map((u, i) => [names[i] as string, isGaps(u) ? u : efficiency(make, u, names[i] as string)])),
  }),
})

type Sheet = Known<ReturnType<typeof reads>>
function efficiency(make: Maker, k: Sheet, item: string): Figure {
  const said = (label: string) => ({ item, label: `${label}, ${item}` })
  const amplitude = make.work('amplitude', phaseAmplitude, { current: k.current }, said('Amplitude of the phase current')),
    { modulation, powerFactor, voltage, frequency } = k,
    wave = { amplitude, modulation, powerFactor },
    switched = { frequency, amplitude, voltage, ...k.stated }
  const loss = make.work(
    'loss',
    bridgeLoss,
    {
      transistor: make.work('transistor', transistorConduction, { ...k.transistor, ...wave }, said('One transistor, conducting')),
      diode: make.work('diode', diodeConduction, { ...k.diode, ...wave }, said('One diode, conducting')),
      switching: make.work('switching', transistorSwitching, { ...switched, energy: k.switching }, said('One transistor, switching')),
      recovery: make.work('recovery', diodeRecovery, { ...switched, energy: k.recovery }, said('One diode, recovering')),
    },
    said('Loss of the bridge'),
  )
  const power = make.work('power', bridgePower, { voltage, ...wave }, said('Power out of the bridge'))
  return make.work('efficiency', bridgeEfficiency, { power, loss }, said('Efficiency of the inverter by its power module'))
}
