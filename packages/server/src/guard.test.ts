import { request } from 'node:http'
import { connect } from 'node:net'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { ask, serving } from '../../../tests/serving.ts'
import { HEADERS, isOwnHost, objection } from './guard.ts'
import type { Running } from './start.ts'

let server: Running
beforeAll(async () => {
  server = await serving()
})
afterAll(() => server.close())

/** A request with headers a browser's script could not set. */
const raw = (
  headers: Record<string, string>,
  { method = 'GET', path = '/api/conversions', host = '127.0.0.1', body = '' } = {},
): Promise<number> =>
  new Promise((resolve, reject) => {
    const asked = request({ host, port: server.port, path, method, headers }, answer => {
      answer.resume()
      resolve(answer.statusCode ?? 0)
    })
    asked.on('error', reject)
    asked.end(body)
  })

describe('every request', () => {
  it('is answered under the names of this machine, and under no other', async () => {
    const { port } = server
    for (const host of [`localhost:${port}`, `127.0.0.1:${port}`, `[::1]:${port}`, `LOCALHOST:${port}`])
      expect(await raw({ host }), host).toBe(200)
    for (const host of [
      'localhost',
      `localhost:${port + 1}`,
      `example.org:${port}`,
      `127.0.0.1.example.org:${port}`,
      `localhost.:${port}`,
      `0.0.0.0:${port}`,
      `localhost:${port}@x`,
      `192.168.0.7:${port}`,
    ])
      expect(await raw({ host }), host).toBe(403)
    for (const host of [`example.org:${port}`, 'x']) expect(await raw({ host }, { path: '/' }), host).toBe(403)
  })
  it('of a page of another site is refused, to read or to change', async () => {
    const host = `localhost:${server.port}`
    expect(await raw({ host, origin: `http://${host}` })).toBe(200)
    for (const origin of [
      'null',
      'http://example.org',
      `https://${host}`,
      `http://localhost:${server.port + 1}`,
      `http://${host}.example.org`,
      '',
    ])
      expect(await raw({ host, origin }), origin).toBe(403)
    expect(await raw({ host, 'sec-fetch-site': 'cross-site' })).toBe(403)
    expect(await raw({ host, 'sec-fetch-site': 'same-site' })).toBe(403)
    expect(await raw({ host, 'sec-fetch-site': 'cross-site' }, { path: '/' })).toBe(503)
  })
  it('that changes anything needs what a form of another site cannot send', async () => {
    const host = `localhost:${server.port}`,
      body = '{"sample":"wren"}'
    for (const type of [
      'text/plain',
      'application/x-www-form-urlencoded',
      'multipart/form-data; boundary=x',
      'text/plain; application/json',
    ])
      expect(await raw({ host, 'content-type': type }, { method: 'POST', body }), type).toBe(403)
    expect(await raw({ host }, { method: 'POST', path: '/api/restore-backup' })).toBe(403)
    expect(await raw({ host, 'content-type': 'application/json' }, { method: 'POST', body })).toBe(201)
  })
  it.each(['/api/health', '/api/none', '/', '/x.js', '/api/conversions/0', '/%'])(
    'gets the headers that keep it in its place: %s',
    async path => {
      const { headers } = await ask(server, 'GET', path)
      for (const [name, value] of Object.entries(HEADERS)) expect(headers.get(name), name).toBe(value)
      expect(headers.get('content-security-policy')).not.toMatch(/unsafe|\*|https?:/)
      expect(headers.get('access-control-allow-origin')).toBe(null)
    },
  )
  it('that asks for leave to come from elsewhere gets none', async () => {
    const host = `localhost:${server.port}`
    expect(await raw({ host, origin: 'http://example.org', 'access-control-request-method': 'PUT' }, { method: 'OPTIONS' })).toBe(403)
  })
})

describe('the check of names', () => {
  it('lets no name pass that a browser would look up elsewhere', () =>
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.domain(),
          fc.ipV4(),
          fc.tuple(fc.constantFrom('localhost', '127.0.0.1', '[::1]'), fc.string()).map(x => x.join('')),
        ),
        host => {
          if (!isOwnHost(host, 4747)) return
          expect(['localhost', '127.0.0.1', '[::1]']).toContain(new URL(`http://${host}`).hostname)
          expect(new URL(`http://${host}`).port).toBe('4747')
        },
      ),
      { numRuns: runs(10_000) },
    ))
  it('knows the port that is not said', () => {
    expect([isOwnHost('localhost', 80), isOwnHost('localhost', 4747), isOwnHost(undefined, 80)]).toEqual([true, false, false])
  })
  it('lets a page be opened from elsewhere, but nothing behind it', () => {
    const from = (url: string) =>
      objection({ method: 'GET', url, headers: { host: 'localhost:4747', 'sec-fetch-site': 'cross-site' } }, 4747)
    expect([from('/'), from('/drive'), from('/apix')]).toEqual([undefined, undefined, undefined])
    for (const url of ['/api', '/api/conversions', '/API/conversions', '/api?x']) expect(from(url), url).toBeTypeOf('string')
  })
})

/** The first line of what a bare connection is answered to whatever it sends. */
const bare = (text: string): Promise<string> =>
  new Promise(resolve => {
    const socket = connect(server.port, '127.0.0.1', () => socket.end(text))
    let said = ''
    socket.on('data', part => (said += part))
    socket.on('error', () => resolve(said))
    socket.on('close', () => resolve(said.split('\r\n')[0] ?? ''))
  })

describe('the server', () => {
  it('answers what no browser sends with a refusal, and goes on', async () => {
    const { port } = server
    for (const line of [
      'GET /\\ HTTP/1.1',
      'GET // HTTP/1.1',
      'GET //example.org/api/conversions HTTP/1.1',
      'GET http://example.org/api/conversions HTTP/1.1',
      'GET /%zz HTTP/1.1',
      'GET * HTTP/1.1',
      'BREW / HTTP/1.1',
      'rubbish',
      'GET /api/conversions HTTP/9.9',
      `GET /${'x'.repeat(20_000)} HTTP/1.1`,
    ]) {
      const status = Number((await bare(`${line}\r\nHost: localhost:${port}\r\nConnection: close\r\n\r\n`)).split(' ')[1])
      expect(status, line).toBeGreaterThanOrEqual(400)
      expect(status === 503 || status < 500, `${line} ${status}`).toBe(true)
    }
    expect(await raw({ host: `localhost:${port}` })).toBe(200)
  })
  it('listens on this machine alone', async () => {
    const { networkInterfaces } = await import('node:os')
    const others = Object.values(networkInterfaces())
      .flatMap(list => list ?? [])
      .filter(i => !i.internal && i.family === 'IPv4')
    for (const { address } of others)
      await expect(raw({ host: `localhost:${server.port}` }, { host: address })).rejects.toThrow(/ECONNREFUSED|EHOSTUNREACH/)
    expect(server.url).toBe(`http://localhost:${server.port}/`)
  })
})
