import { fromMemory, type PartClass } from '../part.ts'

const REMARK = 'Power, mass and price follow flow within the class range (common practice).'

/** Electric pump for a liquid loop, 12 V. */
export const coolantPump: PartClass = {
  class: 'coolant-pump',
  label: 'coolant pump',
  ranges: {
    flow: [10, 25, 'L/min'],
    pressure: [0.3, 0.8, 'bar'],
    power: [20, 80, 'W'],
    mass: [0.6, 1, 'kg'],
  },
  prices: [30, 200],
  parts: [
    {
      id: 'coolant-pump-12lpm@1',
      class: 'coolant-pump',
      label: 'coolant pump, 10 to 15 L/min',
      fields: {
        flow: fromMemory('12.5 ± 2.5 L/min'),
        pressure: fromMemory('0.55 ± 0.25 bar'),
        power: fromMemory('40 ± 20 W'),
        voltage: fromMemory('12 V'),
        mass: fromMemory('0.73 ± 0.13 kg'),
      },
      price: { low: 30, high: 140, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
    {
      id: 'coolant-pump-17lpm@1',
      class: 'coolant-pump',
      label: 'coolant pump, 15 to 20 L/min',
      fields: {
        flow: fromMemory('17.5 ± 2.5 L/min'),
        pressure: fromMemory('0.55 ± 0.25 bar'),
        power: fromMemory('50 ± 30 W'),
        voltage: fromMemory('12 V'),
        mass: fromMemory('0.8 ± 0.2 kg'),
      },
      price: { low: 30, high: 200, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
    {
      id: 'coolant-pump-22lpm@1',
      class: 'coolant-pump',
      label: 'coolant pump, 20 to 25 L/min',
      fields: {
        flow: fromMemory('22.5 ± 2.5 L/min'),
        pressure: fromMemory('0.55 ± 0.25 bar'),
        power: fromMemory('60 ± 20 W'),
        voltage: fromMemory('12 V'),
        mass: fromMemory('0.87 ± 0.13 kg'),
      },
      price: { low: 90, high: 200, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
  ],
}
