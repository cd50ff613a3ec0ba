import { fromMemory, type PartClass } from '../part.ts'

const REMARK = 'Mass and price follow the number of branches within the class range (common practice).'

/** Busbars and fused branches in one housing. */
export const junctionBox: PartClass = {
  class: 'junction-box',
  label: 'high-voltage junction box',
  ranges: {
    branches: [3, 6, ''],
    mass: [3, 8, 'kg'],
  },
  prices: [100, 600],
  parts: [
    {
      id: 'junction-box-3-branches@1',
      class: 'junction-box',
      label: 'junction box, 3 fused branches',
      fields: {
        branches: fromMemory('3'),
        mass: fromMemory('4.25 ± 1.25 kg'),
      },
      price: { low: 100, high: 350, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'junction-box-4-branches@1',
      class: 'junction-box',
      label: 'junction box, 4 fused branches',
      fields: {
        branches: fromMemory('4'),
        mass: fromMemory('5 ± 2 kg'),
      },
      price: { low: 100, high: 500, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'junction-box-5-branches@1',
      class: 'junction-box',
      label: 'junction box, 5 fused branches',
      fields: {
        branches: fromMemory('5'),
        mass: fromMemory('6 ± 2 kg'),
      },
      price: { low: 200, high: 600, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'junction-box-6-branches@1',
      class: 'junction-box',
      label: 'junction box, 6 fused branches',
      fields: {
        branches: fromMemory('6'),
        mass: fromMemory('6.75 ± 1.25 kg'),
      },
      price: { low: 350, high: 600, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
  ],
}
