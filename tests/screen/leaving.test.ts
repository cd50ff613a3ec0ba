import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { startServer } from '@ampwright/server'
import type { Page } from '@playwright/test'
import { describe, expect, it } from 'vitest'
import { fileOf, root } from '../cars.ts'
import { benchOfFile } from './bench-of-file.ts'
import { field, settled } from './browser.ts'

const bench = benchOfFile()

const WHEELBASE = 'donor.wheelbase',
  LUGGAGE = 'brief.luggage',
  BUDGET = 'brief.budget'
const post = async (path: string, body: object): Promise<{ id: string; revision: number }> =>
  (await (
    await fetch(`${bench.url}${path}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })
  ).json()) as { id: string; revision: number }
const car = async (): Promise<{ id: string; first: string }> => {
  const { id } = await post('/api/conversions', { sample: 'lapwing' })
  return { id, first: readFileSync(fileOf('lapwing'), 'utf8') }
}
const open = async (page: Page, id: string, name: string): Promise<void> => {
  await page.goto(`${bench.url}/c/${id}/${name}`)
  await settled(page)
}
const holds = (id: string, text: string | RegExp) => expect.poll(async () => bench.text(id), { timeout: 20_000 }).toMatch(text)
const again = (page: Page, path: string) => page.locator(`.field:has([data-path="${path}"]) .again`).first()
const error = (page: Page, path: string) => page.locator(`.field:has([data-path="${path}"]) .error`).first()
const enter = async (page: Page, path: string, text: string): Promise<void> => {
  await field(page, path).fill(text)
  await field(page, path).press('Enter')
  await settled(page)
}
const undo = (page: Page) => page.getByRole('button', { name: 'Undo' })

describe('what was typed a moment ago', () => {
  it('is saved when the page is reloaded, and can be undone', async () => {
    const page = await bench.window(),
      { id, first } = await car()
    await open(page, id, 'donor')
    await field(page, WHEELBASE).fill('2315 mm')
    await page.reload()
    await settled(page)
    await holds(id, /wheelbase: 2315 mm/)
    await expect.poll(() => field(page, WHEELBASE).inputValue()).toBe('2315 mm')
    expect(await again(page, WHEELBASE).count()).toBe(0)
    await undo(page).click()
    await expect.poll(async () => bench.text(id), { timeout: 20_000 }).toBe(first)
  })
  it('is saved when the page is closed', async () => {
    const page = await bench.window(),
      { id } = await car()
    await open(page, id, 'donor')
    await field(page, WHEELBASE).fill('2316 mm')
    await page.close()
    await holds(id, /wheelbase: 2316 mm/)
  })
  it('goes out with what still waits for an answer', async () => {
    const page = await bench.window(),
      { id } = await car()
    await open(page, id, 'brief')
    let letGo = (): void => {}
    const held = new Promise<void>(go => {
      letGo = go
    })
    await page.route('**/edits', async route => {
      await held
      await route.continue().catch(() => undefined)
    })
    for (const [path, text] of [
      [LUGGAGE, '31 kg'],
      [BUDGET, '17100 €'],
    ] as const) {
      await field(page, path).fill(text)
      await field(page, path).press('Enter')
    }
    await field(page, 'brief.seats').fill('1')
    letGo()
    await page.reload()
    await settled(page)
    for (const text of [/luggage: 31 kg/, /budget: 17100 €/, /seats: 1/]) await holds(id, text)
  })
  it('stands in the field again after a reload where it cannot be read, with what is wrong, until it is put back', async () => {
    const page = await bench.window(),
      { id, first } = await car()
    await open(page, id, 'donor')
    await field(page, WHEELBASE).fill('2310 kg')
    await page.reload()
    await settled(page)
    expect(await field(page, WHEELBASE).inputValue()).toBe('2310 kg')
    expect(await again(page, WHEELBASE).innerText()).toContain('not saved yet')
    await error(page, WHEELBASE).waitFor()
    expect(await error(page, WHEELBASE).innerText()).toMatch(/kg/)
    expect(await bench.text(id)).toBe(first)
    await page.getByRole('button', { name: 'Put back Wheelbase to what is saved' }).click()
    await again(page, WHEELBASE).waitFor({ state: 'detached' })
    await page.reload()
    await settled(page)
    expect(await field(page, WHEELBASE).inputValue()).toMatch(/^2310 ± 3 mm/)
    expect(await again(page, WHEELBASE).count()).toBe(0)
    await field(page, WHEELBASE).fill('23')
    await page.reload()
    await settled(page)
    await field(page, WHEELBASE).fill('2317 mm')
    await field(page, WHEELBASE).press('Enter')
    await holds(id, /wheelbase: 2317 mm/)
    await again(page, WHEELBASE).waitFor({ state: 'detached' })
  })
  it('is shown beside what somebody else put there meanwhile', async () => {
    const page = await bench.window(),
      { id } = await car()
    await open(page, id, 'brief')
    await field(page, LUGGAGE).fill('33 kilos')
    await page.goto('about:blank')
    await post(`/api/conversions/${id}/edits`, { edits: [{ path: LUGGAGE, was: '40 kg', now: '35 kg' }] })
    await open(page, id, 'brief')
    const notice = page.locator('.note.bad', { hasText: /luggage/i })
    await notice.waitFor()
    expect(await notice.innerText()).toMatch(/Yours: 33 kilos; theirs: 35 kg/)
    await notice.getByRole('button', { name: 'Keep theirs' }).click()
    await page.reload()
    await settled(page)
    expect(await notice.count()).toBe(0)
    expect(await field(page, LUGGAGE).inputValue()).toBe('35 kg')
  })
  it('is sent again when a server that was away comes back', async () => {
    const data = mkdtempSync(join(tmpdir(), 'ampwright-leaving-')),
      start = (port: number) => startServer({ data, port, samples: join(root, 'samples'), web: join(root, 'packages/app/dist') })
    let server = await start(0)
    const url = `http://127.0.0.1:${server.port}`,
      [{ id }] = (await (await fetch(`${url}/api/conversions`)).json()) as [{ id: string }],
      text = async () => ((await (await fetch(`${url}/api/conversions/${id}`)).json()) as { text: string }).text
    const page = await bench.window()
    await page.goto(`${url}/c/${id}/brief`)
    await settled(page)
    await page.route('**/edits', route => route.abort())
    await field(page, LUGGAGE).fill('34 kg')
    await field(page, LUGGAGE).press('Enter')
    await page.locator('[data-saving="server away"]').waitFor()
    await server.close()
    await page.unroute('**/edits')
    server = await start(server.port)
    await expect.poll(text, { timeout: 30_000 }).toContain('luggage: 34 kg')
    await settled(page)
    expect(await field(page, LUGGAGE).inputValue()).toBe('34 kg')
    // The same with the page reloaded in between, and with half a word.
    await field(page, BUDGET).fill('17 thousand')
    await server.close()
    await page.locator('[data-saving="server away"]').waitFor({ timeout: 30_000 })
    server = await start(server.port)
    await page.locator('[data-saving="saved"]').waitFor({ timeout: 30_000 })
    await page.reload()
    await settled(page)
    expect(await field(page, BUDGET).inputValue()).toBe('17 thousand')
    expect(await text()).not.toContain('thousand')
    await server.close()
    rmSync(data, { recursive: true, force: true })
  })
})

describe('undo after a reload', () => {
  it('goes back to the very first text, byte for byte, and redo to the last', async () => {
    const page = await bench.window(),
      { id, first } = await car()
    await open(page, id, 'brief')
    await enter(page, LUGGAGE, '31 kg')
    await enter(page, BUDGET, '17200 €')
    await undo(page).click()
    await settled(page)
    await enter(page, BUDGET, '17300 €')
    const last = await bench.text(id)
    await page.reload()
    await settled(page)
    for (let n = 0; n < 2; n++) {
      await undo(page).click()
      await settled(page)
    }
    expect(await bench.text(id)).toBe(first)
    expect(await undo(page).isDisabled()).toBe(true)
    await page.reload()
    await settled(page)
    for (let n = 0; n < 2; n++) {
      await page.getByRole('button', { name: 'Redo' }).click()
      await settled(page)
    }
    expect(await bench.text(id)).toBe(last)
    expect(await page.getByRole('button', { name: 'Redo' }).isDisabled()).toBe(true)
    // A window of its own knows nothing of this one: it takes the steps from the revisions.
    const other = await bench.window()
    await open(other, id, 'brief')
    for (let n = 0; n < 2; n++) {
      await undo(other).click()
      await settled(other)
    }
    await expect.poll(async () => bench.text(id), { timeout: 20_000 }).toBe(first)
  })
  it('is refused with both values where somebody changed the same since, and goes on with what came before', async () => {
    const page = await bench.window(),
      { id } = await car()
    await open(page, id, 'brief')
    await enter(page, LUGGAGE, '31 kg')
    await enter(page, BUDGET, '17200 €')
    await page.goto('about:blank')
    await post(`/api/conversions/${id}/edits`, { edits: [{ path: BUDGET, was: '17200 €', now: '16000 €' }] })
    await open(page, id, 'brief')
    await undo(page).click()
    const notice = page.locator('.note.bad', { hasText: /budget/i })
    await notice.waitFor()
    expect(await notice.innerText()).toMatch(/theirs: 16000 €/)
    expect(await bench.text(id)).toContain('budget: 16000 €')
    await notice.getByRole('button', { name: 'Keep theirs' }).click()
    await undo(page).click()
    await holds(id, /luggage: 40 kg/)
    expect(await bench.text(id)).toContain('budget: 16000 €')
  })
  it('pressed twice at once takes two steps back', async () => {
    const page = await bench.window(),
      { id, first } = await car()
    await open(page, id, 'brief')
    await enter(page, LUGGAGE, '31 kg')
    await enter(page, BUDGET, '17200 €')
    await undo(page).dblclick()
    await expect.poll(async () => bench.text(id), { timeout: 20_000 }).toBe(first)
    await settled(page)
    expect(await undo(page).isDisabled()).toBe(true)
  })
  it('has nothing to complain about but what was refused and what was away', () => {
    expect(bench.complaints.filter(c => !/40[09]|422|ERR_|Failed to fetch/.test(c))).toEqual([])
  })
})
