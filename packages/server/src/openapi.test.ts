import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { root } from '../../../tests/cars.ts'
import { ask, serving } from '../../../tests/serving.ts'
import { description } from './app.ts'
import { published } from './openapi.ts'
import type { Running } from './start.ts'

type Schema = Record<string, unknown>
type Operation = {
  summary?: string
  parameters?: { name: string; in: string; schema: Schema }[]
  responses: Record<string, { content?: Record<string, { schema: Schema }> }>
  requestBody?: { content: Record<string, { schema: Schema }> }
}
type Document = {
  openapi: string
  info: object
  paths: Record<string, Record<string, Operation>>
  components: { schemas: Record<string, Schema> }
}

let server: Running, said: Document
const ajv = new Ajv2020({ strict: false, allErrors: true, formats: { base64: true } })
beforeAll(async () => {
  server = await serving()
  said = (await ask(server, 'GET', '/api/openapi.json')).json
  ajv.addSchema({ ...said, $id: 'api' })
})
afterAll(() => server.close())
const operations = () =>
  Object.entries(said.paths).flatMap(([path, ways]) => Object.entries(ways).map(([method, operation]) => ({ path, method, operation })))

describe('the description of the interface', () => {
  it('is of OpenAPI 3.1, and every operation says what it does and answers', () => {
    expect(said.openapi).toBe('3.1.0')
    expect(operations().length).toBeGreaterThan(20)
    for (const { path, method, operation } of operations()) {
      expect(operation.summary, `${method} ${path}`).toMatch(/^[A-Z]/)
      expect(
        Object.keys(operation.responses).some(code => /^2\d\d$/.test(code)),
        `${method} ${path}`,
      ).toBe(true)
      const named = [...path.matchAll(/\{(\w+)\}/g)].map(m => m[1])
      expect(operation.parameters?.filter(p => p.in === 'path').map(p => p.name) ?? []).toEqual(named)
    }
  })
  it('holds only schemas that can be used, and leads nowhere that is not there', () => {
    for (const [, name] of JSON.stringify(said).matchAll(/"#\/components\/schemas\/([^"]+)"/g))
      expect(said.components.schemas).toHaveProperty(name as string)
    for (const name of Object.keys(said.components.schemas))
      expect(() => ajv.compile({ $ref: `api#/components/schemas/${name}` }), name).not.toThrow()
  })
  it('holds for what is really answered', async () => {
    const [{ id }] = (await ask(server, 'GET', '/api/conversions')).json,
      edits = [{ path: 'brief.seats', was: '2', now: '1' }]
    const asked = [
      ['get', '/api/health', '/api/health'],
      ['get', '/api/samples', '/api/samples'],
      ['get', '/api/conversions', '/api/conversions'],
      ['post', '/api/conversions', '/api/conversions', { copyOf: id }],
      ['post', '/api/conversions', '/api/conversions', { text: 'a: [' }],
      ['get', '/api/conversions/{id}', `/api/conversions/${id}`],
      ['get', '/api/conversions/{id}', '/api/conversions/x'],
      ['post', '/api/conversions/{id}/edits', `/api/conversions/${id}/edits`, { edits }],
      ['post', '/api/conversions/{id}/edits', `/api/conversions/${id}/edits`, { edits: [{ ...edits[0], now: '4' }] }],
      ['post', '/api/conversions/{id}/undo', `/api/conversions/${id}/undo`, { revision: 2 }],
      ['get', '/api/conversions/{id}/revisions', `/api/conversions/${id}/revisions`],
      ['get', '/api/conversions/{id}/revisions/{n}', `/api/conversions/${id}/revisions/2`],
      ['get', '/api/conversions/{id}/revisions/{n}/changes', `/api/conversions/${id}/revisions/2/changes`],
      ['post', '/api/conversions/{id}/restore', `/api/conversions/${id}/restore`, { revision: 1 }],
      ['post', '/api/jobs', '/api/jobs', { kind: 'check' }],
      ['post', '/api/jobs', '/api/jobs', { kind: 'none' }],
      ['get', '/api/jobs', '/api/jobs'],
      ['get', '/api/jobs/{job}', '/api/jobs/0000000000000000'],
      ['delete', '/api/jobs/{job}', '/api/jobs/0000000000000000'],
      ['get', '/api/jobs/{job}/result', '/api/jobs/0000000000000000/result'],
      ['post', '/api/jobs/restore', '/api/jobs/restore', { no: 'bytes' }],
      ['post', '/api/import', '/api/import', { text: 'schema: 1\n' }],
      ['get', '/api/shelf', '/api/shelf'],
      ['post', '/api/shelf/edits', '/api/shelf/edits', { edits: [{ path: 'shelf.pump', was: null, now: { what: 'pump' } }] }],
      ['post', '/api/shelf/edits', '/api/shelf/edits', { edits: [{ path: 'shelf.pump', was: null, now: { what: 'other' } }] }],
      ['post', '/api/shelf/edits', '/api/shelf/edits', { edits: [{ path: 'shelf.pump.price', was: null, now: '3' }] }],
      ['post', '/api/shelf/reserve', '/api/shelf/reserve', { piece: 'pump', conversion: id }],
      ['post', '/api/shelf/reserve', '/api/shelf/reserve', { piece: 'dc-dc-2300', conversion: id }],
      ['post', '/api/shelf/undo', '/api/shelf/undo', { revision: 2 }],
      ['get', '/api/shelf/revisions', '/api/shelf/revisions'],
      ['delete', '/api/conversions/{id}', `/api/conversions/${id}`],
      ['post', '/api/conversions/{id}/undelete', `/api/conversions/${id}/undelete`],
    ] as const
    for (const [method, path, url, body] of asked) {
      const { status, json } = await ask(server, method.toUpperCase(), url, body),
        responses = said.paths[path]?.[method]?.responses ?? {},
        code = String(status) in responses ? String(status) : `${String(status)[0]}XX`
      expect(responses, `${method} ${url} → ${status}`).toHaveProperty(code)
      const pointer = ['paths', path, method, 'responses', code, 'content', 'application/json', 'schema'].map(key =>
          encodeURIComponent(key.replaceAll('~', '~0').replaceAll('/', '~1')),
        ),
        holds = ajv.compile({ $ref: `api#/${pointer.join('/')}` })
      expect(holds(json), `${method} ${url} → ${status}: ${JSON.stringify(holds.errors)}`).toBe(true)
    }
  })
  it('is the one in docs/openapi.json', async () => {
    const text = await description()
    expect(JSON.parse(text)).toEqual(published(said))
    expect(readFileSync(join(root, 'docs/openapi.json'), 'utf8') === text, 'docs/openapi.json is not up to date: run npm run docs').toBe(
      true,
    )
  })
})
