import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { isError, readConversion } from '@ampwright/conversion'
import { type Judge, openStore, type Store, type StoreOptions } from '@ampwright/store'

/** Errors of a text keep it out; nothing is looked up. */
export const plainJudge: Judge = ({ text }) => readConversion(text).issues.filter(isError)

export const emptyFolder = (): string => mkdtempSync(join(tmpdir(), 'ampwright-store-'))

/** A clock that stands until it is turned. */
export const clock = (at = Date.UTC(2026, 10, 2)) => {
  let now = at
  return { now: () => now, turn: (days: number) => void (now += days * 86_400_000) }
}

export const storeIn = (folder: string, more: Partial<StoreOptions> = {}): Store =>
  openStore({ folder, judge: plainJudge, now: clock().now, ...more })

/** The id of a conversion made of a text; throws where it was kept out. */
export function madeOf(store: Store, text: string): string {
  const made = store.make({ text })
  if (!made.ok) throw new Error(made.issues[0]?.what)
  return made.id
}
