import { GRAVITY } from '../physics/gravity.ts'
import type { Numbers } from '../working/formula.ts'
import type { TripPlan, TripUnit } from './plan.ts'

const one = <U extends string>(symbol: string, unit: U, label: string) => ({ symbol, unit, label }) as const
const each = <U extends string>(symbol: string, unit: U, label: string) => ({ symbol, unit, label, many: true }) as const
const AXLES = ['front', 'rear', 'both'] as const

/** What a trip is given of road, car, drive and pack; lists have one value for each drive unit. */
export const TRIP_TAKES = {
  trace: { symbol: 'v_t', unit: ['s', 'm/s'], label: 'speed wanted over time', curve: true },
  slope: { symbol: 'p', unit: ['m', '1'], label: 'slope over distance', curve: true },
  mass: one('m', 'kg', 'what moves'),
  rotating: one('m_rot', 'kg', 'equivalent mass of what turns'),
  f0: one('f_0', 'N', 'constant part of road load'),
  f1: one('f_1', 'N·s/m', 'part of road load rising with speed'),
  f2: one('f_2', 'N·s²/m²', 'air drag per speed squared'),
  headWind: { ...one('v_w', 'm/s', 'head wind'), shows: 'speed' },
  radius: one('r', 'm', 'rolling radius'),
  grip: one('μ', '1', 'grip'),
  front: one('m_F', 'kg', 'front axle'),
  rear: one('m_R', 'kg', 'rear axle'),
  height: one('h', 'm', 'height of the centre of mass'),
  wheelbase: one('L', 'm', 'wheelbase'),
  axle: { symbol: 'axle', oneOf: AXLES, label: 'axle of the first unit' },
  ratio: { ...each('i', '1', 'total ratio'), shows: 'ratio' },
  efficiency: { ...each('η_z', '1', 'what teeth under load let through'), shows: 'share' },
  gearDrag: each('a', 'N·m', 'drag of gears and bearings turned slowly'),
  gearDragRise: each('b', 'N·m·s', 'that drag rising with speed'),
  peakTorque: each('M_max', 'N·m', 'peak torque'),
  peakPower: each('P_max', 'W', 'peak power'),
  continuousTorque: each('M_c', 'N·m', 'continuous torque'),
  continuousPower: each('P_c', 'W', 'continuous power'),
  baseSpeed: { ...each('ω_b', 'rad/s', 'base speed'), shows: 'rotational speed' },
  statedVoltage: each('U_0', 'V', 'voltage the base speed is stated at'),
  topSpeed: { ...each('ω_max', 'rad/s', 'top speed of the motor'), shows: 'rotational speed' },
  losses: { symbol: 'V', unit: ['rad/s', 'N·m', 'W'], label: 'losses of the first unit', grid: true },
  lossFactor: each('f_V', '1', 'loss factor'),
  drag: { symbol: 'M_d', unit: ['rad/s', 'N·m'], label: 'drag of the first unit without current', curve: true },
  windingCapacity: { ...each('C_w', 'J/K', 'heat capacity of the winding'), shows: 'heat capacity' },
  windingConductance: { ...each('G_w', 'W/K', 'winding to coolant'), shows: 'thermal conductance' },
  windingLimit: { ...each('T_w', 'K', 'winding limit'), shows: 'temperature' },
  coolant: { ...each('T_cool', 'K', 'coolant'), shows: 'temperature' },
  inverterShare: { ...each('s_inv', '1', 'share of the losses in the inverter'), shows: 'share' },
  inverterCapacity: { ...each('C_inv', 'J/K', 'heat capacity of the inverter'), shows: 'heat capacity' },
  inverterConductance: { ...each('G_inv', 'W/K', 'inverter to coolant'), shows: 'thermal conductance' },
  regenTorque: { ...one('s_reg', '1', 'share of peak torque used for recovery'), shows: 'share' },
  regenPower: one('P_reg', 'W', 'greatest recovery power'),
  cutOffSpeed: { ...one('v_reg', 'm/s', 'no recovery below'), shows: 'speed' },
  openCircuit: { symbol: 'U_oc', unit: ['1', 'V'], label: 'open-circuit voltage over charge', curve: true },
  resistance: { symbol: 'R_0', unit: ['1', 'Ω'], label: 'ohmic resistance over charge, 25 °C', curve: true },
  resistanceFactor: one('f_R', '1', 'factor on the resistance curve'),
  branchResistance: one('R_1', 'Ω', 'branch resistance, 25 °C'),
  branchTime: one('τ_1', 's', 'time constant of the branch'),
  coldFactor: { symbol: 'c_T', unit: ['K', '1'], label: 'resistance over cell temperature', curve: true },
  capacity: one('Q', 'C', 'capacity'),
  lowestVoltage: one('U_min', 'V', 'lowest pack voltage'),
  highestVoltage: one('U_max', 'V', 'highest pack voltage'),
  peakCurrent: one('I_max', 'A', 'peak current'),
  chargeCurrent: one('I_ch', 'A', 'charging current, warm'),
  chargeShare: { symbol: 's_ch', unit: ['K', '1'], label: 'share of the charging current over cell temperature', curve: true },
  packCapacity: { ...one('C_b', 'J/K', 'heat capacity of the pack'), shows: 'heat capacity' },
  packConductance: { ...one('G_b', 'W/K', 'pack to outside air'), shows: 'thermal conductance' },
  packTemperature: { ...one('T_b', 'K', 'cells at the start'), shows: 'temperature' },
  air: { ...one('T_a', 'K', 'outside air'), shows: 'temperature' },
  cabinPower: one('P_cab', 'W', 'cabin'),
  otherPower: one('P_aux', 'W', '12 V and others'),
  startCharge: { ...one('z_0', '1', 'charge at the start'), shows: 'share' },
} as const
/** What a second drive unit adds. */
export const SECOND_UNIT = {
  otherAxle: { symbol: 'axle_2', oneOf: AXLES, label: 'axle of the second unit' },
  otherLosses: { symbol: 'V_2', unit: ['rad/s', 'N·m', 'W'], label: 'losses of the second unit', grid: true },
  otherDrag: { symbol: 'M_d2', unit: ['rad/s', 'N·m'], label: 'drag of the second unit without current', curve: true },
  firstShare: { ...one('s_1', '1', 'share of the pull asked of the first unit'), shows: 'share' },
} as const

export type TripNumbers = Numbers<typeof TRIP_TAKES>
export type SecondNumbers = Numbers<typeof SECOND_UNIT>

/** The plan behind the numbers: thermal nodes are the air, the pack, and for each unit its coolant, winding and inverter. */
export function planOf(x: TripNumbers, second: SecondNumbers | undefined, step: number): TripPlan {
  const units = x.ratio.map((ratio, i): TripUnit => {
    const k = (list: readonly number[]): number => list[i]!
    return {
      ratio,
      axle: i === 0 ? x.axle : (second as SecondNumbers).otherAxle,
      losses: i === 0 ? x.losses : (second as SecondNumbers).otherLosses,
      drag: i === 0 ? x.drag : (second as SecondNumbers).otherDrag,
      efficiency: k(x.efficiency),
      gearDrag: k(x.gearDrag),
      gearDragRise: k(x.gearDragRise),
      peakTorque: k(x.peakTorque),
      peakPower: k(x.peakPower),
      continuousTorque: k(x.continuousTorque),
      continuousPower: k(x.continuousPower),
      baseSpeed: k(x.baseSpeed),
      statedVoltage: k(x.statedVoltage),
      topSpeed: k(x.topSpeed),
      lossFactor: k(x.lossFactor),
      inverterShare: k(x.inverterShare),
      windingLimit: k(x.windingLimit),
      windingNode: 3 + 3 * i,
      inverterNode: 4 + 3 * i,
    }
  })
  return {
    trace: x.trace,
    slope: x.slope,
    step,
    units,
    frontShare: second ? second.firstShare : 1,
    road: {
      mass: x.mass,
      effectiveMass: x.mass + x.rotating,
      f0: x.f0,
      f1: x.f1,
      f2: x.f2,
      headWind: x.headWind,
      gravity: GRAVITY.value,
      radius: x.radius,
    },
    grip: { grip: x.grip, frontMass: x.front, rearMass: x.rear, height: x.height, wheelbase: x.wheelbase },
    regeneration: { torqueShare: x.regenTorque, power: x.regenPower, cutOffSpeed: x.cutOffSpeed },
    pack: {
      openCircuit: x.openCircuit,
      resistance: x.resistance,
      resistanceFactor: x.resistanceFactor,
      branchResistance: x.branchResistance,
      branchTime: x.branchTime,
      coldFactor: x.coldFactor,
      capacity: x.capacity,
      lowestVoltage: x.lowestVoltage,
      highestVoltage: x.highestVoltage,
      peakCurrent: x.peakCurrent,
      chargeCurrent: x.chargeCurrent,
      chargeShare: x.chargeShare,
      node: 1,
    },
    cabinPower: x.cabinPower,
    otherPower: x.otherPower,
    startCharge: x.startCharge,
    nodes: [
      { capacity: Number.POSITIVE_INFINITY, start: x.air },
      { capacity: x.packCapacity, start: x.packTemperature },
      ...units.flatMap((_, i) => [
        { capacity: Number.POSITIVE_INFINITY, start: x.coolant[i]! },
        { capacity: x.windingCapacity[i]!, start: x.coolant[i]! },
        { capacity: x.inverterCapacity[i]!, start: x.coolant[i]! },
      ]),
    ],
    links: [
      { from: 1, to: 0, conductance: x.packConductance },
      ...units.flatMap((_, i) => [
        { from: 3 + 3 * i, to: 2 + 3 * i, conductance: x.windingConductance[i]! },
        { from: 4 + 3 * i, to: 2 + 3 * i, conductance: x.inverterConductance[i]! },
      ]),
    ],
  }
}
