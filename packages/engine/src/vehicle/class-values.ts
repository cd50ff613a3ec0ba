import type { Source } from '../sources.ts'

/** A value for a class of cars, with the half-width that should hold 19 cars in 20, and where it is from. Only ever used as an assumption that shows. */
export type ClassValue = { readonly value: number; readonly half: number; readonly note: string; readonly source: Source }

const bosch = (place: string): Source => ({ work: 'bosch', place, mark: 'from memory' })
const practice = (place: string): Source => ({ work: 'practice', place, mark: 'common practice' })

/** Whole-car rolling resistance (tyres, bearings, dragging pads), median and 10th to 90th percentile of certification coast-downs by group. */
const ROLLING: Readonly<Record<string, readonly [number, number]>> = {
  'open two-seater': [0.0145, 0.003],
  hatchback: [0.0117, 0.003],
  saloon: [0.0104, 0.0027],
  estate: [0.0104, 0.0027],
  'off-road': [0.0093, 0.0025],
  pickup: [0.0085, 0.003],
  van: [0.0093, 0.0025],
}
export function classRollingResistance(body: string | undefined): ClassValue | undefined {
  const c = body === undefined ? undefined : ROLLING[body]
  return (
    c && {
      value: c[0],
      half: c[1],
      note: `class ${body}`,
      source: { work: 'epa-2022', place: `coast-down coefficients, ${body} group: median, 10th to 90th percentile` },
    }
  )
}

const HEIGHT: Readonly<Record<string, readonly [number, number]>> = {
  'open two-seater': [0.47, 0.05],
  hatchback: [0.53, 0.05],
  saloon: [0.54, 0.05],
  estate: [0.56, 0.05],
  'off-road': [0.7, 0.08],
  pickup: [0.68, 0.08],
  van: [0.68, 0.1],
}
export function classCentreHeight(body: string | undefined): ClassValue | undefined {
  const c = body === undefined ? undefined : HEIGHT[body]
  return (
    c && {
      value: c[0],
      half: c[1],
      note: `class ${body}`,
      source: { work: 'gillespie', place: 'heights of the centre of mass by class of car', mark: 'from memory' },
    }
  )
}

const GRIP = { dry: [0.8, 0.1], wet: [0.55, 0.15], gravel: [0.5, 0.12], snow: [0.2, 0.08] } as const
export const classGrip = (surface: keyof typeof GRIP): ClassValue => ({
  value: GRIP[surface][0],
  half: GRIP[surface][1],
  note: `${surface} road`,
  source: bosch('coefficients of static friction, tyre on road'),
})

const EFFICIENCY: Readonly<Record<string, readonly [number, number]>> = {
  'drive unit': [0.96, 0.015],
  'kept gearbox': [0.95, 0.01],
  'single reduction': [0.95, 0.015],
}
/** Motor shaft to wheels. A transfer case costs two further per cent. */
export function classDrivelineEfficiency(through: string | undefined, transfer: string | undefined): ClassValue | undefined {
  const c = through === undefined ? undefined : EFFICIENCY[through]
  if (!c) return undefined
  const transferred = transfer !== undefined && transfer !== 'none'
  return {
    value: c[0] - (transferred ? 0.02 : 0),
    half: c[1] + (transferred ? 0.01 : 0),
    note: `${through}${transferred ? ' and transfer case' : ''}`,
    source: practice('gear and bearing losses by layout'),
  }
}

/**
 * Drag of gears and bearings at the motor shaft, beyond what coasting in neutral shows: coast-downs and the rolling resistance of whole cars hold the drag of axle and output
 * shaft already.
 */
export const GEAR_DRAG: ClassValue = {
  value: 0.3,
  half: 0.2,
  note: 'car gearboxes and reducers',
  source: practice('drag of gears and bearings turned slowly, at the motor shaft'),
}
export const GEAR_DRAG_AT_TOP: ClassValue = {
  value: 1,
  half: 0.7,
  note: 'car gearboxes and reducers',
  source: practice('drag of gears, bearings and oil at the top speed of the motor'),
}

/** Rolling resistance on a surface over that on dry asphalt. Gravel is the ratio of two printed coefficients, 0.020 over 0.013. */
const ON_SURFACE = {
  wet: [1.1, 0.1, practice('wet against dry road, water pushed aside')],
  gravel: [1.54, 0.4, bosch('coefficients of rolling resistance: rolled gravel 0.020 against asphalt 0.013')],
  snow: [2, 0.7, practice('packed snow against dry road')],
} as const
export const classRollingFactor = (surface: keyof typeof ON_SURFACE): ClassValue => {
  const [value, half, source] = ON_SURFACE[surface]
  return { value, half, note: `${surface} road`, source }
}

/**
 * Wheel, tyre and disc. Passenger cars: 0.8 to 1.5 kg·m². Larger wheels are worked from their mass and radius, as 0.7 · m · r²: 18 kg at 0.33 m
 * gives 1.4, 30 kg at 0.38 m gives 3.0 kg·m².
 */
const PASSENGER_WHEEL = { value: 1.15, half: 0.35, source: practice('inertia of wheel, tyre and disc, passenger cars') }
const LARGE_WHEEL = { value: 2.2, half: 0.8, source: practice('wheel, tyre and disc of 18 to 30 kg at 0.33 to 0.38 m, by 0.7 · m · r²') }
const WHEEL: Readonly<Record<string, Omit<ClassValue, 'note'>>> = {
  'open two-seater': PASSENGER_WHEEL,
  saloon: PASSENGER_WHEEL,
  estate: PASSENGER_WHEEL,
  hatchback: PASSENGER_WHEEL,
  'off-road': LARGE_WHEEL,
  pickup: LARGE_WHEEL,
  van: LARGE_WHEEL,
}
export function classWheelInertia(body: string | undefined): ClassValue | undefined {
  const c = body === undefined ? undefined : WHEEL[body]
  return c && { ...c, note: `wheel of a ${body}` }
}

/** Height of the wheel centre of a standing car over the unloaded radius of its tyre: 0.93 to 0.95. */
export const LOADED_SHARE: ClassValue = {
  value: 0.94,
  half: 0.01,
  note: 'standing wheel',
  source: practice('loaded over unloaded radius, 0.93 to 0.95'),
}

const reference = (value: number, half: number): ClassValue => ({
  value,
  half,
  note: 'reference air',
  source: { work: 'un-gtr-15', place: 'reference conditions: 20 °C, 100 kPa', mark: 'from memory' },
})
/** Air that published road-load coefficients are stated for, unless they say otherwise. */
export const REFERENCE_AIR = { temperature: reference(293.15, 5), pressure: reference(100e3, 2e3) } as const

/** Drag area, median and 10th to 90th percentile of certification coast-downs of 2022 by group. Older cars are smaller and less slippery. */
const DRAG_AREA: Readonly<Record<string, readonly [value: number, half: number, group: string]>> = {
  'open two-seater': [0.86, 0.16, 'two-seaters'],
  hatchback: [0.79, 0.12, 'subcompact'],
  saloon: [0.79, 0.12, 'mid-size'],
  estate: [0.79, 0.12, 'mid-size'],
  'off-road': [1.11, 0.31, 'SUV, crossover, van, not battery'],
  van: [1.11, 0.31, 'SUV, crossover, van, not battery'],
  pickup: [1.47, 0.2, 'pickup'],
}
export function classDragArea(body: string | undefined): ClassValue | undefined {
  const c = body === undefined ? undefined : DRAG_AREA[body]
  return (
    c && {
      value: c[0],
      half: c[1],
      note: `class ${body}`,
      source: { work: 'epa-2022', place: `coast-down coefficients, group ${c[2]}: median, 10th to 90th percentile` },
    }
  )
}

/** Drag coefficient by body: middle and half-width of the range of the table. Saloons of before 1980 have their own row. */
const DRAG: Readonly<Record<string, readonly [low: number, high: number]>> = {
  'open two-seater': [0.33, 0.5],
  hatchback: [0.32, 0.4],
  saloon: [0.26, 0.35],
  estate: [0.3, 0.34],
  'off-road': [0.35, 0.5],
  pickup: [0.35, 0.5],
  van: [0.32, 0.45],
}
const OLD_SALOON = [0.4, 0.5] as const
export function classDragCoefficient(body: string | undefined, registered: string | undefined): ClassValue | undefined {
  if (body === undefined) return undefined
  const old = body === 'saloon' && registered !== undefined && registered < '1980',
    range = old ? OLD_SALOON : DRAG[body]
  if (!range) return undefined
  const [low, high] = range
  return {
    value: (low + high) / 2,
    half: (high - low) / 2,
    note: old ? 'saloon of before 1980' : body === 'pickup' ? 'as off-road cars' : `class ${body}`,
    source: { work: 'hucho', place: 'drag coefficients by body', mark: 'from memory' },
  }
}
