import { fromMemory, type PartClass } from '../part.ts'

const REMARK = 'Mass and price follow power within the class range (common practice).'

/** High-voltage resistance heater in the heater circuit. */
export const coolantHeater: PartClass = {
  class: 'coolant-heater',
  label: 'coolant heater',
  ranges: {
    power: [5, 7, 'kW'],
    mass: [2, 4, 'kg'],
  },
  prices: [60, 600],
  parts: [
    {
      id: 'coolant-heater-5500w@1',
      class: 'coolant-heater',
      label: 'coolant heater, 5.5 kW class',
      fields: {
        power: fromMemory('5.5 ± 0.5 kW'),
        'lowest-voltage': fromMemory('250 V'),
        'highest-voltage': fromMemory('450 V'),
        mass: fromMemory('2.8 ± 0.8 kg'),
      },
      price: { low: 60, high: 450, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
    {
      id: 'coolant-heater-6500w@1',
      class: 'coolant-heater',
      label: 'coolant heater, 6.5 kW class',
      fields: {
        power: fromMemory('6.5 ± 0.5 kW'),
        'lowest-voltage': fromMemory('250 V'),
        'highest-voltage': fromMemory('450 V'),
        mass: fromMemory('3.2 ± 0.8 kg'),
      },
      price: { low: 200, high: 600, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
  ],
}
