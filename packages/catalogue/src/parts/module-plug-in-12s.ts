import { commonPractice, fromMemory, type PartClass } from '../part.ts'
import { SALVAGED_MODULE } from './salvaged-module.ts'

const REMARK =
  'Mass follows capacity within the class range (common practice). Whole variant; half variants exist. Chemistry read from 3.7 to 3.9 V per cell.'

/** Slice of a plug-in hybrid pack: pouch cells with liquid plates between them. */
export const modulePlugIn12s: PartClass = {
  class: 'module-plug-in-12s',
  label: 'plug-in pouch slice, 12 in series',
  fills: 'module',
  ranges: {
    'cell-capacity': [45, 52, 'Ah'],
    mass: [18, 24, 'kg'],
  },
  parts: [
    {
      id: 'module-plug-in-12s-47ah@1',
      class: 'module-plug-in-12s',
      label: 'plug-in pouch slice 12s, 47 Ah class',
      fields: {
        chemistry: commonPractice('NMC'),
        'cells-in-series': fromMemory('12'),
        'cells-in-parallel': commonPractice('1'),
        'cell-capacity': fromMemory('46.5 ± 1.5 Ah'),
        'cell-resistance': fromMemory('1.15 ± 0.85 mΩ'),
        mass: fromMemory('20.25 ± 2.25 kg'),
        length: fromMemory('450 mm'),
        width: fromMemory('180 mm'),
        height: fromMemory('280 mm'),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 160, high: 560, currency: 'EUR', when: 'used, 2020s' },
      remark: `${REMARK} ${SALVAGED_MODULE}`,
    },
    {
      id: 'module-plug-in-12s-50ah@1',
      class: 'module-plug-in-12s',
      label: 'plug-in pouch slice 12s, 50 Ah class',
      fields: {
        chemistry: commonPractice('NMC'),
        'cells-in-series': fromMemory('12'),
        'cells-in-parallel': commonPractice('1'),
        'cell-capacity': fromMemory('50 ± 2 Ah'),
        'cell-resistance': fromMemory('1.15 ± 0.85 mΩ'),
        mass: fromMemory('21.75 ± 2.25 kg'),
        length: fromMemory('450 mm'),
        width: fromMemory('180 mm'),
        height: fromMemory('280 mm'),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 170, high: 610, currency: 'EUR', when: 'used, 2020s' },
      remark: `${REMARK} ${SALVAGED_MODULE}`,
    },
  ],
}
