import type { Model } from '@ampwright/engine'
import type { assessModel } from '@ampwright/workbench'

const scatterOf = (base: ReturnType<typeof assessModel>, step: string): number => {
  const scatter = base.figures.get(`coast-down-runs.accuracy@${step}`)?.value
  if (scatter === undefined) throw new Error(`no accuracy is told of the step ${step}`)
  return scatter
}
const isRun = (key: string): boolean => key.startsWith('out') || key.startsWith('back')

/**
 * The coast-down runs driven again, each step scattered as its pairs did: what one stretch of times does to the force it does alike to all of them. The scatter is
 * no fact of the file, so that drawing facts alone would leave it out.
 */
export function runsAgain(model: Model, base: ReturnType<typeof assessModel>, normal: () => number): Model {
  const { coastDown } = model.donor
  const steps = Object.entries(coastDown.steps).map(([name, step]) => {
    const scatter = scatterOf(base, name),
      force = 1 + (normal() * scatter) / 2
    const again = Object.entries(step).map(([key, field]) => [
      key,
      isRun(key) && typeof field === 'object' && 'value' in field ? { ...field, value: (field.value as number) / force } : field,
    ])
    return [name, Object.fromEntries(again)]
  })
  return { ...model, donor: { ...model.donor, coastDown: { ...coastDown, steps: Object.fromEntries(steps) } } }
}
