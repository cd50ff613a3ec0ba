import { fromMemory, type PartClass } from '../part.ts'

const REMARK = 'Current, mass and price follow speed of pumping within the class range (common practice). Vacuum is below atmosphere.'

/** 12 V pump with reservoir for the brake servo. */
export const vacuumPump: PartClass = {
  class: 'vacuum-pump',
  label: 'vacuum pump and tank',
  ranges: {
    'pump-down-time': [5, 20, 's'],
    current: [5, 15, 'A'],
    mass: [1.5, 4, 'kg'],
  },
  prices: [60, 350],
  parts: [
    {
      id: 'vacuum-pump-7s@1',
      class: 'vacuum-pump',
      label: 'vacuum pump and tank, 5 to 10 s to 0.7 bar below atmosphere',
      fields: {
        vacuum: fromMemory('0.7 bar'),
        'pump-down-time': fromMemory('7.5 ± 2.5 s'),
        voltage: fromMemory('12 V'),
        current: fromMemory('11.5 ± 3.5 A'),
        mass: fromMemory('3.2 ± 0.8 kg'),
      },
      price: { low: 160, high: 350, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
    {
      id: 'vacuum-pump-12s@1',
      class: 'vacuum-pump',
      label: 'vacuum pump and tank, 10 to 15 s to 0.7 bar below atmosphere',
      fields: {
        vacuum: fromMemory('0.7 bar'),
        'pump-down-time': fromMemory('12.5 ± 2.5 s'),
        voltage: fromMemory('12 V'),
        current: fromMemory('10 ± 5 A'),
        mass: fromMemory('2.8 ± 1.2 kg'),
      },
      price: { low: 60, high: 350, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
    {
      id: 'vacuum-pump-17s@1',
      class: 'vacuum-pump',
      label: 'vacuum pump and tank, 15 to 20 s to 0.7 bar below atmosphere',
      fields: {
        vacuum: fromMemory('0.7 bar'),
        'pump-down-time': fromMemory('17.5 ± 2.5 s'),
        voltage: fromMemory('12 V'),
        current: fromMemory('8.5 ± 3.5 A'),
        mass: fromMemory('2.4 ± 0.8 kg'),
      },
      price: { low: 60, high: 260, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
  ],
}
