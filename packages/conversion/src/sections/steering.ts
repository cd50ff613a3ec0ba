import {
  columnEfficiency,
  driverTorque,
  gearEfficiency,
  handwheelTurns,
  linkageEfficiency,
  rackLeakage,
  rollingShare,
} from '../assumptions.ts'
import { choice, group, type QuantityField, quantity } from '../schema/field.ts'
import { PART } from './tools.ts'

// Tools, accuracies and times in this file are common practice.
const TAPE = { tool: 'tape', accuracy: '± 2 mm', minutes: 15 }
const BALANCE = { tool: 'spring balance on the rim, assist off, car at its mass on dry asphalt', accuracy: '± 10 N', minutes: 15 }
const GAUGE = { tool: 'caliper gauge, the rack apart', accuracy: '± 0.5 mm', minutes: 60 }

const pull = (label: string, symbol: string, until: 'any time' | 'before the engine comes out'): QuantityField<'force'> =>
  quantity('force', label, symbol, { least: 1, most: 2000, until, measure: BALANCE, says: 'Left out: worked out from the gear.' })

/** Steering gear, and what assists it once the engine is out. */
export const steering = group(
  'steering',
  {
    'wheel-radius': quantity('length', 'radius of the handwheel', 'R_s', { least: 0.1, most: 0.4, measure: TAPE }),
    'rack-travel': quantity('length', 'travel of the rack in one turn', 'C', {
      least: 0.02,
      most: 0.12,
      measure: { tool: 'tape at the tie rod over one turn of the handwheel', accuracy: '± 1 mm', minutes: 15 },
    }),
    arm: quantity('length', 'steering arm near full lock', 'l_s', { least: 0.03, most: 0.3, measure: TAPE }),
    'linkage-efficiency': quantity('share', 'efficiency of rods and joints', 'η_l', { least: 0.6, most: 1, assume: linkageEfficiency }),
    'gear-efficiency': quantity('share', 'efficiency of rack and column', 'η_s', { least: 0.6, most: 1, assume: gearEfficiency }),
    'tyre-pressure': quantity('pressure', 'front tyre pressure', 'p_t', {
      least: 1e5,
      most: 6e5,
      measure: { tool: 'pressure gauge, tyres cold', accuracy: '± 5 kPa', minutes: 5 },
    }),
    turns: quantity('frequency', 'turns of the handwheel in a second when parking', 'n_s', { least: 0.2, most: 3, assume: handwheelTurns }),
    effort: group('pull at the rim without assist', {
      'standing-before': pull('pull at a standstill, before', 'F_s0', 'before the engine comes out'),
      'standing-after': pull('pull at a standstill, after', 'F_s1', 'any time'),
      'rolling-after': pull('pull rolling at 10 km/h into a bend, after', 'F_r1', 'any time'),
    }),
    'rolling-share': quantity('share', 'pull rolling at 10 km/h over that at a standstill', 'q_r', {
      least: 0.05,
      most: 1,
      assume: rollingShare,
      measure: BALANCE,
    }),
    hydraulic: group('hydraulic assist', {
      bore: quantity('length', 'bore of the steering cylinder', 'D_c', { least: 0.02, most: 0.1, measure: GAUGE }),
      rod: quantity('length', 'rod through it', 'd_c', { least: 0.005, most: 0.08, measure: GAUGE }),
      leakage: quantity('share', 'leakage of the valve', 'q_l', { least: 0, most: 0.5, assume: rackLeakage }),
      'pump-flow': quantity('flow', 'flow of the electric pump', 'Q_p', { least: 1e-6, most: 1e-3, measure: PART }),
      relief: quantity('pressure', 'pressure at which its relief valve opens', 'p_max', { least: 1e6, most: 3e7, measure: PART }),
      'pump-efficiency': quantity('share', 'efficiency of the pump', 'η_h', { least: 0.3, most: 1, measure: PART }),
      'motor-efficiency': quantity('share', 'efficiency of its motor', 'η_m', { least: 0.3, most: 1, measure: PART }),
    }),
    column: group('electric assist', {
      'driver-torque': quantity('torque', 'torque left to the driver', 'M_d', { least: 0.5, most: 20, assume: driverTorque }),
      efficiency: quantity('share', 'efficiency of motor and worm', 'η_a', { least: 0.3, most: 1, assume: columnEfficiency }),
      'motor-current': quantity('current', 'greatest current of its motor', 'I_m', { least: 1, most: 300, measure: PART }),
      'winding-resistance': quantity('resistance', 'resistance of its winding', 'R_w', { least: 0.001, most: 1, measure: PART }),
    }),
    fuse: quantity('current', 'fuse of the unit that assists', 'I_f', { least: 1, most: 300, measure: PART }),
    'without-messages': choice(
      'what the assist does without messages of the engine computer',
      ['keeps assisting', 'falls back', 'drops out'],
      {
        until: 'before the part is bought',
        measure: { tool: 'unit on the bench with supply and ignition only', accuracy: 'exact', minutes: 60 },
      },
    ),
  },
  { says: 'Steering gear, and what assists it once the engine is out.' },
)
