import type { PartPlace, PartTable, Standing } from '@ampwright/workbench'
import { useEffect, useState } from 'react'
import type { Piece } from '../shelf/shelf-api.ts'
import { isKeptFor, type ShelfInHand } from '../shelf/use-shelf.ts'
import { useInHand } from '../shell/in-hand.ts'
import { SideBySide } from './side-by-side.tsx'
import { Taking } from './taking.tsx'

/** A record that is looked at, and the piece of it on the shelf where one was chosen. */
type Candidate = { readonly id: string; readonly piece?: Piece }

/** Most records that are laid side by side: beyond that a class or a word helps more. */
const MOST = 40

/** Records that fit a place, by class and by words; without a place, all there are to read. */
export function Picker({ place, shelf }: { readonly place?: PartPlace; readonly shelf?: ShelfInHand }) {
  const { conversion, opened } = useInHand(),
    [words, setWords] = useState(''),
    [only, setOnly] = useState(place?.first ?? ''),
    [laid, setLaid] = useState<{ readonly table: PartTable; readonly now?: Standing }>(),
    [candidate, setCandidate] = useState<Candidate>(),
    [lying, setLying] = useState(false),
    path = place?.path
  const { units } = conversion
  // biome-ignore lint/correctness/useExhaustiveDependencies: figures are laid out anew in other units
  useEffect(() => {
    let overtaken = false
    const search = { words, ...(lying ? {} : { most: MOST }), ...(only === '' ? {} : { class: only }) }
    void conversion.partTable(path, search).then(t => overtaken || setLaid(t))
    return () => {
      overtaken = true
    }
  }, [conversion, path, words, only, units, lying, opened.told])
  if (laid === undefined) return <p className="quiet">Looking …</p>
  const pieces = shelf?.shelf?.pieces ?? [],
    table = lying ? lyingOnly(laid.table, pieces) : laid.table
  return (
    <div className="picker">
      <div className="add">
        <input
          type="search"
          aria-label="Search by words"
          placeholder="search: liquid, LFP, 32 A"
          value={words}
          onChange={e => {
            setWords(e.target.value)
            // Words are looked for in every class that fits.
            if (words.trim() === '') setOnly('')
          }}
          autoComplete="off"
        />
        <select aria-label="Class of parts" value={only} onChange={e => setOnly(e.target.value)}>
          <option value="">every class that fits</option>
          {table.classes.map(c => (
            <option key={c.class} value={c.class}>
              {c.label} ({c.count})
            </option>
          ))}
          {only === '' || table.classes.some(c => c.class === only) ? null : <option value={only}>{only} (0)</option>}
        </select>
        {pieces.length ? (
          <label className="small">
            <input type="checkbox" checked={lying} onChange={e => setLying(e.target.checked)} /> only what lies on the shelf
          </label>
        ) : null}
        <span role="status" className="small quiet">
          {table.found === 0
            ? lying
              ? 'Nothing that lies on the shelf fits.'
              : 'Nothing fits that has these words.'
            : table.found > table.rows.length
              ? `${table.found} fit; the first ${table.rows.length} are listed.`
              : `${table.found} fit`}
        </span>
      </div>
      <SideBySide
        table={table}
        standing={laid.now}
        now={place?.now?.id}
        choose={place === undefined ? undefined : (id, piece) => setCandidate({ id, ...(piece ? { piece } : {}) })}
        candidate={candidate?.id}
        pieces={pieces}
        isHere={p => isKeptFor(p, opened.id, shelf?.cars ?? [])}
      />
      {place && candidate ? (
        <Taking
          key={`${candidate.id} ${candidate.piece?.key ?? ''}`}
          place={place}
          id={candidate.id}
          piece={candidate.piece}
          leave={() => setCandidate(undefined)}
        />
      ) : null}
    </div>
  )
}

/** The records of which a piece lies on the shelf. */
function lyingOnly(table: PartTable, pieces: readonly Piece[]): PartTable {
  const rows = table.rows.filter(r => pieces.some(p => p.part === r.id))
  return { ...table, rows, found: rows.length }
}
