import { spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { root } from '../../../tests/cars.ts'
import { runs } from '../../../tests/counts.ts'
import { emptyFolder, madeOf, storeIn } from '../../../tests/stores.ts'
import { databaseIn } from './database.ts'

const TEXT = 'schema: 1\ncar: Wren\nbrief:\n  luggage: 0 kg\n'

/** Lets a child save until it is killed, some milliseconds after its first word. Gives what it had acknowledged: revisions and hashes. */
const killedAfter = (folder: string, id: string, wait: number): Promise<readonly [number, string][]> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--conditions', 'source', '--import', 'tsx', join(root, 'tests/saving-child.ts'), folder, id], {
      cwd: root,
    })
    let said = '',
      wrong = ''
    child.stderr.on('data', part => (wrong += part))
    child.stdout.on('data', part => {
      if (said === '') setTimeout(() => child.kill('SIGKILL'), wait)
      said += part
    })
    child.on('close', (code, signal) => {
      if (signal !== 'SIGKILL') return reject(new Error(`the child ended by itself (${code}): ${wrong}`))
      const whole = said.slice(0, said.lastIndexOf('\n')).split('\n').slice(1)
      resolve(whole.map(line => line.split(' ')).map(([n, hash]) => [Number(n), String(hash)]))
    })
  })

describe('a program killed while it saves', () => {
  it('loses nothing it acknowledged, and the next start is clean', async () => {
    const folder = emptyFolder(),
      kills = runs(200)
    let store = storeIn(folder)
    const id = madeOf(store, TEXT),
      acknowledged = new Map<number, string>()
    store.close()
    for (let kill = 0; kill < kills; kill++) {
      const wait = Math.random() * 600
      for (const [n, hash] of await killedAfter(folder, id, wait)) acknowledged.set(n, hash)
      store = storeIn(folder)
      const head = store.conversion(id),
        byNumber = new Map(store.revisions(id).map(r => [r.revision, r.hash]))
      for (const [n, hash] of acknowledged) expect(byNumber.get(n), `revision ${n} after kill ${kill}, ${wait} ms`).toBe(hash)
      // At most one save was under way that nobody heard of any more.
      expect(head.revision - Math.max(1, ...acknowledged.keys())).toBeLessThanOrEqual(kill + 1)
      expect(readFileSync(join(folder, 'conversions/wren/wren.conversion.yaml'), 'utf8')).toBe(head.text)
      store.close()
      const db = new Database(databaseIn(folder))
      expect(db.pragma('integrity_check', { simple: true })).toBe('ok')
      db.close()
    }
    store = storeIn(folder)
    for (const n of acknowledged.keys()) expect(store.revision(id, n).hash).toBe(acknowledged.get(n))
    expect(acknowledged.size).toBeGreaterThan(kills)
    store.close()
  })
})
