import type { Assessment } from '@ampwright/engine'
import type { Desk } from '@ampwright/workbench'

/** Longest the thread works before it looks for a newer edit [ms]. */
export const SLICE = 8

/** Lets waiting messages in; a timer would be held back by the browser. */
export const breath = (): Promise<void> =>
  new Promise(done => {
    const { port1, port2 } = new MessageChannel()
    port1.addEventListener('message', () => {
      port1.close()
      done()
    })
    port1.start()
    port2.postMessage(0)
  })

/** A whole assessment that lets other messages in between. */
export async function inSlices(desk: Desk): Promise<Assessment> {
  let began = performance.now()
  for (const steps = desk.assess(); ; ) {
    const step = steps.next()
    if (step.done) return step.value
    if (performance.now() - began < SLICE) continue
    await breath()
    began = performance.now()
  }
}
