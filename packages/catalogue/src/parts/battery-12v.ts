import { fromMemory, type PartClass } from '../part.ts'

const REMARK = 'Mass and price follow capacity within the class range (common practice). Use half of it if cycled often (common practice).'

/** Lead (AGM) battery of the 12 V system; no cranking current needed. */
export const battery12v: PartClass = {
  class: 'battery-12v',
  label: '12 V lead battery',
  ranges: {
    capacity: [12, 45, 'Ah'],
    mass: [4, 14, 'kg'],
  },
  prices: [40, 150],
  parts: [
    {
      id: 'battery-12v-16ah@1',
      class: 'battery-12v',
      label: '12 V lead battery, 12 to 20 Ah',
      fields: {
        voltage: fromMemory('12 V'),
        capacity: fromMemory('16 ± 4 Ah'),
        mass: fromMemory('7 ± 3 kg'),
      },
      price: { low: 40, high: 110, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'battery-12v-25ah@1',
      class: 'battery-12v',
      label: '12 V lead battery, 20 to 30 Ah',
      fields: {
        voltage: fromMemory('12 V'),
        capacity: fromMemory('25 ± 5 Ah'),
        mass: fromMemory('8.5 ± 4.5 kg'),
      },
      price: { low: 40, high: 140, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'battery-12v-37ah@1',
      class: 'battery-12v',
      label: '12 V lead battery, 30 to 45 Ah',
      fields: {
        voltage: fromMemory('12 V'),
        capacity: fromMemory('37.5 ± 7.5 Ah'),
        mass: fromMemory('10.5 ± 3.5 kg'),
      },
      price: { low: 70, high: 150, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
  ],
}
