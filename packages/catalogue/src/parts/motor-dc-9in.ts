import { commonPractice, fromMemory, type PartClass } from '../part.ts'

const REMARK =
  'Continuous power, voltage, mass and price follow power within the class range, torque follows it over both frame sizes together, 60 to 200 kW (common practice); more than 400 Nm is met. Continuous torque is peak torque in the ratio of continuous to peak power; base speed is peak power over peak torque (common practice).'

/** Brushed series-wound motor with a 9 in frame. */
export const motorDc9in: PartClass = {
  class: 'motor-dc-9in',
  label: 'series DC motor, 9 in',
  fills: 'motor',
  ranges: {
    'peak-power': [60, 100, 'kW'],
    'continuous-power': [15, 30, 'kW'],
    'peak-torque': [200, 400, 'Nm'],
    'top-speed': [5000, 5500, 'rpm'],
    mass: [60, 70, 'kg'],
    'stated-voltage': [96, 192, 'V'],
  },
  prices: [300, 2500],
  parts: [
    {
      id: 'motor-dc-9in-70kw@1',
      class: 'motor-dc-9in',
      label: 'series DC motor, 9 in, 70 kW class',
      fields: {
        kind: fromMemory('series-dc'),
        'peak-power': fromMemory('70 ± 10 kW'),
        'peak-torque': fromMemory('260 ± 60 Nm'),
        'continuous-power': fromMemory('20.5 ± 5.5 kW'),
        'continuous-torque': commonPractice('76 ± 29 Nm'),
        'base-speed': commonPractice('2600 ± 700 rpm'),
        'stated-voltage': fromMemory('133 ± 37 V'),
        'top-speed': fromMemory('5250 ± 250 rpm'),
        mass: fromMemory('64 ± 4 kg'),
        diameter: fromMemory('230 mm'),
        length: fromMemory('400 mm'),
      },
      price: { low: 400, high: 2000, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
    {
      id: 'motor-dc-9in-90kw@1',
      class: 'motor-dc-9in',
      label: 'series DC motor, 9 in, 90 kW class',
      fields: {
        kind: fromMemory('series-dc'),
        'peak-power': fromMemory('90 ± 10 kW'),
        'peak-torque': fromMemory('270 ± 70 Nm'),
        'continuous-power': fromMemory('24.5 ± 5.5 kW'),
        'continuous-torque': commonPractice('74 ± 26 Nm'),
        'base-speed': commonPractice('3200 ± 900 rpm'),
        'stated-voltage': fromMemory('155 ± 35 V'),
        'top-speed': fromMemory('5250 ± 250 rpm'),
        mass: fromMemory('66 ± 4 kg'),
        diameter: fromMemory('230 mm'),
        length: fromMemory('400 mm'),
      },
      price: { low: 800, high: 2400, currency: 'EUR', when: 'used, 2020s' },
      remark: REMARK,
    },
  ],
}
