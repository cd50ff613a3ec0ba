import { pieceName, shelfFound } from '@ampwright/workbench'
import { useState } from 'react'
import { Link, useSearch } from 'wouter'
import type { Unread } from '../server/api.ts'
import { saveAs } from '../save-as.ts'
import { addition, changesOf, type Filled, type Typed } from './fields.ts'
import { PieceForm } from './piece-form.tsx'
import { type Asked, ShelfSearchBar, searchOf } from './search-bar.tsx'
import { type Piece, type ShelfAnswer, shelfApi } from './shelf-api.ts'
import { ShelfTable } from './shelf-table.tsx'
import { carName, useShelf } from './use-shelf.ts'

type Answered = { readonly says: string; readonly revision?: number; readonly wrong?: boolean }
const ALL: Asked = { words: '', class: '', kept: '' }
/** The new piece, where a form is open for it. */
const NEW = ''
const NOTHING: Typed = {}

/** What the workshop owns or was offered: looked through, added to, changed, kept for cars. `?car=ID` leads back to that car. */
export function ShelfPage() {
  const { shelf, cars, wrong, renew } = useShelf(),
    [asked, setAsked] = useState(ALL),
    [open, setOpen] = useState<string>(),
    [issues, setIssues] = useState<readonly Unread[]>([]),
    [clashing, setClashing] = useState<readonly string[]>([]),
    [said, setSaid] = useState<Answered>(),
    from = new URLSearchParams(useSearch()).get('car'),
    back = cars.find(c => c.id === from)
  const turn = (key: string | undefined): void => {
    setIssues([])
    setClashing([])
    setOpen(key)
  }
  /** Tells what became of a change; gives whether it was made. */
  const tell = async (answer: Promise<ShelfAnswer>, done: string): Promise<boolean> => {
    const a = await answer
    await renew()
    if (a.is === 'kept') {
      setSaid({ says: done, revision: a.revision })
      turn(undefined)
      return true
    }
    setIssues(a.issues)
    setClashing(a.clashes.map(c => c.path.split('.').at(-1) ?? ''))
    setSaid({
      wrong: true,
      says: [a.says, ...a.clashes.map(c => `${c.path}: yours ${text(c.yours)}, theirs ${text(c.theirs)}.`)].join(' '),
    })
    return false
  }
  const add = async (typed: Typed): Promise<void> => {
    const key = pieceName(typed['part'] || typed['what'] || '', shelf?.pieces.map(p => p.key) ?? [])
    if (await tell(shelfApi.edit(addition(key, typed), `«${key}» put on the shelf`), `«${key}» lies on the shelf now.`)) setAsked(ALL)
  }
  const change = (p: Piece, filled: Filled): void => {
    const edits = changesOf(p.key, filled)
    if (edits.length === 0) return turn(undefined)
    void tell(shelfApi.edit(edits, `«${p.key}» changed`), `«${p.key}» is changed.`)
  }
  const found = shelfFound(shelf?.pieces ?? [], searchOf(asked)),
    opened = found.find(p => p.key === open)
  return (
    <main className="start wide">
      <div className="bar">
        <Link href="/">Ampwright</Link>
        {back ? <Link href={`/c/${back.id}/parts`}>Back to the parts of {carName(back)}</Link> : null}
      </div>
      <h1>Shelf of parts</h1>
      <p className="lede">
        What {shelf?.name || 'the workshop'} owns or was offered. A piece is kept for one car at a time; on the page Parts of a car it is
        chosen with its serial number and price.
      </p>
      {wrong ? (
        <div className="note bad" role="alert">
          {wrong} {shelf ? 'Shown is the shelf as it was; nothing can be changed.' : ''}
        </div>
      ) : null}
      {said?.wrong ? (
        <div className="note bad" role="alert">
          {said.says}
        </div>
      ) : null}
      <p role="status" className="small">
        {said && !said.wrong ? said.says : ''}{' '}
        {said?.revision ? (
          <button type="button" className="bare" onClick={() => void tell(shelfApi.undo(said.revision ?? 0), 'Taken back.')}>
            Take it back
          </button>
        ) : null}
      </p>
      {shelf === undefined ? (
        wrong ? null : (
          <p>Looking …</p>
        )
      ) : (
        <>
          {open === NEW ? (
            <PieceForm
              title="A new piece"
              typed={NOTHING}
              act="Put it on the shelf"
              issues={issues}
              submit={({ values }) => void add(values)}
              leave={() => turn(undefined)}
            />
          ) : (
            <div className="add">
              <button type="button" className="main" onClick={() => turn(NEW)}>
                Put a piece on the shelf
              </button>
            </div>
          )}
          <ShelfSearchBar shelf={shelf} asked={asked} ask={setAsked} found={found.length} />
          {found.length ? (
            <ShelfTable
              pieces={found}
              cars={cars}
              open={
                opened && {
                  key: opened.key,
                  form: (
                    <PieceForm
                      key={opened.key}
                      title={`Change ${opened.key}`}
                      typed={opened.typed}
                      act="Keep the change"
                      issues={issues}
                      clashing={clashing}
                      submit={filled => change(opened, filled)}
                      leave={() => turn(undefined)}
                    />
                  ),
                }
              }
              acts={{
                change: p => turn(open === p.key ? undefined : p.key),
                takeAway: p => void tell(shelfApi.takeAway(p), `«${p.key}» is taken away.`),
                free: p => void tell(shelfApi.free(p), `«${p.key}» is free.`),
                reserve: (p, car) =>
                  void tell(shelfApi.reserve({ piece: p.key, conversion: car.id }), `«${p.key}» is reserved for ${carName(car)}.`),
              }}
            />
          ) : null}
          {shelf.notes.map(n => (
            <p key={`${n.path} ${n.what}`} className="small marginal">
              ◐ {n.path}: {n.what}; found {n.found}; accepted {n.accepted}
            </p>
          ))}
          <p className="quiet small">
            Every change is a revision of the workshop file; a copy of it, own.workshop.yaml, lies beside those of the conversions.{' '}
            <button type="button" className="bare" onClick={() => saveAs(shelf.text, 'application/yaml', 'own.workshop.yaml')}>
              Take the file along
            </button>
          </p>
        </>
      )}
    </main>
  )
}

const text = (value: unknown): string => (value === null ? 'nothing' : typeof value === 'string' ? `«${value}»` : JSON.stringify(value))
