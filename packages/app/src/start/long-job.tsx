import type { ApiJob } from '@ampwright/server'
import { useState } from 'react'
import { api } from '../server/api.ts'
import { job as inWords } from './job-words.ts'

/** A job that runs, with how far it is and the way to cancel it; or how it ended. `name` is of the file it is about. */
export function LongJob({
  job,
  name,
  away,
  put,
}: {
  readonly job: ApiJob
  readonly name?: string | undefined
  readonly away: boolean
  readonly put: () => void
}) {
  const { label, part, spoken, ended, bad } = inWords(job, name),
    [asked, setAsked] = useState(false)
  if (job.state === 'running')
    return (
      <div className="note job-now" role="group" aria-label={label}>
        <span className="job-what">
          {label}: {job.doing}, {part}&nbsp;%
        </span>
        <progress max={100} value={part} aria-label={`${label}: ${job.doing}`} />
        <button
          type="button"
          disabled={asked || away}
          onClick={() => {
            setAsked(true)
            void api.cancelJob(job.id).catch(() => setAsked(false))
          }}
          aria-label={`${asked ? 'Cancelling …' : 'Cancel'}: ${label}`}
        >
          {asked ? 'Cancelling …' : 'Cancel'}
        </button>
        <span className="hidden" role="status">
          {spoken}
        </span>
      </div>
    )
  return (
    <div className={`note${bad ? ' bad' : ''}`} role={bad ? 'alert' : 'status'}>
      <div className="job-end">{ended}</div>
      {job.result?.problems.length ? (
        <ul className="faults plain">
          {job.result.problems.map(p => (
            <li key={p}>{p}</li>
          ))}
        </ul>
      ) : null}
      {job.result?.file && !away ? (
        <a className="button" href={api.jobFile(job.id)} download>
          Save {job.result.file}
        </a>
      ) : null}{' '}
      <button type="button" className="bare" onClick={put} aria-label={`Put away: ${label}`}>
        Put away
      </button>
    </div>
  )
}
