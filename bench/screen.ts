// From key to repainted headline, in a real browser on the demo, as a ratio to one bare headline assessment in the same browser and run.
// A frame is painted right after its callbacks have run: what is posted from one of them arrives when it stands on the screen.
import { field, openBench, settled } from '../tests/screen/browser.ts'

const bench = await openBench(),
  page = await bench.window()
await page.goto(`${bench.url}/c/${bench.demo}/drive`)
await settled(page)
/** Edits that move the headline, one after the other, back and forth. */
const KEYS = 40
const times: number[] = []
for (let n = 0; n < KEYS; n++) {
  const input = field(page, 'drive.units.main.motor.peak-torque'),
    value = `${240 + (n % 2 ? 10 : 0)}.${n % 10} Nm (datasheet)`
  await input.fill(value)
  // A text and not a function: what makes TypeScript run here would put words of its own into it.
  const took = await page.evaluate<number>(`new Promise((done, failed) => {
    const field = document.querySelector('[data-path="drive.units.main.motor.peak-torque"]'),
      headline = document.querySelector('.headline'),
      before = headline.textContent
    if (field === null) return failed(new Error('the field is not there'))
    let began = 0
    new MutationObserver((_, watch) => {
      if (headline.textContent === before) return
      watch.disconnect()
      requestAnimationFrame(() => {
        const painted = new MessageChannel()
        painted.port1.onmessage = () => done(performance.now() - began)
        painted.port2.postMessage(0)
      })
    }).observe(headline, { subtree: true, characterData: true, childList: true })
    began = performance.now()
    field.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }))
  })`)
  times.push(took)
  await settled(page)
}
const bare = await page.evaluate<number>('window.ampwrightProbe()')
await bench.close()
const p95 = times.toSorted((a, b) => a - b)[Math.ceil(0.95 * times.length) - 1] ?? Number.NaN
const results = [
  {
    name: 'key to repainted headline, 95th percentile, over a bare headline in the browser',
    ratio: p95 / bare,
    p95: `${p95.toFixed(1)} ms`,
    bare: `${bare.toFixed(1)} ms`,
  },
]
if (process.argv.includes('--json'))
  console.log(
    JSON.stringify(
      results.map(({ name, ratio }) => ({ name, ratio })),
      null,
      2,
    ),
  )
else for (const r of results) console.log(`${r.ratio.toFixed(2).padStart(6)}  ${r.name} (${r.p95} over ${r.bare})`)
