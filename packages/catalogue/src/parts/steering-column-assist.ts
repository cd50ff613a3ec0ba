import { commonPractice, fromMemory, type PartClass } from '../part.ts'

const REMARK = 'Mass and price follow peak current within the class range (common practice). Power is the mean while driving.'

/** Electric assist in the steering column, 12 V. */
export const steeringColumnAssist: PartClass = {
  class: 'steering-column-assist',
  label: 'column assist',
  ranges: {
    'peak-current': [30, 60, 'A'],
    mass: [7, 12, 'kg'],
  },
  prices: [60, 400],
  parts: [
    {
      id: 'steering-column-assist-37a@1',
      class: 'steering-column-assist',
      label: 'column assist, 30 to 45 A peak',
      fields: {
        voltage: fromMemory('12 V'),
        'peak-current': fromMemory('37.5 ± 7.5 A'),
        power: commonPractice('40 W'),
        mass: fromMemory('9 ± 2 kg'),
      },
      price: { low: 60, high: 320, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
    {
      id: 'steering-column-assist-52a@1',
      class: 'steering-column-assist',
      label: 'column assist, 45 to 60 A peak',
      fields: {
        voltage: fromMemory('12 V'),
        'peak-current': fromMemory('52.5 ± 7.5 A'),
        power: commonPractice('40 W'),
        mass: fromMemory('10 ± 2 kg'),
      },
      price: { low: 140, high: 400, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
  ],
}
