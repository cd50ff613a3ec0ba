import type { ApiJob } from '@ampwright/server'
import { useEffect, useRef, useState } from 'react'
import { api } from '../server/api.ts'
import { forgetCounts } from '../server/last-seen.ts'
import { shownJobs } from './job-words.ts'
import { LongJob } from './long-job.tsx'

type Jobs = ReadonlyMap<string, ApiJob>

/** Everything as one file, a backup in the place of everything, and a look through all that is kept: each with how far it is. */
export function Backup({
  renew,
  jobs,
  away,
}: {
  readonly renew: () => Promise<unknown>
  readonly jobs: Jobs
  /** The server is away: what is known of jobs stays, and nothing is offered. */
  readonly away: boolean
}) {
  const [asked, setAsked] = useState<File>(),
    [wrong, setWrong] = useState<string>(),
    [put, setPut] = useState<ReadonlySet<string>>(new Set()),
    [names, setNames] = useState<ReadonlyMap<string, string>>(new Map()),
    [mine, setMine] = useState<string>(),
    [own, setOwn] = useState<ReadonlySet<string>>(new Set()),
    seen = useSeen(jobs, own)
  const putBack = async (file: File): Promise<void> => {
    setAsked(undefined)
    setWrong(undefined)
    try {
      const { id } = await api.beginRestore(file)
      setNames(had => new Map(had).set(id, file.name))
      setOwn(had => new Set([...had, id]))
    } catch (e) {
      setWrong(`${file.name}: ${(e as Error).message}`)
    }
  }
  const begin = async (kind: 'backup' | 'check'): Promise<void> => {
    setWrong(undefined)
    try {
      const { id } = await api.beginJob(kind)
      setOwn(had => new Set([...had, id]))
      if (kind === 'backup') setMine(id)
    } catch (e) {
      setWrong((e as Error).message)
    }
  }
  // The backup asked for here is saved when it is made; one of another window, or from before a reload, waits for its link.
  const made = mine === undefined ? undefined : jobs.get(mine)
  useEffect(() => {
    if (made?.state !== 'done' || !made.result?.file) return
    setMine(undefined)
    const link = document.createElement('a')
    link.href = api.jobFile(made.id)
    link.download = made.result.file
    link.click()
  }, [made])
  const restored = [...jobs.values()].filter(j => j.kind === 'restore' && j.state === 'done' && seen.has(j.id)).length
  useEffect(() => {
    if (restored) void forgetCounts().then(renew)
  }, [restored, renew])
  const lines = shownJobs(jobs, seen, put)
  return (
    <>
      {away && lines.length === 0 ? null : <h2>Backup</h2>}
      {away ? null : (
        <div className="add">
          <button type="button" onClick={() => void begin('backup')}>
            Everything as one file
          </button>
          <label className="button">
            Put a backup back
            <input
              className="hidden"
              type="file"
              accept=".sqlite"
              onChange={e => {
                setAsked(e.target.files?.[0])
                setWrong(undefined)
                e.target.value = ''
              }}
            />
          </label>
          <button type="button" onClick={() => void begin('check')}>
            Look everything through
          </button>
        </div>
      )}
      {asked && !away ? <Ask file={asked} put={() => void putBack(asked)} leave={() => setAsked(undefined)} /> : null}
      {wrong === undefined ? null : (
        <div className="note bad" role="alert">
          {wrong}
        </div>
      )}
      {lines.map(j => (
        <LongJob key={j.id} job={j} name={names.get(j.id)} away={away} put={() => setPut(had => new Set([...had, j.id]))} />
      ))}
    </>
  )
}

/** The jobs this page began or saw running. */
function useSeen(jobs: Jobs, own: ReadonlySet<string>): ReadonlySet<string> {
  const [seen, setSeen] = useState<ReadonlySet<string>>(own),
    fresh = [...own, ...[...jobs.values()].filter(j => j.state === 'running').map(j => j.id)].filter(id => !seen.has(id))
  if (fresh.length) setSeen(new Set([...seen, ...fresh]))
  return seen
}

/** Asked once: everything there is gives way. */
function Ask({ file, put, leave }: { readonly file: File; readonly put: () => void; readonly leave: () => void }) {
  const first = useRef<HTMLButtonElement>(null)
  useEffect(() => first.current?.focus(), [])
  return (
    <div className="note" role="group" aria-label="Put a backup back">
      <p>
        <b>{file.name}</b> takes the place of every conversion with all its revisions and files. What is here now is kept aside as a file in
        the data folder, which can be put back the same way.
      </p>
      <button type="button" className="main" onClick={put} ref={first}>
        Put it in the place of everything
      </button>{' '}
      <button type="button" onClick={leave}>
        Leave it as it is
      </button>
    </div>
  )
}
