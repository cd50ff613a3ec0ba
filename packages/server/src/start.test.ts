import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { CARS, textOf } from '../../../tests/cars.ts'
import { ask, SAMPLES, serving } from '../../../tests/serving.ts'
import { clock, emptyFolder } from '../../../tests/stores.ts'
import { type Running, startServer } from './start.ts'

const WHEELBASE = '2310 ± 3 mm (measured, tape)'
const data = emptyFolder(),
  time = clock()
let server: Running
beforeAll(async () => {
  server = await serving({ data, now: time.now })
})
afterAll(() => server.close())
const made = async (body: object): Promise<string> => {
  const { status, json } = await ask(server, 'POST', '/api/conversions', body)
  expect(status, JSON.stringify(json)).toBe(201)
  return json.id
}
const edit = (id: string, ...edits: object[]) => ask(server, 'POST', `/api/conversions/${id}/edits`, { edits })

describe('a server with a data folder of its own', () => {
  it('starts with the demo conversion, and copies it beside the database', async () => {
    const { json } = await ask(server, 'GET', '/api/conversions')
    expect(json).toMatchObject([
      { name: 'Lapwing roadster', revision: 1, variant: null, deletedUntil: null, made: '2026-11-02T00:00:00.000Z' },
    ])
    expect(readFileSync(join(data, 'conversions/lapwing-roadster/lapwing-roadster.conversion.yaml'), 'utf8')).toBe(textOf('lapwing'))
  })
  it('offers the four samples and makes each, with the files it names', async () => {
    const { json } = await ask(server, 'GET', '/api/samples')
    expect(json.map((s: { sample: string }) => s.sample).sort()).toEqual([...CARS].sort())
    expect(json.filter((s: { demo: boolean }) => s.demo)).toHaveLength(1)
    for (const { sample, files } of json) {
      const { json: there } = await ask(server, 'GET', `/api/conversions/${await made({ sample })}`)
      expect(there.text).toBe(textOf(sample))
      expect(there.files.map((f: { name: string }) => f.name)).toEqual(files)
    }
  })
  it('refuses an edit made on what stands no more, with both values, and joins one at another place', async () => {
    const id = await made({ sample: 'lapwing' }),
      path = 'donor.wheelbase'
    expect((await edit(id, { path, was: WHEELBASE, now: '2312 mm' })).json).toMatchObject({ id, revision: 2 })
    const clash = await edit(id, { path, was: WHEELBASE, now: '2313 mm' })
    expect([clash.status, clash.json.refused, clash.json.revision]).toEqual([409, 'clash', 2])
    expect(clash.json.clashes).toEqual([{ path, yours: '2313 mm', theirs: '2312 mm', was: WHEELBASE }])
    expect(clash.json.text).toContain('wheelbase: 2312 mm')
    expect((await edit(id, { path: ['brief', 'seats'], was: '2', now: '1' })).json.revision).toBe(3)
    const undone = await ask(server, 'POST', `/api/conversions/${id}/undo`, { revision: 2 })
    expect(undone.json.text).toContain(WHEELBASE)
    const list = (await ask(server, 'GET', `/api/conversions/${id}/revisions`)).json
    expect(list.map((r: { revision: number }) => r.revision)).toEqual([4, 3, 2, 1])
    const changes = (await ask(server, 'GET', `/api/conversions/${id}/revisions/4/changes?since=1`)).json
    expect(changes).toEqual({ edits: [{ path: 'brief.seats', was: '2', now: '1' }], files: [] })
  })
  it('keeps out what cannot be read and parts nobody knows, with place, found and accepted', async () => {
    const id = await made({ sample: 'lapwing' })
    const bad = await edit(id, { path: 'donor.wheelbase', was: WHEELBASE, now: '5 kg' })
    expect([bad.status, bad.json.refused]).toEqual([422, 'unreadable'])
    expect(bad.json.issues[0]).toMatchObject({
      path: 'donor.wheelbase',
      found: expect.stringContaining('kg'),
      accepted: expect.stringContaining('m'),
    })
    const part = await edit(id, { path: 'drive.units.main.inverter.part', was: null, now: 'no-such-inverter@1' })
    expect([part.status, part.json.issues?.[0]?.what]).toEqual([422, 'not in the catalogue'])
    expect((await ask(server, 'GET', `/api/conversions/${id}`)).json).toMatchObject({ revision: 1, text: textOf('lapwing') })
  })
  it('starts a new car from what is known of it, and names a text', async () => {
    const id = await made({ start: { name: 'My car', engine: 'longitudinal front' } })
    expect((await ask(server, 'GET', `/api/conversions/${id}`)).json.name).toBe('My car')
    const named = await made({ text: textOf('wren'), name: 'Second wren' })
    expect((await ask(server, 'GET', `/api/conversions/${named}`)).json.name).toBe('Second wren')
    expect((await ask(server, 'POST', '/api/conversions', { text: 'a: [', name: 'x' })).status).toBe(422)
    for (const body of [{}, { text: '', sample: 'wren' }, { sample: 'none' }, { variantOf: id }, { sample: 'wren', more: 1 }])
      expect((await ask(server, 'POST', '/api/conversions', body)).status, JSON.stringify(body)).toBeOneOf([400, 404])
  })
  it('makes variants and duplicates, deletes and brings back, and takes out for good after thirty days', async () => {
    const id = await made({ sample: 'wren' }),
      variant = await made({ variantOf: id, named: 'light', revision: 1 }),
      copy = await made({ copyOf: id })
    expect((await ask(server, 'GET', `/api/conversions/${variant}`)).json.variant).toEqual({ of: id, named: 'light', revision: 1 })
    expect((await ask(server, 'GET', `/api/conversions/${copy}`)).json.variant).toBe(null)
    expect((await ask(server, 'DELETE', `/api/conversions/${id}`)).json.deletedUntil).toBe('2026-12-02T00:00:00.000Z')
    expect((await edit(id, { path: 'car', was: 'Wren hatchback', now: 'x' })).status).toBe(410)
    expect((await ask(server, 'POST', `/api/conversions/${id}/undelete`)).json.deletedUntil).toBe(null)
    expect((await edit(id, { path: 'car', was: 'Wren hatchback', now: 'x' })).status).toBe(200)
    expect((await ask(server, 'POST', `/api/conversions/${id}/restore`, { revision: 1 })).json).toMatchObject({
      revision: 3,
      text: textOf('wren'),
    })
  })
  it('keeps files beside a conversion, and keeps out one its text cannot use', async () => {
    const id = await made({ sample: 'badger' }),
      at = `/api/conversions/${id}/files/${encodeURIComponent('attachments/valley-road.gpx')}`
    const track = await ask(server, 'GET', at)
    expect(track.bytes.equals(readFileSync(join(SAMPLES, 'attachments/valley-road.gpx')))).toBe(true)
    expect(track.headers.get('content-disposition')).toContain('attachment')
    expect((await ask(server, 'PUT', at, Buffer.from('no track'))).json.issues[0].path).toBe('trips.named.valley-road.track')
    expect((await ask(server, 'DELETE', at)).status).toBe(422)
    expect((await ask(server, 'PUT', `/api/conversions/${id}/files/log.csv`, Buffer.from('a,b\n'))).json.revision).toBe(2)
    expect((await ask(server, 'GET', `/api/conversions/${id}/files/log.csv?revision=2`)).bytes.toString()).toBe('a,b\n')
    expect((await ask(server, 'GET', `/api/conversions/${id}/files/log.csv?revision=1`)).status).toBe(404)
    expect((await ask(server, 'PUT', `/api/conversions/${id}/files/a.json`, { no: 'bytes' })).json).toMatchObject({ refused: 'content' })
    for (const name of ['..%2F..%2Fx', '%2Fetc%2Fpasswd', 'a%00b', 'x.conversion.yaml', 'con'])
      expect((await ask(server, 'PUT', `/api/conversions/${id}/files/${name}`, Buffer.from('x'))).status, name).toBe(400)
    expect((await ask(server, 'PUT', `/api/conversions/${id}/files/big`, Buffer.alloc(100_000_001))).status).toBe(413)
  })
  it('merges an exported text when it comes back, or makes a variant of it', async () => {
    const id = await made({ sample: 'lapwing' }),
      out = await ask(server, 'GET', `/api/conversions/${id}/export`)
    expect(out.headers.get('content-type')).toContain('yaml')
    const text = out.bytes.toString().replace(WHEELBASE, '2311 mm')
    await edit(id, { path: 'brief.seats', was: '2', now: '1' })
    expect((await ask(server, 'POST', '/api/import', { text })).json).toMatchObject({ as: 'merged', id, revision: 3 })
    const clash = await ask(server, 'POST', '/api/import', { text: out.bytes.toString().replace(WHEELBASE, '2300 mm'), named: 'from Ben' })
    expect(clash.json).toMatchObject({
      as: 'variant',
      clashes: [{ path: 'donor.wheelbase', yours: '2300 mm', theirs: '2311 mm', was: WHEELBASE }],
    })
  })
  it('gives a bundle and takes it back, text and files byte for byte', async () => {
    const id = await made({ sample: 'otter' }),
      bundle = await ask(server, 'GET', `/api/conversions/${id}/bundle`),
      back = await ask(server, 'POST', '/api/import?as=new', bundle.bytes)
    expect(back.json).toMatchObject({ as: 'new', text: textOf('otter') })
    const [one, two] = [
      (await ask(server, 'GET', `/api/conversions/${id}`)).json,
      (await ask(server, 'GET', `/api/conversions/${back.json.id}`)).json,
    ]
    expect(two.files).toEqual(one.files)
    expect((await ask(server, 'POST', '/api/import', bundle.bytes)).json).toMatchObject({ as: 'unchanged', id })
    expect((await ask(server, 'POST', '/api/import', Buffer.from('no zip'))).json).toMatchObject({ refused: 'content' })
  })
  it('gives a backup while it is used and takes one back, here or elsewhere', async () => {
    const id = await made({ sample: 'otter' }),
      [backup] = await Promise.all([ask(server, 'GET', '/api/backup'), edit(id, { path: 'car', was: 'Otter estate', now: 'Otter two' })])
    const other = await serving()
    expect((await ask(other, 'POST', '/api/restore-backup', backup.bytes)).json.keptAs).toMatch(/^ampwright-before-[\dTZ-]+\.sqlite$/)
    expect((await ask(other, 'GET', `/api/conversions/${id}`)).json.files).toHaveLength(2)
    expect((await ask(other, 'POST', '/api/restore-backup', Buffer.from('rubbish'))).json).toMatchObject({ refused: 'content' })
    expect((await ask(other, 'GET', `/api/conversions/${id}`)).status).toBe(200)
    await other.close()
  })
  it('says how it is', async () => {
    expect((await ask(server, 'GET', '/api/health')).json).toMatchObject({ ok: true, warning: null, node: process.versions.node })
  })
})

describe('the app', () => {
  it('is said not to be built where it is not', async () => {
    const { status, bytes } = await ask(server, 'GET', '/conversion/1')
    expect([status, bytes.toString()]).toEqual([503, expect.stringContaining('npm run build')])
  })
  it('is served with its first page for every address of its own; marked files are kept for ever', async () => {
    const web = mkdtempSync(join(tmpdir(), 'ampwright-'))
    mkdirSync(join(web, 'assets'))
    writeFileSync(join(web, 'index.html'), '<title>app</title>')
    writeFileSync(join(web, 'assets/main-Ab12Cd34.js'), '1')
    writeFileSync(join(web, 'icon.svg'), '<svg/>')
    const withApp = await serving({ web })
    for (const path of ['/', '/conversion/1/drive', '/?x=1']) {
      const page = await ask(withApp, 'GET', path)
      expect([page.status, page.bytes.toString(), page.headers.get('cache-control')], path).toEqual([200, '<title>app</title>', 'no-cache'])
      expect(page.headers.get('content-security-policy')).toMatch(/default-src 'self'/)
    }
    expect((await ask(withApp, 'GET', '/assets/main-Ab12Cd34.js')).headers.get('cache-control')).toContain('immutable')
    expect((await ask(withApp, 'GET', '/icon.svg')).headers.get('cache-control')).toBe('no-cache')
    for (const path of ['/assets/none.js', '/api/none', '/api', '/..%2f..%2fpackage.json', '/%2e%2e/package.json'])
      expect((await ask(withApp, 'GET', path)).status, path).toBeOneOf([403, 404])
    await withApp.close()
  })
})

describe('a server that cannot start', () => {
  it('says that the port is taken', async () => {
    const other = createServer().listen(0, '127.0.0.1')
    await new Promise(resolve => other.once('listening', resolve))
    const { port } = other.address() as { port: number }
    await expect(serving({ port })).rejects.toThrow(`Port ${port} is taken by another program. Choose another with --port N.`)
    other.close()
  })
  it('says so too where only the other name of this machine is taken', async () => {
    const other = createServer(),
      free = createServer().listen(0, '127.0.0.1')
    await new Promise(resolve => free.once('listening', resolve))
    const { port } = free.address() as { port: number }
    await new Promise(resolve => free.close(resolve))
    const hasOther = await new Promise(resolve => {
      other.once('error', () => resolve(false))
      other.listen(port, '::1', () => resolve(true))
    })
    if (hasOther) await expect(serving({ port })).rejects.toThrow(`Port ${port} is taken`)
    else await (await serving({ port })).close()
    other.close()
  })
  it('says that the data folder is in use, and lets the next one in after it ends', async () => {
    const folder = emptyFolder(),
      first = await serving({ data: folder })
    await expect(serving({ data: folder })).rejects.toThrow('is in use by another Ampwright')
    await first.close()
    await (await startServer({ data: folder, port: 0, samples: SAMPLES })).close()
  })
})
