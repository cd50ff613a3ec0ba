import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { startServer } from '@ampwright/server'
import { type Browser, type BrowserContext, chromium, type Page } from '@playwright/test'
import { root } from '../cars.ts'

const PLACES = [process.env['AMPWRIGHT_CHROMIUM'], '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome']
const QUIET = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** A real browser on the real server with a data folder of its own. What the pages complain about is kept. */
export type Bench = {
  readonly url: string
  readonly browser: Browser
  readonly complaints: string[]
  /** The id of the demo conversion. */
  readonly demo: string
  window(size?: { width: number; height: number }): Promise<Page>
  text(id: string): Promise<string>
  close(): Promise<void>
}
export async function openBench(): Promise<Bench> {
  const path = PLACES.find(p => p !== undefined && existsSync(p)),
    web = join(root, 'packages/app/dist')
  if (path === undefined) throw new Error('no Chromium: install it (on Debian: apt-get install chromium), or name it in AMPWRIGHT_CHROMIUM')
  if (!existsSync(join(web, 'index.html'))) throw new Error('the screen is not built: node scripts/bootstrap.mjs builds it')
  const data = mkdtempSync(join(tmpdir(), 'ampwright-data-')),
    server = await startServer({ data, port: 0, samples: join(root, 'samples'), web }),
    url = `http://127.0.0.1:${server.port}`,
    browser = await chromium.launch({ executablePath: path, args: QUIET })
  const complaints: string[] = [],
    contexts: BrowserContext[] = []
  const read = async <T>(at: string): Promise<T> => (await (await fetch(`${url}${at}`)).json()) as T
  const [demo] = await read<{ id: string }[]>('/api/conversions')
  return {
    url,
    browser,
    complaints,
    demo: demo?.id ?? '',
    async window(size = { width: 1280, height: 900 }) {
      const context = await browser.newContext({ viewport: size })
      contexts.push(context)
      const page = await context.newPage()
      page.on('console', m => void (m.type() === 'error' && complaints.push(`${page.url()}: ${m.text()}`)))
      page.on('pageerror', e => void complaints.push(`${page.url()}: ${e.message}`))
      return page
    },
    text: async id => (await read<{ text: string }>(`/api/conversions/${id}`)).text,
    async close() {
      await Promise.all(contexts.map(c => c.close()))
      await browser.close()
      await server.close()
      rmSync(data, { recursive: true, force: true })
    },
  }
}

/** Waits until everything typed is saved and everything shown is worked out anew. */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(
    () =>
      (window as { ampwrightProbe?: { changing(): boolean } }).ampwrightProbe?.changing() !== true &&
      document.querySelector('[data-saving="saved"]') !== null &&
      document.querySelector('.headline li b') !== null &&
      document.querySelector('.headline')?.getAttribute('aria-busy') === 'false',
    undefined,
    { timeout: 60_000 },
  )
}
/** Turns to another page of the car a window has open, by its link: the engine stays as it is. */
export async function turnTo(page: Page, slug: string): Promise<void> {
  const before = await page.locator('h1').first().textContent()
  await page.locator(`nav.job a[href$="/${slug}"]`).click()
  await page.waitForFunction(
    was =>
      ![undefined, was].includes(document.querySelector('h1')?.textContent) && document.querySelector('main [aria-busy="true"]') === null,
    before,
  )
  await settled(page)
}
export const field = (page: Page, path: string) => page.locator(`[data-path="${path}"]`).first()
