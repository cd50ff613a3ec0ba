/** What this window alone keeps, until it is closed: it is there again after a reload. A browser that keeps nothing is no reason to stop. */
export function kept<T>(key: string): T | undefined {
  try {
    const text = sessionStorage.getItem(`ampwright.${key}`)
    return text === null ? undefined : (JSON.parse(text) as T)
  } catch {
    return undefined
  }
}

/** Keeps a value under a key; undefined takes it away. */
export function keep(key: string, value: unknown): void {
  try {
    if (value === undefined) sessionStorage.removeItem(`ampwright.${key}`)
    else sessionStorage.setItem(`ampwright.${key}`, JSON.stringify(value))
  } catch {
    // Full, or not allowed: what is typed stands in the field all the same.
  }
}
