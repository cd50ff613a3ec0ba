import { commonPractice, fromMemory, type PartClass } from '../part.ts'

const REMARK =
  'Continuous power, voltage, mass and price follow power within the class range, torque follows it over both frame sizes together, 60 to 200 kW (common practice); more than 400 Nm is met. Continuous torque is peak torque in the ratio of continuous to peak power; base speed is peak power over peak torque (common practice).'

/** Brushed series-wound motor with a 11 in frame. */
export const motorDc11in: PartClass = {
  class: 'motor-dc-11in',
  label: 'series DC motor, 11 in',
  fills: 'motor',
  ranges: {
    'peak-power': [100, 200, 'kW'],
    'continuous-power': [25, 40, 'kW'],
    'peak-torque': [200, 400, 'Nm'],
    'top-speed': [5000, 5500, 'rpm'],
    mass: [100, 110, 'kg'],
    'stated-voltage': [96, 192, 'V'],
  },
  prices: [300, 2500],
  parts: [
    {
      id: 'motor-dc-11in-125kw@1',
      class: 'motor-dc-11in',
      label: 'series DC motor, 11 in, 125 kW class',
      fields: {
        kind: fromMemory('series-dc'),
        'peak-power': fromMemory('125 ± 25 kW'),
        'peak-torque': fromMemory('300 ± 100 Nm'),
        'continuous-power': fromMemory('30.5 ± 5.5 kW'),
        'continuous-torque': commonPractice('70 ± 30 Nm'),
        'base-speed': commonPractice('4000 ± 1500 rpm'),
        'stated-voltage': fromMemory('133 ± 37 V'),
        'top-speed': fromMemory('5250 ± 250 rpm'),
        mass: fromMemory('104 ± 4 kg'),
        diameter: fromMemory('290 mm'),
        length: fromMemory('450 mm'),
      },
      price: { low: 400, high: 2000, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
    {
      id: 'motor-dc-11in-175kw@1',
      class: 'motor-dc-11in',
      label: 'series DC motor, 11 in, 175 kW class',
      fields: {
        kind: fromMemory('series-dc'),
        'peak-power': fromMemory('175 ± 25 kW'),
        'peak-torque': fromMemory('330 ± 70 Nm'),
        'continuous-power': fromMemory('34.5 ± 5.5 kW'),
        'continuous-torque': commonPractice('65 ± 20 Nm'),
        'base-speed': commonPractice('5100 ± 1300 rpm'),
        'stated-voltage': fromMemory('155 ± 35 V'),
        'top-speed': fromMemory('5250 ± 250 rpm'),
        mass: fromMemory('106 ± 4 kg'),
        diameter: fromMemory('290 mm'),
        length: fromMemory('450 mm'),
      },
      price: { low: 800, high: 2400, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
  ],
}
