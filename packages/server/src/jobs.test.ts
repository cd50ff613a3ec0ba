import { existsSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { Stopped } from '@ampwright/store'
import { describe, expect, it } from 'vitest'
import { clock, emptyFolder } from '../../../tests/stores.ts'
import type { ApiJob } from './api-types.ts'
import { clearedPassing } from './job-record.ts'
import { type Ended, jobsIn, type Working } from './jobs.ts'

const opened = (data = emptyFolder(), time = clock()) => {
  const told: ApiJob[] = [],
    passing = clearedPassing(data, time.now()),
    jobs = jobsIn({ passing, folder: data, now: time.now, tell: job => void told.push(job) })
  return { jobs, told, passing, data, time }
}
/** A work that goes on until it is let go or stopped. */
function held(ends: Ended = { says: 'Done.' }) {
  let letGo = (): void => {}
  const work = ({ signal, file }: Working): Promise<Ended> =>
    new Promise((resolve, reject) => {
      writeFileSync(file, 'half')
      letGo = () => resolve(ends)
      signal.addEventListener('abort', () => reject(new Stopped()))
    })
  return { work, letGo: () => letGo() }
}
const fileJob = async ({ file }: Working): Promise<Ended> => {
  writeFileSync(file, 'whole')
  return { says: 'The backup is made.', file: 'a.sqlite' }
}

describe('a job', () => {
  it('tells every percent once, and its end with a sentence', async () => {
    const { jobs, told } = opened()
    const { id } = jobs.begin('check', async ({ hear }) => {
      for (let done = 0; done < 1000; done++) hear({ done, of: 1000, doing: 'looking' })
      return { says: 'All looked through.', contents: 1000 }
    })
    const job = await jobs.ended(id)
    expect(job).toMatchObject({ state: 'done', says: 'All looked through.', result: { contents: 1000, file: null, problems: [] } })
    expect(told.length).toBeLessThanOrEqual(103)
    expect(told.length).toBeGreaterThan(100)
    expect(told.at(-1)).toEqual(job)
    expect(jobs.list()).toEqual([job])
  })
  it('that writes waits for no other: it is refused with the name of the one that runs', async () => {
    const { jobs } = opened(),
      { work, letGo } = held(),
      backup = jobs.begin('backup', work)
    expect(() => jobs.begin('backup', fileJob)).toThrow('A backup is being made. Wait until that is done, or cancel it.')
    expect(() => jobs.begin('restore', fileJob)).toThrow('A backup is being made.')
    const check = jobs.begin('check', async () => ({ says: 'Done.' }))
    await jobs.ended(check.id)
    letGo()
    await jobs.ended(backup.id)
    const restore = held(),
      running = jobs.begin('restore', restore.work)
    for (const kind of ['backup', 'check', 'restore'] as const)
      expect(() => jobs.begin(kind, fileJob)).toThrow('A backup is being put back.')
    restore.letGo()
    await jobs.ended(running.id)
  })
  it('that is cancelled says so, leaves no file, and makes room for another', async () => {
    const { jobs, passing } = opened(),
      { id } = jobs.begin('backup', held().work)
    expect(await jobs.cancel(id)).toMatchObject({ state: 'cancelled', says: expect.stringContaining('it was cancelled'), result: null })
    expect(readdirSync(passing)).toEqual(['jobs.json'])
    expect(await jobs.cancel(id)).toMatchObject({ state: 'cancelled' })
    expect(await jobs.cancel('0'.repeat(16))).toBe(undefined)
    const next = jobs.begin('backup', fileJob)
    expect(await jobs.ended(next.id)).toMatchObject({ state: 'done', result: { file: 'a.sqlite', size: 5 } })
  })
  it('that fails tells why, and no place of this machine', async () => {
    const { jobs, data } = opened(),
      { id } = jobs.begin('backup', async () => Promise.reject(Object.assign(new Error(`no ${data}`), { code: 'X' })))
    const job = await jobs.ended(id)
    expect(job.state).toBe('failed')
    expect(JSON.stringify(job)).not.toContain(data)
  })
  it('keeps a file until it is fetched, or for an hour', async () => {
    const { jobs, time } = opened(),
      one = jobs.begin('backup', fileJob)
    await jobs.ended(one.id)
    await jobs.fetched(one.id)
    expect(jobs.one(one.id)?.result?.file).toBe(null)
    expect(existsSync(jobs.fileOf(one.id))).toBe(false)
    const { id } = jobs.begin('backup', fileJob)
    await jobs.ended(id)
    expect(existsSync(jobs.fileOf(id))).toBe(true)
    time.turn(1 / 24)
    expect(jobs.list()).toEqual([])
    await expect.poll(() => existsSync(jobs.fileOf(id))).toBe(false)
  })
  it('that runs when the server ends is stopped, and said to have been after the next start', async () => {
    const { jobs, told, data, passing } = opened(),
      { id } = jobs.begin('restore', held().work),
      kept = jobs.begin.bind(jobs)
    await jobs.stop()
    expect(told.at(-1)).toMatchObject({ id, state: 'stopped', says: expect.stringContaining('the server was stopped on the way') })
    const backup = kept('backup', fileJob)
    await jobs.ended(backup.id)
    const again = opened(data)
    expect(again.jobs.one(id)).toMatchObject({ state: 'stopped' })
    expect(again.jobs.one(backup.id)?.result?.file).toBe('a.sqlite')
    expect(readdirSync(passing).sort()).toEqual([`${backup.id}.result`, 'jobs.json'].sort())
  })
  it('that was cut off with the server is said to be, and what it left half-made is gone', () => {
    const { jobs, data, passing } = opened(),
      { id } = jobs.begin('backup', held().work)
    writeFileSync(join(passing, 'coming.sqlite'), 'half')
    const again = opened(data)
    expect(again.jobs.one(id)).toMatchObject({ state: 'stopped', says: 'The backup is not made: the server ended on the way.' })
    expect(readdirSync(passing)).toEqual(['jobs.json'])
    writeFileSync(join(passing, 'jobs.json'), '{"no": "list"}')
    expect(opened(data).jobs.list()).toEqual([])
  })
})
