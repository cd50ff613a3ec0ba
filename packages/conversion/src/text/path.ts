/**
 * A path names one place in the file: the keys that lead there. Written as text they are joined by dots; a key that holds a dot, a quote
 * or a blank at either end is written in double quotes (`trips."0.5 g".speed`), as in JSON.
 */
export type Path = string | readonly string[]

export function pathText(keys: readonly string[]): string {
  return keys.map(key => (/^[^."\s](?:[^."]*[^."\s])?$/.test(key) ? key : JSON.stringify(key))).join('.')
}

/** The keys of a path, or undefined where its text cannot be read. */
export function pathKeys(path: Path): readonly string[] | undefined {
  if (typeof path !== 'string') return path.length > 0 && path.every(key => typeof key === 'string') ? path : undefined
  const keys: string[] = []
  let rest = path
  for (;;) {
    const part = /^(?:"(?:[^"\\]|\\.)*"|[^."]+)/.exec(rest)?.[0]
    if (part === undefined) return undefined
    const key = part.startsWith('"') ? unquoted(part) : part
    if (key === undefined) return undefined
    keys.push(key)
    rest = rest.slice(part.length)
    if (rest === '') return keys
    if (!rest.startsWith('.')) return undefined
    rest = rest.slice(1)
  }
}

function unquoted(part: string): string | undefined {
  try {
    return String(JSON.parse(part))
  } catch {
    return undefined
  }
}
