import { type Exact, minus, nearestDouble, over, plus, times } from './exact.ts'
import type { Unit } from './units.ts'
import { gaugeArea } from './wire-gauge.ts'

const RIGHT_ANGLE = Math.PI / 2

/** A number in a unit → SI. NaN where the unit has no such number: a slope of 90° and more, no miles per kilowatt-hour. */
export function toSI(x: Exact, unit: Unit): number {
  switch (unit.form) {
    case 'linear':
      return nearestDouble(unit.shift ? plus(times(x, unit.factor), unit.shift) : times(x, unit.factor))
    case 'inverse':
      return x.top > 0n ? nearestDouble(over(unit.factor, x)) : Number.NaN
    case 'gauge':
      return gaugeArea(nearestDouble(x))
    case 'tangent': {
      const angle = nearestDouble(times(x, unit.factor))
      return Math.abs(angle) < RIGHT_ANGLE ? Math.tan(angle) : Number.NaN
    }
  }
}

/** A half-width in a unit → SI; a shifted zero plays no part, and where the unit bends, both ends are converted. */
export function halfToSI(x: Exact, half: Exact, unit: Unit): number {
  if (unit.form === 'linear') return nearestDouble(times(half, unit.factor))
  return Math.abs(toSI(plus(x, half), unit) - toSI(plus(x, minus(half)), unit)) / 2
}

/** SI → a number in a unit. */
export function fromSI(value: number, unit: Unit): number {
  const factor = nearestDouble(unit.factor)
  switch (unit.form) {
    case 'linear':
      return (value - (unit.shift ? nearestDouble(unit.shift) : 0)) / factor
    case 'inverse':
      return factor / value
    case 'tangent':
      return Math.atan(value) / factor
    case 'gauge':
      return 36 - (39 * Math.log(Math.sqrt((4 * value) / Math.PI) / (0.005 * 0.0254))) / Math.log(92)
  }
}

/** SI half-width → half-width in a unit: what `halfToSI` turns back. A gauge has none. */
export function halfFromSI(value: number, half: number, unit: Unit): number {
  const factor = nearestDouble(unit.factor)
  switch (unit.form) {
    case 'linear':
      return half / factor
    // h from half = f·h/(x² − h²), x the number in the unit.
    case 'inverse': {
      const x = factor / value
      return (2 * half * x * x) / (factor + Math.hypot(factor, 2 * half * x))
    }
    // h from half = sin 2h / (cos 2x + cos 2h).
    case 'tangent':
      return (Math.atan(half) + Math.asin((half * Math.cos(2 * Math.atan(value))) / Math.hypot(1, half))) / 2 / factor
    case 'gauge':
      return Number.NaN
  }
}
