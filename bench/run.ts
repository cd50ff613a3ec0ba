// Ratios within one run: each figure is a time divided by the time of the C twin's trip on the same machine, the two measured turn about.
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { serialize } from 'node:v8'
import { fileOf } from '../tests/cars.ts'
import { cycleTrace, roadster } from '../tests/trip-plans.ts'
import { hasCompiler, twin } from './trip-twin.ts'

type Line = {
  readonly name: string
  readonly ratio: number
  readonly limit?: number
  readonly holds?: boolean
  readonly unit: 'C trips' | 'of the ideal' | 'MB'
}
type Demo = Readonly<Record<'headline' | 'complete' | 'afterGear' | 'noTrip' | 'bands', number>> & {
  readonly studies: Readonly<Record<string, number>>
}
const json = process.argv.includes('--json')
/** A machine busy for a while is busy for both: C and ours take turns, and each counts with its best. */
const ROUNDS = 6,
  SWEEP = 10_000,
  /** A study this slow has to say why. */
  SLOW = 0.005

/** Runs a script of this folder in plain Node, a process of its own like the C program. */
function timed<T>(script: string, args: readonly string[], flags: readonly string[] = []): T {
  const ran = spawnSync(process.execPath, [...flags, join(import.meta.dirname, script), ...args], { encoding: 'utf8' })
  if (ran.status !== 0) throw new Error(`bench/${script} ended with ${ran.status}: ${ran.stderr}`)
  return JSON.parse(ran.stdout) as T
}

if (!hasCompiler()) {
  console.error('bench: gcc is missing; install gcc to measure against the C trip')
  process.exit(2)
}
const plan = { ...roadster(cycleTrace('wltc-3b')), step: 0.1 }
const folder = mkdtempSync(join(tmpdir(), 'bench-')),
  planFile = join(folder, 'plan'),
  sample = fileOf('lapwing')
writeFileSync(planFile, serialize(plan))
const c = twin(),
  ofC: number[] = [],
  trips: number[] = [],
  demos: Demo[] = []
for (let round = 0; round < ROUNDS; round++) {
  ofC.push(c.run(plan, 60)['seconds'] as number)
  trips.push(timed<{ trip: number }>('timings.mjs', ['trip', planFile]).trip)
  if (round % 2 === 0) demos.push(timed<Demo>('timings.mjs', ['demo', sample, dirname(sample)]))
}
c.close()
rmSync(folder, { recursive: true, force: true })

const unit = Math.min(...ofC),
  best = (key: Exclude<keyof Demo, 'studies'>): number => Math.min(...demos.map(d => d[key])) / unit
const lines: Line[] = []
const add = (name: string, ratio: number, limit?: number, kind: Line['unit'] = 'C trips', atLeast = false): void =>
  void lines.push({ name, ratio, unit: kind, ...(limit === undefined ? {} : { limit, holds: atLeast ? ratio >= limit : ratio <= limit }) })

add('one trip, 1800 s at 10 Hz, with battery and temperatures', Math.min(...trips) / unit, 1.3)
add('an edit: read, resolve, headline', best('headline'), 20)
add('complete assessment of the demo, all studies and rules, without bands', best('complete'), 60)
add('the same after an edit of the gear', best('afterGear'))
add('an edit that no trip reads', best('noTrip'), 3)
add('bands on every figure', best('bands'))
const sweep = timed<{ efficiency: number; grownMB: number }>('sweep.mjs', [sample, String(SWEEP)], ['--single-threaded', '--expose-gc'])
add('sweep of 10 000 variants, efficiency on two threads', sweep.efficiency, 0.9, 'of the ideal', true)
add('sweep of 10 000 variants, memory grown from half to end', sweep.grownMB, 20, 'MB')

const studies = Object.keys(demos[0]?.studies ?? {})
  .map(name => ({ name, seconds: Math.min(...demos.map(d => d.studies[name] ?? Infinity)) }))
  .sort((a, b) => b.seconds - a.seconds)
const REASONS: Readonly<Record<string, string>> = {
  trip: 'drives every named trip at ten steps a second',
  range: 'drives each range goal until empty, at one step a second',
  'range-in-weather': 'drives each range goal until empty three times more',
  'range-at-speeds': 'drives until empty at four speeds on three days',
  window: 'looks for the ends of the ratio window by running the goals again and again',
  '(rules)': 'all rules on a car never judged before: each finding looks for every fact it rests on; after an edit only what changed',
  acceleration: 'runs every goal and the usual runs at full pull',
}
if (json)
  console.log(
    JSON.stringify(
      lines.map(({ name, ratio, limit, holds }) => ({ name, ratio, limit: limit ?? null, holds: holds ?? null })),
      null,
      1,
    ),
  )
else {
  console.log(`One C trip takes ${(unit * 1e3).toFixed(2)} ms here.\n`)
  for (const l of lines)
    console.log(
      `${l.holds === undefined ? ' ' : l.holds ? '●' : '▲'} ${l.name}: ${l.ratio.toFixed(2)} ${l.unit}${l.limit === undefined ? '' : ` (${l.unit === 'of the ideal' ? 'at least' : 'at most'} ${l.limit})`}`,
    )
  console.log('\nStudies, each by itself:')
  for (const s of studies.filter(x => x.seconds > SLOW / 10))
    console.log(
      `  ${(s.seconds * 1e3).toFixed(1).padStart(7)} ms  ${s.name}${s.seconds > SLOW ? `  (${REASONS[s.name] ?? `over ${SLOW * 1e3} ms, no reason given yet`})` : ''}`,
    )
}
process.exit(lines.some(l => l.holds === false) ? 1 : 0)
