import { openStore } from '@ampwright/store'
import { seenIn, undo } from '@ampwright/workbench'
import { expect, it } from 'vitest'
import { textOf } from '../../../tests/cars.ts'
import { emptyFolder } from '../../../tests/stores.ts'
import type { ApiBatch } from './api-types.ts'
import { judge } from './judge.ts'

const EDITS = [
  { path: 'donor.wheelbase', now: '2312 mm' },
  { path: ['trips', 'named', 'short'], now: { kind: 'cycle', cycle: 'wltc-3b', load: 'driver' } },
  { path: 'brief.goals.sprint.within', now: '9 s' },
] as const

it('a batch as a window makes it is taken, and taken back by the edits that undo it', () => {
  const store = openStore({ folder: emptyFolder(), judge, now: () => 0 }),
    text = textOf('lapwing'),
    made = store.make({ text }),
    id = made.ok ? made.id : ''
  for (const edits of [EDITS.slice(0, 1), EDITS.slice(1), EDITS]) {
    const before = store.conversion(id).text,
      batch: ApiBatch = { edits: seenIn(before, edits) },
      done = store.edit(id, { edits: seenIn(before, edits) })
    expect(done, JSON.stringify(batch)).toMatchObject({ ok: true })
    const after = store.conversion(id).text
    expect(store.edit(id, { edits: seenIn(after, undo(before, edits)) })).toMatchObject({ ok: true })
    expect(store.conversion(id).text).toBe(text)
  }
  store.close()
})
