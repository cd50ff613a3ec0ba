import { commonPractice, fromMemory, type PartClass } from '../part.ts'
import { SALVAGED_MODULE } from './salvaged-module.ts'

/** Pouch module of a plug-in hybrid; above 60 V when full. */
export const modulePlugIn16s: PartClass = {
  class: 'module-plug-in-16s',
  label: 'plug-in pouch module, 16 in series',
  fills: 'module',
  ranges: {
    mass: [22, 25, 'kg'],
  },
  parts: [
    {
      id: 'module-plug-in-16s-45ah@1',
      class: 'module-plug-in-16s',
      label: 'plug-in pouch module 16s, 45 Ah',
      fields: {
        chemistry: commonPractice('NMC'),
        'cells-in-series': fromMemory('16'),
        'cells-in-parallel': commonPractice('1'),
        'cell-capacity': fromMemory('45 Ah'),
        'cell-resistance': fromMemory('1.15 ± 0.85 mΩ'),
        mass: fromMemory('23.5 ± 1.5 kg'),
        length: fromMemory('370 mm'),
        width: fromMemory('160 mm'),
        height: fromMemory('220 mm'),
        health: commonPractice('77.5 ± 7.5 %'),
      },
      price: { low: 210, high: 650, currency: 'EUR', when: 'used, 2020s' },
      remark: `67.2 V at 4.20 V per cell: above 60 V DC as a single module. Chemistry read from 3.6 to 3.75 V per cell. ${SALVAGED_MODULE}`,
    },
  ],
}
