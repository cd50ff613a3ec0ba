import { airDrag, roadLoad as load, NO_LINEAR_PART, relativeDifference, roadPower, rollingForce } from '../../vehicle/road-load.ts'
import { REFERENCE_DENSITY } from '../../vehicle/road-load-reference.ts'
import { type Figure, standard, type Value } from '../../working/value.ts'
import { isGaps, type Maker, maybe, study } from '../study.ts'
import { type CoastDown, coastDown } from './coast-down.ts'
import { dragArea, dragAreaOf } from './drag-area.ts'
import { weighed } from './weighed.ts'

const HUNDRED = standard('comparison-speed', 'Speed road loads are compared at', 'v', 100 / 3.6, 'm/s', {
  work: 'definition',
  place: '100 km/h',
})
const CALM = standard('still-air', 'Still air', 'v_w', 0, 'm/s', { work: 'definition', place: 'no wind' })

export type RoadLoad = {
  /** What governs everywhere: the coast-down where there is one. */
  readonly governs: 'coast-down' | 'drag area' | undefined
  readonly force: Figure | undefined
  readonly difference: Figure | undefined
}

/** Road load of the donor car at 100 km/h, 20 °C and 100 kPa, by its coast-down and by drag area and rolling resistance; which governs, and how far they lie apart. */
export const roadLoad = study({
  id: 'road-load',
  stage: 'donor',
  asks: 'What holds the car back at 100 km/h, and do its two accounts agree?',
  reads: ({ donor }, ask) => {
    const measured = ask(coastDown)
    return {
      measured: maybe(measured),
      // The mass both are compared at: that of the test, else of the scales.
      drag: maybe({ area: dragAreaOf(donor), rolling: donor.rollingResistance, weighed: isGaps(measured) ? ask(weighed) : null }),
    }
  },
  answer: ({ measured, drag }, make): RoadLoad => {
    const test = isGaps(measured) ? undefined : (measured as CoastDown)
    const byTest = test && force(make, 'coast-down', 'Road load by coast-down', test)
    let byDrag: Figure | undefined
    if (!isGaps(drag)) {
      const mass = test ? test.mass : (drag.weighed as { total: Value }).total
      const f0 = make.work('rolling', rollingForce, { rolling: drag.rolling, mass }, { label: 'Rolling resistance of the donor car' })
      const f2 = make.work(
        'air',
        airDrag,
        { density: REFERENCE_DENSITY, areas: [dragArea(make, drag.area, { label: 'Drag area' })] },
        { label: 'Air drag of the donor car' },
      )
      byDrag = force(make, 'drag-area', 'Road load by drag area and rolling resistance', { f0, f1: NO_LINEAR_PART, f2 })
    }
    const governing = byTest ?? byDrag
    if (governing)
      make.work('power', roadPower, { force: governing, speed: HUNDRED }, { label: 'Power at the wheels at 100 km/h, donor car' })
    return {
      governs: byTest ? 'coast-down' : byDrag ? 'drag area' : undefined,
      force: governing,
      difference:
        byTest &&
        byDrag &&
        make.work(
          'difference',
          relativeDifference,
          { one: byDrag, other: byTest },
          { label: 'Drag area and rolling resistance against coast-down' },
        ),
    }
  },
})

const force = (make: Maker, key: string, label: string, { f0, f1, f2 }: { f0: Value; f1: Value; f2: Value }): Figure =>
  make.work(key, load, { f0, f1, f2, speed: HUNDRED, headWind: CALM }, { label: `${label}, 100 km/h` })
