import { createHash } from 'node:crypto'
import type { Part } from './part.ts'

/** Hash of every part ever published, by id. */
export type PartsLock = Readonly<Record<string, string>>

const sorted = (value: unknown): unknown =>
  value !== null && typeof value === 'object' && !Array.isArray(value)
    ? Object.fromEntries(
        Object.entries(value)
          .sort(([a], [b]) => (a < b ? -1 : 1))
          .map(([key, inner]) => [key, sorted(inner)]),
      )
    : value

/** Hash of all a part says; the order of its keys does not count. */
export const partHash = (part: Part): string =>
  createHash('sha256')
    .update(JSON.stringify(sorted(part)))
    .digest('hex')
    .slice(0, 16)

/** How the parts stand to the lock: ids whose record is no longer the locked one, ids that vanished, ids not locked yet. */
export function lockBreaches(lock: PartsLock, parts: readonly Part[]) {
  const now = new Map(parts.map(part => [part.id, partHash(part)]))
  const locked = Object.keys(lock)
  return {
    changed: locked.filter(id => now.has(id) && now.get(id) !== lock[id]),
    vanished: locked.filter(id => !now.has(id)),
    unlocked: [...now.keys()].filter(id => !Object.hasOwn(lock, id)),
  }
}

/** The lock with the new parts added; what it holds already stays as it is. */
export const lockWith = (lock: PartsLock, parts: readonly Part[]): PartsLock => ({
  ...Object.fromEntries(parts.map(part => [part.id, partHash(part)])),
  ...lock,
})
