import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Running, startServer } from '@ampwright/server'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { root } from '../cars.ts'
import { benchOfFile } from './bench-of-file.ts'
import { field, settled } from './browser.ts'

/** A server that can be stopped and started at the same address, which the bench does not do. */
const data = mkdtempSync(join(tmpdir(), 'ampwright-away-'))
const bench = benchOfFile()
let server: Running
const start = (port: number): Promise<Running> =>
  startServer({ data, port, samples: join(root, 'samples'), web: join(root, 'packages/app/dist') })
beforeAll(async () => {
  server = await start(0)
}, 120_000)
afterAll(async () => {
  await server?.close().catch(() => undefined)
  rmSync(data, { recursive: true, force: true })
}, 60_000)

describe('with the server away', () => {
  it('the page says so, shows the car as it was last seen, edits nothing, and goes on when it is back', async () => {
    const url = `http://127.0.0.1:${server.port}`,
      [first] = (await (await fetch(`${url}/api/conversions`)).json()) as { id: string }[]
    const page = await bench.window(),
      at = `${url}/c/${first?.id}/drive`
    await page.goto(at)
    await settled(page)
    // Once more, so that the pages come from what the browser keeps.
    await page.waitForFunction(() => navigator.serviceWorker.ready.then(() => navigator.serviceWorker.controller !== null || true))
    await page.reload()
    await settled(page)
    // Somebody else's change is part of what was last seen.
    const power = field(page, 'drive.regeneration.power'),
      before = await power.inputValue()
    await fetch(`${url}/api/conversions/${first?.id}/edits`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ edits: [{ path: 'drive.regeneration.power', was: '40 kW', now: '41 kW' }] }),
    })
    await expect.poll(() => power.inputValue(), { timeout: 20_000 }).not.toBe(before)
    await settled(page)
    await server.close()
    await page.locator('[data-saving="server away"]').waitFor({ timeout: 30_000 })
    expect(await field(page, 'drive.units.main.gear').isDisabled()).toBe(true)
    await page.reload()
    await page.locator('[data-saving="server away"]').waitFor({ timeout: 30_000 })
    await page.locator('.headline li b').first().waitFor({ timeout: 60_000 })
    expect(await page.locator('.headline').innerText()).toMatch(/11\.39.s/)
    expect(await power.inputValue()).toBe('41 kW')
    expect(await field(page, 'drive.units.main.gear').isDisabled()).toBe(true)
    server = await start(Number(new URL(url).port))
    await page.locator('[data-saving="saved"]').waitFor({ timeout: 60_000 })
    await field(page, 'drive.units.main.gear').selectOption('third')
    await settled(page)
    expect(((await (await fetch(`${url}/api/conversions/${first?.id}`)).json()) as { text: string }).text).toContain('gear: third')
  })
  it('a restart in the middle of typing loses nothing that was committed, and what was not yet stays in the field', async () => {
    const url = `http://127.0.0.1:${server.port}`,
      [first] = (await (await fetch(`${url}/api/conversions`)).json()) as { id: string }[]
    const page = await bench.window()
    await page.goto(`${url}/c/${first?.id}/brief`)
    await settled(page)
    const budget = field(page, 'brief.budget'),
      luggage = field(page, 'brief.luggage')
    await budget.fill('17000 €')
    await budget.press('Enter')
    await settled(page)
    await luggage.pressSequentially('35')
    await server.close()
    await page.locator('[data-saving="server away"]').waitFor({ timeout: 30_000 })
    server = await start(Number(new URL(url).port))
    await page.locator('[data-saving="saved"]').waitFor({ timeout: 60_000 })
    const text = ((await (await fetch(`${url}/api/conversions/${first?.id}`)).json()) as { text: string }).text
    expect(text).toContain('budget: 17000 €')
    expect(text).toContain('luggage: 40 kg')
  })
  it('the start page shows the cars seen here, and offers nothing that needs the server', async () => {
    const url = `http://127.0.0.1:${server.port}`,
      page = await bench.window(),
      duplicate = page.getByRole('button', { name: /^Duplicate/ })
    await page.goto(`${url}/c/${((await (await fetch(`${url}/api/conversions`)).json()) as { id: string }[])[0]?.id}/brief`)
    await settled(page)
    await page.getByRole('link', { name: 'Ampwright' }).click()
    await duplicate.waitFor()
    await server.close()
    await page.getByText(/^The server is away/).waitFor({ timeout: 30_000 })
    expect(await page.locator('[data-conversion]').innerText()).toContain('Lapwing roadster')
    expect(await page.locator('main').getByRole('button').count()).toBe(0)
    expect(await page.locator('main a[download], main input').count()).toBe(0)
    server = await start(Number(new URL(url).port))
    await duplicate.waitFor({ timeout: 60_000 })
  })
})
