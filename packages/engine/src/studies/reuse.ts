/**
 * Gives `next`, built from pieces of `before` wherever the two are alike, so that what did not change is the same object and nothing that only read it
 * runs again. Works on plain values, arrays, facts and figures (a graph: shared nodes are met once). What is in `whole` stays as it is: it was built that way already.
 */
export function reuse<T>(before: unknown, next: T, whole?: WeakSet<object>, met: Map<object, unknown> = new Map()): T {
  if (Object.is(before, next)) return next
  if (typeof next !== 'object' || next === null || typeof before !== 'object' || before === null) return next
  if (ArrayBuffer.isView(next)) return alike(before, next) ? (before as T) : next
  if (Array.isArray(next) !== Array.isArray(before) || typeof next === 'function') return next
  if (next instanceof Map || next instanceof Set) return next
  if (whole?.has(next)) return next
  const done = met.get(next)
  if (done !== undefined) return done as T
  const a = before as Record<string, unknown>,
    b = next as unknown as Record<string, unknown>,
    keys = Object.keys(b)
  // Most things are as they were: nothing is copied until one is found that is not.
  let out = Object.keys(a).length === keys.length ? undefined : blank(next)
  for (let i = 0; i < keys.length; i++) {
    const key = keys[i] as string,
      run = isRun(key) && typeof b[key] === 'function',
      value = run ? b[key] : reuse(a[key], b[key], whole, met)
    if (!out) {
      if (run || value === a[key]) continue
      out = blank(next)
      for (const k of keys.slice(0, i)) out[k] = isRun(k) ? b[k] : a[k]
    }
    out[key] = value
  }
  const result = (out ?? before) as T
  met.set(next, result)
  return result
}

/** How a figure is worked out again: made anew each time, and no news. */
const isRun = (key: string): boolean => key === 'again' || key === 'rebuild'
const blank = (like: object): Record<string, unknown> => (Array.isArray(like) ? [] : {}) as Record<string, unknown>

function alike(a: unknown, b: ArrayBufferView): boolean {
  if (!(a instanceof Float64Array) || !(b instanceof Float64Array) || a.length !== b.length) return false
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false
  return true
}
