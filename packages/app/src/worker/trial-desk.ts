import type { System } from '@ampwright/conversion'
import { Desk, type fileDatum } from '@ampwright/workbench'

/** What stands beside a conversion, by name and the format it is wanted in. */
export type Attached = (name: string, format: string) => ReturnType<typeof fileDatum> | undefined
type Headline = ReturnType<Desk['headlineOnly']>

/** A second desk for texts that are only tried: what one trial worked out serves the next. */
export class TrialDesk {
  private desk: Desk | undefined
  private readonly attached: Attached

  constructor(attached: Attached) {
    this.attached = attached
  }
  private on(text: string): Desk {
    return new Desk(text, { attachments: this.attached })
  }
  /** Another conversion is laid open. */
  forget(): void {
    this.desk = undefined
  }
  headline(text: string, system: System): Headline {
    this.desk ??= this.on(text)
    this.desk.system = system
    this.desk.take(text)
    return this.desk.headlineOnly()
  }
  /** How long one bare headline takes here [ms]: the middle of many. A measure for the bench; the page does not use it. */
  bare(text: string): number {
    const times = Array.from({ length: 15 }, () => {
      const fresh = this.on(text),
        began = performance.now()
      fresh.headlineOnly()
      return performance.now() - began
    })
    return times.toSorted((a, b) => a - b)[7] ?? Number.NaN
  }
}
