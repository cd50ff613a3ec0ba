import type { Page, Request } from '@playwright/test'
import { describe, expect, it } from 'vitest'
import { benchOfFile } from './bench-of-file.ts'
import { settled } from './browser.ts'

const bench = benchOfFile()

/** What a new window and its threads fetch of the built app at an address: bytes as they come over the wire, by name, each file once. */
async function fetched(address: string, there: (page: Page) => Promise<void>): Promise<ReadonlyMap<string, number>> {
  const page = await bench.window(),
    requests: Request[] = []
  page.context().on('requestfinished', r => void requests.push(r))
  await page.goto(`${bench.url}${address}`, { waitUntil: 'networkidle' })
  await there(page)
  const sizes = new Map<string, number>()
  for (const r of requests) {
    const { pathname } = new URL(r.url())
    if (pathname.startsWith('/api/')) continue
    const { responseBodySize, responseHeadersSize } = await r.sizes()
    sizes.set(pathname, Math.max(sizes.get(pathname) ?? 0, responseBodySize + responseHeadersSize))
  }
  return sizes
}
const sum = (sizes: ReadonlyMap<string, number>): number => [...sizes.values()].reduce((a, b) => a + b, 0)
const engine = (sizes: ReadonlyMap<string, number>): boolean => [...sizes.keys()].some(n => n.includes('desk.worker'))

describe('what a browser fetches', () => {
  it('is at most 300 kB for the first page, fonts and all; the engine is not in it', async () => {
    const sizes = await fetched('/', page => page.locator('[data-conversion]').first().waitFor())
    expect(engine(sizes)).toBe(false)
    expect(sum(sizes)).toBeGreaterThan(50_000)
    expect(sum(sizes)).toBeLessThan(300_000)
  })
  it('is the engine with a car, packed; the handbook, the guided start and the pages beside the stages wait until they are opened', async () => {
    const sizes = await fetched(`/c/${bench.demo}/brief`, settled)
    expect(engine(sizes)).toBe(true)
    expect(sum(sizes)).toBeLessThan(640_000)
    expect([...sizes.keys()].filter(n => /guided|\/book-|beside|letter|parts-page|modules|handbook-(page|alone)/.test(n))).toEqual([])
  })
})
