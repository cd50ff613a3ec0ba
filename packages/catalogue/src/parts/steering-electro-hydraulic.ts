import { commonPractice, fromMemory, type PartClass } from '../part.ts'

const REMARK = 'Power, mass and price follow peak current within the class range (common practice). Power is the mean while driving.'

/** 12 V motor and pump for a hydraulic rack. */
export const steeringElectroHydraulic: PartClass = {
  class: 'steering-electro-hydraulic',
  label: 'electro-hydraulic steering pump',
  ranges: {
    'peak-current': [40, 90, 'A'],
    power: [150, 400, 'W'],
    mass: [5, 9, 'kg'],
  },
  prices: [50, 400],
  parts: [
    {
      id: 'steering-electro-hydraulic-52a@1',
      class: 'steering-electro-hydraulic',
      label: 'electro-hydraulic steering pump, 40 to 65 A peak',
      fields: {
        voltage: fromMemory('12 V'),
        'peak-current': fromMemory('52.5 ± 12.5 A'),
        power: commonPractice('250 ± 90 W'),
        mass: fromMemory('6.5 ± 1.5 kg'),
      },
      price: { low: 50, high: 320, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
    {
      id: 'steering-electro-hydraulic-77a@1',
      class: 'steering-electro-hydraulic',
      label: 'electro-hydraulic steering pump, 65 to 90 A peak',
      fields: {
        voltage: fromMemory('12 V'),
        'peak-current': fromMemory('77.5 ± 12.5 A'),
        power: commonPractice('310 ± 90 W'),
        mass: fromMemory('7.5 ± 1.5 kg'),
      },
      price: { low: 140, high: 400, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
  ],
}
