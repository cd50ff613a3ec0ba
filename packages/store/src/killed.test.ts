import { spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { root } from '../../../tests/cars.ts'
import { runs } from '../../../tests/counts.ts'
import { emptyFolder, madeOf, storeIn } from '../../../tests/stores.ts'
import { hashOf } from './contents.ts'
import { databaseIn } from './database.ts'

const TEXT = 'schema: 1\ncar: Wren\nbrief:\n  luggage: 0 kg\n'

/** Lets a child work until it is killed, some milliseconds after its first word. Gives what it had acknowledged: revisions and hashes. */
const killedAfter = (script: string, args: readonly string[], wait: number): Promise<readonly [number, string][]> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--conditions', 'source', '--import', 'tsx', join(root, 'tests', script), ...args], {
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

/** One folder through so many lives of a program. Gives how many revisions were acknowledged in all of them. */
async function lived(kills: number): Promise<number> {
  const folder = emptyFolder(),
    acknowledged = new Map<number, string>()
  let store = storeIn(folder)
  const id = madeOf(store, TEXT)
  store.close()
  for (let kill = 0; kill < kills; kill++) {
    const wait = Math.random() * 600
    for (const [n, hash] of await killedAfter('saving-child.ts', [folder, id], wait)) acknowledged.set(n, hash)
    store = storeIn(folder)
    const head = store.conversion(id),
      byNumber = new Map([
        ...store.revisions(id).map(r => [r.revision, r.hash] as const),
        ...store.workshopRevisions().map(r => [-r.revision, r.hash] as const),
      ])
    for (const [n, hash] of acknowledged) expect(byNumber.get(n), `revision ${n} after kill ${kill}, ${wait} ms`).toBe(hash)
    expect(readFileSync(join(folder, 'conversions/wren/wren.conversion.yaml'), 'utf8')).toBe(head.text)
    const shelf = store.workshop()
    if (shelf.revision > 0) expect(readFileSync(join(folder, 'conversions/own.workshop.yaml'), 'utf8')).toBe(shelf.text)
    store.close()
    const db = new Database(databaseIn(folder))
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok')
    db.close()
  }
  store = storeIn(folder)
  for (const [n, hash] of acknowledged) if (n > 0) expect(hashOf(Buffer.from(store.revision(id, n).text))).toBe(hash)
  store.close()
  return acknowledged.size
}

describe('a program killed while it saves', () => {
  // Two folders at a time: most of each life is spent on starting.
  it('loses nothing it acknowledged, and the next start is clean', { timeout: 3_600_000 }, async () => {
    const kills = runs(200),
      [one, two] = await Promise.all([lived(Math.ceil(kills / 2)), lived(Math.floor(kills / 2))])
    // On a slow machine some are killed before their first save.
    expect(one + two).toBeGreaterThan(kills / 4)
  })

  it('while it puts a backup in place, leaves the old or the new, whole', { timeout: 3_600_000 }, async () => {
    const folder = emptyFolder(),
      away = emptyFolder(),
      texts = ['A', 'B'].map(car => TEXT.replace('Wren', car)),
      backups = texts.map((_, i) => join(away, `${i}.sqlite`))
    for (const [i, text] of texts.entries()) {
      const store = storeIn(emptyFolder())
      madeOf(store, text)
      await store.backUp(backups[i] as string)
      store.close()
    }
    const first = storeIn(folder)
    madeOf(first, TEXT)
    first.close()
    for (let kill = 0; kill < runs(40); kill++) {
      await killedAfter('restoring-child.ts', [folder, ...backups], Math.random() * 600)
      const store = storeIn(folder),
        [only, more] = store.conversions()
      expect([TEXT, ...texts]).toContain(store.conversion(only?.id ?? '').text)
      expect(more).toBe(undefined)
      store.close()
    }
  })
})
