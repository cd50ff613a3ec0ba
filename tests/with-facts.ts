import { type Answers, assess, type Fact, type Model } from '@ampwright/engine'
import type { assessModel } from '@ampwright/workbench'

/** The model with every fact that has a spread given another value; a fact that stands in several places is changed once. */
export function withFacts(model: Model, change: (fact: Fact & { readonly half: number }) => number): Model {
  const values = new Map<string, number>(),
    met = new Map<object, unknown>()
  const walk = (x: unknown): unknown => {
    if (typeof x !== 'object' || x === null || ArrayBuffer.isView(x)) return x
    const done = met.get(x)
    if (done) return done
    let out: unknown
    if ('path' in x && 'value' in x) {
      const f = x as Fact
      if (typeof f.value !== 'number' || !f.half) out = x
      else {
        if (!values.has(f.path)) values.set(f.path, change(f as Fact & { half: number }))
        out = { ...f, value: values.get(f.path) }
      }
    } else out = Array.isArray(x) ? x.map(walk) : Object.fromEntries(Object.entries(x).map(([k, v]) => [k, walk(v)]))
    met.set(x, out)
    return out
  }
  return walk(model) as Model
}

/** Everything answered, best values only. */
export const withoutBands = (answers: Answers): ReturnType<typeof assessModel> => {
  const steps = assess(answers, { bands: false })
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}
