/** A conversion as it was last seen, kept in this browser: with the server away it is shown from here, and not edited. */
export type LastSeen = {
  readonly id: string
  readonly name: string
  readonly revision: number
  readonly text: string
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[]
  readonly at: string
}
/** What stood in the way of a conversion when it was last worked out in this browser. */
export type Counts = { readonly id: string; readonly revision: number; readonly failing: number; readonly unanswered: number }

const SHELF = 'conversions'
const COUNTS = 'counts'

function opened(): Promise<IDBDatabase> {
  return new Promise((done, failed) => {
    const asked = indexedDB.open('ampwright', 2)
    asked.addEventListener('upgradeneeded', () => {
      for (const name of [SHELF, COUNTS])
        if (!asked.result.objectStoreNames.contains(name)) asked.result.createObjectStore(name, { keyPath: 'id' })
    })
    asked.addEventListener('success', () => done(asked.result))
    asked.addEventListener('error', () => failed(asked.error ?? new Error('the browser keeps nothing')))
  })
}
async function within<T>(mode: IDBTransactionMode, ask: (shelf: IDBObjectStore) => IDBRequest<T>, name = SHELF): Promise<T> {
  const db = await opened()
  try {
    return await new Promise<T>((done, failed) => {
      const asked = ask(db.transaction(name, mode).objectStore(name))
      asked.addEventListener('success', () => done(asked.result))
      asked.addEventListener('error', () => failed(asked.error ?? new Error('the browser keeps nothing')))
    })
  } finally {
    db.close()
  }
}

/** Keeps what was seen; a browser that keeps nothing (a private window) is no reason to stop. */
export async function keepSeen(seen: LastSeen): Promise<void> {
  await within('readwrite', shelf => shelf.put(seen)).catch(() => undefined)
}
export const lastSeen = (id: string): Promise<LastSeen | undefined> =>
  within<LastSeen | undefined>('readonly', shelf => shelf.get(id)).catch(() => undefined)
export const allSeen = (): Promise<readonly LastSeen[]> => within<LastSeen[]>('readonly', shelf => shelf.getAll()).catch(() => [])

/** Keeps the counts of a revision; they say nothing of any other. */
export async function keepCounts(counts: Counts): Promise<void> {
  await within('readwrite', shelf => shelf.put(counts), COUNTS).catch(() => undefined)
}
export const allCounts = (): Promise<readonly Counts[]> => within<Counts[]>('readonly', shelf => shelf.getAll(), COUNTS).catch(() => [])
/** After a backup is put back, the same id and revision may hold another text. */
export async function forgetCounts(): Promise<void> {
  await within('readwrite', shelf => shelf.clear(), COUNTS).catch(() => undefined)
}
