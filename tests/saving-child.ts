// Saves without end and says each revision the moment it was acknowledged; its parent kills it. Arguments: folder, id.
import { writeSync } from 'node:fs'
import { storeIn } from './stores.ts'

const [folder = '', id = ''] = process.argv.slice(2)
writeSync(1, 'ready\n')
const store = storeIn(folder)
for (let n = 0; ; n++) {
  const head = store.conversion(id)
  const outcome =
    n % 7 === 6
      ? store.putFile(id, `log-${n % 3}.csv`, Buffer.from(`n\n${head.revision}\n`))
      : store.edit(id, {
          edits: [{ path: 'brief.luggage', was: /luggage: (.*)/.exec(head.text)?.[1] ?? null, now: `${head.revision + 1} kg` }],
        })
  if (!outcome.ok) throw new Error(outcome.why)
  writeSync(1, `${outcome.revision} ${store.revision(id, outcome.revision).hash}\n`)
}
