import { applyEdits, type Edit } from '@ampwright/conversion'
import type { Assessment, Finding } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { assessText, textOf } from './cars.ts'

/** A car of nothing but what brakes and steering ask: weighed, and not changed. */
const car = (front: number, rear: number, brakes: string, more = ''): string => `schema: 1
car: case
brief:
  person: 75 kg
  conditions: { load: driver, surface: dry, temperature: 21 °C, altitude: 0 m, head-wind: 0 km/h }
  loads: { driver: { people: 1, luggage: 0 kg } }
donor:
  first-registered: 2012-05-01
  body: saloon
  drag-area: 0.62 m2
  rolling-resistance: 0.011
  wheelbase: 2450 mm
  centre-height: 540 mm
  rolling-circumference: ${(2 * Math.PI * 298).toFixed(4)} mm
  tyre: 195/65 R15 91H
  grip: { dry: 0.8, wet: 0.5, snow: 0.2 }
  weighing: { front: ${front} kg, rear: ${rear} kg }
  seats: { front: { places: 2, x: 1150 mm } }
  luggage-x: 2300 mm
  brakes: { front: disc, rear: disc, assist: vacuum, assist-after: vacuum pump, abs: none }
  steering: { assist: hydraulic, assist-after: electro-hydraulic }
brakes:
${brakes}
${more}`
const assessed = (text: string): Assessment => assessText(text).assessment
const figure = (a: Assessment, id: string): number => {
  const found = a.figures.get(id)?.value
  if (typeof found !== 'number')
    throw new Error(`no figure ${id}; there are ${[...a.figures.keys()].filter(k => k.startsWith(id.split('.')[0] as string)).join(', ')}`)
  return found
}
const edited = (text: string, ...edits: Edit[]): string => {
  const done = applyEdits(text, edits)
  if (!done.ok) throw new Error(done.problem.what)
  return done.text
}
const judged = (a: Assessment, rule: string): readonly Finding[] => a.findings.filter(f => f.rule === rule)
const outcome = (a: Assessment, rule: string, item?: string): string | undefined => judged(a, rule).find(f => f.item === item)?.outcome

/** 1200 kg, centre of mass 1.15 m behind the front axle, 72 % of the brake force in front. */
const REAR = (1200 * 1.15) / 2.45
const PRINT =
  '  prints: { one: { when: before, mass: 1200 kg, front-left: 3.6 kN, front-right: 3.6 kN, rear-left: 1.4 kN, rear-right: 1.4 kN } }'

describe('worked examples through the studies', () => {
  it('has both axles of the case car lock together at 0.859', () => {
    const a = assessed(car(1200 - REAR, REAR, PRINT))
    expect(figure(a, 'utilisation.crossing@at kerb')).toBeCloseTo(0.859, 3)
    expect(figure(a, 'stop.lock.first@at kerb dry')).toBeCloseTo(0.7808, 4)
    expect(figure(a, 'stop.lock.efficiency@at kerb dry')).toBeCloseTo(0.976, 3)
    expect(outcome(a, 'front-locks-first', 'at kerb')).toBe('sound')
  })
  it('reads a print: 57.3 %, uneven by 6.4 and 10.9 %, 68.6 % in front, and 48.8 % under 1385 kg, which needs 7878 N', () => {
    const print =
      '  prints: { one: { when: before, mass: 1180 kg, front-left: 2.35 kN, front-right: 2.20 kN, rear-left: 1.10 kN, rear-right: 0.98 kN } }'
    const a = assessed(car(700, 685, print))
    expect(figure(a, 'print.efficiency@one')).toBeCloseTo(0.573, 3)
    expect(figure(a, 'print.front@one')).toBeCloseTo(0.064, 3)
    expect(figure(a, 'print.rear@one')).toBeCloseTo(0.109, 3)
    expect(figure(a, 'print.split@one')).toBeCloseTo(0.686, 3)
    expect(figure(a, 'print.now.efficiency@one')).toBeCloseTo(0.488, 3)
    expect(Math.abs(figure(a, 'print.now.force@one') - 7878)).toBeLessThan(1)
    expect(outcome(a, 'brake-efficiency', 'one')).toBe('failing')
  })
  it('brakes 1400 kg by foot alone with 5.37 m/s², and 2.44 take 227 N', () => {
    const parts =
      '  front: { piston: 54 mm, pad-friction: 0.38, effective-radius: 110 mm }\n  rear: { piston: 34 mm, pad-friction: 0.38, effective-radius: 115 mm }\n  master-cylinder: 22.2 mm\n  pedal-ratio: 4\n  pedal-efficiency: 80 %'
    const a = assessed(car(725, 600, parts))
    expect(figure(a, 'unassisted.deceleration')).toBeCloseTo(5.37, 2)
    expect(Math.abs(figure(a, 'unassisted.pedal') - 227)).toBeLessThan(0.5)
  })
  it('locks behind a valve at 30 bar at 0.754 of the weight on dry, using 94 % of the grip', () => {
    const piston = (perBar: number): string => (Math.sqrt((((perBar * 1e-5 * 0.298) / (4 * 0.38 * 0.11)) * 4) / Math.PI) * 1000).toFixed(4)
    const parts = `  front: { piston: ${piston(92)} mm, pad-friction: 0.38, effective-radius: 110 mm }\n  rear: { piston: ${piston(52)} mm, pad-friction: 0.38, effective-radius: 110 mm }\n  valve: { knee: 30 bar, slope: 0.35 }`
    const a = assessed(car(1200 - REAR, REAR, parts))
    expect(figure(a, 'brake-parts.split')).toBeCloseTo(0.639, 3)
    expect(figure(a, 'utilisation.valve.knee@at kerb')).toBeCloseTo(0.367, 3)
    expect(figure(a, 'stop.lock.first@at kerb dry')).toBeCloseTo(0.754, 3)
    expect(figure(a, 'stop.lock.efficiency@at kerb dry')).toBeCloseTo(0.942, 3)
  })
  it('holds 1700 kg with 4973 N at 400 N on the lever, and 20 % take 263 N', () => {
    const parking =
      '  parking: { axle: rear, by: hand, lever-ratio: 6.5, cable-efficiency: 75 %, shoe-ratio: 4, brake-factor: 1.9, radius: 100 mm }'
    const a = assessed(car(825, 800, parking))
    expect(Math.abs(figure(a, 'parking.hold.hold') - 4973)).toBeLessThan(1)
    expect(Math.abs(figure(a, 'parking.lever@driver') - 263)).toBeLessThan(0.5)
    expect(outcome(a, 'parking-brake-on-slope', 'driver')).toBe('sound')
  })
  it('takes 17.1 kW down 10 % at 50 km/h with 1500 kg, and warms the front rotors by 584 K when the battery is full', () => {
    const a = assessed(
      car(
        725,
        700,
        `${PRINT}\n  front: { rotor-mass: 6.5 kg, cooling: 5.4 W/K }\n  descent: { slope: 10 %, length: 6 km, speed: 50 km/h, load: driver }`,
      ),
    )
    // The case counts rolling resistance on the slope, and as at 20 °C: a few parts in a thousand.
    expect(figure(a, 'brake-heat.hill.power') / 17.1e3).toBeCloseTo(1, 2)
    expect(figure(a, 'brake-heat.alone-rise@front') / 584).toBeCloseTo(1, 2)
  })
  it('turns a front tyre of a 690 kg axle with 111.9 N·m', () => {
    const steering =
      'steering: { tyre-pressure: 220 kPa, arm: 105 mm, rack-travel: 50 mm, wheel-radius: 190 mm, linkage-efficiency: 0.9, gear-efficiency: 0.9 }'
    const a = assessed(car(690 - 75 * (1 - 1.15 / 2.45), 600, PRINT, steering))
    expect(figure(a, 'steering-effort.moment')).toBeCloseTo(111.9, 1)
    expect(figure(a, 'steering-effort.rack')).toBeCloseTo((2 * 111.9) / (0.105 * 0.9), -1)
  })
  it('empties 5.5 l at 0.5 l/s from the air to 30 kPa in 17.6 s, and keeps 2.8 stops from there', () => {
    const vacuum =
      '  vacuum: { volume: 5.5 l, swept: 1.3 l, dead-volume: 0.15 l, pump-speed: 0.5 l/s, least-pressure: 12 kPa, cut-in: 65 kPa, cut-out: 75 kPa, warning: 71.325 kPa, altitude: 0 m }'
    const a = assessed(car(700, 600, vacuum))
    expect(figure(a, 'vacuum.pump-down@at the sea')).toBeCloseTo((5.5 / 0.5) * Math.log((101.325 - 12) / 18), 6)
    expect(figure(a, 'vacuum.stops@at the sea')).toBeCloseTo(2.87, 1)
    expect(outcome(a, 'vacuum-lasts', 'at the sea')).toBe('failing')
  })
})

describe('the brakes of the samples, recomputed another way', () => {
  it.each(['lapwing', 'wren', 'badger', 'otter'] as const)(
    'lock on dry and wet where a pedal pressed harder step by step locks them: %s',
    name => {
      const a = assessed(textOf(name))
      const knee = name === 'wren' ? 28e5 : Number.POSITIVE_INFINITY,
        slope = 0.35
      const kf = figure(a, 'brake-parts.front'),
        kr = figure(a, 'split.rear')
      for (const [road, grip] of [
        ['dry', a.figures.get('stop.lock.first@driver dry')],
        ['wet', a.figures.get('stop.lock.first@driver wet')],
      ] as const) {
        const because = grip?.because as { inputs: Record<string, { value: number }> },
          { rearShare, height, wheelbase } = because.inputs as Record<'rearShare' | 'height' | 'wheelbase', { value: number }>,
          mu = (because.inputs['grip'] as { value: number }).value,
          weight = figure(a, 'load.mass@driver') * 9.80665
        let pressure = 0,
          z = 0
        for (; pressure < 3e7; pressure += 500) {
          const f = kf * pressure,
            r = kr * (pressure <= knee ? pressure : knee + slope * (pressure - knee)),
            now = (f + r) / weight,
            moved = (now * weight * height.value) / wheelbase.value
          if (f > mu * (weight * (1 - rearShare.value) + moved) || r > mu * (weight * rearShare.value - moved)) break
          z = now
        }
        expect(z, road).toBeCloseTo(grip?.value as number, 3)
      }
    },
  )
  it('draws the line of the regulation: 0.1 + 0.7·(k − 0.2) at twenty points', () => {
    const trace = assessed(textOf('lapwing')).traces.get('utilisation.grip@at kerb'),
      allowed = trace?.series.find(s => s.name === 'allowed')?.values as Float64Array
    for (let i = 0; i < 20; i++) {
      const at = 20 + 4 * i
      expect(0.1 + 0.7 * ((allowed[at] as number) - 0.2)).toBeCloseTo(trace?.axis.values[at] as number, 12)
    }
  })
})

describe('what decides', () => {
  const lapwing = textOf('lapwing')
  const AFTER: readonly Edit[] = Object.entries({
    when: 'after',
    mass: '1205 kg',
    'front-left': '2.6 kN',
    'front-right': '2.5 kN',
    'rear-left': '1.0 kN',
    'rear-right': '0.95 kN',
    'pedal-force': '220 N',
  }).map(([key, now]) => ({ path: `brakes.prints.finished.${key}`, now }))
  it('a print of the finished car counts before that of the donor, wherever it stands in the file', () => {
    const a = assessed(edited(lapwing, ...AFTER))
    expect(figure(a, 'utilisation.crossing@at kerb')).toBeGreaterThan(figure(assessed(lapwing), 'utilisation.crossing@at kerb'))
    expect(judged(a, 'brake-efficiency').map(f => f.item)).toEqual(['finished'])
  })
  it('without a print the parts share, and without either it is asked for both', () => {
    const without = assessed(edited(lapwing, { path: 'brakes.prints', now: null }))
    expect(figure(without, 'utilisation.rear-share@at kerb')).toBeGreaterThan(0)
    expect(without.figures.get('split.rear')).toBeUndefined()
    const neither = assessed(edited(lapwing, { path: 'brakes.prints', now: null }, { path: 'brakes.front.piston', now: null }))
    const gaps = neither.gaps.map(g => g.path)
    expect(gaps).toContain('brakes.prints')
    expect(gaps).toContain('brakes.front.piston')
  })
  it('recovery that stays under the pedal breaks the order of a rear-driven car without anti-lock brakes; one that gives way does not', () => {
    expect(judged(assessed(lapwing), 'front-locks-first').every(f => f.outcome === 'sound')).toBe(true)
    const stays = assessed(edited(lapwing, { path: 'brakes.recovery.under-pedal', now: 'stays' }))
    expect(outcome(stays, 'front-locks-first', 'driver, motors braking')).toBe('failing')
  })
  it('front-driven recovery helps the order and costs on the line', () => {
    const a = assessed(edited(textOf('wren'), { path: 'brakes.recovery.under-pedal', now: 'stays' }))
    for (const load of ['at kerb', 'driver', 'two-up']) {
      expect(figure(a, `utilisation.recovering-order.lead@${load}`)).toBeGreaterThan(figure(a, `utilisation.order.lead@${load}`))
      expect(figure(a, `utilisation.recovering-line.room@${load}`)).toBeLessThan(figure(a, `utilisation.line.room@${load}`))
    }
  })
  it('a full battery leaves the friction brakes alone on the hill', () => {
    for (const name of ['lapwing', 'wren', 'badger', 'otter'] as const) {
      const a = assessed(textOf(name))
      for (const axle of ['front', 'rear'])
        expect(figure(a, `brake-heat.alone@${axle}`)).toBeGreaterThan(figure(a, `brake-heat.helped@${axle}`))
    }
  })
  it('a pump that does not reach the vacuum of the warning is failing, not an exception', () => {
    const a = assessed(edited(textOf('wren'), { path: 'brakes.vacuum.least-pressure', now: '60 kPa' }))
    expect(outcome(a, 'vacuum-soon', 'on the highest road')).toBe('failing')
  })
  it('on a pass the same switch leaves the same assist, and the pump less room to reach it', () => {
    const a = assessed(textOf('badger'))
    expect(figure(a, 'vacuum.assist-full@on the highest road')).toBeCloseTo(figure(a, 'vacuum.assist-full@at the sea'), 6)
    expect(figure(a, 'vacuum.reached@on the highest road')).toBeLessThan(figure(a, 'vacuum.reached@at the sea'))
  })
  it('measured effort counts before what is scaled, and that before what is estimated', () => {
    const after = assessed(edited(lapwing, { path: 'steering.effort.standing-after', now: '300 N' }))
    expect(figure(after, 'steering-effort.rolling')).toBeCloseTo(0.36 * 300, 6)
    const estimated = assessed(edited(lapwing, { path: 'steering.effort.standing-before', now: null }))
    expect(figure(estimated, 'steering-effort.rolling')).toBeCloseTo(0.36 * figure(estimated, 'steering-effort.handwheel.rim'), 6)
  })
  it('the Lapwing stays wrong on purpose: neither vacuum nor steering pump is replaced', () => {
    const a = assessed(lapwing)
    expect(outcome(a, 'brake-assist')).toBe('failing')
    expect(outcome(a, 'steering-assist')).toBe('failing')
    expect(judged(a, 'vacuum-lasts').map(f => f.outcome)).toEqual(['does not apply'])
  })
})
