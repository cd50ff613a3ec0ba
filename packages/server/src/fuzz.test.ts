import { openStore } from '@ampwright/store'
import fc from 'fast-check'
import type { FastifyInstance } from 'fastify'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { SAMPLES } from '../../../tests/serving.ts'
import { emptyFolder } from '../../../tests/stores.ts'
import { appOf } from './app.ts'
import { judge, judgeWorkshop } from './judge.ts'
import { samplesIn } from './samples.ts'

const folder = emptyFolder(),
  faults: string[] = []
let app: FastifyInstance, id: string
beforeAll(async () => {
  const store = openStore({ folder, judge, judgeWorkshop, now: () => 0 }),
    made = store.make({ text: 'schema: 1\ncar: Wren\nbrief:\n  luggage: 40 kg\n' })
  id = made.ok ? made.id : ''
  store.beginWorkshop('schema: 1\nshelf:\n  pump: { what: pump, price: 40 € }\n', '')
  app = await appOf({
    store,
    samples: samplesIn(SAMPLES),
    passing: folder,
    now: () => 0,
    port: () => 4747,
    warning: () => null,
    log: { write: line => void (JSON.parse(line).level >= 50 && faults.push(line)) },
  })
})
afterAll(() => app.close())

const word = fc.oneof(
  fc.string({ maxLength: 30 }),
  fc.string({ unit: 'binary', maxLength: 20 }),
  fc.constantFrom(
    '',
    '..',
    '../../etc/passwd',
    '%00',
    '%',
    '\u0000',
    '__proto__',
    'constructor',
    '1',
    '0',
    '-1',
    '1e9',
    'NaN',
    '😀',
    '\ud800',
    'brief.luggage',
    '40 kg',
    'x'.repeat(3000),
  ),
)
/** Parts of an address: what belongs there, or anything. */
const part = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      'conversions',
      'edits',
      'revisions',
      'files',
      'restore',
      'undo',
      'undelete',
      'export',
      'bundle',
      'changes',
      'import',
      'samples',
      'health',
      'openapi.json',
      '1',
      '2',
      'a.csv',
      'restore-backup',
      'jobs',
      'result',
      'shelf',
      'reserve',
    ),
  },
  { weight: 3, arbitrary: fc.constant('ID') },
  { weight: 1, arbitrary: word.map(w => encodeURIComponent(w.replace(/[\ud800-\udfff]/g, ''))) },
  { weight: 1, arbitrary: word },
)
const path = fc.oneof(
  fc.array(part, { maxLength: 5 }).map(parts => `/api/${parts.join('/')}`),
  fc
    .constantFrom(
      'conversions',
      'conversions/ID',
      'conversions/ID/edits',
      'conversions/ID/undo',
      'conversions/ID/restore',
      'conversions/ID/files/a.csv',
      'conversions/ID/revisions/1/changes',
      'import',
      'restore-backup',
      'jobs',
      'jobs/restore',
      'jobs/ID',
      'jobs/ID/result',
      'shelf',
      'shelf/revisions',
      'shelf/edits',
      'shelf/reserve',
      'shelf/undo',
    )
    .map(p => `/api/${p}`),
  word.map(w => `/${w}`),
)
const query = fc.oneof(
  fc.constant(''),
  fc.constantFrom('?revision=1', '?since=0', '?as=new', '?into=ID&from=1', '?by=x'),
  word.map(w => `?${w}`),
  fc.tuple(fc.constantFrom('revision', 'since', 'of', 'into', 'from', 'as', 'by'), word).map(([k, v]) => `?${k}=${v}`),
)
const value = fc.oneof(
  word,
  fc.constant(null),
  fc.integer(),
  fc.array(word, { maxLength: 3 }),
  fc.dictionary(word, word, { maxKeys: 3 }),
  fc.constantFrom('40 kg', '41 kg', 'ID', 'check', 'backup', 'wren', 'pump', '40 €', 'schema: 1\n', 'brief: ['),
)
const body = fc.oneof(
  fc.json({ maxDepth: 3 }),
  fc.jsonValue({ maxDepth: 8 }).map(v => JSON.stringify(v)),
  word,
  fc
    .array(
      fc.record(
        {
          path: fc.oneof(word, fc.constantFrom('brief.luggage', 'shelf.pump', 'shelf.pump.price', 'shelf.pump.reserved'), fc.array(word)),
          now: value,
          was: value,
        },
        { requiredKeys: [] },
      ),
      { maxLength: 4 },
    )
    .map(edits => JSON.stringify({ edits })),
  fc
    .dictionary(
      fc.constantFrom(
        'text',
        'sample',
        'copyOf',
        'variantOf',
        'named',
        'revision',
        'start',
        'files',
        'name',
        'into',
        'from',
        'as',
        'by',
        'edits',
        'seen',
        'kind',
        'piece',
        'conversion',
      ),
      value,
      { maxKeys: 4 },
    )
    .map(v => JSON.stringify(v)),
)
const headers = fc.record(
  {
    'content-type': fc.constantFrom(
      'application/json',
      'application/json; charset=utf-8',
      'application/octet-stream',
      'application/zip',
      'text/plain',
      'application/xml',
      'x',
      '',
    ),
    'x-ampwright': fc.constant('1'),
    accept: fc.constantFrom('*/*', 'text/html', 'x'),
    range: fc.constant('bytes=0-1'),
  },
  { requiredKeys: [] },
)

describe('any request', () => {
  it('is answered without a fault, in the shape of an answer, and tells no place of this machine', () =>
    fc.assert(
      fc.asyncProperty(
        fc.constantFrom('GET', 'POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS', 'HEAD'),
        path,
        query,
        headers,
        fc.option(body, { nil: undefined }),
        async (method, at, asked, given, payload) => {
          const url = `${at}${asked}`.replaceAll('ID', id)
          // What the tool that asks cannot send is sent over a real port in another test.
          if (!URL.canParse(url, 'http://localhost')) return
          // An answer that goes on is tested over a real port.
          if (/live|backup/i.test(decodeURIComponent(url.replace(/%(?![0-9a-f]{2})/gi, '%25').replace(/%[89a-f][0-9a-f]/gi, ''))))
            if (!url.includes('restore-backup')) return
          const answer = await app.inject({
            method: method as 'GET',
            url,
            headers: { ...given, host: 'localhost:4747' },
            ...(payload === undefined ? {} : { payload: payload.replaceAll('ID', id) }),
          })
          expect(answer.statusCode === 503 || answer.statusCode < 500, `${method} ${url} → ${answer.statusCode} ${answer.body}`).toBe(true)
          expect(answer.body).not.toContain(folder)
          expect(answer.body).not.toMatch(/node_modules|\.ts:\d|\bat .*:\d+:\d+/)
          if (answer.statusCode >= 400 && answer.statusCode !== 503 && method !== 'HEAD')
            expect(answer.json()).toMatchObject({ refused: expect.any(String), message: expect.any(String) })
        },
      ),
      { numRuns: runs(20_000) },
    ))
  it('left nothing of note in the log, and what was there is as it was', async () => {
    expect(faults).toEqual([])
    const revisions = await app.inject({ url: `/api/conversions/${id}/revisions`, headers: { host: 'localhost:4747' } })
    expect(revisions.json().at(-1)).toMatchObject({ revision: 1, kind: 'made' })
  })
})
