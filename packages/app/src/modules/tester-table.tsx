import type { TableFault, TableTrial } from '@ampwright/workbench'
import { useId, useState } from 'react'
import { Changes, ownerOf } from '../files/changes.tsx'
import { bytesOf, Drop } from '../files/drop.tsx'
import { PreviewOf } from '../files/preview.tsx'
import { useHand, useInHand } from '../shell/in-hand.ts'
import { saveAs } from '../save-as.ts'

type Tried = { readonly from: string; readonly trial: TableTrial }

/** Takes the table of a module tester or a spreadsheet: dropped, picked or pasted; tried first, taken whole or not at all. */
export function TesterTable({ some }: { readonly some: boolean }) {
  const { conversion, opened } = useInHand(),
    [pasted, setPasted] = useState(''),
    [tried, setTried] = useState<Tried>(),
    [said, setSaid] = useState<string>(),
    id = useId()
  const tryOut = async (from: string, bytes: Uint8Array): Promise<void> => {
    setSaid(undefined)
    setTried({ from, trial: await conversion.tryModules(bytes) })
  }
  const take = async ({ from, trial }: Tried): Promise<void> => {
    const issues = await conversion.edit(trial.edits, `module tester: ${from}`)
    if (issues[0]) return setSaid(`Nothing was taken: ${issues[0].path}: ${issues[0].what}`)
    setTried(undefined)
    setPasted('')
    setSaid(`Taken over from ${from}: ${trial.changes.length} values. Undo takes them back in one step.`)
  }
  return (
    <section aria-label="A tester’s table">
      <h2>Take over a tester’s table</h2>
      <Drop
        says="Drop a table here (.csv, .tsv), or pick it, or paste rows below."
        pick="Pick a table"
        accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values"
        take={files => {
          const file = files[0]
          if (file) void bytesOf(file).then(b => tryOut(file.name, b))
        }}
      />
      <label htmlFor={id} className="small">
        Rows from a spreadsheet, headings in the first: serial, capacity [Ah], resistance [mΩ], rest voltage [V], rest voltage later [V],
        days apart [d], insulation [MΩ], source, history, place
      </label>
      <textarea
        id={id}
        className="paste num"
        rows={3}
        spellCheck={false}
        value={pasted}
        onChange={e => setPasted(e.target.value)}
        onPaste={e => {
          const text = e.clipboardData.getData('text/plain')
          if (pasted === '' && text.includes('\n')) void tryOut('pasted rows', new TextEncoder().encode(text))
        }}
      />
      <p className="add">
        <button type="button" disabled={pasted.trim() === ''} onClick={() => void tryOut('pasted rows', new TextEncoder().encode(pasted))}>
          Try these rows
        </button>
        {some ? <SaveTable name={opened.name} /> : null}
      </p>
      {said === undefined ? null : <p role="status">{said}</p>}
      {tried ? <Trial tried={tried} take={() => void take(tried)} away={() => setTried(undefined)} /> : null}
    </section>
  )
}

/** The modules as they stand, to be filled in a spreadsheet and pasted back. */
function SaveTable({ name }: { readonly name: string }) {
  const { conversion } = useHand()
  const save = async (): Promise<void> => {
    saveAs(
      await conversion.moduleTable(),
      'text/tab-separated-values',
      `${name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-') || 'conversion'}-modules.tsv`,
    )
  }
  return (
    <button type="button" onClick={() => void save()}>
      Save the table to fill in
    </button>
  )
}

function Trial({ tried, take, away }: { readonly tried: Tried; readonly take: () => void; readonly away: () => void }) {
  const { opened } = useInHand(),
    { from, trial } = tried,
    modules = new Set(trial.changes.map(c => ownerOf(c.path))).size
  const putAway = (
    <button type="button" onClick={away}>
      Put away
    </button>
  )
  if (trial.faults.length)
    return (
      <div className="note bad" role="alert">
        <p>
          <b>Nothing of {from} is taken over until this is mended:</b>
        </p>
        <Faults faults={trial.faults} more={trial.more} />
        {putAway}
      </div>
    )
  if (trial.changes.length === 0)
    return (
      <div className="note" role="status">
        <p>
          {from}, {trial.rows === 1 ? 'one row' : `${trial.rows} rows`}: everything in it stands here already. Nothing would change.
        </p>
        {putAway}
      </div>
    )
  return (
    <div className="note trial">
      <p>
        <b>
          {from}: {trial.changes.length === 1 ? 'one value' : `${trial.changes.length} values`} of{' '}
          {modules === 1 ? 'one module' : `${modules} modules`} would change.
        </b>
      </p>
      <PreviewOf edits={trial.edits} />
      <Changes changes={trial.changes} thing="Module" />
      <p className="add">
        <button type="button" className="main" onClick={take} disabled={opened.saving === 'server away'}>
          Take it over
        </button>
        {putAway}
      </p>
    </div>
  )
}

function Faults({ faults, more }: { readonly faults: readonly TableFault[]; readonly more: number }) {
  return (
    <ul className="plain faults">
      {faults.map(f => (
        <li key={`${f.line} ${f.row} ${f.column} ${f.what} ${f.found}`}>
          <b>{placeOf(f)}</b>: {f.what}; found <span className="num">{f.found}</span>
          {f.nearest ? (
            <>
              ; did you mean <span className="num">{f.nearest}</span>?
            </>
          ) : null}
          <span className="quiet">; accepted {f.accepted}</span>
        </li>
      ))}
      {more ? <li>and {more} more</li> : null}
    </ul>
  )
}

/** Where in the table: line of the text, row below the headings, column. */
const placeOf = ({ line, row, column }: TableFault): string =>
  [
    line === undefined ? '' : `line ${line}`,
    row === undefined ? (line === undefined ? '' : 'heading') : `row ${row}`,
    column === '' ? '' : `column ${column}`,
  ]
    .filter(Boolean)
    .join(', ')
