import type { ApiJob } from '@ampwright/server'

const LABEL: Readonly<Record<ApiJob['kind'], string>> = {
  backup: 'Everything as one file',
  restore: 'Putting a backup back',
  check: 'Looking everything through',
}

/** A job in words: its name, how far it is [%], the same as it is spoken (by quarters, not at every step), and how it ended. */
export function job(
  { kind, doing, done, of, state, says, result }: ApiJob,
  name?: string,
): { readonly label: string; readonly part: number; readonly spoken: string; readonly ended: string; readonly bad: boolean } {
  const part = Math.max(0, Math.min(100, Math.floor((100 * done) / Math.max(1, of)))),
    size = result?.size ? ` It has ${(result.size / 1e6).toFixed(1)} MB.` : ''
  return {
    label: LABEL[kind],
    part,
    spoken: `${LABEL[kind]}: ${doing}, ${part < 25 ? 'begun' : part < 50 ? 'a quarter' : part < 75 ? 'half' : 'three quarters'} done`,
    ended: `${name === undefined ? '' : `${name}: `}${says ?? ''}${size}`,
    bad: state === 'failed' || state === 'stopped' || (result?.problems.length ?? 0) > 0,
  }
}

/** What a page shows of the jobs there are: what runs, what ended while it looked, and a file nobody fetched yet; not what was put away. */
export function shownJobs(jobs: ReadonlyMap<string, ApiJob>, seen: ReadonlySet<string>, away: ReadonlySet<string>): readonly ApiJob[] {
  return [...jobs.values()]
    .filter(j => !away.has(j.id) && (j.state === 'running' || seen.has(j.id) || Boolean(j.result?.file)))
    .toSorted((a, b) => (a.begun < b.begun ? -1 : 1))
}
