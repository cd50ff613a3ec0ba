import { fromMemory, type PartClass } from '../part.ts'

const REMARK = 'Power, mass and price follow displacement within the class range (common practice). Oil and refrigerant must match.'

/** High-voltage refrigerant compressor. */
export const acCompressor: PartClass = {
  class: 'ac-compressor',
  label: 'electric A/C compressor',
  ranges: {
    displacement: [27, 34, 'cm³'],
    power: [1, 5, 'kW'],
    mass: [5, 8, 'kg'],
  },
  prices: [80, 500],
  parts: [
    {
      id: 'ac-compressor-27cm3@1',
      class: 'ac-compressor',
      label: 'electric A/C compressor, 27 cm³',
      fields: {
        displacement: fromMemory('27 cm³'),
        power: fromMemory('2 ± 1 kW'),
        mass: fromMemory('5.7 ± 0.7 kg'),
      },
      price: { low: 80, high: 280, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
    {
      id: 'ac-compressor-34cm3@1',
      class: 'ac-compressor',
      label: 'electric A/C compressor, 34 cm³',
      fields: {
        displacement: fromMemory('34 cm³'),
        power: fromMemory('4 ± 1 kW'),
        mass: fromMemory('7.2 ± 0.8 kg'),
      },
      price: { low: 280, high: 500, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
  ],
}
