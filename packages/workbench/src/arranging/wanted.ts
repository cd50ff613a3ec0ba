import { type Field, type Gap, isFact, isGap } from '@ampwright/engine'
import { Refusal } from '../refusal.ts'

/** Collects what is missing while values are read, so that one message names it all. */
export class Wanting {
  private readonly gaps = new Map<string, string>()
  /** The value of a field; where it is missing it is noted, and something that is no number stands in until `refuse` is asked. */
  number(f: Field): number {
    if (isGap(f)) this.note(f)
    return isFact(f) ? f.value : Number.NaN
  }
  word<W extends string>(f: Field<W>): W | undefined {
    if (isGap(f)) this.note(f)
    return isGap(f) ? undefined : f.value
  }
  note({ path, label }: Pick<Gap, 'path' | 'label'>): void {
    this.gaps.set(path, label)
  }
  notes(gaps: readonly Gap[]): void {
    for (const g of gaps) this.note(g)
  }
  /** One message that names everything missing, if anything is. */
  refuse(): void {
    if (this.gaps.size === 0) return
    const named = [...this.gaps].map(([path, label]) => `${label} (${path})`)
    throw new Refusal(`The battery cannot be arranged yet. Missing: ${named.join('; ')}.`)
  }
}
