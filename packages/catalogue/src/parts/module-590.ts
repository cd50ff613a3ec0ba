import { commonPractice, fromMemory, type PartClass } from '../part.ts'
import { SALVAGED_MODULE } from './salvaged-module.ts'

const BY_ENERGY =
  'Cell capacity is the part of the class energy, 6.2 to 7.4 kWh, that this arrangement can hold (common practice). Mass follows energy within the class range (common practice).'
const STATED =
  'The class states 234 Ah for 8s3p and 156 Ah for 12s2p: cells of 78 Ah. Mass follows energy within the class range (common practice).'

/** Pouch or prismatic module 590 mm long for a cold plate underneath. */
export const module590: PartClass = {
  class: 'module-590',
  label: 'module of the 590 mm form',
  fills: 'module',
  ranges: {
    mass: [28, 33, 'kg'],
  },
  parts: [
    {
      id: 'module-590-8s3p-74ah@1',
      class: 'module-590',
      label: '590 mm module 8s3p, 74 Ah cells',
      fields: {
        chemistry: commonPractice('NMC'),
        'cells-in-series': fromMemory('8'),
        'cells-in-parallel': fromMemory('3'),
        'cell-capacity': fromMemory('74 ± 4 Ah'),
        'cell-resistance': fromMemory('3.45 ± 2.55 mΩ'),
        mass: fromMemory('30 ± 2 kg'),
        length: fromMemory('590 mm'),
        width: fromMemory('225 mm'),
        height: fromMemory('108 mm'),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 500, high: 1730, currency: 'EUR', when: 'used, 2020s' },
      remark: `${BY_ENERGY} ${SALVAGED_MODULE}`,
    },
    {
      id: 'module-590-8s3p-78ah@1',
      class: 'module-590',
      label: '590 mm module 8s3p, 78 Ah cells',
      fields: {
        chemistry: commonPractice('NMC'),
        'cells-in-series': fromMemory('8'),
        'cells-in-parallel': fromMemory('3'),
        'cell-capacity': fromMemory('78 Ah'),
        'cell-resistance': fromMemory('3.45 ± 2.55 mΩ'),
        mass: fromMemory('30.75 ± 2.25 kg'),
        length: fromMemory('590 mm'),
        width: fromMemory('225 mm'),
        height: fromMemory('108 mm'),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 550, high: 1730, currency: 'EUR', when: 'used, 2020s' },
      remark: `${STATED} ${SALVAGED_MODULE}`,
    },
    {
      id: 'module-590-12s2p-78ah@1',
      class: 'module-590',
      label: '590 mm module 12s2p, 78 Ah cells',
      fields: {
        chemistry: commonPractice('NMC'),
        'cells-in-series': fromMemory('12'),
        'cells-in-parallel': fromMemory('2'),
        'cell-capacity': fromMemory('78 Ah'),
        'cell-resistance': fromMemory('2.3 ± 1.7 mΩ'),
        mass: fromMemory('30.75 ± 2.25 kg'),
        length: fromMemory('590 mm'),
        width: fromMemory('225 mm'),
        height: fromMemory('108 mm'),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 550, high: 1720, currency: 'EUR', when: 'used, 2020s' },
      remark: `${STATED} ${SALVAGED_MODULE}`,
    },
    {
      id: 'module-590-12s2p-81ah@1',
      class: 'module-590',
      label: '590 mm module 12s2p, 81 Ah cells',
      fields: {
        chemistry: commonPractice('NMC'),
        'cells-in-series': fromMemory('12'),
        'cells-in-parallel': fromMemory('2'),
        'cell-capacity': fromMemory('81 ± 3 Ah'),
        'cell-resistance': fromMemory('2.3 ± 1.7 mΩ'),
        mass: fromMemory('31.25 ± 1.75 kg'),
        length: fromMemory('590 mm'),
        width: fromMemory('225 mm'),
        height: fromMemory('108 mm'),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 550, high: 1850, currency: 'EUR', when: 'used, 2020s' },
      remark: `${BY_ENERGY} ${SALVAGED_MODULE}`,
    },
  ],
}
