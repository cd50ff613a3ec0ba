import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { emptyFolder, storeIn } from '../../../tests/stores.ts'

const TEXT = 'schema: 1\ncar: Wren\nbrief:\n  luggage: 40 kg\n  person: 75 kg # a word\n  loads: {}\n'
const PATHS = ['brief.luggage', 'brief.person', 'brief.reserve', 'brief.loads.driver.people', 'car']

/** What one step does, on whichever conversion and revision its numbers come to. */
type Step = { readonly does: string; readonly which: number; readonly revision: number; readonly path: string; readonly value: number }
const steps: fc.Arbitrary<readonly Step[]> = fc.array(
  fc.record({
    does: fc.constantFrom(
      'edit',
      'edit',
      'edit',
      'stale edit',
      'remove',
      'restore',
      'undo',
      'variant',
      'duplicate',
      'file',
      'delete',
      'import',
      'reopen',
    ),
    which: fc.nat(99),
    revision: fc.nat(99),
    path: fc.constantFrom(...PATHS),
    value: fc.nat(9),
  }),
  { maxLength: 25 },
)

/** What each conversion's revisions must be: their texts and files, in order. Kept by the test alone. */
type Kept = Map<string, { text: string; files: string }[]>

describe('any sequence of edits, variants, restores, files, imports, deletions and restarts', () => {
  it('keeps every revision that was acknowledged readable and byte for byte what it was', () =>
    fc.assert(
      fc.property(steps, list => {
        const folder = emptyFolder(),
          kept: Kept = new Map()
        let store = storeIn(folder)
        const note = (id: string): void => {
          const { text, files, revision } = store.conversion(id),
            all = kept.get(id) ?? []
          kept.set(id, all)
          if (revision > all.length) all.push({ text, files: JSON.stringify(files) })
          expect(all.length).toBe(revision)
        }
        const made = store.make({ text: TEXT })
        if (made.ok) note(made.id)
        for (const step of list) {
          const ids = [...kept.keys()],
            id = ids[step.which % ids.length] as string,
            all = kept.get(id) ?? [],
            revision = 1 + (step.revision % all.length)
          if (step.does === 'reopen') {
            store.close()
            store = storeIn(folder)
          } else
            try {
              const outcome = doing(store, step, id, revision)
              if (outcome !== undefined) note(outcome)
            } catch (e) {
              expect((e as Error).name).toBe('Error')
              expect((e as Error).message).toMatch(/deleted|first revision|already|cannot be undone/)
            }
        }
        store.close()
        store = storeIn(folder)
        for (const [id, all] of kept) {
          expect(store.revisions(id).map(r => r.revision)).toEqual(all.map((_, i) => all.length - i))
          all.forEach((was, i) => {
            const { text, files } = store.revision(id, i + 1)
            expect({ text, files: JSON.stringify(files) }).toEqual(was)
          })
        }
        store.close()
      }),
      { numRuns: runs(400) },
    ))
})

/** Does one step. Gives the conversion that may have got a revision. */
function doing(store: ReturnType<typeof storeIn>, { does, path, value }: Step, id: string, revision: number): string | undefined {
  const spelled =
      path === 'car' ? `Wren ${value}` : path.endsWith('people') ? String(value) : path.endsWith('reserve') ? `${value} %` : `${value} kg`,
    was = (text: string): string | null => new RegExp(`\\b${path.split('.').at(-1)}: ([^#\\n}]*[^#\\n }])`).exec(text)?.[1] ?? null,
    head = store.conversion(id)
  const done = ((): { ok: boolean; id?: string } => {
    switch (does) {
      case 'edit':
        return store.edit(id, { edits: [{ path, was: was(head.text), now: spelled }] })
      case 'stale edit':
        return store.edit(id, { edits: [{ path, was: was(store.revision(id, revision).text), now: spelled }], seen: revision })
      case 'remove':
        return store.edit(id, { edits: [{ path, was: was(head.text), now: null }] })
      case 'restore':
        return store.restore(id, revision)
      case 'undo':
        return store.undo(id, revision)
      case 'variant':
        return store.variant(id, `v${value}`, revision)
      case 'duplicate':
        return store.duplicate(id, revision)
      case 'file':
        return store.putFile(id, `f${value % 3}.csv`, Buffer.from(String(value)))
      case 'import':
        return store.take({ text: store.exported(id, revision).replace('# a word', `# ${value}`), files: {} })
      default:
        if (head.deletedUntil === null) store.remove(id)
        else store.bringBack(id)
        return { ok: false }
    }
  })()
  return done.ok ? done.id : undefined
}
