import { Answers, type Assessment, assess, assessed, type LookedUp, type Model } from '@ampwright/engine'
import type { Conversion } from '@ampwright/conversion'
import type { Terminal } from './terminal.ts'

/** Limits of the rule set the brief names. */
export const limitsOf = (_: Model): ((key: string, variant?: string) => LookedUp | undefined) => () => undefined

export const assessModel = (model: Model, bands: boolean): Assessment => assessed(model, { limits: limitsOf(model), bands })

/** Assesses a conversion; on a terminal it says what it is at when that takes over a second. */
export function assessWithProgress(c: Conversion, t: Terminal): Assessment {
  const steps = assess(new Answers(c.model), { limits: limitsOf(c.model) }), began = Date.now()
  for (let shown = 0; ; ) {
    const step = steps.next()
    if (step.done) {
      if (shown) process.stderr.write('\r\u001b[K')
      return step.value
    }
    if (process.stderr.isTTY && Date.now() - began > 1000 && Date.now() - shown > 100) {
      shown = Date.now()
      process.stderr.write(`\r\u001b[K${step.value.of}: ${step.value.did}`.slice(0, t.width))
    }
  }
}
