import { centreHeight, grip, rollingFactor, rollingResistance, wheelInertia } from '../assumptions.ts'
import { choice, date, group, mapOf, quantity, type QuantityField, tyre } from '../schema/field.ts'
import { COUNTRIES } from './rule-sets.ts'

const TAPE = { tool: 'tape and plumb line', accuracy: '± 3 mm', minutes: 10 }
const SCALES = { tool: 'four wheel scales, or an axle weighbridge', accuracy: '± 1 kg (scales), ± 10 kg (weighbridge)', minutes: 30 }
const PLATE = { tool: 'plate, registration paper', accuracy: 'exact', minutes: 10 }
const TEETH = { tool: 'count turns in and out', accuracy: 'exact tooth ratio', minutes: 20 }
const HANGING = { tool: 'hanging scale', accuracy: '± 0.5 kg', minutes: 5 }
const BEFORE = 'before the engine comes out' as const

const weighed = (label: string, symbol: string): QuantityField<'mass'> => quantity('mass', label, symbol, { least: 1, until: BEFORE, measure: SCALES })
const rating = (label: string, symbol: string): QuantityField<'mass'> => quantity('mass', label, symbol, { least: 1, measure: PLATE })
const ratio = (label: string, symbol: string): QuantityField<'ratio'> => quantity('ratio', label, symbol, { least: 0.1, most: 200, measure: TEETH, until: 'before the body is apart' })

const LEDGER = {
  mass: quantity('mass', 'mass', 'm', { least: 0, measure: HANGING, until: 'any time' }),
  x: quantity('length', 'behind the front axle', 'x', { measure: TAPE, until: 'before the body is apart' }),
  z: quantity('length', 'above the ground', 'z', { measure: TAPE, until: 'before the body is apart' }),
}

/** The car as it was: what was weighed, measured and read off its plate. */
export const donor = group(
  'donor',
  {
    'engine-position': choice('engine position', ['transverse front', 'longitudinal front', 'rear', 'mid']),
    'driven-wheels': choice('driven wheels', ['front', 'rear', 'part-time 4x4', 'all']),
    body: choice('body', ['open two-seater', 'saloon', 'estate', 'hatchback', 'off-road', 'pickup', 'van']),
    category: choice('approval category', ['M1', 'M2', 'N1', 'N2', 'L7']),
    'first-registered': date('day of first registration', { coarse: true, measure: PLATE }),
    built: date('day the car was built', { coarse: true, measure: PLATE }),
    'registered-in': choice('country of registration', COUNTRIES),
    historic: choice('registered as a historic or collection vehicle', ['yes', 'no']),
    roadworthy: choice('in good condition, periodic inspection in order', ['yes', 'no'], { until: BEFORE }),
    wheelbase: quantity('length', 'wheelbase', 'L', { least: 0.5, most: 6, measure: TAPE }),
    'track-front': quantity('length', 'front track', 'T_F', { least: 0.5, most: 3, measure: TAPE }),
    'track-rear': quantity('length', 'rear track', 'T_R', { least: 0.5, most: 3, measure: TAPE }),
    'centre-height': quantity('length', 'height of the centre of mass', 'h', {
      least: 0.1, most: 2, until: BEFORE, assume: centreHeight, measure: { tool: 'wheel scales, hoist, one axle raised', accuracy: '± 30 mm', minutes: 60 },
    }),
    width: quantity('length', 'width', 'b', { least: 0.5, most: 3, measure: TAPE }),
    height: quantity('length', 'height', 'H', { least: 0.5, most: 3.5, measure: TAPE }),
    tyre: tyre('tyre size', { measure: { tool: 'read the sidewall', accuracy: 'exact', minutes: 1 } }),
    'rolling-circumference': quantity('length', 'rolling circumference', 'C', { least: 0.5, most: 4, measure: { tool: 'mark the tyre, roll 5 to 10 turns loaded', accuracy: '± 0.3 %', minutes: 15 } }),
    'drag-area': quantity('area', 'drag area', 'A_d', { least: 0.1, most: 5, until: BEFORE, measure: { tool: 'coast-down with a GPS logger, both directions', accuracy: '± 5 % on road load', minutes: 120 } }),
    'rolling-resistance': quantity('ratio', 'rolling resistance', 'c_r', { least: 0.002, most: 0.1, until: BEFORE, assume: rollingResistance, measure: { tool: 'coast-down with a GPS logger, both directions', accuracy: '± 5 % on road load', minutes: 120 } }),
    'rolling-factor': group('rolling resistance against dry asphalt', {
      wet: quantity('ratio', 'rolling resistance, wet', 'k', { least: 0.5, most: 10, assume: rollingFactor('wet') }),
      gravel: quantity('ratio', 'rolling resistance, gravel', 'k', { least: 0.5, most: 10, assume: rollingFactor('gravel') }),
      snow: quantity('ratio', 'rolling resistance, snow', 'k', { least: 0.5, most: 10, assume: rollingFactor('snow') }),
    }),
    'wheel-inertia': quantity('moment of inertia', 'inertia of one wheel with tyre and disc', 'J_w', { least: 0.05, most: 20, assume: wheelInertia, measure: { tool: 'hang the wheel as a pendulum from a knife edge in the rim, time ten swings', accuracy: '± 5 %', minutes: 30 } }),
    grip: group('grip by surface', {
      dry: quantity('ratio', 'grip, dry', 'μ', { least: 0.05, most: 1.5, assume: grip('dry') }),
      wet: quantity('ratio', 'grip, wet', 'μ', { least: 0.05, most: 1.5, assume: grip('wet') }),
      gravel: quantity('ratio', 'grip, gravel', 'μ', { least: 0.05, most: 1.5, assume: grip('gravel') }),
      snow: quantity('ratio', 'grip, snow', 'μ', { least: 0.05, most: 1.5, assume: grip('snow') }),
    }),
    'top-speed': quantity('speed', 'registered top speed', 'v_reg', { least: 5, measure: PLATE }),
    engine: group('old engine', {
      power: quantity('power', 'power of the old engine', 'P_0', { least: 1000, measure: PLATE }),
      torque: quantity('torque', 'torque of the old engine', 'M_0', { least: 1 }),
      'torque-speed': quantity('rotational speed', 'speed of greatest torque', 'ω_M0', { least: 10 }),
      'red-line': quantity('rotational speed', 'red line', 'ω_red', { least: 10 }),
      fuel: choice('fuel', ['petrol', 'diesel']),
    }),
    weighing: group('weighing', {
      'front-left': weighed('front left wheel', 'm_FL'),
      'front-right': weighed('front right wheel', 'm_FR'),
      'rear-left': weighed('rear left wheel', 'm_RL'),
      'rear-right': weighed('rear right wheel', 'm_RR'),
      front: weighed('front axle', 'm_F0'),
      rear: weighed('rear axle', 'm_R0'),
      fuel: quantity('volume', 'fuel in the tank', 'V_fuel', { least: 0 }),
      tank: quantity('volume', 'tank size', 'V_tank', { least: 0 }),
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
      'input-torque': quantity('torque', 'torque the input shaft is rated for', 'M_box', { least: 1, until: 'before the part is bought', measure: { tool: 'data of the donor car or of the gearbox maker', accuracy: 'as stated', minutes: 60 } }),
      'input-speed': quantity('rotational speed', 'speed the input shaft is rated for', 'ω_box', { least: 10 }),
      efficiency: quantity('share', 'efficiency', 'η_box', { least: 0.5, most: 1 }),
      'input-inertia': quantity('moment of inertia', 'inertia at the input (flywheel, clutch)', 'J_in', { least: 0 }),
    }),
    'transfer-case': group('transfer case', { high: ratio('high range', 'i_high'), low: ratio('low range', 'i_low'), 'input-torque': quantity('torque', 'torque the input is rated for', 'M_tc', { least: 1 }) }),
    'final-drive': ratio('axle ratio', 'i_ax'),
    'final-drive-torque': quantity('torque', 'torque the axle input is rated for', 'M_ax', { least: 1 }),
    towing: group('coupling', { 'coupling-overhang': quantity('length', 'coupling behind the rear axle', 'c', { measure: TAPE }), 'coupling-height': quantity('length', 'coupling above the ground', 'h_c', { measure: TAPE }) }),
    seats: mapOf('seat rows', 'seat row', group('seat row', { places: quantity('count', 'places', 'p', { least: 1, most: 4 }), x: quantity('length', 'occupants behind the front axle', 'x', { measure: TAPE }) })),
    'luggage-x': quantity('length', 'luggage behind the front axle', 'x_lug', { measure: TAPE }),
    brakes: group('brakes', {
      front: choice('front brakes', ['disc', 'drum']),
      rear: choice('rear brakes', ['disc', 'drum']),
      assist: choice('assist before', ['vacuum', 'electric', 'hydraulic', 'none']),
      'assist-after': choice('assist after', ['vacuum pump', 'electric booster', 'none']),
      abs: choice('anti-lock brakes', ['none', 'rear axle', 'four channels']),
    }),
    steering: group('steering', { assist: choice('assist before', ['none', 'hydraulic', 'electric']), 'assist-after': choice('assist after', ['none', 'electro-hydraulic', 'electric column', 'electric rack']) }),
    immobiliser: group('immobiliser', {
      fitted: choice('immobiliser before', ['none', 'apart from the engine computer', 'in the engine computer'], { until: BEFORE }),
      after: choice('immobiliser after', ['kept', 'moved', 'replaced', 'left out']),
    }),
    'air-conditioning': choice('air conditioning', ['none', 'belt', 'electric']),
    removed: mapOf('taken out', 'part taken out', group('part taken out', LEDGER), 'Everything that leaves the car, weighed as it comes off.'),
    added: mapOf('put in', 'part put in', group('part put in', { ...LEDGER, price: quantity('money', 'price', 'k', { least: 0 }) }), 'What goes in beside motors, inverters and battery boxes, which have their own place.'),
    'coast-down': group('coast-down', {
      mass: quantity('mass', 'mass as tested', 'm_cd', { least: 1, until: BEFORE }),
      temperature: quantity('temperature', 'air temperature', 'T_cd', { until: BEFORE }),
      pressure: quantity('pressure', 'air pressure', 'p_cd', { least: 5e4, until: BEFORE }),
      f0: quantity('force', 'constant part of road load', 'f_0', { until: BEFORE }),
      f1: quantity('speed drag', 'part of road load rising with speed', 'f_1', { until: BEFORE }),
      f2: quantity('air drag', 'part of road load rising with speed squared', 'f_2', { least: 0, until: BEFORE }),
      runs: mapOf('runs', 'run', group('run', {
        direction: choice('direction', ['out', 'back']),
        from: quantity('speed', 'from', 'v_1', { least: 0, until: BEFORE }),
        to: quantity('speed', 'to', 'v_2', { least: 0, until: BEFORE }),
        time: quantity('time', 'time taken', 't', { least: 0.1, until: BEFORE }),
      })),
    }),
  },
  { says: 'The car as it was. Much of it can only be measured while the engine still runs.' },
)
