// General-purpose programs the tests compare with. Installed when run as root on Debian; otherwise it says exactly what to install.
import { spawnSync } from 'node:child_process'

const NEEDED = [
  { program: 'units', package: 'units', for: 'unit conversions against an independent table' },
  { program: 'gcc', package: 'gcc libc6-dev', for: 'the trip loop in C' },
  { program: 'chromium', package: 'chromium fonts-dejavu-core', for: 'the workbench in a real browser', named: 'AMPWRIGHT_CHROMIUM' },
  { program: 'octave-cli', package: 'octave', for: 'performance by a general-purpose differential-equation solver' },
]
const has = program => spawnSync('sh', ['-c', `command -v ${program}`], { stdio: 'ignore' }).status === 0
const missing = NEEDED.filter(n => !(n.named && process.env[n.named]) && !has(n.program))
if (missing.length) {
  const list = missing.flatMap(m => m.package.split(' '))
  const command = `apt-get update && apt-get install -y --no-install-recommends ${list.join(' ')}`
  const root = process.getuid?.() === 0 && has('apt-get')
  if (root) {
    console.error(`Installing ${list.join(', ')} …`)
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
    spawnSync('apt-get', ['update', '-qq'], { stdio: ['ignore', 'ignore', 'inherit'], env })
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...list], { stdio: ['ignore', 'ignore', 'inherit'], env })
  }
  const still = missing.filter(n => !has(n.program))
  for (const n of still) console.error(`The tests lack «${n.program}» (${n.for}).`)
  if (still.length) {
    console.error(`Install what is missing and start again, on Debian: ${command}`)
    process.exit(1)
  }
}
