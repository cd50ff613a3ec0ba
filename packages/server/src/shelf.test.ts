import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ask, SAMPLES, serving } from '../../../tests/serving.ts'
import { clock, emptyFolder } from '../../../tests/stores.ts'
import type { Running } from './start.ts'

const data = emptyFolder(),
  time = clock()
let server: Running, lapwing: string
beforeAll(async () => {
  server = await serving({ data, now: time.now })
  lapwing = (await ask(server, 'GET', '/api/conversions')).json[0].id
})
afterAll(() => server.close())

const shelf = async (): Promise<any> => (await ask(server, 'GET', '/api/shelf')).json
const piece = async (key: string): Promise<any> => (await shelf()).pieces.find((p: { key: string }) => p.key === key)
const edit = (...edits: object[]) => ask(server, 'POST', '/api/shelf/edits', { edits })
const reserve = (key: string, conversion: string) => ask(server, 'POST', '/api/shelf/reserve', { piece: key, conversion })

describe('the shelf over the interface', () => {
  it('starts with that of the demo workshop, what is kept for the demo car bound to its conversion', async () => {
    const { revision, name, text, pieces, notes, classes } = await shelf()
    expect([revision, name, notes]).toEqual([1, 'Ferry Lane Electrics', []])
    expect(text).toBe(
      readFileSync(join(SAMPLES, 'ferry-lane.workshop.yaml'), 'utf8').replace(
        'car: Lapwing roadster',
        `car: Lapwing roadster, conversion: ${lapwing}`,
      ),
    )
    expect(pieces).toHaveLength(8)
    expect(classes.find((c: { class: string }) => c.class === 'charger')).toMatchObject({ count: 2 })
    expect((await piece('modules-saloon')).reserved).toEqual({ car: 'Lapwing roadster', id: lapwing, missing: false })
    expect(readFileSync(join(data, 'conversions/own.workshop.yaml'), 'utf8')).toBe(text)
  })
  it('says of a car that is not there that it is missing, and finds it when it comes', async () => {
    expect((await piece('dc-dc-2300')).reserved).toEqual({ car: 'Wren hatchback', missing: true })
    const wren = (await ask(server, 'POST', '/api/conversions', { sample: 'wren' })).json.id
    expect((await piece('dc-dc-2300')).reserved).toEqual({ car: 'Wren hatchback', id: wren, missing: false })
    await ask(server, 'DELETE', `/api/conversions/${wren}`)
    expect((await piece('dc-dc-2300')).reserved).toEqual({ car: 'Wren hatchback', missing: true })
  })
  it('takes a piece, changes and gives it away, and refuses what stands no more with both values', async () => {
    const added = await edit({ path: 'shelf.heater', was: null, now: { part: 'air-heater-3000w@1', price: '95 €' } })
    expect([added.status, added.json.revision]).toEqual([200, 2])
    expect(await piece('heater')).toMatchObject({ class: 'air-heater', price: expect.stringMatching(/^95/), lapsed: false })
    const clash = await edit({ path: 'shelf.heater.price', was: '90 €', now: '80 €' })
    expect([clash.status, clash.json.clashes]).toEqual([409, [{ path: 'shelf.heater.price', yours: '80 €', theirs: '95 €', was: '90 €' }]])
    await edit({ path: 'shelf.heater', was: { part: 'air-heater-3000w@1', price: '95 €' }, now: null })
    expect(await piece('heater')).toBeUndefined()
    expect((await ask(server, 'POST', '/api/shelf/undo', { revision: 3 })).status).toBe(200)
    expect((await piece('heater')).priceTyped).toBe('95 €')
    expect((await ask(server, 'GET', '/api/shelf/revisions')).json.map((r: { revision: number }) => r.revision)).toEqual([4, 3, 2, 1])
  })
  it('keeps out what cannot be read, and records the catalogue does not have', async () => {
    const money = await edit({ path: 'shelf.motor-saloon.price', was: '1350 €', now: '1350 kg' })
    expect([money.status, money.json.message]).toEqual([422, 'Nothing was changed: the workshop file could not be read after it.'])
    expect(money.json.issues[0]).toMatchObject({ path: 'shelf.motor-saloon.price', accepted: expect.stringContaining('€') })
    const part = await edit({ path: 'shelf.motor-saloon.part', was: 'motor-pm-100kw@1', now: 'motor-pm-101kw@1' })
    expect([part.status, part.json.issues[0]]).toEqual([
      422,
      expect.objectContaining({ what: 'not in the catalogue', nearest: 'motor-pm-100kw@1' }),
    ])
    const nameless = await edit({ path: 'shelf.thing', was: null, now: { serial: '3' } })
    expect(nameless.json.issues[0]).toMatchObject({ path: 'shelf.thing', what: 'nothing says what this piece is' })
  })
  it('keeps a piece for one car, and refuses another by the name of the first', async () => {
    const otter = (await ask(server, 'POST', '/api/conversions', { sample: 'otter' })).json.id
    expect((await reserve('motor-saloon', lapwing)).status).toBe(200)
    const refused = await reserve('motor-saloon', otter)
    expect([refused.status, refused.json]).toEqual([
      409,
      {
        refused: 'reserved',
        message:
          '«motor-saloon» is reserved for Lapwing roadster. Nothing was changed; free it on the shelf first, or choose another piece.',
        piece: 'motor-saloon',
        car: 'Lapwing roadster',
      },
    ])
    expect((await reserve('dc-dc-2300', otter)).json.message).toContain('Wren hatchback, a car that is not here')
    expect((await reserve('nothing', otter)).status).toBe(404)
    expect((await reserve('motor-saloon', '0'.repeat(16))).status).toBe(404)
    await ask(server, 'DELETE', `/api/conversions/${otter}`)
    expect((await reserve('charger-6600', otter)).status).toBe(410)
  })
  it('says the day after its last day that a quote has lapsed', async () => {
    expect((await piece('charger-offer')).lapsed).toBe(false)
    time.turn(60)
    expect((await piece('charger-offer')).lapsed).toBe(true)
  })
})
