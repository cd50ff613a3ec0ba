import type { Seen } from '@ampwright/workbench'
import { keep, kept } from './window-store.ts'

/** A batch of edits the server has not answered yet. */
export type Unsent = {
  readonly key: string
  readonly edits: readonly Seen[]
  readonly what?: string | undefined
  /** The newest revision the window knew when it was made. */
  readonly after: number
}

const keyOf = (id: string): string => `unsent.${id}`
let made = 0

/** The batches nobody answered, oldest first. Sent again they change nothing where they were taken already: what is wanted stands there then. */
export const unsent = (id: string): readonly Unsent[] => kept<readonly Unsent[]>(keyOf(id)) ?? []

/** Keeps a batch before it is sent. */
export function putOut(id: string, batch: Omit<Unsent, 'key'>): Unsent {
  const whole = { ...batch, key: `${performance.timeOrigin} ${++made}` }
  keep(keyOf(id), [...unsent(id), whole])
  return whole
}

/** Takes a batch out once it is answered, whatever the answer is. */
export function takeOut(id: string, key: string): void {
  const rest = unsent(id).filter(b => b.key !== key)
  keep(keyOf(id), rest.length ? rest : undefined)
}
