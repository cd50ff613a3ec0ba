import { fromMemory, type PartClass } from '../part.ts'

const REMARK = 'Reads both directions.'

/** Measures the pack current both ways. */
export const currentSensor: PartClass = {
  class: 'current-sensor',
  label: 'pack current sensor',
  ranges: {
    mass: [0.1, 0.3, 'kg'],
  },
  prices: [20, 150],
  parts: [
    {
      id: 'current-sensor-hall-500a@1',
      class: 'current-sensor',
      label: 'current sensor, Hall effect, ±500 A',
      fields: {
        current: fromMemory('500 A'),
        principle: fromMemory('Hall effect'),
        mass: fromMemory('0.2 ± 0.1 kg'),
      },
      price: { low: 20, high: 150, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'current-sensor-shunt-500a@1',
      class: 'current-sensor',
      label: 'current sensor, shunt, ±500 A',
      fields: {
        current: fromMemory('500 A'),
        principle: fromMemory('shunt'),
        mass: fromMemory('0.2 ± 0.1 kg'),
      },
      price: { low: 20, high: 150, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
  ],
}
