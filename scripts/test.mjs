// Runs every test, then writes what was compared with the outside world to docs/proof.json and docs/proof.md.
// --long: full counts instead of a twentieth. Everything after `--` goes to the test runner.
import { spawnSync } from 'node:child_process'
import { mkdirSync, readFileSync, rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = dirname(dirname(fileURLToPath(import.meta.url)))
const long = process.argv.includes('--long'),
  more = process.argv.slice(2).filter(a => a !== '--long')
const kept = join(root, 'node_modules', '.ampwright'),
  proof = join(kept, 'proof'),
  report = join(kept, 'tests.json')
rmSync(proof, { recursive: true, force: true })
mkdirSync(kept, { recursive: true })
const node = (...args) =>
  spawnSync(process.execPath, args, {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, AMPWRIGHT_PROOF: proof, ...(long ? { AMPWRIGHT_LONG: '1' } : {}) },
  }).status ?? 1

const status = node(
  join(root, 'node_modules/vitest/vitest.mjs'),
  'run',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${report}`,
  ...more,
)
let passed = 0,
  failed = 0,
  skipped = 0
try {
  const r = JSON.parse(readFileSync(report, 'utf8'))
  passed = r.numPassedTests
  failed = r.numFailedTests
  skipped = r.numPendingTests + (r.numTodoTests ?? 0)
} catch {
  console.error('The test runner left no report.')
}
if (status === 0 && more.length === 0) {
  const wrote = node('--conditions', 'source', '--import', 'tsx', join(root, 'scripts/proof.ts'), ...(long ? ['--long'] : []))
  if (wrote !== 0) failed++
}
console.log(`${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ''}`)
process.exit(status !== 0 || failed > 0 ? 1 : 0)
