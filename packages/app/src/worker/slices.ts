import type { Assessment } from '@ampwright/engine'
import type { Desk, Step } from '@ampwright/workbench'

/** Longest the thread works before it looks for a newer edit [ms]. */
const SLICE = 8

/** Longest it works for a headline before it looks for a newer edit [ms]. */
const HEADLINE_FIRST = 60

/** Longest it waits for a headline to be painted, before it goes on [ms]. */
const TO_PAINT = 120

/** What is worth telling of an assessment on its way; what comes back is waited for, so that what was told is painted by a processor at rest. */
export type Hear = (step: Exclude<Step, { is: 'working' }>) => unknown

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

/** An assessment up to where it can be told, that lets other messages in between. */
export async function inSlices(desk: Desk): Promise<Assessment> {
  let began = performance.now()
  for (const steps = desk.assess(); ; ) {
    const step = steps.next()
    if (step.done) return step.value
    if (step.value.is === 'told' && desk.assessment) return desk.assessment
    if (performance.now() - began < SLICE) continue
    await breath()
    began = performance.now()
  }
}

const soon = (done: unknown): Promise<unknown> => Promise.race([done, new Promise(late => setTimeout(late, TO_PAINT))])

/** A whole assessment for as long as it is wanted. Up to the headline nothing else is let in: it is what somebody waits for. */
export async function headlineFirst(desk: Desk, wanted: () => boolean, hear: Hear): Promise<void> {
  const steps = desk.assess()
  let began = performance.now() + HEADLINE_FIRST
  for (;;) {
    const step = steps.next()
    if (!wanted()) return
    const heard = !step.done && step.value.is !== 'working' ? hear(step.value) : undefined
    if (step.done) return
    const isHeadline = step.value.is === 'headline'
    if (!isHeadline && performance.now() - began < SLICE) continue
    await (isHeadline ? soon(heard) : breath())
    if (!wanted()) return
    began = performance.now()
  }
}

/** Works out how sure figures are that somebody is about to read, a slice at a time: of the newest assessment, should another come meanwhile. */
export async function howSure(desk: Desk, ids: () => readonly string[]): Promise<void> {
  for (;;) {
    const of = desk.assessment
    let began = performance.now()
    for (const id of ids()) {
      of?.halves.get(id)
      if (performance.now() - began < SLICE) continue
      await breath()
      if (desk.assessment !== of) break
      began = performance.now()
    }
    if (desk.assessment === of) return
  }
}
