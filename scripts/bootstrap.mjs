// Makes a fresh clone ready: right Node, packages installed, sources built. Uses only what Node brings, since nothing is installed yet.
// With --test it also brings what the tests need from the system (see scripts/reference-programs.mjs).
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = dirname(dirname(fileURLToPath(import.meta.url)))
const wanted = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).engines.node.replace('>=', '')
const older = (a, b) =>
  a
    .split('.')
    .map(Number)
    .reduce((r, x, i) => r || x - (b.split('.').map(Number)[i] ?? 0), 0) < 0
if (older(process.versions.node, wanted)) {
  console.error(`Ampwright needs Node.js ${wanted} or newer; this is ${process.versions.node}. Install a newer Node.js and start again.`)
  process.exit(1)
}

function run(what, command, args) {
  const { status, error } = spawnSync(command, args, {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, NODE_ENV: '' },
  })
  if (error || status !== 0) {
    console.error(`${what} did not finish${error ? `: ${error.message}` : ''}. Mend what is printed above and start again.`)
    process.exit(status || 1)
  }
}
const npm = (...args) =>
  process.env.npm_execpath
    ? [process.execPath, [process.env.npm_execpath, ...args]]
    : [process.platform === 'win32' ? 'npm.cmd' : 'npm', args]
function hashOf(files) {
  const hash = createHash('sha256').update(`${process.version} ${process.platform} ${process.arch}`)
  for (const file of files.sort()) hash.update(file).update(readFileSync(file))
  return hash.digest('hex')
}
function* walk(folder) {
  for (const name of readdirSync(folder)) {
    if (name === 'node_modules' || name === 'dist' || name.endsWith('.test.ts')) continue
    const path = join(folder, name)
    if (statSync(path).isDirectory()) yield* walk(path)
    else yield path
  }
}
const stamps = join(root, 'node_modules', '.ampwright')
const stamp = name => (existsSync(join(stamps, name)) ? readFileSync(join(stamps, name), 'utf8') : '')
const keep = (name, value) => {
  mkdirSync(stamps, { recursive: true })
  writeFileSync(join(stamps, name), value)
}

const packages = hashOf([join(root, 'package-lock.json'), join(root, 'package.json')])
if (stamp('packages') !== packages) {
  console.error('Installing packages …')
  run('Installing packages', ...npm('ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'))
  keep('packages', packages)
}
const sources = hashOf([...walk(join(root, 'packages')), join(root, 'tsconfig.json'), join(root, 'tsconfig.base.json')])
const built = readdirSync(join(root, 'packages')).every(name =>
  existsSync(join(root, 'packages', name, 'dist', name === 'app' ? 'index.html' : 'index.js')),
)
if (stamp('build') !== sources || !built) {
  console.error('Building …')
  run('The build', process.execPath, [join(root, 'node_modules', 'typescript', 'bin', 'tsc'), '-b', ...(built ? [] : ['--force'])])
  run('The build of the screen', process.execPath, [
    join(root, 'node_modules', 'vite', 'bin', 'vite.js'),
    'build',
    '--logLevel',
    'warn',
    join(root, 'packages', 'app'),
  ])
  keep('build', sources)
}
if (process.argv.includes('--test')) run('Fetching reference programs', process.execPath, [join(root, 'scripts', 'reference-programs.mjs')])
