import { commonPractice, fromMemory, type PartClass } from '../part.ts'

const REMARK =
  'DC-DC power, mass and price follow charging power within the class range (common practice). The class states no voltage window: read the plate.'

/** Charger, DC-DC and fused branches in one housing. */
export const chargerCombined: PartClass = {
  class: 'charger-combined',
  label: 'combined charger, DC-DC and junction box',
  fills: 'charger',
  ranges: {
    power: [3.7, 11, 'kW'],
    'dc-dc-power': [2, 3, 'kW'],
    mass: [10, 20, 'kg'],
  },
  prices: [200, 800],
  parts: [
    {
      id: 'charger-combined-3700w@1',
      class: 'charger-combined',
      label: 'combined charger, 3.7 kW',
      fields: {
        power: fromMemory('3.7 kW'),
        'dc-dc-power': fromMemory('2.25 ± 0.25 kW'),
        phases: commonPractice('1'),
        mass: fromMemory('12.5 ± 2.5 kg'),
        length: fromMemory('450 mm'),
        width: fromMemory('350 mm'),
        height: fromMemory('180 mm'),
      },
      price: { low: 200, high: 500, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
    {
      id: 'charger-combined-7400w@1',
      class: 'charger-combined',
      label: 'combined charger, 7.4 kW',
      fields: {
        power: fromMemory('7.4 kW'),
        'dc-dc-power': fromMemory('2.5 ± 0.5 kW'),
        phases: commonPractice('1'),
        mass: fromMemory('15 ± 5 kg'),
        length: fromMemory('450 mm'),
        width: fromMemory('350 mm'),
        height: fromMemory('180 mm'),
      },
      price: { low: 200, high: 800, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
    {
      id: 'charger-combined-11000w@1',
      class: 'charger-combined',
      label: 'combined charger, 11 kW',
      fields: {
        power: fromMemory('11 kW'),
        'dc-dc-power': fromMemory('2.75 ± 0.25 kW'),
        phases: commonPractice('3'),
        mass: fromMemory('17.5 ± 2.5 kg'),
        length: fromMemory('450 mm'),
        width: fromMemory('350 mm'),
        height: fromMemory('180 mm'),
      },
      price: { low: 500, high: 800, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
  ],
}
