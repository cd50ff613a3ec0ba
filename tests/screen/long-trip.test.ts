import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { beforeAll, describe, expect, it } from 'vitest'
import { benchOfFile } from './bench-of-file.ts'
import { settled } from './browser.ts'
import { carOnALongTrip } from './long-trip.ts'

const bench = benchOfFile()
let page: Page
beforeAll(async () => {
  const id = await carOnALongTrip(bench)
  page = await bench.window()
  await page.goto(`${bench.url}/c/${id}/pack`)
  await settled(page)
}, 120_000)

describe('a trip of more than a hundred thousand points', () => {
  it('is drawn with no more than the picture can show, read out by one cursor, and saved whole', async () => {
    await page.getByLabel('Which trip').selectOption('trip.course@far')
    const chart = page.locator('figure.chart', { has: page.getByRole('slider', { name: /far.*: cursor/ }) }),
      cursor = chart.getByRole('slider', { name: /: cursor/ })
    await chart.locator('svg').waitFor()
    expect((await chart.locator('svg').evaluate(svg => svg.outerHTML.length)) < 250_000).toBe(true)

    const read = (): Promise<string | null> => cursor.getAttribute('aria-valuetext')
    await cursor.focus()
    await cursor.press('ArrowRight')
    await expect.poll(read).toMatch(/speed.*charge/i)
    const first = await read()
    for (let n = 0; n < 30; n++) await cursor.press('Shift+ArrowRight')
    await expect.poll(read).not.toBe(first)

    const [saved] = await Promise.all([page.waitForEvent('download'), chart.getByRole('button', { name: 'CSV' }).click()])
    const rows = readFileSync(await saved.path(), 'utf8')
      .trimEnd()
      .split('\n')
    expect(rows.length).toBeGreaterThan(100_000)
    expect(bench.complaints).toEqual([])
  })
})
