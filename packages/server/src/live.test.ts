import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { listening } from '../../../tests/listening.ts'
import { ask, serving } from '../../../tests/serving.ts'
import type { Running } from './start.ts'

let server: Running
beforeAll(async () => {
  server = await serving()
})
afterAll(() => server.close())

describe('changes as they come', () => {
  it('begin with where every conversion stands, and reach every window', async () => {
    const [one, two] = [await listening(server), await listening(server)]
    expect(one.answer.headers.get('content-type')).toBe('text/event-stream')
    const [{ id }] = (await ask(server, 'GET', '/api/conversions')).json
    for (const window of [one, two]) expect(await window.next()).toEqual({ event: 'heads', data: [{ id, revision: 1 }] })
    await ask(server, 'POST', `/api/conversions/${id}/edits`, { edits: [{ path: 'brief.seats', was: '2', now: '1' }] })
    for (const window of [one, two]) expect(await window.next()).toEqual({ event: 'change', data: { what: 'revision', id, revision: 2 } })
    await ask(server, 'POST', `/api/conversions/${id}/edits`, { edits: [{ path: 'brief.seats', was: '2', now: '3' }] })
    const made = await ask(server, 'POST', '/api/conversions', { copyOf: id })
    expect(await one.next()).toEqual({ event: 'change', data: { what: 'made', id: made.json.id, revision: 1 } })
    await ask(server, 'POST', '/api/shelf/reserve', { piece: 'motor-saloon', conversion: id })
    expect(await one.next()).toEqual({ event: 'change', data: { what: 'workshop', id: 'workshop', revision: 2 } })
    one.stop()
    await ask(server, 'DELETE', `/api/conversions/${id}`)
    for (const what of ['made', 'workshop']) expect((await two.next()).data.what).toBe(what)
    expect(await two.next()).toEqual({ event: 'change', data: { what: 'deleted', id, revision: 2 } })
    two.stop()
  })
  it('end when the server ends, which waits for no window', async () => {
    const other = await serving(),
      answer = await fetch(new URL('/api/live', other.url)),
      reader = (answer.body as ReadableStream<Uint8Array>).getReader()
    await reader.read()
    await other.close()
    for (;;) {
      const { done } = await reader.read().catch(() => ({ done: true }))
      if (done) break
    }
    await expect(fetch(new URL('/api/health', other.url))).rejects.toThrow('fetch failed')
  })
})
