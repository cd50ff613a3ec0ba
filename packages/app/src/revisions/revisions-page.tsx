import { useCallback, useEffect, useRef, useState } from 'react'
import { api } from '../server/api.ts'
import { useInHand } from '../shell/in-hand.ts'
import { Compare } from './compare.tsx'
import { RevisionTable } from './revision-table.tsx'
import type { SideChoice } from './sides.ts'
import { Variant } from './variant.tsx'

export type Revision = Awaited<ReturnType<typeof api.revisions>>[number]

/** Every state the file was in: look at it, export it, bring it back, hold it against another, name a variant of it. */
export function RevisionsPage() {
  const { opened } = useInHand(),
    [list, setList] = useState<readonly Revision[]>(),
    [said, setSaid] = useState<string>(),
    [sides, setSides] = useState<readonly [SideChoice, SideChoice]>(),
    top = useRef<HTMLHeadingElement>(null)
  const tell = useCallback((e: unknown): void => setSaid((e as Error).message), [])
  useEffect(() => {
    if (opened.revision === 0) return
    api
      .revisions(opened.id)
      .then(r => setList(r.toSorted((a, b) => b.revision - a.revision)))
      .catch(tell)
  }, [opened.id, opened.revision, tell])
  return (
    <>
      <h1>Revisions and comparing</h1>
      <p className="lede">
        Every change makes a revision; none is ever lost. Bringing one back makes a new revision of it, and undo takes that away again.
      </p>
      {said ? (
        <div className="note bad" role="alert">
          {said}{' '}
          <button type="button" className="bare" onClick={() => setSaid(undefined)}>
            Put away
          </button>
        </div>
      ) : null}
      <h2 ref={top} tabIndex={-1}>
        Compare
      </h2>
      <Compare revisions={list ?? []} sides={sides} choose={setSides} />
      <h2>Name a variant</h2>
      <Variant revisions={list ?? []} />
      <h2>Revisions</h2>
      {list === undefined ? (
        <p>Looking …</p>
      ) : (
        <RevisionTable
          list={list}
          tell={tell}
          compare={n => {
            setSides([`revision ${n}`, 'now'])
            // What was asked for stands above the list: the person is taken there.
            top.current?.focus()
          }}
        />
      )}
    </>
  )
}
