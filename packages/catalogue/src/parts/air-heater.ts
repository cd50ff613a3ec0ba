import { fromMemory, type PartClass } from '../part.ts'

const REMARK = 'Mass and price follow power within the class range (common practice). The class states no voltage window: read the plate.'

/** High-voltage resistance heater in the air stream. */
export const airHeater: PartClass = {
  class: 'air-heater',
  label: 'air heater',
  ranges: {
    power: [1.5, 5, 'kW'],
    mass: [1, 2.5, 'kg'],
  },
  prices: [40, 300],
  parts: [
    {
      id: 'air-heater-2000w@1',
      class: 'air-heater',
      label: 'air heater, 2 kW class',
      fields: {
        power: fromMemory('2 ± 0.5 kW'),
        mass: fromMemory('1.5 ± 0.5 kg'),
      },
      price: { low: 40, high: 200, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
    {
      id: 'air-heater-3000w@1',
      class: 'air-heater',
      label: 'air heater, 3 kW class',
      fields: {
        power: fromMemory('3 ± 0.5 kW'),
        mass: fromMemory('1.7 ± 0.7 kg'),
      },
      price: { low: 40, high: 280, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
    {
      id: 'air-heater-4250w@1',
      class: 'air-heater',
      label: 'air heater, 4.25 kW class',
      fields: {
        power: fromMemory('4.25 ± 0.75 kW'),
        mass: fromMemory('1.95 ± 0.55 kg'),
      },
      price: { low: 120, high: 300, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
  ],
}
