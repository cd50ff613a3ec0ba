// A made scan of an engine bay of about a million triangles on the page Fit, in a real browser on the real server: brought in, laid into the car by three points,
// measured and packed, with the time of each and the most memory the page took. As found, without a limit. node --conditions source --import tsx bench/scan-on-screen.ts [triangles]
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { writeStl } from '@ampwright/exchange'
import { engineBay } from '../tests/scans/engine-bay.ts'
import { openBench, settled } from '../tests/screen/browser.ts'

const folder = mkdtempSync(join(tmpdir(), 'ampwright-scan-')),
  { scan, picks, inside } = engineBay({ seed: 1, triangles: Number(process.argv[2] ?? 1_000_000) }),
  file = join(folder, 'bay.stl')
writeFileSync(file, writeStl(scan))
const bench = await openBench()
/** The most memory any page of the browser has held so far, its workers with it [MB]. */
function mostMemory(): number {
  const pages = readdirSync('/proc').flatMap(pid => {
    try {
      if (!readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes('--type=renderer')) return []
      return [Number(/VmHWM:\s*(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1024]
    } catch {
      // It has ended, or is none.
      return []
    }
  })
  return Math.round(Math.max(0, ...pages))
}
const mm = (metres: number): string => `${(1000 * metres).toFixed(1)} mm`
try {
  const page = await bench.window()
  await page.goto(`${bench.url}/c/${bench.demo}/fit`)
  await settled(page)
  await page.waitForTimeout(3000)
  const before = mostMemory(),
    scans = page.getByRole('region', { name: 'Scans' }),
    took: Record<string, number> = {}
  let began = performance.now()
  const told = (what: string): void => {
    took[what] = Math.round(performance.now() - began) / 1000
    began = performance.now()
  }
  await scans.locator('input[type=file]').setInputFiles(file)
  await scans.getByText(/It is only laid out to be looked at/).waitFor({ timeout: 300_000 })
  told('brought in and drawn')
  const edits = [
    ...picks.flatMap(({ onScan, inCar }, i) =>
      [...onScan.map((v, k) => [`on-scan-${'xyz'[k]}`, String(v)]), ...inCar.map((v, k) => ['xyz'[k], mm(v)])].map(([field, now]) => ({
        path: ['fit', 'scans', 'bay', 'points', `p${i}`, field as string],
        now,
        was: null,
      })),
    ),
    ...inside.map((v, k) => ({ path: ['fit', 'scans', 'bay', 'inside', 'xyz'[k] as string], now: mm(v), was: null })),
    { path: ['fit', 'scans', 'bay', 'resolution'], now: '15 mm', was: null },
    { path: ['fit', 'scans', 'bay', 'space'], now: 'engine-bay', was: null },
  ]
  // What a hand picks and types, as another window would make it.
  const made = await fetch(`${bench.url}/api/conversions/${bench.demo}/edits`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ edits, what: 'points picked' }),
  })
  if (!made.ok) throw new Error(await made.text())
  await scans.getByText(/It lies by \d points, .*left over/).waitFor({ timeout: 300_000 })
  told('laid into the car and measured')
  await scans.getByRole('button', { name: 'Pack modules into its free space' }).click()
  await scans.getByRole('button', { name: 'Stop, and keep what is found' }).waitFor()
  await scans.getByRole('button', { name: 'Pack modules into its free space' }).waitFor({ timeout: 200_000 })
  told('packed')
  const says = (await scans.innerText()).split('\n').filter(line => /modules|left over|litres|\bl\b/.test(line))
  console.log(
    JSON.stringify({ triangles: scan.triangles.length / 3, seconds: took, megabytes: { before, most: mostMemory() }, says }, null, 2),
  )
} finally {
  await bench.close()
  rmSync(folder, { recursive: true, force: true })
}
