import { brakeCooling } from '../assumptions.ts'
import { choice, group, mapOf, type QuantityField, quantity, reference } from '../schema/field.ts'
import { PART } from './tools.ts'

// Tools, accuracies and times in this file are common practice.
const ROLLERS = { tool: 'roller brake tester; its print says all of this', accuracy: '± 3 %', minutes: 20 }
const GAUGE = { tool: 'caliper gauge, wheel off', accuracy: '± 0.5 mm', minutes: 30 }
const TAPE = { tool: 'tape', accuracy: '± 3 mm', minutes: 10 }
const SCALE = { tool: 'kitchen or hanging scale, the rotor off', accuracy: '± 0.1 kg', minutes: 40 }
const VACUUM = { tool: 'vacuum gauge on the booster hose', accuracy: '± 2 kPa', minutes: 10 }
const FILL = { tool: 'fill with water and weigh, or the datasheet', accuracy: '± 0.1 l', minutes: 20 }
const LINE = {
  tool: 'pressure gauge on a bleed nipple, force gauge on the pedal, booster without vacuum',
  accuracy: '± 5 %',
  minutes: 40,
}
const BEFORE = 'before the engine comes out' as const

const force = (label: string, symbol: string): QuantityField<'force'> =>
  quantity('force', label, symbol, { least: 1, most: 50_000, measure: ROLLERS })
const diameter = (label: string, symbol: string): QuantityField<'length'> =>
  quantity('length', label, symbol, { least: 0.005, most: 0.2, measure: GAUGE })

/** Both kinds have their fields here: the donor’s choice of disc or drum says which are read. */
const wheelBrake = (axle: 'front' | 'rear') =>
  group(`${axle} brakes`, {
    piston: diameter(`${axle} caliper piston, diameter`, 'd_p'),
    pistons: quantity('count', `${axle} caliper pistons that press from one side`, 'n_p', {
      least: 1,
      most: 4,
      measure: GAUGE,
      says: 'Left out: one.',
    }),
    'pad-friction': quantity('ratio', `friction of the ${axle} pads`, 'μ_p', { least: 0.1, most: 0.6, measure: PART }),
    'effective-radius': quantity('length', `effective radius of a ${axle} disc`, 'r_e', {
      least: 0.03,
      most: 0.3,
      measure: { tool: 'tape: middle of what the pads rub on', accuracy: '± 2 mm', minutes: 20 },
    }),
    'wheel-cylinder': diameter(`${axle} wheel cylinder, diameter`, 'd_w'),
    'brake-factor': quantity('ratio', `brake factor of a ${axle} drum`, 'C', { least: 0.5, most: 10, measure: PART }),
    'drum-radius': quantity('length', `radius of a ${axle} drum`, 'r_d', { least: 0.05, most: 0.3, measure: GAUGE }),
    'rotor-mass': quantity('mass', `mass of one ${axle} disc or drum`, 'm_r', { least: 0.5, most: 50, measure: SCALE }),
    cooling: quantity('thermal conductance', `cooling of one ${axle} disc or drum by the air`, 'G', {
      least: 0.5,
      most: 50,
      assume: brakeCooling,
      measure: { tool: 'two readings of a contact thermometer while it cools on the road', accuracy: '± 20 %', minutes: 60 },
    }),
  })

/** Brakes of the finished car: what the tester printed, what they are made of, what assists and holds them. */
export const brakes = group(
  'brakes',
  {
    prints: mapOf(
      'prints of the roller tester',
      'print',
      group('print', {
        when: choice('taken before or after the conversion', ['before', 'after'], { until: BEFORE, measure: ROLLERS }),
        mass: quantity('mass', 'mass that stood on the rollers', 'm_t', { least: 1, measure: ROLLERS }),
        'front-left': force('brake force, front left', 'F_FL'),
        'front-right': force('brake force, front right', 'F_FR'),
        'rear-left': force('brake force, rear left', 'F_RL'),
        'rear-right': force('brake force, rear right', 'F_RR'),
        'pedal-force': quantity('force', 'pedal force at it', 'F_p', { least: 1, most: 1000, measure: ROLLERS }),
        'parking-left': force('parking brake, left', 'F_HL'),
        'parking-right': force('parking brake, right', 'F_HR'),
      }),
      'Wheels that locked show the grip of the rollers: take the forces just before.',
    ),
    front: wheelBrake('front'),
    rear: wheelBrake('rear'),
    'master-cylinder': diameter('master cylinder, diameter', 'd_m'),
    'pedal-ratio': quantity('ratio', 'pedal ratio', 'i_p', { least: 1, most: 10, measure: TAPE }),
    'pedal-efficiency': quantity('share', 'efficiency of pedal and master cylinder', 'η_p', { least: 0.3, most: 1, measure: LINE }),
    valve: group('valve before the rear brakes', {
      knee: quantity('pressure', 'line pressure at which the valve begins to hold back', 'p_k', {
        least: 1e5,
        most: 2e7,
        measure: { tool: 'two pressure gauges, one behind the valve', accuracy: '± 1 bar', minutes: 40 },
        says: 'Left out: there is no valve.',
      }),
      slope: quantity('share', 'part of the pressure it lets through above that', 's', {
        least: 0,
        most: 1,
        measure: { tool: 'two pressure gauges, one behind the valve', accuracy: '± 0.03', minutes: 40 },
        says: 'Left out: there is no valve.',
      }),
    }),
    booster: group('vacuum booster', {
      diameter: quantity('length', 'diameter of the booster', 'D_b', {
        least: 0.1,
        most: 0.35,
        measure: TAPE,
        says: 'Left out: the effective area counts.',
      }),
      area: quantity('area', 'effective area of the booster, both diaphragms of a tandem', 'A_b', {
        least: 0.005,
        most: 0.1,
        measure: PART,
        says: 'Left out: worked out from the diameter.',
      }),
      gain: quantity('ratio', 'force out over force in below its knee', 'B', { least: 1.5, most: 12, measure: PART }),
    }),
    vacuum: group('vacuum', {
      volume: quantity('volume', 'tank, hoses and booster together', 'V', { least: 1e-4, most: 0.05, measure: FILL }),
      swept: quantity('volume', 'air one hard stop lets in', 'V_s', {
        least: 1e-5,
        most: 0.01,
        measure: { tool: 'gauge on the tank, pump off: what one hard stop costs', accuracy: '± 10 %', minutes: 20 },
      }),
      'dead-volume': quantity('volume', 'dead volume behind the diaphragm', 'V_d', { least: 1e-6, most: 0.002, measure: PART }),
      'pump-speed': quantity('flow', 'pumping speed', 'S', { least: 1e-6, most: 0.02, measure: PART }),
      'least-pressure': quantity('pressure', 'lowest absolute pressure the pump reaches', 'p_u', { least: 100, most: 9e4, measure: PART }),
      'cut-in': quantity('pressure', 'vacuum at which the pump starts, below the air', 'Δp_in', {
        least: 1000,
        most: 1e5,
        measure: VACUUM,
      }),
      'cut-out': quantity('pressure', 'vacuum at which the pump stops, below the air', 'Δp_out', {
        least: 1000,
        most: 1e5,
        measure: VACUUM,
      }),
      warning: quantity('pressure', 'vacuum below which the driver is warned, below the air', 'Δp_w', {
        least: 1000,
        most: 1e5,
        measure: VACUUM,
      }),
      'overrun-told': choice('a pump that does not come to rest is told of', ['yes', 'no']),
      altitude: quantity('altitude', 'highest road it is driven on', 'h_p', { least: -500, most: 6000 }),
    }),
    'electric-booster': group('electric booster', {
      force: quantity('force', 'assist at most', 'F_a', { least: 100, most: 20_000, measure: PART }),
      'rod-speed': quantity('speed', 'speed of its rod in a hard stop', 'v_r', { least: 0.005, most: 1, measure: PART }),
      efficiency: quantity('share', 'efficiency of motor, gear and screw', 'η_b', { least: 0.2, most: 1, measure: PART }),
      fuse: quantity('current', 'fuse of the electric booster', 'I_f', { least: 1, most: 300, measure: PART }),
    }),
    parking: group('parking brake', {
      axle: choice('axle the parking brake holds', ['front', 'rear'], {
        measure: { tool: 'look at the car', accuracy: 'exact', minutes: 5 },
      }),
      by: choice('parking brake worked by', ['hand', 'foot'], { measure: { tool: 'look at the car', accuracy: 'exact', minutes: 1 } }),
      'lever-ratio': quantity('ratio', 'ratio of the lever', 'i_h', { least: 1, most: 30, measure: TAPE }),
      'cable-efficiency': quantity('share', 'efficiency of the cables', 'η_c', {
        least: 0.2,
        most: 1,
        measure: { tool: 'spring balances on both ends of the cable', accuracy: '± 5 %', minutes: 30 },
      }),
      'shoe-ratio': quantity('ratio', 'ratio of the lever at the shoe or caliper', 'i_s', { least: 0.5, most: 30, measure: TAPE }),
      'brake-factor': quantity('ratio', 'brake factor of the parking brake', 'C_h', {
        least: 0.2,
        most: 10,
        measure: PART,
        says: 'A disc has twice its friction.',
      }),
      radius: quantity('length', 'radius at which the parking brake rubs', 'r_h', { least: 0.03, most: 0.3, measure: GAUGE }),
    }),
    'abs-sensors': choice('wheel sensors of the anti-lock brakes', ['where they were', 'moved with their rings', 'taken out'], {
      measure: { tool: 'look at the car', accuracy: 'exact', minutes: 10 },
      says: 'Asked only where the car has anti-lock brakes.',
    }),
    recovery: group('braking by the motors', {
      'lamp-on': quantity('acceleration', 'deceleration at which the motors light the stop lamps', 'a_l', {
        least: 0.05,
        most: 5,
        measure: { tool: 'settings of the VCU; deceleration meter and a helper on the road', accuracy: '± 0.1 m/s2', minutes: 30 },
      }),
      'cut-by': choice('what takes recovery away when a wheel slips', ['anti-lock brakes', 'slip of the motor', 'a switch', 'nothing']),
      'under-pedal': choice('what recovery does once the brake pedal is pressed', ['stays', 'gives way']),
      'fades-to': quantity('speed', 'speed at which none of it is left', 'v_2', { least: 0, most: 10 }),
    }),
    descent: group('longest hill driven down', {
      slope: quantity('slope', 'slope of the longest hill', 'p_d', { least: 0.01, most: 0.5 }),
      length: quantity('distance', 'length of the longest hill', 's_d', { least: 100, most: 100_000 }),
      speed: quantity('speed', 'speed down it', 'v_d', { least: 1, most: 60 }),
      load: reference('load case down it', 'brief.loads'),
    }),
  },
  { says: 'Brakes of the finished car. Prints of the roller tester come first; take one before the engine comes out.' },
)
