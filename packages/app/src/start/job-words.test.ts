import type { ApiJob } from '@ampwright/server'
import { describe, expect, it } from 'vitest'
import { job, shownJobs } from './job-words.ts'

const RUNS: ApiJob = {
  id: '1',
  kind: 'backup',
  state: 'running',
  doing: 'copying the database',
  done: 30,
  of: 60,
  begun: '2026-11-02T10:00:00.000Z',
  ended: null,
  says: null,
  result: null,
}
const DONE: ApiJob = {
  ...RUNS,
  id: '2',
  state: 'done',
  says: 'The backup is made.',
  result: { file: 'a.sqlite', size: 12_340_000, keptAs: null, contents: null, problems: [] },
}
const map = (...jobs: ApiJob[]) => new Map(jobs.map(j => [j.id, j]))

describe('a job in words', () => {
  it('says how far it is, and by quarters to who listens', () => {
    expect(job(RUNS)).toMatchObject({ part: 50, spoken: 'Everything as one file: copying the database, half done', bad: false })
    expect(job({ ...RUNS, done: 31 }).spoken).toBe(job(RUNS).spoken)
    expect(job({ ...RUNS, done: 0, of: 0 }).part).toBe(0)
  })
  it('says how it ended, of which file, and what is not well', () => {
    expect(job(DONE, 'b.sqlite')).toMatchObject({ ended: 'b.sqlite: The backup is made. It has 12.3 MB.', bad: false })
    expect(job({ ...DONE, state: 'stopped' }).bad).toBe(true)
    expect(job({ ...DONE, state: 'cancelled' }).bad).toBe(false)
    expect(
      job({ ...DONE, result: { ...(DONE.result as NonNullable<ApiJob['result']>), problems: ['The table content is damaged.'] } }).bad,
    ).toBe(true)
  })
  it('is shown while it runs, when it ended here, or with a file nobody fetched; until it is put away', () => {
    const fetched = { ...DONE, result: { ...(DONE.result as NonNullable<ApiJob['result']>), file: null } },
      shown = (jobs: ReadonlyMap<string, ApiJob>, seen: string[] = [], away: string[] = []) =>
        shownJobs(jobs, new Set(seen), new Set(away)).map(j => j.id)
    expect(shown(map(DONE, RUNS))).toEqual(['2', '1'])
    expect(shown(map(fetched, RUNS))).toEqual(['1'])
    expect(shown(map(fetched), ['2'])).toEqual(['2'])
    expect(shown(map(DONE), ['2'], ['2'])).toEqual([])
  })
})
