import type { PartPlace, PartTable, Standing } from '@ampwright/workbench'
import { useEffect, useState } from 'react'
import { useInHand } from '../shell/in-hand.ts'
import { SideBySide } from './side-by-side.tsx'
import { Taking } from './taking.tsx'

/** Most records that are laid side by side: beyond that a class or a word helps more. */
const MOST = 40

/** Records that fit a place, by class and by words; without a place, all there are to read. */
export function Picker({ place }: { readonly place?: PartPlace }) {
  const { conversion, opened } = useInHand(),
    [words, setWords] = useState(''),
    [only, setOnly] = useState(place?.first ?? ''),
    [laid, setLaid] = useState<{ readonly table: PartTable; readonly now?: Standing }>(),
    [candidate, setCandidate] = useState<string>(),
    path = place?.path
  const { units } = conversion
  // biome-ignore lint/correctness/useExhaustiveDependencies: figures are laid out anew in other units
  useEffect(() => {
    let overtaken = false
    const search = { words, most: MOST, ...(only === '' ? {} : { class: only }) }
    void conversion.partTable(path, search).then(t => overtaken || setLaid(t))
    return () => {
      overtaken = true
    }
  }, [conversion, path, words, only, units, opened.told])
  if (laid === undefined) return <p className="quiet">Looking …</p>
  const { table } = laid
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
        <span role="status" className="small quiet">
          {table.found === 0
            ? 'Nothing fits that has these words.'
            : table.found > table.rows.length
              ? `${table.found} fit; the first ${table.rows.length} are listed.`
              : `${table.found} fit`}
        </span>
      </div>
      <SideBySide
        table={table}
        standing={laid.now}
        now={place?.now?.id}
        choose={place === undefined ? undefined : setCandidate}
        candidate={candidate}
      />
      {place && candidate ? <Taking key={candidate} place={place} id={candidate} leave={() => setCandidate(undefined)} /> : null}
    </div>
  )
}
