import type { Fact } from '@ampwright/engine'
import type { Group as TextGroup, TextNode } from '../text/tree.ts'
import type { Near } from './field.ts'

/** What an assumption at `at` may look at: words of the text, and facts understood so far. */
export function nearOf(at: string, root: TextGroup | undefined, understood: ReadonlyMap<string, Fact<never>>): Near {
  const full = (path: string): string => (path.startsWith('./') ? at.replace(/[^.]+$/, path.slice(2)) : path)
  const word = (path: string): string | undefined => {
    const place = full(path)
    let n: TextNode | undefined = root
    for (const key of place.split('.')) n = n?.kind === 'group' ? n.entries.get(key)?.node : undefined
    if (n?.kind === 'value' && n.source !== '') return n.source
    // A word that came with a part counts as well.
    const fact = understood.get(place) as Fact<string> | undefined
    return typeof fact?.value === 'string' ? fact.value : undefined
  }
  const value = (path: string): number | undefined => {
    const fact = understood.get(full(path)) as Fact | undefined
    return typeof fact?.value === 'number' ? fact.value : undefined
  }
  return { word, value, at }
}
