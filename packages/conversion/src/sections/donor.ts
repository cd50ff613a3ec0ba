import {
  centreHeight,
  coastDownPressure,
  coastDownTemperature,
  dragArea,
  dragCoefficient,
  grip,
  inputInertia,
  loadedShare,
  oldEfficiency,
  placeAcross,
  placeOfSmallPart,
  rollingFactor,
  rollingResistance,
  wheelInertia,
} from '../assumptions.ts'
import { choice, date, group, mapOf, part, type QuantityField, quantity, tyre } from '../schema/field.ts'
import { ACROSS, ALONG, UP } from '../schema/reach.ts'
import { COUNTRIES } from './rule-sets.ts'
import { LOOK, WEIGH } from './tools.ts'

const TAPE = { tool: 'tape and plumb line', accuracy: '± 3 mm', minutes: 10 }
const SCALES = { tool: 'four wheel scales, or an axle weighbridge', accuracy: '± 1 kg (scales), ± 10 kg (weighbridge)', minutes: 30 }
const PLATE = { tool: 'plate, registration paper', accuracy: 'exact', minutes: 10 }
const TEETH = { tool: 'count turns in and out', accuracy: 'exact tooth ratio', minutes: 20 }
const COAST = {
  tool: 'GPS logger, still dry day, level straight road, 110 to 20 km/h in neutral, both directions',
  accuracy: '± 5 % on road load',
  minutes: 120,
}
const AIR = { tool: 'thermometer in the shade, barometer or the nearest weather station', accuracy: '± 1 °C, ± 2 hPa', minutes: 5 }
const PULL = { tool: 'pull scale on a rope, the car at walking pace on dry asphalt and on this surface', accuracy: '± 10 %', minutes: 30 }
const HANDBOOK = { tool: 'workshop handbook of the donor car', accuracy: 'as stated', minutes: 20 }
const BRAKE_METER = {
  tool: 'brake hard with a deceleration meter on an empty, flat road of the kind; its reading over 9.81',
  accuracy: '± 5 %',
  minutes: 30,
}
// Tools, accuracies and times in this file are common practice.
const BEFORE = 'before the engine comes out' as const

const weighed = (label: string, symbol: string): QuantityField<'mass'> =>
  quantity('mass', label, symbol, { least: 1, until: BEFORE, measure: SCALES })
const rating = (label: string, symbol: string): QuantityField<'mass'> => quantity('mass', label, symbol, { least: 1, measure: PLATE })
const ratio = (label: string, symbol: string): QuantityField<'ratio'> =>
  quantity('ratio', label, symbol, { least: 0.1, most: 200, measure: TEETH, until: 'before the body is apart' })

const passed = (label: string, symbol: string): QuantityField<'time'> =>
  quantity('time', label, symbol, { least: 0.1, until: BEFORE, measure: COAST })

const usual = (label: string) => choice(`${label}: where it is`, ['with another part', 'not fitted'])

/** Classes of parts that have no place of their own in the file; they bring their mass and price. */
const PUT_IN = [
  'dc-dc',
  'contactor',
  'precharge-set',
  'hv-fuse',
  'service-disconnect',
  'junction-box',
  'insulation-monitor',
  'current-sensor',
  'hv-cable',
  'coolant-pump',
  'radiator',
  'coolant-heater',
  'air-heater',
  'ac-compressor',
  'vacuum-pump',
  'steering-electro-hydraulic',
  'steering-column-assist',
  'adapter-coupler',
  'charge-inlet',
  'battery-12v',
]
/** Parts that leave have a place only while they are still in; they and their masses are many, so theirs is never assumed. */
const ledgerOf = (until: 'any time' | typeof BEFORE) => ({
  mass: quantity('mass', 'mass', 'm', { least: 0, most: 5000, measure: WEIGH, until: 'any time' }),
  x: quantity('length', 'behind the front axle', 'x', {
    ...ALONG,
    measure: TAPE,
    until,
    ...(until === 'any time' ? { assume: placeOfSmallPart } : {}),
  }),
  y: quantity('length', 'to the right of the centre line', 'y', { ...ACROSS, measure: TAPE, until, assume: placeAcross }),
  z: quantity('length', 'above the ground', 'z', { ...UP, measure: TAPE, until }),
})

/** The car as it was: what was weighed, measured and read off its plate. */
export const donor = group(
  'donor',
  {
    'engine-position': choice('engine position', ['transverse front', 'longitudinal front', 'rear', 'mid'], { measure: LOOK }),
    'driven-wheels': choice('driven wheels', ['front', 'rear', 'part-time 4x4', 'all'], { measure: LOOK }),
    body: choice('body', ['open two-seater', 'saloon', 'estate', 'hatchback', 'off-road', 'pickup', 'van'], { measure: LOOK }),
    category: choice('approval category', ['M1', 'M2', 'N1', 'N2', 'L7'], { measure: PLATE }),
    'first-registered': date('day of first registration', { coarse: true, measure: PLATE }),
    built: date('day the car was built', { coarse: true, measure: PLATE }),
    'registered-in': choice('country of registration', COUNTRIES, { measure: PLATE }),
    historic: choice('registered as a historic or collection vehicle', ['yes', 'no'], { measure: PLATE }),
    roadworthy: choice('in good condition, periodic inspection in order', ['yes', 'no'], {
      until: BEFORE,
      measure: { tool: 'last inspection report, and a look underneath', accuracy: 'as stated', minutes: 30 },
    }),
    'registered-mass': quantity('mass', 'mass in running order on the papers', 'm_reg', {
      least: 1,
      measure: PLATE,
      says: 'Left out: the weighings are not held against it. With driver and nine tenths of the fuel.',
    }),
    wheelbase: quantity('length', 'wheelbase', 'L', { least: 0.5, most: 6, measure: TAPE }),
    'track-front': quantity('length', 'front track', 'T_F', { least: 0.5, most: 3, measure: TAPE }),
    'track-rear': quantity('length', 'rear track', 'T_R', { least: 0.5, most: 3, measure: TAPE }),
    'centre-height': quantity('length', 'height of the centre of mass', 'h', {
      least: 0.1,
      most: 2,
      until: BEFORE,
      assume: centreHeight,
      measure: { tool: 'wheel scales under one axle, the other raised on a hoist', accuracy: '± 30 mm', minutes: 60 },
    }),
    width: quantity('length', 'width', 'b', { least: 0.5, most: 3, measure: TAPE }),
    height: quantity('length', 'height', 'H', { least: 0.5, most: 3.5, measure: TAPE }),
    tyre: tyre('tyre size', { measure: { tool: 'read the sidewall', accuracy: 'exact', minutes: 1 } }),
    'tyre-before': tyre('tyre size the speedometer was set for', { measure: PLATE }),
    'speedometer-drive': choice('what drives the speedometer', ['output shaft', 'wheels'], { measure: LOOK }),
    'speedometer-drive-after': choice('what drives the speedometer once its drive has come out', ['speed sender', 'wheels', 'none'], {
      says: 'Asked only where the part that drove it comes out.',
    }),
    'rolling-circumference': quantity('length', 'rolling circumference', 'C', {
      least: 0.5,
      most: 4,
      measure: { tool: 'mark the tyre, roll 5 to 10 turns loaded', accuracy: '± 0.3 %', minutes: 15 },
    }),
    'loaded-radius': quantity('length', 'wheel centre above the ground, car standing', 'r_L', { least: 0.1, most: 1, measure: TAPE }),
    'loaded-share': quantity('share', 'loaded radius over unloaded radius', 'k_L', {
      least: 0.85,
      most: 1,
      assume: loadedShare,
      measure: { tool: 'tape: axle to ground, car loaded', accuracy: '± 3 mm', minutes: 10 },
    }),
    'drag-area': quantity('area', 'drag area', 'A_d', { least: 0.1, most: 5, until: BEFORE, measure: COAST, assume: dragArea }),
    'drag-coefficient': quantity('ratio', 'drag coefficient', 'c_d', { least: 0.1, most: 1.5, measure: HANDBOOK, assume: dragCoefficient }),
    'rolling-resistance': quantity('ratio', 'rolling resistance', 'c_r', {
      least: 0.002,
      most: 0.1,
      until: BEFORE,
      assume: rollingResistance,
      measure: COAST,
    }),
    'rolling-factor': group('rolling resistance against dry asphalt', {
      wet: quantity('ratio', 'rolling resistance, wet', 'k', { least: 0.5, most: 10, assume: rollingFactor('wet'), measure: PULL }),
      gravel: quantity('ratio', 'rolling resistance, gravel', 'k', {
        least: 0.5,
        most: 10,
        assume: rollingFactor('gravel'),
        measure: PULL,
      }),
      snow: quantity('ratio', 'rolling resistance, snow', 'k', { least: 0.5, most: 10, assume: rollingFactor('snow'), measure: PULL }),
    }),
    'wheel-inertia': quantity('moment of inertia', 'inertia of one wheel with tyre and disc', 'J_w', {
      least: 0.05,
      most: 20,
      assume: wheelInertia,
      measure: { tool: 'hang the wheel as a pendulum from a knife edge in the rim, time ten swings', accuracy: '± 5 %', minutes: 30 },
    }),
    grip: group('grip by surface', {
      dry: quantity('ratio', 'grip, dry', 'μ', { least: 0.05, most: 1.5, assume: grip('dry'), measure: BRAKE_METER }),
      wet: quantity('ratio', 'grip, wet', 'μ', { least: 0.05, most: 1.5, assume: grip('wet'), measure: BRAKE_METER }),
      gravel: quantity('ratio', 'grip, gravel', 'μ', { least: 0.05, most: 1.5, assume: grip('gravel'), measure: BRAKE_METER }),
      snow: quantity('ratio', 'grip, snow', 'μ', { least: 0.05, most: 1.5, assume: grip('snow'), measure: BRAKE_METER }),
    }),
    'top-speed': quantity('speed', 'registered top speed', 'v_reg', { least: 5, measure: PLATE }),
    engine: group('old engine', {
      power: quantity('power', 'power of the old engine', 'P_0', { least: 1000, measure: PLATE }),
      strongest: quantity('power', 'power of the strongest engine offered in this body', 'P_s', {
        least: 1000,
        says: 'Left out: the old engine counts.',
        measure: HANDBOOK,
      }),
      torque: quantity('torque', 'torque of the old engine', 'M_0', { least: 1, measure: HANDBOOK }),
      'torque-speed': quantity('rotational speed', 'speed of greatest torque', 'ω_M0', { least: 10, measure: HANDBOOK }),
      'red-line': quantity('rotational speed', 'red line', 'ω_red', {
        least: 10,
        measure: { tool: 'rev counter, handbook', accuracy: 'as marked', minutes: 1 },
      }),
      fuel: choice('fuel', ['petrol', 'diesel'], { measure: LOOK }),
    }),
    weighing: group('weighing', {
      'front-left': weighed('front left wheel', 'm_FL'),
      'front-right': weighed('front right wheel', 'm_FR'),
      'rear-left': weighed('rear left wheel', 'm_RL'),
      'rear-right': weighed('rear right wheel', 'm_RR'),
      front: weighed('front axle', 'm_F0'),
      rear: weighed('rear axle', 'm_R0'),
      fuel: quantity('volume', 'fuel in the tank', 'V_fuel', {
        least: 0,
        until: BEFORE,
        measure: { tool: 'brim the tank, or drain it and fill in a known amount', accuracy: '± 1 l', minutes: 20 },
      }),
      tank: quantity('volume', 'tank size', 'V_tank', { least: 0, measure: HANDBOOK }),
    }),
    ratings: group('ratings', {
      'front-axle': rating('front axle rating', 'm_F,max'),
      'rear-axle': rating('rear axle rating', 'm_R,max'),
      total: rating('gross mass', 'm_max'),
      train: rating('gross train mass', 'm_train'),
      'nose-load': rating('nose load at the coupling', 'm_S,max'),
      'tow-braked': rating('braked trailer', 'm_t,max'),
      'tow-unbraked': rating('unbraked trailer', 'm_tu,max'),
    }),
    gearbox: group('gearbox', {
      gears: mapOf('gears', 'gear', ratio('gear ratio', 'i_g')),
      reverse: ratio('reverse', 'i_rev'),
      'input-torque': quantity('torque', 'torque the input shaft is rated for', 'M_box', {
        least: 1,
        until: 'before the part is bought',
        measure: { tool: 'data of the donor car or of the gearbox maker', accuracy: 'as stated', minutes: 60 },
      }),
      'input-speed': quantity('rotational speed', 'speed the input shaft is rated for', 'ω_box', {
        least: 10,
        measure: { tool: 'red line of the fastest engine the box was sold with', accuracy: 'as stated', minutes: 20 },
      }),
      efficiency: quantity('share', 'efficiency, engine to wheels', 'η_box', { least: 0.5, most: 1, assume: oldEfficiency }),
      'input-inertia': quantity('moment of inertia', 'inertia at the input (flywheel, clutch)', 'J_in', {
        least: 0,
        assume: inputInertia,
        measure: HANDBOOK,
      }),
    }),
    'transfer-case': group('transfer case', {
      high: ratio('high range', 'i_high'),
      low: ratio('low range', 'i_low'),
      'input-torque': quantity('torque', 'torque the input is rated for', 'M_tc', { least: 1, measure: HANDBOOK }),
    }),
    'final-drive': ratio('axle ratio', 'i_ax'),
    'final-drive-torque': quantity('torque', 'torque the axle input is rated for', 'M_ax', { least: 1, measure: HANDBOOK }),
    towing: group('towing', {
      'coupling-overhang': quantity('length', 'coupling behind the rear axle', 'c', { ...ALONG, measure: TAPE }),
      'coupling-height': quantity('length', 'coupling above the ground', 'h_c', { ...UP, measure: TAPE }),
      'coupling-strength': quantity('force', 'D value of the coupling', 'D_max', {
        least: 100,
        measure: { tool: 'plate of the coupling', accuracy: 'exact', minutes: 5 },
      }),
      recovery: choice('how it is moved when stranded', ['on a flatbed', 'driven wheels raised', 'on its wheels']),
    }),
    seats: mapOf(
      'seat rows',
      'seat row',
      group('seat row', {
        places: quantity('count', 'places', 'p', { least: 1, most: 4, measure: LOOK }),
        x: quantity('length', 'occupants behind the front axle', 'x', {
          ...ALONG,
          measure: { tool: 'tape to the fold of seat and backrest, 100 mm ahead of it', accuracy: '± 30 mm', minutes: 10 },
        }),
      }),
    ),
    'luggage-x': quantity('length', 'luggage behind the front axle', 'x_lug', { ...ALONG, measure: TAPE }),
    brakes: group('brakes', {
      front: choice('front brakes', ['disc', 'drum'], { measure: LOOK }),
      rear: choice('rear brakes', ['disc', 'drum'], { measure: LOOK }),
      assist: choice('brake assist before', ['vacuum', 'electric', 'hydraulic', 'none'], { measure: LOOK, until: BEFORE }),
      'assist-after': choice('brake assist after', ['vacuum pump', 'electric booster', 'none']),
      abs: choice('anti-lock brakes before', ['none', 'rear axle', 'four channels'], { measure: LOOK }),
      'abs-after': choice('anti-lock brakes after', ['kept', 'taken out']),
      deceleration: quantity('acceleration', 'greatest deceleration of the finished car alone, laden', 'a', {
        least: 0.5,
        most: 15,
        measure: BRAKE_METER,
        says: 'Asked only where a trailer without brakes is pulled.',
      }),
    }),
    steering: group('steering', {
      assist: choice('steering assist before', ['none', 'hydraulic', 'electric'], { measure: LOOK, until: BEFORE }),
      'assist-after': choice('steering assist after', ['none', 'electro-hydraulic', 'electric column', 'electric rack']),
    }),
    immobiliser: group('immobiliser', {
      fitted: choice('immobiliser before', ['none', 'apart from the engine computer', 'in the engine computer'], {
        until: BEFORE,
        measure: LOOK,
      }),
      after: choice('immobiliser after', ['kept', 'moved', 'replaced', 'left out']),
    }),
    'air-conditioning': choice('air conditioning', ['none', 'belt', 'electric'], { measure: LOOK }),
    removed: mapOf(
      'taken out',
      'part taken out',
      group('part taken out', {
        ...ledgerOf(BEFORE),
        fuel: choice('fuel in the tank when it was weighed by itself', ['still in it', 'drained'], {
          says: 'Of a fuel tank only. Drained fuel leaves the car with its tank, at the tank’s place.',
        }),
      }),
      'Everything that leaves the car, weighed as it comes off.',
    ),
    added: mapOf(
      'put in',
      'part put in',
      group('part put in', {
        part: part(...PUT_IN),
        ...ledgerOf('any time'),
        price: quantity('money', 'price', 'k', { least: 0, measure: { tool: 'written offer', accuracy: 'as stated', minutes: 15 } }),
      }),
      'What goes in beside motors, inverters and battery boxes, which have their own place.',
    ),
    'not-listed': group(
      'usual parts that no part put in is named after',
      {
        'dc-dc': usual('DC-DC'),
        'high-voltage-cable': usual('high-voltage cable'),
        'junction-box': usual('junction box'),
        'starter-battery': usual('12 V battery'),
        bms: usual('BMS'),
        cooling: usual('cooling of motor and electronics'),
        'cabin-heater': usual('cabin heater'),
        'charge-inlet': usual('charge inlet'),
      },
      { says: 'Said only of what the list of parts put in does not name: weighed with another part there, or not fitted.' },
    ),
    'coast-down': group('coast-down', {
      mass: quantity('mass', 'mass as tested', 'm_cd', { least: 1, until: BEFORE, measure: SCALES }),
      temperature: quantity('temperature', 'air temperature of the coast-down', 'T_cd', {
        least: 253.15,
        most: 323.15,
        until: BEFORE,
        measure: AIR,
        assume: coastDownTemperature,
      }),
      pressure: quantity('pressure', 'air pressure of the coast-down', 'p_cd', {
        least: 5e4,
        most: 1.1e5,
        until: BEFORE,
        measure: AIR,
        assume: coastDownPressure,
      }),
      f0: quantity('force', 'constant part of road load', 'f_0', { until: BEFORE, measure: COAST }),
      f1: quantity('speed drag', 'part of road load rising with speed', 'f_1', { until: BEFORE, measure: COAST }),
      f2: quantity('air drag', 'part of road load rising with speed squared', 'f_2', { least: 0, until: BEFORE, measure: COAST }),
      steps: mapOf(
        'speed steps',
        'speed step',
        group('speed step', {
          from: quantity('speed', 'from', 'v_1', { least: 0.5, until: BEFORE, measure: COAST }),
          to: quantity('speed', 'to', 'v_2', { least: 0, until: BEFORE, measure: COAST }),
          'out-1': passed('first run out', 't_o1'),
          'back-1': passed('first run back', 't_b1'),
          'out-2': passed('second run out', 't_o2'),
          'back-2': passed('second run back', 't_b2'),
          'out-3': passed('third run out', 't_o3'),
          'back-3': passed('third run back', 't_b3'),
          'out-4': passed('fourth run out', 't_o4'),
          'back-4': passed('fourth run back', 't_b4'),
          'out-5': passed('fifth run out', 't_o5'),
          'back-5': passed('fifth run back', 't_b5'),
          'out-6': passed('sixth run out', 't_o6'),
          'back-6': passed('sixth run back', 't_b6'),
        }),
        'Times in neutral through each step of speed, the same stretch out and back; runs are paired by number.',
      ),
    }),
  },
  { says: 'The car as it was. Much of it can only be measured while the engine still runs.' },
)
