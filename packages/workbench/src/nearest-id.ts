import { nearest } from '@ampwright/conversion'

/** The id most likely meant: a slip of the pen in it, or only its last name (`kerb` for `ledger.kerb`), whole or misspelt. */
export function nearestId(typed: string, ids: readonly string[]): string | undefined {
  const close = nearest(typed, ids)
  if (close !== undefined) return close
  const names = new Map<string, string>()
  for (const id of ids) {
    const name = id.replace(/^[^.]*\./, '')
    for (const part of [name, name.replace(/@.*/, ''), id.replace(/@.*/, '')]) if (!names.has(part)) names.set(part, id)
  }
  return names.get(typed) ?? names.get(nearest(typed, names.keys()) ?? '') ?? ids.find(id => id.includes(typed))
}
