import { chargeAtVoltage } from '../../battery/module-lot.ts'
import { countsAsFull, NEARLY } from '../../charging/room.ts'
import type { Figure } from '../../working/value.ts'
import { packModel } from '../pack/pack-model.ts'
import { stopVoltage } from '../pack/voltage-window.ts'
import { study } from '../study.ts'

/** How full the pack is where the charger stops, at rest, and from how full on it counts as full. */
export const fullCharge = study({
  id: 'full',
  stage: 'pack',
  asks: 'How full is the pack where the charger stops?',
  reads: (m, ask) => ({
    pack: ask(packModel),
    openCircuit: m.pack.module.openCircuit,
    setTo: m.charging.charger.setTo,
    stop: stopVoltage(ask),
  }),
  answer: ({ pack, openCircuit, setTo, stop }, make): { reached: Figure; enough: Figure } => {
    const cells = pack.cellsInSeries
    const full = make.work('wanted', chargeAtVoltage, { openCircuit, voltage: stop, cells }, { label: 'Charge where charging is to stop' })
    return {
      reached: make.work('reached', chargeAtVoltage, { openCircuit, voltage: setTo, cells }, { label: 'Charge where the charger stops' }),
      enough: make.work('enough', countsAsFull, { share: NEARLY, full }, { label: 'Charge that counts as full' }),
    }
  },
})
