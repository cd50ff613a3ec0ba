// How long the 3D view takes for a frame, and a scan of two million triangles to be there, in a real browser on the real server: as found, without a limit,
// for it hangs on the graphics of the machine. node --conditions source --import tsx bench/scan-frames.ts [triangles]
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TriangleMesh } from '@ampwright/engine'
import { writeStl } from '@ampwright/exchange'
import { openBench, settled } from '../tests/screen/browser.ts'
import { engineBay } from '../tests/scans/engine-bay.ts'

const triangles = Number(process.argv[2] ?? 1_960_000),
  folder = mkdtempSync(join(tmpdir(), 'ampwright-scan-'))
/** Frames of which the middle one counts. */
const FRAMES = 3
const frame = `window.ampwrightFrameTime(${FRAMES}, false)`,
  movingFrame = `window.ampwrightFrameTime(${FRAMES}, true)`
/** Each triangle split into four: making a quarter and splitting it is quicker than making them all. */
function split({ positions, triangles }: TriangleMesh): TriangleMesh {
  const places = [...Array(positions.length / 3).keys()].map(
      n => [positions[3 * n], positions[3 * n + 1], positions[3 * n + 2]] as number[],
    ),
    between = new Map<number, number>(),
    out: number[] = []
  const middle = (a: number, b: number): number => {
    const key = Math.min(a, b) * 2 ** 26 + Math.max(a, b)
    let at = between.get(key)
    if (at === undefined) {
      between.set(key, (at = places.length))
      places.push((places[a] as number[]).map((x, i) => (x + ((places[b] as number[])[i] as number)) / 2))
    }
    return at
  }
  for (let k = 0; k < triangles.length; k += 3) {
    const [a, b, c] = [triangles[k], triangles[k + 1], triangles[k + 2]] as [number, number, number],
      [d, e, f] = [middle(a, b), middle(b, c), middle(c, a)]
    out.push(a, d, f, d, b, e, f, e, c, d, e, f)
  }
  return { positions: Float64Array.from(places.flat()), triangles: Uint32Array.from(out) }
}
const made = split(engineBay({ seed: 1, triangles: triangles / 4 }).scan),
  file = join(folder, 'bay.stl')
writeFileSync(file, writeStl(made))
const bench = await openBench()
try {
  const page = await bench.window()
  await page.goto(`${bench.url}/c/${bench.demo}/fit`)
  await settled(page)
  await page.waitForFunction(() => 'ampwrightFrameTime' in window)
  await page.waitForTimeout(2000)
  const bare = await page.evaluate<number>(frame),
    scans = page.getByRole('region', { name: 'Scans' }),
    began = performance.now()
  await scans.locator('input[type=file]').setInputFiles(file)
  await scans.getByText(/It is only laid out to be looked at/).waitFor({ timeout: 300_000 })
  await page.waitForTimeout(3000)
  const there = (performance.now() - began - 3000) / 1000,
    opaque = await page.evaluate<number>(frame),
    moving = await page.evaluate<number>(movingFrame)
  await page.getByLabel('see through scans').check()
  await page.waitForTimeout(1000)
  const thin = await page.evaluate<number>(frame),
    thinMoving = await page.evaluate<number>(movingFrame)
  const renderer = await page.evaluate<string>(
    "(() => { const gl = document.createElement('canvas').getContext('webgl2'), x = gl.getExtension('WEBGL_debug_renderer_info'); return x ? gl.getParameter(x.UNMASKED_RENDERER_WEBGL) : 'unknown' })()",
  )
  console.log(
    JSON.stringify(
      {
        triangles: made.triangles.length / 3,
        seconds: there,
        frame: { bare, opaque, moving, seeThrough: thin, seeThroughMoving: thinMoving },
        renderer,
      },
      null,
      2,
    ),
  )
} finally {
  await bench.close()
  rmSync(folder, { recursive: true, force: true })
}
