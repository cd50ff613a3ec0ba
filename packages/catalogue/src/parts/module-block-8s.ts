import { commonPractice, fromMemory, type PartClass } from '../part.ts'
import { SALVAGED_MODULE } from './salvaged-module.ts'

/** Block of eight prismatic cells of the 50 Ah class. */
export const moduleBlock8s: PartClass = {
  class: 'module-block-8s',
  label: 'prismatic block, 8 in series',
  fills: 'module',
  ranges: {
    mass: [13, 15, 'kg'],
  },
  parts: [
    {
      id: 'module-block-8s-50ah@1',
      class: 'module-block-8s',
      label: 'prismatic block 8s, 50 Ah class',
      fields: {
        chemistry: commonPractice('NMC'),
        'cells-in-series': fromMemory('8'),
        'cells-in-parallel': commonPractice('1'),
        'cell-capacity': fromMemory('50 Ah'),
        'cell-resistance': fromMemory('1.15 ± 0.85 mΩ'),
        mass: fromMemory('14 ± 1 kg'),
        length: fromMemory('300 mm'),
        width: fromMemory('180 mm'),
        height: fromMemory('130 mm'),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 110, high: 380, currency: 'EUR', when: 'used, 2020s' },
      remark: `Chemistry read from 3.6 to 3.75 V per cell. ${SALVAGED_MODULE}`,
    },
  ],
}
