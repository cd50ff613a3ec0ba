import { fromMemory, type PartClass, published } from '../part.ts'

const SOURCE = 'technical data of a 12.8 V 100 Ah LFP battery, section 8'

/** LFP battery of the 12 V system with its own management, which must not disconnect while driving. */
export const battery12vLfp: PartClass = {
  class: 'battery-12v-lfp',
  label: '12 V LFP battery',
  ranges: {},
  parts: [
    {
      id: 'battery-12v-lfp-36ah@1',
      class: 'battery-12v-lfp',
      label: '12.8 V LFP battery, 36 Ah',
      fields: {
        voltage: fromMemory('12.8 V'),
        capacity: fromMemory('36 Ah'),
        mass: fromMemory('5 kg'),
      },
      remark: 'No charging below 0 °C unless heated.',
    },
    {
      id: 'battery-12v-lfp-100ah@1',
      class: 'battery-12v-lfp',
      label: '12.8 V LFP battery, 100 Ah',
      fields: {
        voltage: fromMemory('12.8 V'),
        capacity: fromMemory('100 Ah'),
        resistance: published('2 mΩ', SOURCE),
        mass: fromMemory('13 ± 1 kg'),
      },
      remark: 'Resistance over 10 s. No charging below 0 °C unless heated.',
    },
  ],
}
