import { randomBytes } from 'node:crypto'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Running, startServer } from '@ampwright/server'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { root } from '../cars.ts'
import { benchOfFile } from './bench-of-file.ts'

/** A server that can be stopped, with so much in it that a backup goes in many steps. */
const data = mkdtempSync(join(tmpdir(), 'ampwright-jobs-')),
  MUCH = 60_000_000,
  /** How long it may take on a slow machine that has other work too [ms]. */
  LONG = 90_000
const bench = benchOfFile()
let server: Running, url: string
const start = (port: number): Promise<Running> =>
  startServer({ data, port, samples: join(root, 'samples'), web: join(root, 'packages/app/dist') })
beforeAll(async () => {
  server = await start(0)
  url = `http://127.0.0.1:${server.port}`
  const [{ id }] = (await (await fetch(`${url}/api/conversions`)).json()) as [{ id: string }],
    put = await fetch(`${url}/api/conversions/${id}/files/log.csv`, {
      method: 'PUT',
      headers: { 'x-ampwright': '1', 'content-type': 'application/octet-stream' },
      body: new Uint8Array(randomBytes(MUCH)),
    })
  if (!put.ok) throw new Error(await put.text())
}, 180_000)
afterAll(async () => {
  await server?.close().catch(() => undefined)
  rmSync(data, { recursive: true, force: true })
}, 60_000)

const opened = async (size?: { width: number; height: number }): Promise<Page> => {
  const page = await bench.window(size)
  await page.goto(`${url}/`)
  await page.getByRole('button', { name: 'Everything as one file', exact: true }).waitFor()
  return page
}
/** Notes every value a bar of progress has; `then` is done as soon as there is one. */
const watched = (page: Page, then: 'look' | 'cancel'): Promise<void> =>
  page.evaluate(what => {
    const values: number[] = []
    Object.assign(window, { values })
    new MutationObserver(() => {
      const bar = document.querySelector('progress')
      if (bar === null) return
      if (values.at(-1) !== bar.value) values.push(bar.value)
      if (what === 'cancel') document.querySelector<HTMLButtonElement>('.job-now button:enabled')?.click()
    }).observe(document.body, { subtree: true, childList: true, attributes: true })
  }, then)
const values = (page: Page): Promise<number[]> => page.evaluate(() => (window as unknown as { values: number[] }).values)

describe('long work on the start page', () => {
  it('shows a backup growing, and saves it when it is made', async () => {
    const page = await opened()
    await watched(page, 'look')
    const [download] = await Promise.all([
      page.waitForEvent('download', { timeout: LONG }),
      page.getByRole('button', { name: 'Everything as one file', exact: true }).click(),
    ])
    expect(readFileSync(await download.path()).length).toBeGreaterThan(MUCH)
    await page.getByText(/^The backup is made\. It has 6\d\.\d MB\./).waitFor({ timeout: LONG })
    const seen = await values(page)
    expect(seen.length).toBeGreaterThan(3)
    expect(seen).toEqual(seen.toSorted((a, b) => a - b))
    expect(await page.getByRole('link', { name: /^Save / }).count()).toBe(0)
    await page.getByRole('button', { name: 'Put away: Everything as one file' }).click()
    expect(await page.getByText(/^The backup is made/).count()).toBe(0)
  })
  it('can be cancelled, and says so; nothing is left of it', async () => {
    const page = await opened()
    await watched(page, 'cancel')
    await page.getByRole('button', { name: 'Everything as one file', exact: true }).click()
    await page.getByText(/^The backup is not made: it was cancelled\. Nothing was changed\./).waitFor({ timeout: LONG })
    expect(readdirSync(join(data, 'passing'))).toEqual(['jobs.json'])
    // It would go on cancelling whatever begins.
    await page.close()
  })
  it('looks everything through and says what it found, in every window that is open', async () => {
    const [page, other] = [await opened(), await opened({ width: 360, height: 740 })]
    await watched(other, 'look')
    await page.getByRole('button', { name: 'Look everything through' }).click()
    await page.getByText(/contents of 6\d\.\d MB are looked through: each is as it was kept\./).waitFor({ timeout: LONG })
    await other.getByText(/each is as it was kept\./).waitFor({ timeout: LONG })
    expect(await other.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
  })
  it('stopped with the server is said to have been, and begins anew when the server is back', async () => {
    const page = await opened()
    const clicked = page.getByRole('button', { name: 'Everything as one file', exact: true }).click()
    // The server says sooner than the page that it has begun.
    for (let jobs: { state: string }[] = []; jobs[0]?.state !== 'running'; )
      jobs = (await (await fetch(`${url}/api/jobs`)).json()) as { state: string }[]
    await server.close()
    await clicked
    await page.getByText(/^The backup is not made: the server was stopped on the way\./).waitFor({ timeout: LONG })
    await page.getByText(/^The server does not answer/).waitFor({ timeout: 60_000 })
    server = await start(server.port)
    await page.getByRole('button', { name: 'Everything as one file', exact: true }).waitFor({ timeout: 60_000 })
    expect(await page.getByText(/the server was stopped on the way/).count()).toBe(1)
    const [download] = await Promise.all([
      page.waitForEvent('download', { timeout: LONG }),
      page.getByRole('button', { name: 'Everything as one file', exact: true }).click(),
    ])
    expect(readFileSync(await download.path()).length).toBeGreaterThan(MUCH)
  })
})
