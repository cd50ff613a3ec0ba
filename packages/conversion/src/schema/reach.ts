import type { Kind } from '@ampwright/engine'

/**
 * What nothing in a car on the road reaches: beyond it lies a slip of the hand or a forgotten unit, which is refused with one message instead of
 * being reckoned with. Wide on purpose, in SI; a field may say less.
 */
export const GREATEST: Readonly<Partial<Record<Kind, number>>> = {
  mass: 40_000,
  length: 20,
  distance: 1e10,
  area: 100,
  speed: 150,
  force: 1e6,
  torque: 1e5,
  power: 5e6,
  energy: 1e10,
  pressure: 1e8,
  'rotational speed': 10_000,
  voltage: 2000,
  current: 10_000,
  charge: 3.6e7,
  time: 1e8,
  duration: 1e10,
  money: 1e7,
  count: 10_000,
  'moment of inertia': 1000,
  'thermal conductance': 1e5,
}

/** Places along the car and above the ground. */
export const ALONG = { least: -5, most: 20 } as const
/** Places across the car, from its centre line. */
export const ACROSS = { least: -3, most: 3 } as const
export const UP = { least: 0, most: 5 } as const
