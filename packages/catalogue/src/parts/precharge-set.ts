import { fromMemory, type PartClass } from '../part.ts'

const REMARK =
  'Power and pulse energy do not follow resistance: both keep the class range. A shorted bus can ask for more than the pulse energy.'

/** Relay and wire-wound resistor that fill the bus capacitors. */
export const prechargeSet: PartClass = {
  class: 'precharge-set',
  label: 'precharge relay and resistor',
  ranges: {
    resistance: [50, 500, 'Ω'],
    power: [25, 100, 'W'],
    energy: [50, 500, 'J'],
    mass: [0.1, 0.3, 'kg'],
  },
  prices: [15, 60],
  parts: [
    {
      id: 'precharge-set-50ohm@1',
      class: 'precharge-set',
      label: 'precharge relay and resistor, 50 Ω',
      fields: {
        'relay-voltage': fromMemory('450 V'),
        'relay-current': fromMemory('10 A'),
        resistance: fromMemory('50 Ω'),
        power: fromMemory('62.5 ± 37.5 W'),
        energy: fromMemory('275 ± 225 J'),
        mass: fromMemory('0.2 ± 0.1 kg'),
      },
      price: { low: 15, high: 60, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'precharge-set-100ohm@1',
      class: 'precharge-set',
      label: 'precharge relay and resistor, 100 Ω',
      fields: {
        'relay-voltage': fromMemory('450 V'),
        'relay-current': fromMemory('10 A'),
        resistance: fromMemory('100 Ω'),
        power: fromMemory('62.5 ± 37.5 W'),
        energy: fromMemory('275 ± 225 J'),
        mass: fromMemory('0.2 ± 0.1 kg'),
      },
      price: { low: 15, high: 60, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'precharge-set-200ohm@1',
      class: 'precharge-set',
      label: 'precharge relay and resistor, 200 Ω',
      fields: {
        'relay-voltage': fromMemory('450 V'),
        'relay-current': fromMemory('10 A'),
        resistance: fromMemory('200 Ω'),
        power: fromMemory('62.5 ± 37.5 W'),
        energy: fromMemory('275 ± 225 J'),
        mass: fromMemory('0.2 ± 0.1 kg'),
      },
      price: { low: 15, high: 60, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'precharge-set-350ohm@1',
      class: 'precharge-set',
      label: 'precharge relay and resistor, 350 Ω',
      fields: {
        'relay-voltage': fromMemory('450 V'),
        'relay-current': fromMemory('10 A'),
        resistance: fromMemory('350 Ω'),
        power: fromMemory('62.5 ± 37.5 W'),
        energy: fromMemory('275 ± 225 J'),
        mass: fromMemory('0.2 ± 0.1 kg'),
      },
      price: { low: 15, high: 60, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'precharge-set-500ohm@1',
      class: 'precharge-set',
      label: 'precharge relay and resistor, 500 Ω',
      fields: {
        'relay-voltage': fromMemory('450 V'),
        'relay-current': fromMemory('10 A'),
        resistance: fromMemory('500 Ω'),
        power: fromMemory('62.5 ± 37.5 W'),
        energy: fromMemory('275 ± 225 J'),
        mass: fromMemory('0.2 ± 0.1 kg'),
      },
      price: { low: 15, high: 60, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
  ],
}
