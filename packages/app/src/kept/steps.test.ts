import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { emptyFolder, madeOf, storeIn } from '../../../../tests/stores.ts'
import { afterChange, afterTakingBack, caughtUp, NO_STEPS, type Steps, stepsOf, withoutStep } from './steps.ts'

const line = (revision: number, what = '', kind: 'made' | 'edit' | 'file' = revision === 1 ? 'made' : 'edit') => ({ revision, what, kind })
const undoOf = (revision: number, of: number) => line(revision, `undo of revision ${of}`)

describe('the steps of a history', () => {
  it('go down to the first revision, which nothing comes before', () => {
    expect(stepsOf([line(1)])).toEqual(NO_STEPS)
    expect(stepsOf([line(3, 'a.csv', 'file'), line(2), line(1)])).toEqual({ undo: [2, 3], redo: [] })
  })
  it('leave out what was undone, which can be done again and undone once more', () => {
    expect(stepsOf([line(1), line(2), line(3), undoOf(4, 3), undoOf(5, 2)])).toEqual({ undo: [], redo: [4, 5] })
    expect(stepsOf([line(1), line(2), line(3), undoOf(4, 3), undoOf(5, 2), undoOf(6, 5)])).toEqual({ undo: [6], redo: [4] })
    expect(stepsOf([line(1), line(2), undoOf(3, 2), undoOf(4, 3), undoOf(5, 4)])).toEqual({ undo: [], redo: [5] })
  })
  it('forget what could be done again once something else is changed', () => {
    expect(stepsOf([line(1), line(2), undoOf(3, 2), line(4)])).toEqual({ undo: [4], redo: [] })
    expect(afterChange({ undo: [2], redo: [4] }, 5)).toEqual({ undo: [2, 5], redo: [] })
  })
  it('are counted once, and a step that cannot be taken back is left out', () => {
    expect(afterChange({ undo: [2], redo: [] }, 2)).toEqual({ undo: [2], redo: [] })
    expect(withoutStep({ undo: [2, 3], redo: [4] }, 3)).toEqual({ undo: [2], redo: [4] })
    expect(afterTakingBack({ undo: [2, 3], redo: [] }, 3, 3)).toEqual({ undo: [2], redo: [] })
  })
  it('of a window take in what it did not hear the answer of, and nothing of what others did', () => {
    const lines = [line(1), line(2, 'Wheelbase: 2 m'), line(3, 'Budget: 1 €'), line(4, 'Wheelbase: 3 m'), undoOf(5, 2)]
    expect(caughtUp({ undo: [2], redo: [] }, lines, 2, [{ what: 'Wheelbase: 3 m', after: 2 }])).toEqual({ undo: [4], redo: [5] })
    expect(caughtUp({ undo: [2], redo: [] }, lines, 2, [])).toEqual({ undo: [], redo: [5] })
    expect(caughtUp({ undo: [2], redo: [] }, lines.slice(0, 4), 2, [])).toEqual({ undo: [2], redo: [] })
  })
})

const PLACES = ['brief.luggage', 'brief.budget', 'brief.seats'] as const
const VALUES = { 'brief.luggage': ['1 kg', '2 kg'], 'brief.budget': ['3 €', '4 €'], 'brief.seats': ['2', '4'] } as const
const act = fc.oneof(
  { weight: 3, arbitrary: fc.tuple(fc.constantFrom(...PLACES), fc.nat(1)) },
  { weight: 2, arbitrary: fc.constant('undo' as const) },
  { weight: 1, arbitrary: fc.constant('redo' as const) },
  { weight: 1, arbitrary: fc.constant('reload' as const) },
)

describe('undo in any order, over reloads', () => {
  it('leads back to the very first text byte for byte, never overwrites a revision, and redo leads to the last', () =>
    fc.assert(
      fc.property(fc.array(act, { maxLength: 20 }), acts => {
        const store = storeIn(emptyFolder()),
          first = 'schema: 1\ncar: Wren # mine\nbrief:\n  luggage: 0 kg # none\n',
          id = madeOf(store, first)
        let steps: Steps = NO_STEPS
        const back = (way: 'undo' | 'redo'): boolean => {
          const of = steps[way].at(-1)
          if (of === undefined) return false
          const made = store.undo(id, of)
          if (!made.ok) throw new Error('an own step is not refused')
          steps = afterTakingBack(steps, of, made.revision)
          return true
        }
        for (const a of acts) {
          const before = store.conversion(id)
          if (a === 'reload') expect(stepsOf(store.revisions(id))).toEqual(steps)
          else if (a === 'undo' || a === 'redo') back(a)
          else {
            const [path, n] = a,
              was = new RegExp(`^  ${path.slice(6)}: ([^#\\n]*[^#\\n ])`, 'm').exec(before.text)?.[1] ?? null,
              made = store.edit(id, { edits: [{ path, was, now: VALUES[path][n] as string }] })
            if (!made.ok) throw new Error(JSON.stringify(made))
            if (made.revision > before.revision) steps = afterChange(steps, made.revision)
          }
        }
        const last = store.conversion(id)
        let undone = 0
        while (back('undo')) undone++
        expect(store.conversion(id).text).toBe(first)
        expect(store.conversion(id).revision).toBe(last.revision + undone)
        for (let n = 0; n < undone; n++) back('redo')
        expect(store.conversion(id).text).toBe(last.text)
        store.close()
      }),
      { numRuns: runs(400) },
    ))
})
