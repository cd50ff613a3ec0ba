/**
 * Gives `next`, built from pieces of `before` wherever the two are alike, so that what did not change is the same object and nothing that only read it
 * runs again. Works on plain values, arrays, facts and figures (a graph: shared nodes are met once).
 */
export function reuse<T>(before: unknown, next: T, met: Map<object, unknown> = new Map()): T {
  if (Object.is(before, next)) return next
  if (typeof next !== 'object' || next === null || typeof before !== 'object' || before === null) return next
  if (ArrayBuffer.isView(next)) return alike(before, next) ? (before as T) : next
  if (Array.isArray(next) !== Array.isArray(before) || typeof next === 'function') return next
  if (next instanceof Map || next instanceof Set) return next
  const done = met.get(next)
  if (done !== undefined) return done as T
  const a = before as Record<string, unknown>,
    b = next as unknown as Record<string, unknown>,
    keys = Object.keys(b)
  let same = Object.keys(a).length === keys.length
  const out: Record<string, unknown> = (Array.isArray(next) ? [] : {}) as Record<string, unknown>
  for (const key of keys) {
    out[key] = key === 'again' && typeof b[key] === 'function' ? b[key] : reuse(a[key], b[key], met)
    if (key !== 'again' && out[key] !== a[key]) same = false
  }
  const result = (same ? before : out) as T
  met.set(next, result)
  return result
}

function alike(a: unknown, b: ArrayBufferView): boolean {
  if (!(a instanceof Float64Array) || !(b instanceof Float64Array) || a.length !== b.length) return false
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false
  return true
}
