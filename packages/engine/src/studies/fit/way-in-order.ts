/** When each part can go in, and which parts wait for each other in a circle. */
export type Order = { readonly place: ReadonlyMap<string, number>; readonly circles: ReadonlySet<string> }

/**
 * An order of going in, from which parts stand in whose way: a part goes in before all that would be in its way.
 *
 * Parts that wait for nothing are number 1, those that wait only for them number 2, and so on; a part behind a circle has no number.
 */
export function orderOf(inTheWay: Readonly<Record<string, readonly string[]>>): Order {
  const names = Object.keys(inTheWay),
    waitsFor = (name: string): readonly string[] => names.filter(n => inTheWay[n]?.includes(name))
  const circles = new Set(names.filter(n => comesBack(inTheWay, n))),
    place = new Map<string, number>()
  for (let number = 1; number <= names.length; number++) {
    const now = names.filter(n => !place.has(n) && waitsFor(n).every(w => place.has(w)))
    if (now.length === 0) break
    for (const n of now) place.set(n, number)
  }
  return { place, circles }
}

/** Whether a way through what stands in the way leads back to where it began. */
function comesBack(inTheWay: Readonly<Record<string, readonly string[]>>, start: string): boolean {
  const met = new Set<string>(),
    open = [...(inTheWay[start] ?? [])]
  for (let n = open.pop(); n !== undefined; n = open.pop()) {
    if (n === start) return true
    if (met.has(n)) continue
    met.add(n)
    open.push(...(inTheWay[n] ?? []))
  }
  return false
}
