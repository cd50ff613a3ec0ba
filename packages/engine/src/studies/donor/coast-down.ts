import { isGap, type Value } from '../../working/value.ts'
import { study } from '../study.ts'

/** Road-load coefficients with the state they hold at. */
export type CoastDown = {
  readonly by: 'coefficients'
  readonly f0: Value
  readonly f1: Value
  readonly f2: Value
  readonly mass: Value
  readonly temperature: Value
  readonly pressure: Value
}

/** Road-load coefficients of the donor car, from its coast-down runs or as somebody published them. */
export const coastDown = study({
  id: 'coast-down',
  stage: 'donor',
  asks: 'What holds the car back, by its own coast-down?',
  reads: ({ donor: { coastDown: c } }) => ({
    f0: c.f0,
    f1: c.f1,
    f2: c.f2,
    mass: c.mass,
    temperature: c.temperature,
    pressure: c.pressure,
  }),
  answer: (known): CoastDown => ({ by: 'coefficients', ...known }),
})

export const hasCoefficients = (c: { readonly f0: unknown; readonly f1: unknown; readonly f2: unknown }): boolean =>
  ![c.f0, c.f1, c.f2].every(isGap)
