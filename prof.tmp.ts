import { field, openBench, settled } from './tests/screen/browser.ts'
const bench = await openBench(), page = await bench.window()
await page.goto(`${bench.url}/c/${bench.demo}/drive`); await settled(page)
const N = 24, phases: any[] = []
for (let n = 0; n < N; n++) {
  await field(page, 'drive.units.main.motor.peak-torque').fill(`${240 + (n % 2 ? 10 : 0)}.${n % 10} Nm (datasheet)`)
  if (process.argv[2]) await page.waitForTimeout(+process.argv[2])
  const ph = await page.evaluate<any>(`new Promise(done => {
    const f = document.querySelector('[data-path="drive.units.main.motor.peak-torque"]'), h = document.querySelector('.headline'), before = h.textContent
    let began
    new MutationObserver((_, w) => { if (h.textContent === before) return; w.disconnect(); const mut = performance.now() - began; requestAnimationFrame(() => { const raf = performance.now() - began; const c = new MessageChannel(); c.port1.onmessage = () => done({ mut, raf, painted: performance.now() - began, sync: window.__sync }); c.port2.postMessage(0) }) }).observe(h, { subtree: true, characterData: true, childList: true })
    began = performance.now()
    f.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }))
    window.__sync = performance.now() - began
  })`)
  phases.push(ph)
  await settled(page)
}
const bare = await page.evaluate<number>('window.ampwrightProbe()')
await bench.close()
const q = (k: string, p: number) => phases.map(x => x[k]).toSorted((a, b) => a - b)[Math.floor(p * (N - 1))].toFixed(1)
for (const k of ['sync', 'mut', 'raf', 'painted']) console.log(k, 'p50', q(k, .5), 'p95', q(k, .95))
console.log('bare', bare, phases.map(p => [p.mut, p.raf, p.painted].map(x => Math.round(x)).join('/')).join(' '))
