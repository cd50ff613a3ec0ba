import { fromMemory, type PartClass } from '../part.ts'

const REMARK = 'Master and slaves together. Mass and price keep the class range.'

/** Master and slaves that watch every series group. */
export const bms: PartClass = {
  class: 'bms',
  label: 'battery management system',
  ranges: {
    cells: [96, 108, ''],
    'balance-current': [50, 300, 'mA'],
    mass: [0.5, 2, 'kg'],
  },
  prices: [200, 1500],
  parts: [
    {
      id: 'bms-96-cells@1',
      class: 'bms',
      label: 'battery management system, 96 series groups',
      fields: {
        cells: fromMemory('96'),
        'balance-current': fromMemory('175 ± 125 mA'),
        mass: fromMemory('1.25 ± 0.75 kg'),
      },
      price: { low: 200, high: 1500, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'bms-102-cells@1',
      class: 'bms',
      label: 'battery management system, 102 series groups',
      fields: {
        cells: fromMemory('102'),
        'balance-current': fromMemory('175 ± 125 mA'),
        mass: fromMemory('1.25 ± 0.75 kg'),
      },
      price: { low: 200, high: 1500, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'bms-108-cells@1',
      class: 'bms',
      label: 'battery management system, 108 series groups',
      fields: {
        cells: fromMemory('108'),
        'balance-current': fromMemory('175 ± 125 mA'),
        mass: fromMemory('1.25 ± 0.75 kg'),
      },
      price: { low: 200, high: 1500, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
  ],
}
