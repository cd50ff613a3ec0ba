import { fromMemory, type PartClass } from '../part.ts'

const REMARK = 'Only one active monitor on a bus. Measures up to about 10 MΩ.'

/** Watches the resistance between the high-voltage system and the body. */
export const insulationMonitor: PartClass = {
  class: 'insulation-monitor',
  label: 'insulation monitor',
  ranges: {
    mass: [0.1, 0.3, 'kg'],
  },
  prices: [50, 400],
  parts: [
    {
      id: 'insulation-monitor-pwm@1',
      class: 'insulation-monitor',
      label: 'insulation monitor, status by PWM',
      fields: {
        'highest-voltage': fromMemory('1000 V'),
        status: fromMemory('PWM'),
        mass: fromMemory('0.2 ± 0.1 kg'),
      },
      price: { low: 50, high: 400, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'insulation-monitor-can@1',
      class: 'insulation-monitor',
      label: 'insulation monitor, status by CAN',
      fields: {
        'highest-voltage': fromMemory('1000 V'),
        status: fromMemory('CAN'),
        mass: fromMemory('0.2 ± 0.1 kg'),
      },
      price: { low: 50, high: 400, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
    {
      id: 'insulation-monitor-relay@1',
      class: 'insulation-monitor',
      label: 'insulation monitor, status by relay contact',
      fields: {
        'highest-voltage': fromMemory('1000 V'),
        status: fromMemory('relay contact'),
        mass: fromMemory('0.2 ± 0.1 kg'),
      },
      price: { low: 50, high: 400, currency: 'EUR', when: 'new, 2020s' },
      remark: REMARK,
    },
  ],
}
