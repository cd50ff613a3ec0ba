/** Inputs that the sums about full pull share, as their cards state them. */
const newton = (symbol: string, unit: string, label: string) => ({ symbol, unit, label }) as const
const kilogram = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const metre = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const each = (symbol: string, unit: string, label: string) => ({ symbol, unit, label: `${label}, each unit`, many: true }) as const

export const ROAD = {
  f0: newton('f_0', 'N', 'constant part of road load'),
  f1: newton('f_1', 'N·s/m', 'part rising with speed'),
  f2: newton('f_2', 'N·s²/m²', 'part rising with speed squared'),
  headWind: { symbol: 'v_w', unit: 'm/s', label: 'head wind', shows: 'speed' },
} as const
export const UNITS = {
  torque: each('M', 'N·m', 'torque allowed'),
  power: each('P', 'W', 'power allowed'),
  efficiency: each('η', '1', 'motor to wheels'),
} as const
export const CAR = {
  mass: kilogram('m', 'mass that moves'),
  front: kilogram('m_F', 'front axle mass'),
  rear: kilogram('m_R', 'rear axle mass'),
  height: metre('h', 'height of the centre of mass'),
  wheelbase: metre('L', 'wheelbase'),
  ...ROAD,
  grip: { symbol: 'μ', unit: '1', label: 'grip', shows: 'ratio' },
  radius: metre('r', 'rolling radius'),
  wheelsInertia: { symbol: 'J_w', unit: 'kg·m²', label: 'inertia of all wheels' },
  ...UNITS,
  topSpeed: each('ω_max', 'rad/s', 'top speed of the motor'),
  inertia: each('J', 'kg·m²', 'inertia at the motor shaft'),
  ratios: each('i', '1', 'total ratios, gear by gear'),
  gears: each('n_g', '1', 'gears'),
  frontShare: each('s', '1', 'share of its pull at the front axle'),
  centre: { symbol: 'axles', oneOf: ['open', 'locked'], label: 'axles locked together or not' },
} as const
export const WINDING = {
  shiftTime: { symbol: 't_s', unit: 's', label: 'time without pull in one gear change', many: true },
  ratedTorque: each('M_c', 'N·m', 'continuous torque'),
  ratedPower: each('P_c', 'W', 'continuous power'),
  windingTime: each('τ_w', 's', 'time constant of the winding'),
  start: { symbol: 'θ_0', unit: '1', label: 'windings at the start: 0 as the coolant, 1 at their limit', shows: 'share' },
} as const
