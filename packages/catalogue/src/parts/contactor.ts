import { fromMemory, type PartClass, published } from '../part.ts'

const SHEET_400_A = 'data sheet of a 400 to 500 A contactor'
const SHEET_250_A = 'data sheet of a 250 A contactor'
const REMARK =
  'Mass and price follow current within the class range (common practice). The breaking rating falls with voltage and with reversed current: take it from the sheet.'

/** Sealed contactor for 400 V packs with a 12 V coil. */
export const contactor: PartClass = {
  class: 'contactor',
  label: 'main contactor',
  ranges: {
    current: [200, 500, 'A'],
    mass: [0.4, 1.2, 'kg'],
    'hold-current': [0.3, 1, 'A'],
    'pull-in-current': [2, 4, 'A'],
  },
  prices: [40, 250],
  parts: [
    {
      id: 'contactor-200a@1',
      class: 'contactor',
      label: 'main contactor 400 V, 200 A',
      fields: {
        voltage: fromMemory('400 V'),
        current: fromMemory('200 A'),
        'coil-voltage': fromMemory('12 V'),
        'pull-in-current': fromMemory('3 ± 1 A'),
        'hold-current': fromMemory('0.65 ± 0.35 A'),
        mass: fromMemory('0.6 ± 0.2 kg'),
      },
      price: { low: 40, high: 140, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'contactor-300a@1',
      class: 'contactor',
      label: 'main contactor 400 V, 300 A',
      fields: {
        voltage: fromMemory('400 V'),
        current: fromMemory('300 A'),
        'coil-voltage': fromMemory('12 V'),
        'pull-in-current': fromMemory('3 ± 1 A'),
        'hold-current': fromMemory('0.65 ± 0.35 A'),
        mass: fromMemory('0.725 ± 0.325 kg'),
      },
      price: { low: 40, high: 220, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'contactor-400a@1',
      class: 'contactor',
      label: 'main contactor 400 V, 400 A',
      fields: {
        voltage: fromMemory('400 V'),
        current: fromMemory('400 A'),
        'contact-resistance': published('0.3 mΩ', SHEET_400_A),
        'coil-voltage': fromMemory('12 V'),
        'pull-in-current': fromMemory('3 ± 1 A'),
        'hold-current': fromMemory('0.65 ± 0.35 A'),
        mass: fromMemory('0.875 ± 0.325 kg'),
      },
      price: { low: 80, high: 240, currency: 'EUR', when: 'new, 2020s' },
      remark:
        'Mass and price follow current within the class range (common practice). The breaking rating falls with voltage and with reversed current: take it from the sheet. Contact resistance is the highest drop, 60 mV at 200 A; 400 A asks for 150 mm² of bar at 65 °C.',
    },
    {
      id: 'contactor-500a@1',
      class: 'contactor',
      label: 'main contactor 400 V, 500 A',
      fields: {
        voltage: fromMemory('400 V'),
        current: fromMemory('500 A'),
        'coil-voltage': fromMemory('12 V'),
        'pull-in-current': fromMemory('3 ± 1 A'),
        'hold-current': fromMemory('0.65 ± 0.35 A'),
        mass: fromMemory('1 ± 0.2 kg'),
      },
      price: { low: 140, high: 240, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'contactor-250a@1',
      class: 'contactor',
      label: 'main contactor 400 V, 250 A, with stated overloads',
      fields: {
        voltage: published('400 V', SHEET_250_A),
        current: published('250 A', SHEET_250_A),
        'peak-current': published('600 A', SHEET_250_A),
        'peak-time': published('60 s', SHEET_250_A),
        'break-current': published('2000 A', SHEET_250_A),
        'coil-voltage': fromMemory('12 V'),
        'pull-in-current': fromMemory('3 ± 1 A'),
        'hold-current': fromMemory('0.65 ± 0.35 A'),
        mass: fromMemory('0.675 ± 0.275 kg'),
      },
      price: { low: 40, high: 180, currency: 'EUR', when: 'new, 2020s' },
      remark:
        '250 A at 85 °C with 50 mm² cable; 300 A for 7 min, 600 A for 1 min, 6000 A for 25 ms. Breaks 2000 A once at 400 V, forward; replace it afterwards. Mass and price follow current within the class range (common practice).',
    },
  ],
}
