import { fromMemory, type PartClass } from '../part.ts'

const REMARK =
  'Capacitance, mass and price follow current within the class range (common practice). Phase current is the peak. Stated voltage is the pack voltage the class is sold for, not a limit.'

/** Three-phase inverter for packs of 96 to 144 V. */
export const inverterLowVoltage: PartClass = {
  class: 'inverter-low-voltage',
  label: 'low-voltage inverter',
  fills: 'inverter',
  ranges: {
    'phase-current': [400, 650, 'A'],
    'stated-voltage': [96, 144, 'V'],
    capacitance: [5, 10, 'mF'],
    mass: [5, 9, 'kg'],
  },
  prices: [800, 3000],
  parts: [
    {
      id: 'inverter-low-voltage-450a@1',
      class: 'inverter-low-voltage',
      label: 'low-voltage inverter, 450 A class',
      fields: {
        'phase-current': fromMemory('450 ± 50 A'),
        'stated-voltage': fromMemory('120 ± 24 V'),
        capacitance: fromMemory('6.75 ± 1.75 mF'),
        mass: fromMemory('6.4 ± 1.4 kg'),
        length: fromMemory('280 mm'),
        width: fromMemory('200 mm'),
        height: fromMemory('90 mm'),
      },
      price: { low: 800, high: 2400, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'inverter-low-voltage-550a@1',
      class: 'inverter-low-voltage',
      label: 'low-voltage inverter, 550 A class',
      fields: {
        'phase-current': fromMemory('550 ± 50 A'),
        'stated-voltage': fromMemory('120 ± 24 V'),
        capacitance: fromMemory('7.75 ± 2.25 mF'),
        mass: fromMemory('7.2 ± 1.8 kg'),
        length: fromMemory('280 mm'),
        width: fromMemory('200 mm'),
        height: fromMemory('90 mm'),
      },
      price: { low: 1000, high: 3000, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'inverter-low-voltage-625a@1',
      class: 'inverter-low-voltage',
      label: 'low-voltage inverter, 625 A class',
      fields: {
        'phase-current': fromMemory('625 ± 25 A'),
        'stated-voltage': fromMemory('120 ± 24 V'),
        capacitance: fromMemory('8.5 ± 1.5 mF'),
        mass: fromMemory('7.8 ± 1.2 kg'),
        length: fromMemory('280 mm'),
        width: fromMemory('200 mm'),
        height: fromMemory('90 mm'),
      },
      price: { low: 1600, high: 3000, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
  ],
}
