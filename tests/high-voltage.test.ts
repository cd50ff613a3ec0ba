import { describe, expect, it } from 'vitest'
import { figuresOf, outcomes, value } from './asked.ts'
import { CARS } from './cars.ts'

const P = 'high-voltage.parts.',
  W = 'high-voltage.wires.'
type Spoiled = readonly [what: string, edits: Readonly<Record<string, string | null>>, rule: string, item: string]
/** One circuit spoiled in nineteen ways, and what catches each. */
const SPOILED: readonly Spoiled[] = [
  ['a wire is missing', { [`${W}w11`]: null }, 'circuit-wired', 'main-plus out'],
  ['a wire goes to an end the part does not have', { [`${W}w11.from-end`]: 'plus' }, 'circuit-wired', 'w11'],
  [
    'a box of the pack is left out',
    { [`${W}w08.to`]: 'fuse-front', [`${W}w08.to-end`]: 'in', [`${W}w09`]: null, [`${P}front`]: null },
    'circuit-wired',
    'box front',
  ],
  ['the minus pole goes past its contactor', { [`${W}w03.from`]: 'sensor' }, 'both-poles-switched', 'inverter'],
  [
    'the precharge has no contactor of its own',
    { [`${W}w13.from`]: 'main-plus', [`${W}w13.from-end`]: 'in' },
    'both-poles-switched',
    'inverter',
  ],
  [
    'a charger hangs on the batteries themselves',
    { [`${W}w19.from`]: 'sensor', [`${W}w19.from-end`]: 'in' },
    'both-poles-switched',
    'charger',
  ],
  ['a second box has no fuse of its own', { [`${W}w08.from`]: 'tank', [`${W}w08.from-end`]: 'plus' }, 'box-has-own-fuse', 'tank'],
  ['the string goes past the disconnect', { [`${W}w06.from`]: 'fuse-boot' }, 'disconnect-breaks-string', ''],
  [
    'there is no disconnect',
    { [`${W}w06.from`]: 'fuse-boot', [`${W}w05`]: null, [`${P}service-plug`]: null },
    'disconnect-breaks-string',
    '',
  ],
  ['a fuse breaks too little direct voltage', { [`${P}fuse-heater.voltage`]: '125 V' }, 'circuit-voltage', 'fuse-heater'],
  ['welding cable of 100 V', { [`${W}w10.voltage`]: '100 V' }, 'circuit-voltage', 'wire w10'],
  ['a wire too thin for its current', { [`${W}w10.section`]: '6 mm2', [`${W}w10.diameter`]: '6 mm' }, 'wire-carries', 'w10'],
  ['a wire beside the exhaust', { [`${W}w24.around`]: '124 °C' }, 'wire-carries', 'w24'],
  ['a fuse too large for its wire', { [`${P}fuse-charger.rating`]: '160 A' }, 'fuse-guards-wire', 'w18'],
  ['a contactor too small', { [`${P}main-minus.current`]: '80 A' }, 'circuit-carries', 'main-minus'],
  ['no precharge beside a main contactor', { [`${W}w14.to`]: 'minus-bar' }, 'precharge-there', ''],
  ['a bleeder that lets the precharge stall', { [`${P}heater.bleeder`]: '500 Ω' }, 'precharge-there', ''],
  ['a resistor too weak for three tries', { [`${P}precharge-resistor.energy`]: '60 J' }, 'precharge-resistor-lasts', ''],
  [
    'nothing empties the bus',
    Object.fromEntries(['inverter', 'charger', 'dc-dc', 'heater'].map(part => [`${P}${part}.bleeder`, null])),
    'bus-empties',
    '',
  ],
]

describe('a circuit spoiled', () => {
  it.each(SPOILED)('%s: it is caught', (_, edits, rule, item) => {
    expect(outcomes('lapwing', {}, rule)).not.toContain(`${item} failing`.trim())
    expect(outcomes('lapwing', edits, rule)).toContain(`${item} failing`.trim())
  })
})

describe('a fuse', () => {
  it('that breaks less than a short can draw is caught, once nothing assumed leaves room for doubt', () => {
    expect(outcomes('badger', { [`${P}fuse-dc-dc.breaks`]: '10 kA' }, 'fuse-breaks-short')).toEqual(['failing'])
    expect(outcomes('lapwing', { [`${P}fuse-dc-dc.breaks`]: '1 kA' }, 'fuse-breaks-short')).toEqual(['unanswered'])
  })
})

describe('a wire', () => {
  it('of which nobody has told an end leaves open how the circuit hangs together', () => {
    for (const rule of ['circuit-wired', 'both-poles-switched', 'box-has-own-fuse', 'disconnect-breaks-string'])
      expect(outcomes('lapwing', { [`${W}w03.to-end`]: null }, rule)).toEqual(['unanswered'])
  })
  it('of a section no table lists is asked for by the nominal one', () => {
    expect(outcomes('lapwing', { [`${W}w10.section`]: '47 mm2' }, 'wire-carries')).toContain('w10 unanswered')
  })
  it('too thin to come to rest is said to melt, and nothing else breaks', () => {
    const figures = figuresOf('lapwing', 'wire', { [`${W}w10.section`]: '0.5 mm2', [`${W}w10.diameter`]: '2 mm' })
    expect(value(figures, 'wire.current@w10')).toBeGreaterThan(100)
    expect(figures.has('wire.warm.conductor@w10')).toBe(false)
    expect([...figures.values()].every(f => Number.isFinite(f.value))).toBe(true)
  })
  it('of the string carries all that drives, or what is charged, whichever is more', () => {
    const users = figuresOf('otter', 'user'),
      wires = figuresOf('otter', 'wire'),
      draws = [...figuresOf('otter', 'draw')].filter(([id]) => id.startsWith('draw.each@')).map(([, f]) => f.value)
    const driving = [...users.values()].reduce((a, f) => a + f.value, 0) + draws.reduce((a, b) => a + b, 0)
    expect(value(wires, 'wire.current@w01')).toBeCloseTo(Math.max(driving, 30 + 200), 9)
  })
})

describe('the bus', () => {
  it.each(CARS)('of %s fills and empties as a hand calculation has it', car => {
    const f = figuresOf(car, 'bus'),
      [c, r] = [value(f, 'bus.capacitance'), value(f, 'bus.bleeder')],
      volts = Math.sqrt((2 * value(f, 'bus.energy')) / c),
      threshold = Math.max(0.95 * volts, volts - 20)
    expect(value(f, 'bus.down')).toBeCloseTo(r * c * Math.log(volts / 60), 9)
    expect(volts).toBeCloseTo({ lapwing: 403.2, wren: 372.3, badger: 403.2, otter: 403.2 }[car], 6)
    expect(value(f, 'bus.threshold')).toBeCloseTo(threshold, 9)
    // Charging through the resistor, step by step, with the bleeders on.
    const resistor = volts / value(f, 'bus.start.current')
    let u = 0,
      t = 0,
      heat = 0
    const dt = (resistor * c) / 20_000
    while (u < threshold) {
      const i = (volts - u) / resistor
      heat += i * i * resistor * dt
      u += ((i - u / r) / c) * dt
      t += dt
    }
    expect(value(f, 'bus.time') / t).toBeCloseTo(1, 3)
    // The energy leaves the bleeders out, which take a share of a per cent.
    expect(value(f, 'bus.resistor') / heat).toBeCloseTo(1, 2)
  })
})
