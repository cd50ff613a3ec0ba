// Lint, format, types, unused code. Prints each tool's own output; ends with exit code 1 when one of them complains.
import { spawnSync } from 'node:child_process'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = dirname(dirname(fileURLToPath(import.meta.url)))
const bin = name => join(root, 'node_modules', '.bin', name)
const steps = [
  ['types', bin('tsc'), ['-p', 'tsconfig.check.json', '--noEmit']],
  ['types of the app', bin('tsc'), ['-p', 'packages/app/tsconfig.json']],
  ['types of the browser tests', bin('tsc'), ['-p', 'tests/screen/tsconfig.json']],
  ['lint', bin('oxlint'), ['--type-aware', '--deny-warnings']],
  ['format', bin('biome'), ['format', '.']],
  ['unused code', bin('knip'), ['--no-progress']],
]
let failed = 0
for (const [name, command, args] of steps) {
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit' })
  console.log(`${name}: ${status === 0 ? 'in order' : 'to be mended'}`)
  if (status !== 0) failed++
}
process.exit(failed ? 1 : 0)
