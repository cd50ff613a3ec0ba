// Puts one of two backups in the place of everything, in turn, without end; its parent kills it. Arguments: folder, the two backups.
import { copyFileSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { storeIn } from './stores.ts'

const [folder = '', ...backups] = process.argv.slice(2)
writeSync(1, 'ready\n')
const store = storeIn(folder)
for (let n = 0; ; n++) {
  const coming = join(folder, 'coming.sqlite')
  copyFileSync(backups[n % 2] as string, coming)
  await store.restoreBackup(coming)
  writeSync(1, `${n} restored\n`)
}
