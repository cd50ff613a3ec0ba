import {
  bestEfficiency,
  coolantTemperature,
  drivelineEfficiency,
  gearDrag,
  gearDragAtTop,
  inverterEfficiency,
  lossFactor,
  rotorInertia,
  shiftTime,
  windingLimit,
} from '../assumptions.ts'
import { choice, file, group, mapOf, part, quantity, reference } from '../schema/field.ts'
import { ACROSS, ALONG, UP } from '../schema/reach.ts'
import { OFFER, TAPE, WEIGH } from './tools.ts'

const DATASHEET = { tool: 'datasheet, breaker’s list or type plate', accuracy: 'as stated', minutes: 30 }
const MODULE = { tool: 'sheet of the power module, warm values', accuracy: 'as stated', minutes: 20 }
const PHASE = { tool: 'log of the inverter at the usual load', accuracy: '± 5 %', minutes: 30 }
// Tools, accuracies and times in this file are common practice.
const BEFORE = 'before the part is bought' as const

const motor = group(
  'motor',
  {
    part: part('motor', 'drive-unit'),
    kind: choice('kind of motor', ['permanent-magnet', 'induction', 'series-dc'], { until: BEFORE, measure: DATASHEET }),
    'peak-torque': quantity('torque', 'peak torque', 'M_max', {
      least: 1,
      until: BEFORE,
      measure: DATASHEET,
      says: 'Left out: peak power over base speed.',
    }),
    'peak-power': quantity('power', 'peak power', 'P_max', {
      least: 100,
      until: BEFORE,
      measure: DATASHEET,
      says: 'Left out: peak torque times base speed.',
    }),
    'peak-time': quantity('time', 'motor gives its peak for', 't_max', { least: 1, until: BEFORE, measure: DATASHEET }),
    'continuous-torque': quantity('torque', 'continuous torque', 'M_c', {
      least: 1,
      until: BEFORE,
      measure: DATASHEET,
      says: 'Left out: continuous power over base speed.',
    }),
    'continuous-power': quantity('power', 'continuous power', 'P_c', {
      least: 100,
      until: BEFORE,
      measure: DATASHEET,
      says: 'Left out: continuous torque times base speed.',
    }),
    'coolant-temperature': quantity('temperature', 'coolant temperature of the continuous rating', 'T_cool', {
      least: 233.15,
      most: 373.15,
      until: BEFORE,
      assume: coolantTemperature,
      measure: DATASHEET,
    }),
    'base-speed': quantity('rotational speed', 'base speed', 'ω_b', {
      least: 1,
      until: BEFORE,
      measure: DATASHEET,
      says: 'Left out: peak power over peak torque.',
    }),
    'stated-voltage': quantity('voltage', 'voltage the figures are stated at', 'U_0', { least: 10, until: BEFORE, measure: DATASHEET }),
    'top-speed': quantity('rotational speed', 'top speed of the motor', 'ω_max', { least: 10, until: BEFORE, measure: DATASHEET }),
    'rotor-inertia': quantity('moment of inertia', 'rotor inertia', 'J_m', { least: 0, assume: rotorInertia, measure: DATASHEET }),
    mass: quantity('mass', 'mass of the motor', 'm_mot', { least: 0, most: 2000, measure: WEIGH }),
    diameter: quantity('length', 'diameter of the motor', 'D_mot', { least: 0.02, most: 2, measure: TAPE }),
    length: quantity('length', 'length of the motor', 'ℓ_mot', { least: 0.02, most: 2, measure: TAPE }),
    x: quantity('length', 'motor behind the front axle', 'x', { ...ALONG, measure: TAPE }),
    y: quantity('length', 'motor to the right of the centre line', 'y', { ...ACROSS, measure: TAPE }),
    z: quantity('length', 'motor above the ground', 'z', { ...UP, measure: TAPE }),
    'best-efficiency': quantity('share', 'best efficiency of the motor alone', 'η_best', {
      least: 0.3,
      most: 0.999,
      assume: bestEfficiency,
      measure: DATASHEET,
    }),
    'efficiency-map': file('map of efficiency, motor with inverter, over speed and torque', 'grid', 'efficiency map CSV', '1', {
      measure: DATASHEET,
    }),
    'efficiency-points': mapOf(
      'points of efficiency',
      'point of efficiency',
      group('point of efficiency', {
        torque: quantity('torque', 'torque of the point', 'M_j', { least: 0.1, until: BEFORE, measure: DATASHEET }),
        speed: quantity('rotational speed', 'motor speed of the point', 'ω_j', { least: 1, until: BEFORE, measure: DATASHEET }),
        efficiency: quantity('share', 'efficiency of motor with inverter', 'η_j', {
          least: 0.3,
          most: 0.995,
          until: BEFORE,
          measure: DATASHEET,
        }),
      }),
      'A few points where there is no map: three at least, at two speeds and two torques; from four at three speeds the constant loss is told too. Losses come from the map, else from these points, else from the shape of the class.',
    ),
    'loss-factor': quantity('ratio', 'factor on the losses of class, points or map', 'f_L', {
      least: 0.2,
      most: 5,
      assume: lossFactor,
      says: 'Later from a log: what this motor loses over what class, points or map say.',
      measure: { tool: 'log of battery current and voltage at steady speed', accuracy: '± 5 %', minutes: 60 },
    }),
    'unpowered-drag': file('drag when unpowered, torque over speed', 'curve', 'drag CSV', 'N·m', {
      measure: { tool: 'log of the speed while the unit runs down, off', accuracy: '± 10 %', minutes: 60 },
    }),
    'thermal-time': quantity('time', 'thermal time constant of the winding', 'τ_w', {
      least: 1,
      says: 'Left out: from the time the peak is stated for.',
      measure: DATASHEET,
    }),
    'winding-limit': quantity('temperature', 'winding temperature limit', 'T_w,max', {
      least: 378.15,
      most: 573.15,
      assume: windingLimit,
      measure: DATASHEET,
    }),
    price: quantity('money', 'price of the motor', 'k_mot', {
      least: 0,
      says: 'Of the whole unit where motor and inverter come as one.',
      measure: OFFER,
    }),
  },
  { fromPartAbove: true },
)
const bridge = group(
  'power module',
  {
    threshold: quantity('voltage', 'threshold voltage of the transistor', 'U_T0', { least: 0, most: 5, measure: MODULE }),
    resistance: quantity('resistance', 'resistance of the transistor when on', 'r_T', { least: 1e-6, most: 1, measure: MODULE }),
    'diode-threshold': quantity('voltage', 'threshold voltage of the diode', 'U_D0', { least: 0, most: 5, measure: MODULE }),
    'diode-resistance': quantity('resistance', 'resistance of the diode', 'r_D', { least: 1e-6, most: 1, measure: MODULE }),
    'switching-energy': quantity('energy', 'switching energy of the transistor, on and off', 'E_T', {
      least: 0,
      most: 10,
      measure: MODULE,
    }),
    'recovery-energy': quantity('energy', 'recovery energy of the diode', 'E_rr', { least: 0, most: 10, measure: MODULE }),
    'at-current': quantity('current', 'current the switching energies are stated at', 'I_ref', { least: 1, measure: MODULE }),
    'at-voltage': quantity('voltage', 'voltage the switching energies are stated at', 'U_ref', { least: 10, measure: MODULE }),
    frequency: quantity('frequency', 'switching frequency', 'f', {
      least: 100,
      most: 1e6,
      measure: { tool: 'set-up of the inverter, or an oscilloscope on the motor cable', accuracy: '± 2 %', minutes: 30 },
    }),
    'phase-current': quantity('current', 'phase current, effective, the efficiency is told for', 'I_ph', { least: 1, measure: PHASE }),
    modulation: quantity('share', 'modulation there', 'm', { least: 0.01, most: 1.15, measure: PHASE }),
    'power-factor': quantity('share', 'power factor there', 'cosφ', { least: 0.01, most: 1, measure: PHASE }),
  },
  { says: 'In place of an efficiency, where only the sheet of the power module is at hand.' },
)
const inverter = group('inverter', {
  part: part('inverter'),
  'lowest-voltage': quantity('voltage', 'lowest working voltage', 'U_inv,min', { least: 1, until: BEFORE, measure: DATASHEET }),
  'highest-voltage': quantity('voltage', 'highest working voltage', 'U_inv,max', { least: 1, until: BEFORE, measure: DATASHEET }),
  'peak-current': quantity('current', 'peak battery current', 'I_inv,max', { least: 1, until: BEFORE, measure: DATASHEET }),
  'continuous-current': quantity('current', 'continuous battery current', 'I_inv,c', { least: 1, until: BEFORE, measure: DATASHEET }),
  efficiency: quantity('share', 'best efficiency of the inverter', 'η_inv', {
    least: 0.5,
    most: 0.9999,
    assume: inverterEfficiency,
    measure: DATASHEET,
    says: 'Stated, it goes before the power module.',
  }),
  bridge,
  mass: quantity('mass', 'mass of the inverter', 'm_inv', { least: 0, most: 500, measure: WEIGH }),
  x: quantity('length', 'inverter behind the front axle', 'x', { ...ALONG, measure: TAPE }),
  y: quantity('length', 'inverter to the right of the centre line', 'y', { ...ACROSS, measure: TAPE }),
  z: quantity('length', 'inverter above the ground', 'z', { ...UP, measure: TAPE }),
  price: quantity('money', 'price of the inverter', 'k_inv', { least: 0, measure: OFFER }),
})

/** How torque gets from motor to wheels. */
export const drive = group(
  'drive',
  {
    units: mapOf(
      'drive units',
      'drive unit',
      group('drive unit', {
        part: part('drive-unit'),
        axle: choice('axle it drives', ['front', 'rear', 'both']),
        through: choice('the way the torque takes', ['drive unit', 'kept gearbox', 'single reduction']),
        gear: reference('gear it is held in', 'donor.gearbox.gears'),
        shifting: choice('shifting', ['held in one gear', 'with clutch', 'without clutch']),
        'shift-time': quantity('time', 'time of one shift', 't_s', {
          least: 0,
          assume: shiftTime,
          measure: { tool: 'watch, or a log of the speeds', accuracy: '± 0.1 s', minutes: 10 },
        }),
        transfer: choice('transfer case range', ['none', 'high', 'low']),
        reduction: quantity('ratio', 'reduction of the drive unit', 'i_red', { least: 0.1, most: 50, until: BEFORE, measure: DATASHEET }),
        'final-drive': quantity('ratio', 'axle ratio of this axle', 'i_ax', {
          least: 0.1,
          most: 20,
          says: 'Left out: the donor car’s axle ratio.',
          measure: { tool: 'count turns in and out', accuracy: 'exact tooth ratio', minutes: 20 },
        }),
        efficiency: quantity('share', 'efficiency, motor to wheels', 'η', {
          least: 0.5,
          most: 1,
          assume: drivelineEfficiency,
          measure: DATASHEET,
          says: 'At full load; what drags without load is taken apart from it.',
        }),
        'gear-drag': quantity('torque', 'drag of gears and bearings turned slowly, at the motor shaft', 'a', {
          least: 0,
          most: 50,
          assume: gearDrag,
          says: 'Beyond what coasting in neutral shows: take off what the wheels alone drag.',
          measure: { tool: 'torque wrench on the input shaft, wheels in the air, oil warm', accuracy: '± 0.1 N·m', minutes: 20 },
        }),
        'gear-drag-at-top': quantity('torque', 'drag of gears and bearings at the top speed of the motor', 'M_g', {
          least: 0,
          most: 100,
          assume: gearDragAtTop,
          measure: { tool: 'log of battery power at high speed in the air, in gear and without gear', accuracy: '± 0.5 N·m', minutes: 60 },
        }),
        'coupler-torque': quantity('torque', 'torque the coupler is rated for', 'M_cpl', { least: 1, until: BEFORE, measure: DATASHEET }),
        'shaft-torque': quantity('torque', 'torque one half-shaft is rated for', 'M_hs', { least: 1, until: BEFORE, measure: DATASHEET }),
        'torque-limit': quantity('torque', 'torque limit set in software', 'M_lim', {
          least: 1,
          says: 'Left out: no limit but the motor’s own.',
        }),
        'power-limit': quantity('power', 'power limit set in software', 'P_lim', {
          least: 100,
          says: 'Left out: no limit but the motor’s own.',
        }),
        'limit-sealed': choice('limit sealed', ['yes', 'no']),
        disconnect: choice('uncouples when not driving', ['yes', 'no']),
        rotation: choice('sense it turns in, driving forward', ['as its maker meant', 'reversed'], {
          measure: { tool: 'turn it and look', accuracy: 'exact', minutes: 5 },
        }),
        'reversed-oiled': choice('oil pump and level asked about for the reversed sense', ['yes', 'no'], {
          measure: { tool: 'ask its maker in writing', accuracy: 'as stated', minutes: 15 },
        }),
        motor,
        inverter,
      }),
    ),
    'front-share': quantity('share', 'share of the pull at the front axle', 's_F', { least: 0, most: 1 }),
    regeneration: group('regeneration', {
      'torque-share': quantity('share', 'share of peak torque used', 's_reg', { least: 0, most: 1 }),
      power: quantity('power', 'greatest recovery power', 'P_reg', { least: 0 }),
      'cut-off-speed': quantity('speed', 'no recovery below', 'v_reg', { least: 0 }),
    }),
  },
  { says: 'How torque gets from the motor to the wheels.' },
)
