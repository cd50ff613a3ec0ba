import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { root } from '../../../tests/cars.ts'
import { type Running, startServer } from './start.ts'

const samples = join(root, 'samples')
let server: Running
const data = mkdtempSync(join(tmpdir(), 'ampwright-'))
const ask = async (method: string, path: string, body?: unknown, headers: Record<string, string> = {}) => {
  const isBytes = body instanceof Uint8Array
  const answer = await fetch(new URL(path, server.url), {
    method,
    headers: { ...(body === undefined || isBytes ? { 'x-ampwright': '1' } : { 'content-type': 'application/json' }), ...headers },
    ...(body === undefined ? {} : { body: isBytes ? (body as never) : JSON.stringify(body) }),
  })
  const bytes = Buffer.from(await answer.arrayBuffer()),
    isJson = answer.headers.get('content-type')?.includes('json')
  return { status: answer.status, headers: answer.headers, bytes, json: isJson ? JSON.parse(bytes.toString()) : undefined }
}
beforeAll(async () => {
  server = await startServer({ data, port: 0, samples })
})
afterAll(() => server.close())

describe('a server with a data folder of its own', () => {
  it('starts with the demo conversion, and copies it beside the database', async () => {
    const { json } = await ask('GET', '/api/conversions')
    expect(json).toMatchObject([{ name: 'Lapwing roadster', revision: 1, variant: null, deletedUntil: null }])
    expect(readFileSync(join(data, 'conversions/lapwing-roadster/lapwing-roadster.conversion.yaml'), 'utf8')).toBe(
      readFileSync(join(samples, 'lapwing.conversion.yaml'), 'utf8'),
    )
  })
  it('makes each sample, with the files it names', async () => {
    for (const sample of ['badger', 'otter', 'wren', 'lapwing']) {
      const made = await ask('POST', '/api/conversions', { sample })
      expect(made.json, sample).toMatchObject({ revision: 1 })
      expect(made.status).toBe(201)
    }
  })
  it('takes an edit, and refuses one made on what stands no more, with both values', async () => {
    const [{ id }] = (await ask('GET', '/api/conversions')).json
    const path = 'donor.wheelbase',
      was = '2310 ± 3 mm (measured, tape)'
    const first = await ask('POST', `/api/conversions/${id}/edits`, { edits: [{ path, was, now: '2312 mm' }], by: 'one' })
    expect(first.json.text).toContain('wheelbase: 2312 mm')
    const second = await ask('POST', `/api/conversions/${id}/edits`, { edits: [{ path, was, now: '2313 mm' }], by: 'two' })
    expect(second.status).toBe(409)
    expect(second.json).toMatchObject({ clashes: [{ path, yours: '2313 mm', theirs: '2312 mm', was }], revision: 2 })
    const bad = await ask('POST', `/api/conversions/${id}/edits`, { edits: [{ path, was: '2312 mm', now: '5 kg' }] })
    expect(bad.status).toBe(422)
    expect(bad.json.issues[0].path).toBe(path)
    const list = await ask('GET', `/api/conversions/${id}/revisions`)
    expect(list.json.map((r: { revision: number }) => r.revision)).toEqual([2, 1])
    const undone = await ask('POST', `/api/conversions/${id}/undo`, { revision: 2 })
    expect(undone.json.text).toContain(was)
  })
  it('gives a bundle, a backup and the description of itself', async () => {
    const [{ id }] = (await ask('GET', '/api/conversions')).json
    const bundle = await ask('GET', `/api/conversions/${id}/bundle`)
    expect(bundle.status).toBe(200)
    const back = await ask('POST', '/api/import?as=new', bundle.bytes)
    expect(back.json).toMatchObject({ as: 'new' })
    const backup = await ask('GET', '/api/backup')
    expect(backup.bytes.toString('latin1', 0, 15)).toBe('SQLite format 3')
    const restored = await ask('POST', '/api/restore-backup', backup.bytes)
    expect(restored.json.keptAs).toMatch(/^ampwright-before-/)
    const api = await ask('GET', '/api/openapi.json')
    expect(api.status).toBe(200)
    expect(Object.keys(api.json.paths).length).toBeGreaterThan(15)
    expect((await ask('GET', '/api/health')).json).toMatchObject({ ok: true, warning: null })
    expect((await ask('GET', '/')).status).toBe(503)
  })
})
