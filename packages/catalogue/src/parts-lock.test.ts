import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parts } from './catalogue.ts'
import type { Part } from './part.ts'
import { lockBreaches, lockWith, type PartsLock, partHash } from './parts-lock.ts'

const lock = JSON.parse(readFileSync(new URL('../parts.lock.json', import.meta.url), 'utf8')) as PartsLock
const sample: Part = { id: 'box@1', class: 'box', label: 'box', fields: { mass: { text: '3 kg', mark: 'from memory' } } }

describe('the lock of the parts', () => {
  it('holds every part unchanged: what differs gets the next revision, what is new is added by scripts/lock-parts.ts', () => {
    expect(lockBreaches(lock, parts)).toEqual({ changed: [], vanished: [], unlocked: [] })
  })

  it('notices a changed figure, mark, price or remark, and a part that vanished or is new', () => {
    const before = lockWith({}, [sample])
    const others: Part[] = [
      { ...sample, fields: { mass: { text: '3.1 kg', mark: 'from memory' } } },
      { ...sample, fields: { mass: { text: '3 kg', mark: 'common practice' } } },
      { ...sample, price: { low: 1, high: 2, currency: 'EUR', when: 'new, 2020s' } },
      { ...sample, remark: 'heavier when wet' },
    ]
    for (const other of others) expect(lockBreaches(before, [other]).changed).toEqual(['box@1'])
    expect(lockBreaches(before, [])).toEqual({ changed: [], vanished: ['box@1'], unlocked: [] })
    expect(lockBreaches(before, [sample, { ...sample, id: 'box@2' }])).toEqual({ changed: [], vanished: [], unlocked: ['box@2'] })
  })

  it('does not count the order of keys, and never overwrites what is locked', () => {
    expect(partHash({ fields: sample.fields, label: 'box', class: 'box', id: 'box@1' })).toBe(partHash(sample))
    const before = lockWith({}, [sample])
    expect(lockWith(before, [{ ...sample, label: 'crate' }])).toEqual(before)
  })
})
