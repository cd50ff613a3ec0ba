import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import type { ApiJob } from './api-types.ts'
import { Job } from './shapes.ts'

export type JobKind = ApiJob['kind']

/** How long the result of a job is kept [ms]. */
export const KEPT = 3_600_000

export const resultIn = (passing: string, id: string): string => join(passing, `${id}.result`)
const recordIn = (passing: string): string => join(passing, 'jobs.json')

/** The sentence of a job the server could not end: it was killed. */
const CUT: Readonly<Record<JobKind, string>> = {
  backup: 'The backup is not made: the server ended on the way.',
  restore:
    'The server ended while a backup was put back: all is as it was, or the backup stands here whole and what was here before is kept in the data folder.',
  check: 'Not everything is looked through: the server ended on the way.',
}

/** The jobs of the last hour, as an earlier life of the server left them: what ran then ended with it. */
export function readRecord(passing: string, now: number): readonly ApiJob[] {
  const file = recordIn(passing)
  if (passing === '' || !existsSync(file)) return []
  let said: unknown
  try {
    said = JSON.parse(readFileSync(file, 'utf8'))
  } catch {
    return []
  }
  const read = z.array(Job).safeParse(said)
  if (!read.success) return []
  return read.data
    .filter(job => now - Date.parse(job.ended ?? job.begun) < KEPT)
    .map(job => {
      if (job.state === 'running')
        return { ...job, state: 'stopped' as const, ended: new Date(now).toISOString(), says: CUT[job.kind], result: null }
      return job.result?.file && !existsSync(resultIn(passing, job.id)) ? { ...job, result: { ...job.result, file: null } } : job
    })
}

/** Keeps the jobs beside the database. Where that cannot be written, they are known until the server ends. */
export function writeRecord(passing: string, jobs: readonly ApiJob[]): void {
  if (passing === '') return
  try {
    writeFileSync(`${recordIn(passing)}.writing`, JSON.stringify(jobs), { mode: 0o600 })
    renameSync(`${recordIn(passing)}.writing`, recordIn(passing))
  } catch {
    rmSync(`${recordIn(passing)}.writing`, { force: true })
  }
}

/** The folder for what passes through, without what an earlier life of the server left half done. */
export function clearedPassing(data: string, now: number): string {
  const passing = join(data, 'passing')
  mkdirSync(passing, { recursive: true })
  const stays = new Set([
    recordIn(passing),
    ...readRecord(passing, now)
      .filter(j => j.result?.file)
      .map(j => resultIn(passing, j.id)),
  ])
  for (const name of readdirSync(passing))
    if (!stays.has(join(passing, name))) rmSync(join(passing, name), { recursive: true, force: true })
  return passing
}
