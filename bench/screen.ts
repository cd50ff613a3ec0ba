// In a real browser on the real server, as ratios to a trip of the C twin and to one bare headline assessment in that browser, all in one run: from key to
// repainted headline on the demo, and from moving the cursor to its repainted reading over a trip of more than a hundred thousand points.
import type { Page } from '@playwright/test'
import { field, openBench, settled } from '../tests/screen/browser.ts'
import { carOnALongTrip } from '../tests/screen/long-trip.ts'
import { cycleTrace, roadster } from '../tests/trip-plans.ts'
import { hasCompiler, twin } from './trip-twin.ts'

if (!hasCompiler()) {
  console.error('bench: gcc is missing; install gcc to measure against the C trip')
  process.exit(2)
}
/** Trips of the C twin. */
const LIMIT = 20
const TIMES = 60
/** Whoever comes to a page looks at it first; between two edits a breath is taken, and a finger goes from the last character to Enter [ms]. */
const LOOK = 1500
const PAUSE = 300
const TO_ENTER = 80
/**
 * How long it takes [ms] from an event until what it changes in `watched` stands on the screen: a frame is painted right after its callbacks have run, and
 * what is posted from one of them arrives then. A text and not a function: what makes TypeScript run here would put words of its own into it.
 */
const repainted = (page: Page, of: { readonly at: string; readonly watched: string; readonly event: string }): Promise<number> =>
  page.evaluate<number>(`new Promise((done, failed) => {
    const at = document.querySelector(${JSON.stringify(of.at)}),
      watched = document.querySelector(${JSON.stringify(of.watched)}),
      before = watched?.textContent
    if (at === null || watched === null) return failed(new Error('it is not there'))
    let began = 0
    new MutationObserver((_, watch) => {
      if (watched.textContent === before) return
      watch.disconnect()
      requestAnimationFrame(() => {
        const painted = new MessageChannel()
        painted.port1.onmessage = () => done(performance.now() - began)
        painted.port2.postMessage(0)
      })
    }).observe(watched, { subtree: true, characterData: true, childList: true })
    began = performance.now()
    at.dispatchEvent(${of.event})
  })`)
const p95 = (times: readonly number[]): number => times.toSorted((a, b) => a - b)[Math.ceil(0.95 * times.length) - 1] ?? Number.NaN

const c = twin(),
  plan = { ...roadster(cycleTrace('wltc-3b')), step: 0.1 }
/** One trip of the C twin [ms], the best of several: before the browser is at work, and after. */
const ofC = (): number => Math.min(...Array.from({ length: 3 }, () => (c.run(plan, 60)['seconds'] as number) * 1e3))
const before = ofC()
const bench = await openBench(),
  page = await bench.window()
await page.goto(`${bench.url}/c/${bench.demo}/drive`)
await settled(page)
await page.waitForTimeout(LOOK)
const PEAK = 'drive.units.main.motor.peak-torque',
  keys: number[] = []
for (let n = 0; n < TIMES; n++) {
  // Edits that move the headline, one after the other, back and forth.
  await page.waitForTimeout(PAUSE)
  await field(page, PEAK).fill(`${240 + (n % 2 ? 10 : 0)}.${n % 10} Nm (datasheet)`)
  await page.waitForTimeout(TO_ENTER)
  const enter = "new KeyboardEvent('keydown', { key: 'Enter', bubbles: true })"
  keys.push(await repainted(page, { at: `[data-path="${PEAK}"]`, watched: '.headline', event: enter }))
  await settled(page)
}
const bare = await page.evaluate<number>('window.ampwrightProbe.headline()')

await page.goto(`${bench.url}/c/${await carOnALongTrip(bench)}/pack`)
await settled(page)
await page.getByLabel('Which trip').selectOption('trip.course@far')
const plot = '[role="slider"][aria-label*="far"]'
await page.locator(`${plot} svg`).waitFor()
const moves: number[] = []
for (let n = 0; n < TIMES; n++) {
  const move = `new PointerEvent('pointermove', { bubbles: true, clientX: at.getBoundingClientRect().left + ${80 + n * 6} })`
  moves.push(await repainted(page, { at: plot, watched: `figure:has(${plot}) .readout`, event: move }))
}
await bench.close()

const trip = Math.min(before, ofC())
c.close()
const results = [
  { name: 'key to repainted headline, 95th percentile', ms: p95(keys), limit: LIMIT },
  { name: 'cursor to repainted reading over 100 000 points, 95th percentile', ms: p95(moves), limit: LIMIT },
].map(r => ({ ...r, trips: r.ms / trip, headlines: r.ms / bare }))
if (process.argv.includes('--json'))
  console.log(
    JSON.stringify(
      results.map(({ name, trips, limit }) => ({ name, ratio: trips, limit, holds: trips <= limit })),
      null,
      2,
    ),
  )
else {
  console.log(`One C trip takes ${trip.toFixed(2)} ms here, one bare headline ${bare.toFixed(1)} ms in this browser.\n`)
  for (const r of results)
    console.log(
      `${r.trips <= r.limit ? '●' : '▲'} ${r.name}: ${r.trips.toFixed(1)} C trips (at most ${r.limit}), ${r.headlines.toFixed(2)} bare headlines, ${r.ms.toFixed(1)} ms`,
    )
}
