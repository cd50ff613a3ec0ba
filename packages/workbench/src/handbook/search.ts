/** A card in the list of the handbook, with the words it is found by. */
export type HandbookEntry = { readonly id: string; readonly label: string; readonly chapter: string; readonly words: string }

/** The entries in which every typed word stands; those whose name has them first. Nothing typed finds all. */
export function cardsFound(entries: readonly HandbookEntry[], typed: string): readonly HandbookEntry[] {
  const wanted = typed
      .toLowerCase()
      .split(/[\s-]+/)
      .filter(Boolean),
    has = (text: string): boolean => wanted.every(w => text.includes(w))
  const all = entries.filter(e => has(e.words)),
    named = all.filter(e => has(`${e.id} ${e.label.toLowerCase()}`))
  return named.length === all.length ? all : [...named, ...all.filter(e => !named.includes(e))]
}
