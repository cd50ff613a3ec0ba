import { commonPractice, fromMemory, type PartClass } from '../part.ts'
import { SALVAGED_MODULE } from './salvaged-module.ts'

const REMARK =
  'Mass follows capacity within the class range (common practice). Chemistry read from 3.7 to 3.8 V per cell; the smallest are blends with LMO.'

/** Four pouch cells in a flat aluminium can, two in series and two in parallel. */
export const moduleFlatCan: PartClass = {
  class: 'module-flat-can',
  label: 'flat-can pouch module, 2s2p',
  fills: 'module',
  ranges: {
    'cell-capacity': [30, 65, 'Ah'],
    mass: [3.6, 4.2, 'kg'],
  },
  parts: [
    {
      id: 'module-flat-can-65ah@1',
      class: 'module-flat-can',
      label: 'flat-can module 2s2p, 65 Ah class',
      fields: {
        chemistry: commonPractice('NMC'),
        'cells-in-series': fromMemory('2'),
        'cells-in-parallel': fromMemory('2'),
        'cell-capacity': fromMemory('32.5 ± 2.5 Ah'),
        'cell-resistance': fromMemory('2.3 ± 1.7 mΩ'),
        mass: fromMemory('3.775 ± 0.175 kg'),
        length: fromMemory('303 mm'),
        width: fromMemory('223 mm'),
        height: fromMemory('35 mm'),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 40, high: 130, currency: 'EUR', when: 'used, 2020s' },
      remark: `${REMARK} ${SALVAGED_MODULE}`,
    },
    {
      id: 'module-flat-can-80ah@1',
      class: 'module-flat-can',
      label: 'flat-can module 2s2p, 80 Ah class',
      fields: {
        chemistry: commonPractice('NMC'),
        'cells-in-series': fromMemory('2'),
        'cells-in-parallel': fromMemory('2'),
        'cell-capacity': fromMemory('40 ± 5 Ah'),
        'cell-resistance': fromMemory('2.3 ± 1.7 mΩ'),
        mass: fromMemory('3.825 ± 0.225 kg'),
        length: fromMemory('303 mm'),
        width: fromMemory('223 mm'),
        height: fromMemory('35 mm'),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 40, high: 170, currency: 'EUR', when: 'used, 2020s' },
      remark: `${REMARK} ${SALVAGED_MODULE}`,
    },
    {
      id: 'module-flat-can-100ah@1',
      class: 'module-flat-can',
      label: 'flat-can module 2s2p, 100 Ah class',
      fields: {
        chemistry: commonPractice('NMC'),
        'cells-in-series': fromMemory('2'),
        'cells-in-parallel': fromMemory('2'),
        'cell-capacity': fromMemory('50 ± 5 Ah'),
        'cell-resistance': fromMemory('2.3 ± 1.7 mΩ'),
        mass: fromMemory('3.925 ± 0.275 kg'),
        length: fromMemory('303 mm'),
        width: fromMemory('223 mm'),
        height: fromMemory('35 mm'),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 50, high: 210, currency: 'EUR', when: 'used, 2020s' },
      remark: `${REMARK} ${SALVAGED_MODULE}`,
    },
    {
      id: 'module-flat-can-120ah@1',
      class: 'module-flat-can',
      label: 'flat-can module 2s2p, 120 Ah class',
      fields: {
        chemistry: commonPractice('NMC'),
        'cells-in-series': fromMemory('2'),
        'cells-in-parallel': fromMemory('2'),
        'cell-capacity': fromMemory('60 ± 5 Ah'),
        'cell-resistance': fromMemory('2.3 ± 1.7 mΩ'),
        mass: fromMemory('4 ± 0.2 kg'),
        length: fromMemory('303 mm'),
        width: fromMemory('223 mm'),
        height: fromMemory('35 mm'),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 70, high: 250, currency: 'EUR', when: 'used, 2020s' },
      remark: `${REMARK} ${SALVAGED_MODULE}`,
    },
  ],
}
