/** A conversion as it was last seen, kept in this browser: with the server away it is shown from here, and not edited. */
export type LastSeen = {
  readonly id: string
  readonly name: string
  readonly revision: number
  readonly text: string
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[]
  readonly at: string
}
const SHELF = 'conversions'

function opened(): Promise<IDBDatabase> {
  return new Promise((done, failed) => {
    const asked = indexedDB.open('ampwright', 1)
    asked.addEventListener('upgradeneeded', () => asked.result.createObjectStore(SHELF, { keyPath: 'id' }))
    asked.addEventListener('success', () => done(asked.result))
    asked.addEventListener('error', () => failed(asked.error ?? new Error('the browser keeps nothing')))
  })
}
async function within<T>(mode: IDBTransactionMode, ask: (shelf: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  const db = await opened()
  try {
    return await new Promise<T>((done, failed) => {
      const asked = ask(db.transaction(SHELF, mode).objectStore(SHELF))
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
