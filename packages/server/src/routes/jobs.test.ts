import { spawn } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import { once } from 'node:events'
import { readdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { root } from '../../../../tests/cars.ts'
import { listening } from '../../../../tests/listening.ts'
import { ask, SAMPLES, serving } from '../../../../tests/serving.ts'
import { emptyFolder } from '../../../../tests/stores.ts'
import type { ApiJob } from '../api-types.ts'
import { type Running, startServer } from '../start.ts'

/** Some seven thousand pages: a backup of it goes in many steps. */
const MUCH = 30_000_000
const data = emptyFolder()
let server: Running, demo: string
const filled = async (at: Running): Promise<string> => {
  const [{ id }] = (await ask(at, 'GET', '/api/conversions')).json
  expect((await ask(at, 'PUT', `/api/conversions/${id}/files/log.csv`, randomBytes(MUCH))).status).toBe(200)
  return id
}
beforeAll(async () => {
  server = await serving({ data })
  demo = await filled(server)
}, 120_000)
afterAll(() => server.close())

const begun = async (kind: string): Promise<ApiJob> => {
  const { status, json } = await ask(server, 'POST', '/api/jobs', { kind })
  expect(status, JSON.stringify(json)).toBe(202)
  return json
}
const one = async (id: string): Promise<ApiJob> => (await ask(server, 'GET', `/api/jobs/${id}`)).json
const ended = async (id: string): Promise<ApiJob> => {
  for (;;) {
    const job = await one(id)
    if (job.state !== 'running') return job
  }
}
const passing = (folder = data): string[] => readdirSync(join(folder, 'passing'))

describe('a backup as a job', () => {
  it('tells its steps to every window, and is fetched once', async () => {
    const window = await listening(server),
      { id, state } = await begun('backup'),
      steps: ApiJob[] = []
    expect(state).toBe('running')
    for (let job: ApiJob | undefined; job?.state !== 'done'; ) {
      const { event, data: said } = await window.next()
      if (event !== 'job') continue
      job = said as ApiJob
      expect(job.id).toBe(id)
      steps.push(job)
    }
    window.stop()
    const copying = steps.filter(s => s.doing === 'copying the database' && s.state === 'running').map(s => s.done / s.of)
    expect(copying.length).toBeGreaterThan(10)
    expect(copying).toEqual(copying.toSorted((a, b) => a - b))
    const { result, says } = steps.at(-1) as ApiJob
    expect(says).toBe('The backup is made.')
    expect(result?.size).toBeGreaterThan(MUCH)
    const file = await ask(server, 'GET', `/api/jobs/${id}/result`)
    expect(file.bytes.length).toBe(result?.size)
    expect(file.headers.get('content-disposition')).toContain(result?.file)
    expect((await ask(server, 'GET', `/api/jobs/${id}/result`)).status).toBe(404)
    await expect.poll(() => passing()).toEqual(['jobs.json'])
    const other = await serving(),
      put = await ask(other, 'POST', '/api/jobs/restore', file.bytes)
    expect([put.status, put.json.kind]).toEqual([202, 'restore'])
    await expect.poll(async () => (await ask(other, 'GET', `/api/jobs/${put.json.id}`)).json.state, { timeout: 30_000 }).toBe('done')
    const { result: kept } = (await ask(other, 'GET', `/api/jobs/${put.json.id}`)).json
    expect(kept.keptAs).toMatch(/^ampwright-before-[\dTZ-]+\.sqlite$/)
    expect((await ask(other, 'GET', `/api/conversions/${demo}`)).json.revision).toBe(2)
    await other.close()
  })
  it('cancelled in the middle leaves nothing; another that writes is refused meanwhile', async () => {
    const { id } = await begun('backup'),
      busy = await ask(server, 'POST', '/api/jobs/restore', Buffer.from('x'))
    expect([busy.status, busy.json]).toEqual([409, { refused: 'busy', message: expect.stringContaining('A backup is being made.') }])
    const cancelled = await ask(server, 'DELETE', `/api/jobs/${id}`)
    expect(cancelled.json).toMatchObject({ state: 'cancelled', says: expect.stringContaining('cancelled') })
    expect(passing()).toEqual(['jobs.json'])
    expect((await ask(server, 'GET', `/api/jobs/${id}/result`)).status).toBe(404)
  })
})

describe('a backup put back as a job', () => {
  it('that is none ends with why, and everything stays', async () => {
    const { status, json } = await ask(server, 'POST', '/api/jobs/restore', Buffer.from('rubbish '.repeat(1000)))
    expect(status).toBe(202)
    expect(await ended(json.id)).toMatchObject({ state: 'failed', says: expect.stringContaining('Nothing was changed.') })
    expect((await ask(server, 'GET', `/api/conversions/${demo}`)).json.revision).toBe(2)
    expect((await ask(server, 'POST', '/api/jobs/restore', { no: 'bytes' })).status).toBe(400)
  })
})

describe('everything looked through', () => {
  it('is said to be as it was kept', async () => {
    const job = await ended((await begun('check')).id)
    expect(job).toMatchObject({ state: 'done', says: expect.stringMatching(/each is as it was kept\.$/), result: { problems: [] } })
    expect(job.result?.contents).toBeGreaterThan(1)
    expect((await ask(server, 'GET', '/api/jobs')).json.map((j: ApiJob) => j.id)).toContain(job.id)
  })
})

describe('a job whose server ends', () => {
  it('is stopped cleanly: whoever listens hears of it, and so does the next start', async () => {
    const folder = emptyFolder(),
      first = await serving({ data: folder })
    await filled(first)
    const window = await listening(first),
      { id } = (await ask(first, 'POST', '/api/jobs', { kind: 'backup' })).json,
      closing = first.close()
    let last: ApiJob | undefined
    for (let event = ''; event !== 'end'; ) {
      const told = await window.next()
      event = told.event
      if (event === 'job') last = told.data
    }
    await closing
    expect(last).toMatchObject({ id, state: 'stopped' })
    expect(passing(folder)).toEqual(['jobs.json'])
    const second = await startServer({ data: folder, port: 0, samples: SAMPLES })
    expect((await ask(second, 'GET', `/api/jobs/${id}`)).json).toMatchObject({ state: 'stopped', says: expect.stringContaining('stopped') })
    await second.close()
  })
  it('killed in the middle leaves nothing half-made after the next start', { timeout: 120_000 }, async () => {
    const folder = emptyFolder(),
      first = await serving({ data: folder })
    await filled(first)
    await first.close()
    const child = spawn(
      process.execPath,
      ['--conditions', 'source', '--import', 'tsx', join(root, 'packages/cli/src/main.ts'), 'serve', '--data', folder, '--port', '0'],
      { cwd: root },
    )
    let said = ''
    child.stdout.on('data', part => (said += part))
    await expect.poll(() => said, { timeout: 60_000 }).toContain('Ctrl-C')
    const url = /http:\S+/.exec(said)?.[0] ?? '',
      answer = await fetch(`${url}api/jobs`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ kind: 'backup' }),
      }),
      { id } = (await answer.json()) as ApiJob
    child.kill('SIGKILL')
    await once(child, 'exit')
    const second = await serving({ data: folder })
    expect((await ask(second, 'GET', `/api/jobs/${id}`)).json).toMatchObject({
      state: 'stopped',
      says: expect.stringContaining('the server ended'),
    })
    expect(passing(folder)).toEqual(['jobs.json'])
    await second.close()
  })
})

describe('what is not as it should be', () => {
  it('is told until the next save makes up for it', async () => {
    const folder = emptyFolder(),
      at = await serving({ data: folder }),
      warning = async () => (await ask(at, 'GET', '/api/health')).json.warning
    rmSync(join(folder, 'conversions'), { recursive: true })
    writeFileSync(join(folder, 'conversions'), 'a file in the way')
    await ask(at, 'POST', '/api/conversions', { sample: 'wren' })
    expect(await warning()).toContain('could not be renewed')
    rmSync(join(folder, 'conversions'))
    await ask(at, 'POST', '/api/conversions', { sample: 'wren' })
    expect(await warning()).toBe(null)
    await at.close()
  })
})
