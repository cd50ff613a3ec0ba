import { rollingRadius, rollingRadiusBias } from '../../vehicle/rolling-radius.ts'
import { ratioChange, speedometerScale, turnsPerDistance } from '../../vehicle/speedometer.ts'
import { axleLoadOfTyres, loadedRadius, loadKeptAtSpeed } from '../../vehicle/tyre-load.ts'
import { type Field, type Figure, isGap, standard, type Value } from '../../working/value.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { rolling } from './rolling.ts'
import { wantedSpeed } from './wanted-speed.ts'

const SAME = standard('speedometer-drive-same', 'The speedometer turns with the wheels as before', 'i_s', 1, '1', {
  work: 'definition',
  place: 'no ratio changed',
})

export type Tyres = {
  /** Load the two tyres of an axle may carry at the top speed wanted. */
  readonly axle: Figure | Gaps
  readonly loaded: Value | Gaps
  readonly speedometer: Figure | Gaps
}

/** What the tyres may carry and how fast they may turn, the two radii of the wheel, and what the speedometer shows. */
export const tyres = study({
  id: 'tyres',
  stage: 'donor',
  asks: 'What may the tyres carry, and what does the speedometer show?',
  reads: (m, ask) => {
    const { donor } = m,
      before = donor.tyreBefore
    // A speedometer driven ahead of the axle also sees another axle ratio.
    const ahead = !isGap(donor.speedometerDrive) && donor.speedometerDrive.value === 'output shaft'
    const changed: readonly Field[] = ahead ? Object.values(m.drive.units).flatMap(u => (isGap(u.finalDrive) ? [] : [u.finalDrive])) : []
    return {
      load: maybe({ each: donor.tyre.loadEach, symbol: donor.tyre.topSpeed, wanted: wantedSpeed(m) }),
      loaded: isGap(donor.loadedRadius) ? maybe({ diameter: donor.tyre.diameter, share: donor.loadedShare }) : donor.loadedRadius,
      rolling: maybe(from(ask(rolling), r => ({ radius: r.radius }))),
      before: maybe({
        diameter: before.diameter,
        construction: before.construction,
        drive: donor.speedometerDrive,
        ratio: changed.length ? { now: changed[0] as Field, before: donor.finalDrive } : null,
      }),
    }
  },
  answer: (k, make): Tyres => {
    const { load, loaded } = k
    const axle = isGaps(load)
      ? load
      : make.work(
          'axle-load',
          axleLoadOfTyres,
          { each: load.each, keeps: make.work('keeps', loadKeptAtSpeed, { speed: load.wanted, rated: load.symbol }) },
          { label: 'Load the tyres of an axle may carry' },
        )
    if (!isGaps(k.rolling)) make.work('turns', turnsPerDistance, { radius: k.rolling.radius })
    return {
      axle,
      loaded: isGaps(loaded) ? loaded : 'diameter' in loaded ? make.work('loaded-radius', loadedRadius, loaded) : loaded,
      speedometer: isGaps(k.before) ? k.before : isGaps(k.rolling) ? k.rolling : speedometer(k.before, k.rolling.radius),
    }

    function speedometer(
      b: { diameter: Value; construction: Value<'radial' | 'bias'>; ratio: { now: Value; before: Value } | null },
      radius: Value,
    ): Figure {
      const label = { label: 'Rolling radius the speedometer was set for' }
      const before =
        b.construction.value === 'bias'
          ? make.work('radius-before', rollingRadiusBias, { diameter: b.diameter }, label)
          : make.work('radius-before', rollingRadius, { diameter: b.diameter }, label)
      const ratio = b.ratio ? make.work('speedometer-ratio', ratioChange, { now: b.ratio.now, before: b.ratio.before }) : SAME
      return make.work('speedometer', speedometerScale, { radius, before, ratio })
    }
  },
})
