import type { Trip } from '../../model/trips.ts'
import { curve } from '../../numerics/curve.ts'
import { climbTime, STEADY_TIME, slopeAlong, slopeFitted, speedHeld, speedReached } from '../../trip/journey.ts'
import { routeSlope, routeTrace } from '../../trip/route.ts'
import { type Curve, type Fact, isGap, type Value } from '../../working/value.ts'
import type { Known, Maker } from '../study.ts'

const LEVEL: Fact<Curve> = {
  path: 'standard.level',
  label: 'a level road',
  symbol: 'p',
  unit: '1',
  value: curve([0, 1], [0, 0]),
  origin: { how: 'standard', source: { work: 'definition', place: 'cycles are driven on the level' } },
}

/** What the kind of trip reads to say how fast and how steep. */
export function speedReads(t: Trip) {
  switch (t.kind) {
    case 'cycle':
      return { by: 'cycle' as const, trace: t.trace }
    case 'steady':
      return { by: 'steady' as const, speed: t.speed, slope: t.slope }
    case 'climb':
      return { by: 'climb' as const, speed: t.speed, slope: t.slope, length: t.length }
    case 'route':
      return { by: 'route' as const, profile: t.profile, wanted: isGap(t.timing) ? t.speed : t.timing }
  }
}
export type SpeedKnown = Known<ReturnType<typeof speedReads>>

/** Speed wanted over time and slope over distance. */
export function speedWanted(make: Maker, k: SpeedKnown, item: string): { trace: Value<Curve>; slope: Value<Curve> } {
  const named = (label: string): { item: string; label: string } => ({ item, label: `${label}, ${item}` })
  const held = (speed: Value, time: Value): Value<Curve> =>
    make.derive('speed', speedHeld, { speed, time }, curve([0, time.value], [speed.value, speed.value]), 'm/s', named('Speed over time'))
  const steady = (slope: Value): Value<Curve> =>
    make.derive('slope', slopeAlong, { slope }, curve([0, 1], [slope.value, slope.value]), '1', named('Slope over distance'))
  switch (k.by) {
    case 'cycle':
      return { trace: k.trace, slope: LEVEL }
    case 'steady':
      return { trace: held(k.speed, STEADY_TIME), slope: steady(k.slope) }
    case 'climb':
      return {
        trace: held(k.speed, make.work('climb-time', climbTime, { length: k.length, speed: k.speed }, named('Time on the hill'))),
        slope: steady(k.slope),
      }
    case 'route': {
      const slope = make.derive(
        'slope',
        slopeFitted,
        { heights: k.profile },
        routeSlope(k.profile.value),
        '1',
        named('Slope over distance'),
      )
      const { x } = k.profile.value,
        length = x[x.length - 1]! - x[0]!
      const { wanted } = k,
        over = typeof wanted.value === 'number' ? curve([0, length], [wanted.value, wanted.value]) : wanted.value
      return {
        slope,
        trace: make.derive('speed', speedReached, { wanted, way: k.profile }, routeTrace(over), 'm/s', named('Speed over time')),
      }
    }
  }
}
