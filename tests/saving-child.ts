// Saves without end and says each revision the moment it was acknowledged, those of the shelf with a minus; its parent kills it. Arguments: folder, id.
import { writeSync } from 'node:fs'
import { storeIn } from './stores.ts'

const [folder = '', id = ''] = process.argv.slice(2)
writeSync(1, 'ready\n')
const store = storeIn(folder)
for (let n = 0; ; n++) {
  if (n % 3 === 2) {
    const { text } = store.workshop(),
      was = /place: (.*)/.exec(text)?.[1] ?? null,
      edits = [
        { path: 'shelf.pump.what', was: was === null ? null : 'pump', now: 'pump' },
        { path: 'shelf.pump.place', was, now: `board ${n}` },
      ]
    const kept = store.editWorkshop({ edits: was === null ? edits : edits.slice(1) })
    if (!kept.ok) throw new Error(kept.why)
    writeSync(1, `-${kept.revision} ${store.workshopRevisions()[0]?.hash}\n`)
  }
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
