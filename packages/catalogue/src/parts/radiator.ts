import { commonPractice, fromMemory, type PartClass } from '../part.ts'

const REMARK = 'Mass and price follow conductance within the class range (common practice). Size is the core; length is across the car.'

/** Radiator core about 300 × 300 × 32 mm with a fan. */
export const radiator: PartClass = {
  class: 'radiator',
  label: 'radiator with fan',
  ranges: {
    conductance: [150, 350, 'W/K'],
    mass: [2, 4, 'kg'],
  },
  prices: [60, 250],
  parts: [
    {
      id: 'radiator-180w-per-k@1',
      class: 'radiator',
      label: 'radiator with fan, 180 W/K class',
      fields: {
        conductance: fromMemory('180 ± 30 W/K'),
        'fan-power': commonPractice('150 W'),
        'fan-start-power': commonPractice('300 W'),
        mass: fromMemory('2.6 ± 0.6 kg'),
        length: fromMemory('300 mm'),
        width: fromMemory('32 mm'),
        height: fromMemory('300 mm'),
      },
      price: { low: 60, high: 180, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'radiator-250w-per-k@1',
      class: 'radiator',
      label: 'radiator with fan, 250 W/K class',
      fields: {
        conductance: fromMemory('250 ± 40 W/K'),
        'fan-power': commonPractice('150 W'),
        'fan-start-power': commonPractice('300 W'),
        mass: fromMemory('3 ± 1 kg'),
        length: fromMemory('300 mm'),
        width: fromMemory('32 mm'),
        height: fromMemory('300 mm'),
      },
      price: { low: 60, high: 250, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'radiator-320w-per-k@1',
      class: 'radiator',
      label: 'radiator with fan, 320 W/K class',
      fields: {
        conductance: fromMemory('320 ± 30 W/K'),
        'fan-power': commonPractice('150 W'),
        'fan-start-power': commonPractice('300 W'),
        mass: fromMemory('3.4 ± 0.6 kg'),
        length: fromMemory('300 mm'),
        width: fromMemory('32 mm'),
        height: fromMemory('300 mm'),
      },
      price: { low: 130, high: 250, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
  ],
}
