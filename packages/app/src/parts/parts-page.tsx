import type { PartPlace } from '@ampwright/workbench'
import { useEffect, useState } from 'react'
import { Link, useSearch } from 'wouter'
import { KeptHere } from '../shelf/kept-here.tsx'
import { type ShelfInHand, useShelf } from '../shelf/use-shelf.ts'
import { useInHand } from '../shell/in-hand.ts'
import { Picker } from './picker.tsx'

/** Where this conversion takes parts of the catalogue, what stands there, and what fits. `?place=PATH` opens one. */
export function PartsPage() {
  const { conversion, opened } = useInHand(),
    [places, setPlaces] = useState<readonly PartPlace[]>(),
    asked = new URLSearchParams(useSearch()).get('place') ?? undefined,
    [open, setOpen] = useState<string | undefined>(asked),
    shelf = useShelf()
  // Places come and go with the text: a drive unit named elsewhere brings its own.
  useEffect(() => void conversion.places().then(setPlaces), [conversion, opened.told, opened.revision])
  return (
    <>
      <h1>Parts</h1>
      <p className="lede">
        Records of classes, never of makers: what such a part is met as, with its spread, until the real one lies on the bench and is
        measured. Choosing one fills its fields and keeps where they came from. Prices are bands, not offers.
      </p>
      <KeptHere shelf={shelf} id={opened.id} />
      <h2>Places in this conversion</h2>
      {places === undefined ? (
        <p>Looking …</p>
      ) : (
        <ul className="places">
          {places.map(p => (
            <Place key={p.path} place={p} shelf={shelf} open={open === p.path} turn={() => setOpen(open === p.path ? undefined : p.path)} />
          ))}
        </ul>
      )}
      <p className="quiet small">
        A further place comes with the thing it belongs to: a drive unit on <Link href={`/c/${opened.id}/drive`}>Drive</Link>, what is put
        in on <Link href={`/c/${opened.id}/donor`}>Donor</Link>, what hangs on pack voltage on{' '}
        <Link href={`/c/${opened.id}/pack`}>Pack</Link>.
      </p>
      <h2>The whole catalogue</h2>
      <details className="group">
        <summary>Every class and record, with how each figure is known</summary>
        <Picker />
      </details>
    </>
  )
}

function Place({
  place: p,
  shelf,
  open,
  turn,
}: {
  readonly place: PartPlace
  readonly shelf: ShelfInHand
  readonly open: boolean
  readonly turn: () => void
}) {
  return (
    <li id={`at-${p.path}`}>
      <div className="place">
        <span>
          <b>{p.label}</b>
          {p.of ? <span className="quiet"> {p.of}</span> : null}
        </span>
        <span>
          {p.now === undefined ? (
            <span className="quiet">
              {p.typed === 0 ? 'no part chosen' : `no part chosen, ${p.typed} ${p.typed === 1 ? 'value' : 'values'} typed`}
            </span>
          ) : (
            <>
              {p.now.known ?? <span className="failing">▲ not in the catalogue</span>}
              <code className="small quiet"> {p.now.id}</code>
            </>
          )}
        </span>
        <button type="button" aria-expanded={open} onClick={turn}>
          {open ? 'Close' : `${p.fitting} fit`}
          <span className="hidden">
            {' '}
            {p.label} {p.of}
          </span>
        </button>
      </div>
      {open ? <Picker place={p} shelf={shelf} /> : null}
    </li>
  )
}
