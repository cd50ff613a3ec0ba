import { asksNothing, type CoastDownView, type LogTrial } from '@ampwright/workbench'
import { useEffect, useState } from 'react'
import { groupsOf, mapAt } from '../field/map-at.ts'
import { Changes } from '../files/changes.tsx'
import { bytesOf, Drop } from '../files/drop.tsx'
import { PreviewOf } from '../files/preview.tsx'
import { Finding } from '../findings/finding.tsx'
import { useInHand } from '../shell/in-hand.ts'
import { FigureTable } from '../working/figure-table.tsx'
import { Steps } from './steps.tsx'

/** A coast-down: speed logs read off, its steps, and the road load they come to. */
export function CoastDownPage() {
  const { conversion, opened } = useInHand(),
    [view, setView] = useState<CoastDownView>()
  useEffect(() => conversion.show('donor'), [conversion])
  useEffect(() => {
    if (opened.told) void conversion.coastDown().then(setView)
  }, [conversion, opened.told])
  const steps = groupsOf(mapAt(opened.sheets.donor, 'donor.coast-down.steps'))
  const about = (opened.told?.findings ?? []).filter(f => f.about.some(p => p.startsWith('donor.coast-down'))),
    inTheWay = about.filter(f => !asksNothing(f))
  return (
    <>
      <h1>Coast-down</h1>
      <p className="lede">
        The donor car rolls out in neutral, from speed to nearly standing, both ways on a level road: what slows it is its road load.
        Afterwards there is no engine to bring it up to speed.
      </p>
      <Logs />
      <section aria-label="What it comes to">
        <h2>What it comes to</h2>
        {view?.figures.length ? <FigureTable figures={view.figures} /> : <p>Nothing yet.</p>}
        {view?.missing.length ? <p className="unanswered">◌ unanswered: {view.missing.map(g => g.label).join('; ')}</p> : null}
      </section>
      {steps.length ? <Steps steps={steps} view={view} /> : null}
      {about.length ? (
        <section aria-label="What the rules say of it">
          <h2>What the rules say of it</h2>
          {inTheWay.map(f => (
            <Finding key={f.id} finding={f} />
          ))}
          <details className="group">
            <summary>{about.length - inTheWay.length} that hold or do not apply</summary>
            {about
              .filter(f => !inTheWay.includes(f))
              .map(f => (
                <Finding key={f.id} finding={f} />
              ))}
          </details>
        </section>
      ) : null}
    </>
  )
}

/** Logs dropped or picked together, tried first, then taken as one change. */
function Logs() {
  const { conversion, opened } = useInHand(),
    [trial, setTrial] = useState<LogTrial>(),
    [said, setSaid] = useState<string>()
  const tryOut = async (files: readonly File[]): Promise<void> => {
    setSaid(undefined)
    const logs = await Promise.all(files.map(async f => ({ name: f.name, bytes: await bytesOf(f) })))
    setTrial(await conversion.tryLogs(logs))
  }
  const take = async ({ edits, steps }: LogTrial): Promise<void> => {
    const issues = await conversion.edit(edits, 'coast-down read off speed logs')
    if (issues[0]) return setSaid(`Nothing was taken: ${issues[0].path}: ${issues[0].what}`)
    setTrial(undefined)
    setSaid(`Taken over: ${steps.length} steps. Undo takes them back in one go.`)
  }
  return (
    <section aria-label="Speed logs">
      <h2>Take over speed logs</h2>
      <Drop
        several
        says="Drop the logs of all runs together: columns time [s] and speed [km/h]; heading [°] or direction (out, back) where the log has it."
        pick="Pick logs"
        accept=".csv,.tsv,.txt,text/csv"
        take={files => void tryOut(files)}
      />
      {said === undefined ? null : <p role="status">{said}</p>}
      {trial?.refused.length ? (
        <div className="note bad" role="alert">
          {trial.refused.map(line => (
            <p key={line}>{line}</p>
          ))}
          <button type="button" onClick={() => setTrial(undefined)}>
            Put away
          </button>
        </div>
      ) : null}
      {trial && trial.refused.length === 0 ? (
        <div className="note trial">
          <p>
            <b>
              {trial.found.length} runs found, {trial.steps.length} steps read off.
            </b>
          </p>
          <ul className="plain">
            {trial.found.map(f => (
              <li key={f}>{f}</li>
            ))}
          </ul>
          <ReadOff steps={trial.steps} />
          {trial.changes.length ? (
            <>
              <PreviewOf edits={trial.edits} />
              <details className="group">
                <summary>{trial.changes.length} values would change</summary>
                <Changes changes={trial.changes} thing="Step" />
              </details>
            </>
          ) : (
            <p>Everything in them stands here already. Nothing would change.</p>
          )}
          <p className="add">
            {trial.changes.length ? (
              <button type="button" className="main" onClick={() => void take(trial)} disabled={opened.saving === 'server away'}>
                Take them over
              </button>
            ) : null}
            <button type="button" onClick={() => setTrial(undefined)}>
              Put away
            </button>
          </p>
        </div>
      ) : null}
    </section>
  )
}

/** The time each run took through each step. */
function ReadOff({ steps }: { readonly steps: LogTrial['steps'] }) {
  const runs = steps[0]?.times.map(([run]) => run) ?? []
  return (
    <section className="scroll" aria-label="Steps read off" tabIndex={0}>
      <table className="many">
        <thead>
          <tr>
            <th scope="col">Step</th>
            {runs.map(r => (
              <th scope="col" key={r}>
                {r.replace('-', ' ')}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {steps.map(s => (
            <tr key={s.name}>
              <th scope="row">
                {s.from} to {s.to}
              </th>
              {s.times.map(([run, t]) => (
                <td key={run} className="num">
                  {t}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
