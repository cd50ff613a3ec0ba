import { rollingRadius, rollingRadiusBias, rollingRadiusMeasured } from '../../vehicle/rolling-radius.ts'
import type { Figure } from '../../working/value.ts'
import { isGap } from '../../working/value.ts'
import { study } from '../study.ts'

/** The rolling radius: measured on the car where somebody did, else from the tyre's marking. */
export const rolling = study({
  id: 'rolling',
  stage: 'donor',
  asks: 'How far does the car roll with one turn of a wheel?',
  reads: ({ donor }) =>
    isGap(donor.rollingCircumference)
      ? { diameter: donor.tyre.diameter, construction: donor.tyre.construction, circumference: null }
      : { circumference: donor.rollingCircumference, diameter: null, construction: null },
  answer: (known, make): { radius: Figure } => {
    if (known.circumference !== null) return { radius: make.work('radius', rollingRadiusMeasured, { circumference: known.circumference }) }
    const diameter = known.diameter
    return {
      radius:
        known.construction.value === 'bias'
          ? make.work('radius', rollingRadiusBias, { diameter })
          : make.work('radius', rollingRadius, { diameter }),
    }
  },
})
