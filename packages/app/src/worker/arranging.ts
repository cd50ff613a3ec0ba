import type { Edit, System } from '@ampwright/conversion'
import { type PackAnswer, type PackArrangement, packSearch } from '@ampwright/engine'
import {
  type Arranging,
  type ArrangingPlan,
  type ArrangingView,
  arrangementEdits,
  arrangingPlan,
  arrangingView,
  circuitEdits,
  type Desk,
  Refusal,
} from '@ampwright/workbench'

/** What a search has found so far: in words, and as what each of them is. */
export type Arranged = { readonly view: ArrangingView; readonly arrangements: readonly PackArrangement[] }
/** How long to look, and with which seed. */
export type Looking = { readonly seed: number; readonly steps: number }

/** Not oftener than this is anything told [ms]. */
const TOLD = 250

/** What there is to arrange in the car laid open, or what is missing. */
export const planned = (desk: Desk, asked: Arranging): ArrangingPlan | { readonly refused: string } =>
  orRefused(() => arrangingPlan(desk.current().model, asked))
/** A circuit for what the car has, or why there is none. */
export const laidOut = (desk: Desk): readonly Edit[] | { readonly refused: string } => orRefused(() => circuitEdits(desk.current().model))
function orRefused<T>(made: () => T): T | { readonly refused: string } {
  try {
    return made()
  } catch (e) {
    if (e instanceof Refusal) return { refused: e.message }
    throw e
  }
}

export const taken = (desk: Desk, plan: ArrangingPlan, one: PackArrangement): readonly Edit[] =>
  arrangementEdits(desk.current().model, plan, one)

/** Looks for arrangements for so many steps and tells what it has on the way. It holds its thread all the while: give it one of its own, and end that to stop it. */
export function arranged(plan: ArrangingPlan, { seed, steps }: Looking, system: System, hear: (found: Arranged) => void): Arranged {
  const found = (a: PackAnswer): Arranged => ({ view: arrangingView(plan, a, system), arrangements: a.arrangements })
  let last: PackAnswer | undefined,
    told = 0
  for (const answer of packSearch(plan.task, { seed })) {
    last = answer
    if (Number.isFinite(answer.bound) && answer.steps >= steps) break
    if (performance.now() - told < TOLD) continue
    told = performance.now()
    hear(found(answer))
  }
  if (!last) throw new RangeError('arranging: the search gave no answer')
  return found(last)
}
