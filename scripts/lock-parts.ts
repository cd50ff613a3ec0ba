// Adds new parts to the catalogue's lock. A part that is locked may neither change nor vanish: give it the next revision instead.
import { readFileSync, writeFileSync } from 'node:fs'
import { parts } from '../packages/catalogue/src/catalogue.ts'
import { lockBreaches, lockWith, type PartsLock } from '../packages/catalogue/src/parts-lock.ts'

const file = new URL('../packages/catalogue/parts.lock.json', import.meta.url)
const lock = JSON.parse(readFileSync(file, 'utf8')) as PartsLock
const { changed, vanished, unlocked } = lockBreaches(lock, parts)
if (changed.length + vanished.length > 0) {
  for (const id of changed) console.error(`${id} differs from its locked record; give it the next revision`)
  for (const id of vanished) console.error(`${id} is locked and may not vanish`)
  process.exit(1)
}
const sorted = Object.entries(lockWith(lock, parts)).sort(([a], [b]) => (a < b ? -1 : 1))
writeFileSync(file, `${JSON.stringify(Object.fromEntries(sorted), undefined, 2)}\n`)
console.log(`${unlocked.length} added, ${sorted.length} locked`)
