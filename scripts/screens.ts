// Takes the pictures of the guide from the running workbench: every stage of the demo, on a desk and on a phone, light and dark. Names behind `--` take only those.
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { openBench, settled } from '../tests/screen/browser.ts'

const folder = join(new URL('..', import.meta.url).pathname, 'docs/guide')
mkdirSync(folder, { recursive: true })
const bench = await openBench()
/** Stages are shown on a desk and on a phone, light and dark; what stands beside them on a desk in the light and on a phone in the dark. */
const STAGES = ['brief', 'donor', 'drive', 'pack', 'fit', 'high-voltage', 'brakes-steering', 'findings']
const BESIDE = ['survey', 'letter', 'parts', 'modules', 'coast-down', 'files', 'revisions', 'handbook']
const ALONE: Readonly<Record<string, string>> = { start: '/', new: '/new', shelf: '/shelf' }
const ONLY = process.argv.slice(2)
const SIZES = { desk: { width: 1280, height: 860 }, phone: { width: 360, height: 740 } } as const
for (const [size, viewport] of Object.entries(SIZES))
  for (const theme of ['light', 'dark'] as const) {
    const page = await bench.window(viewport)
    await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' })
    const both = (size === 'desk') === (theme === 'light')
    for (const name of [...STAGES, ...(both ? [...BESIDE, ...Object.keys(ALONE)] : [])]) {
      if (ONLY.length && !ONLY.includes(name)) continue
      const alone = ALONE[name]
      await page.goto(`${bench.url}${alone ?? `/c/${bench.demo}/${name}`}`)
      if (alone === undefined) await settled(page)
      // Figures of a stage and its drawings come after the findings, once it is known how sure they are.
      await page.waitForTimeout(STAGES.includes(name) ? 6000 : 800)
      await page.waitForFunction(() => !document.body.innerText.includes('Drawing …'), undefined, { timeout: 60_000 })
      await page.screenshot({ path: join(folder, `${name}-${size}-${theme}.png`) })
    }
    await page.context().close()
  }
console.log(bench.complaints.length ? bench.complaints.join('\n') : 'every page drawn, nothing to complain about')
await bench.close()
