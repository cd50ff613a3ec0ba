// Runs every test, then writes what was compared with the outside world to docs/proof.json and docs/proof.md.
// --long: full counts instead of a twentieth. --again, with or without --long: only the files that failed last time, whose outcome then takes the place of the one before; the
// record names them. Everything after `--` goes to the test runner.
import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = dirname(dirname(fileURLToPath(import.meta.url)))
const OWN = ['--long', '--again']
const [long, again] = OWN.map(flag => process.argv.includes(flag)),
  more = process.argv.slice(2).filter(a => !OWN.includes(a))
const kept = join(root, 'node_modules', '.ampwright'),
  proof = join(kept, 'proof'),
  report = join(kept, 'tests.json'),
  next = join(kept, 'again.json')
const node = (...args) =>
  spawnSync(process.execPath, args, {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, AMPWRIGHT_PROOF: proof, ...(long ? { AMPWRIGHT_LONG: '1' } : {}) },
  }).status ?? 1
const read = file => JSON.parse(readFileSync(file, 'utf8'))
const vitest = (to, ...args) =>
  node(join(root, 'node_modules/vitest/vitest.mjs'), 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${to}`, ...args)

const status = again ? runAgain() : runAll()
let passed = 0,
  failed = 0,
  skipped = 0,
  whole = false
try {
  const r = read(report)
  whole = !r.part
  passed = r.numPassedTests
  failed = r.numFailedTests
  skipped = r.numPendingTests + (r.numTodoTests ?? 0)
} catch {
  console.error('The test runner left no report.')
}
if (status === 0 && whole) {
  const wrote = node('--conditions', 'source', '--import', 'tsx', join(root, 'scripts/proof.ts'), ...(long ? ['--long'] : []))
  if (wrote !== 0) failed++
}
console.log(`${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ''}`)
process.exit(status !== 0 || failed > 0 ? 1 : 0)

function runAll() {
  rmSync(proof, { recursive: true, force: true })
  rmSync(report, { force: true })
  mkdirSync(kept, { recursive: true })
  const status = vitest(report, ...more)
  // Part of the tests is no proof of the whole, nor is what is run again of it.
  if (more.length > 0 && existsSync(report)) writeFileSync(report, JSON.stringify({ ...read(report), part: true }))
  return status
}

/** The files that failed; what passed before is not run, and stands. */
function runAgain() {
  if (!existsSync(report)) {
    console.error('--again: there is no run to take up.')
    return 1
  }
  const before = read(report),
    files = before.testResults.filter(f => f.status !== 'passed').map(f => f.name)
  if (files.length === 0) {
    console.error('--again: nothing failed last time.')
    return 1
  }
  rmSync(next, { force: true })
  const status = vitest(next, ...files)
  if (!existsSync(next)) return 1
  const now = read(next),
    of = name => now.testResults.find(f => f.name === name),
    results = before.testResults.map(f => of(f.name) ?? f),
    count = outcome => results.flatMap(f => f.assertionResults).filter(a => outcome.includes(a.status)).length
  const lost = files.filter(name => !of(name)).length
  writeFileSync(
    report,
    JSON.stringify({
      numPassedTests: count(['passed']),
      numFailedTests: count(['failed']) + lost,
      numPendingTests: count(['pending', 'skipped']),
      numTodoTests: count(['todo']),
      part: before.part,
      again: [...new Set([...(before.again ?? []), ...files.map(f => relative(root, f))])],
      testResults: results,
    }),
  )
  return status === 0 && lost > 0 ? 1 : status
}
