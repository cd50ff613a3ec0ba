import type { Edit, System } from '@ampwright/conversion'
import { type ConceptsView, concepts, conceptsView, conversionText, Desk, type Given, Refusal, type Seen } from '@ampwright/workbench'
import { breath } from './slices.ts'

export { questionViews } from '@ampwright/workbench'

/** Concepts for the answers, told of on the way; undefined as soon as they are no longer wanted. */
export async function searched(
  given: Given,
  system: System,
  { hear, wanted }: { readonly hear: (step: string) => void; readonly wanted: () => boolean },
): Promise<ConceptsView | { readonly refused: string } | undefined> {
  try {
    const steps = concepts(conversionText(given))
    for (let told = 0; ; ) {
      const step = steps.next()
      if (step.done) return conceptsView(step.value, system)
      if (performance.now() - told > 150) {
        told = performance.now()
        hear(`Trying ${step.value.concept}: ${step.value.did}, ${step.value.trials} designs so far`)
        await breath()
        if (!wanted()) return undefined
      }
    }
  } catch (e) {
    if (e instanceof Refusal) return { refused: e.message }
    throw e
  }
}

/** The text of a new conversion from the answers, and a concept as edits that say what they saw there. */
export function begun(given: Given, edits: readonly Edit[]): { readonly text: string; readonly edits: readonly Seen[] } {
  const text = conversionText(given),
    made = new Desk(text).edit(edits)
  return { text, edits: made.ok ? made.edits : [] }
}
