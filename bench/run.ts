// Ratios within one run: each figure is a time divided by the time of the C twin's trip, measured just before on the same machine.
import { Answers, assess, type Assessment, RULES, STUDIES, HEADLINE, findings } from '@ampwright/engine'
import { applyEdit, readConversion } from '@ampwright/conversion'
import { lookUpsBeside } from '@ampwright/cli'
import { join } from 'node:path'
import { simulate } from '../packages/engine/src/trip/simulate.ts'
import { fileOf, root, textOf } from '../tests/cars.ts'
import { cycleTrace, roadster } from '../tests/trip-plans.ts'
import { sweepEfficiency } from './sweep.ts'
import { hasCompiler, twin } from './trip-twin.ts'

type Line = {
  readonly name: string
  readonly ratio: number
  readonly limit?: number
  readonly holds?: boolean
  readonly unit: 'C trips' | 'of the ideal' | 'MB'
}
const json = process.argv.includes('--json')

/** Median of several runs, after warming up: a single run is at the mercy of whatever else the machine does. */
function seconds(what: () => void, times = 9, warm = 4): number {
  for (let i = 0; i < warm; i++) what()
  const taken = Array.from({ length: times }, () => {
    const t = performance.now()
    what()
    return (performance.now() - t) / 1000
  }).sort((a, b) => a - b)
  return taken[taken.length >> 1] as number
}
const end = (steps: Generator<unknown, Assessment>): Assessment => {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

if (!hasCompiler()) {
  console.error('bench: gcc is missing; install gcc to measure against the C trip')
  process.exit(2)
}
const plan = { ...roadster(cycleTrace('wltc-3b')), step: 0.1 }
const c = twin(),
  unit = c.run(plan, 60)['seconds'] as number
const lines: Line[] = []
const add = (name: string, ratio: number, limit?: number, kind: Line['unit'] = 'C trips', atLeast = false): void =>
  void lines.push({ name, ratio, unit: kind, ...(limit === undefined ? {} : { limit, holds: atLeast ? ratio >= limit : ratio <= limit }) })

add('one trip, 1800 s at 10 Hz, with battery and temperatures', seconds(() => void simulate(plan), 41, 20) / unit, 1.3)

const lookUps = lookUpsBeside(join(root, 'samples')),
  text = textOf('lapwing'),
  first = readConversion(text, { lookUps, file: fileOf('lapwing') })
const gears = ['third', 'fourth'],
  edited = gears.map(g => applyEdit(text, { path: 'drive.units.main.gear', now: g })).map(e => (e.ok ? e.text : text))
const titles = ['a', 'b']
  .map(n => applyEdit(text, { path: 'brief.budget', now: n === 'a' ? '18000 €' : '18500 €' }))
  .map(e => (e.ok ? e.text : text))

let turn = 0,
  reading = first.text
const answers = new Answers(first.model)
const resolve = (texts: readonly string[]): void => {
  const next = readConversion(texts[turn++ % 2] as string, { lookUps, before: reading })
  reading = next.text
  answers.next(next.model)
}
end(assess(answers, { bands: false }))
add(
  'an edit: read, resolve, headline',
  seconds(() => {
    resolve(edited)
    for (const s of HEADLINE) answers.ask(s)
  }) / unit,
  20,
)
add(
  'complete assessment of the demo, all studies and rules, without bands',
  seconds(() => void end(assess(new Answers(first.model), { bands: false }))) / unit,
  60,
)
add(
  'the same after an edit of the gear',
  seconds(() => {
    resolve(edited)
    end(assess(answers, { bands: false }))
  }) / unit,
)
add(
  'an edit that no trip reads',
  seconds(() => {
    resolve(titles)
    end(assess(answers, { bands: false }))
  }) / unit,
  3,
)
const plain = seconds(() => void end(assess(new Answers(first.model), { bands: false })), 5, 2)
add('bands on every figure', (seconds(() => void end(assess(new Answers(first.model), { bands: true })), 5, 2) - plain) / unit)

const each = new Map<string, number[]>()
for (let k = 0; k < 9; k++) {
  const fresh = new Answers(first.model)
  for (const s of STUDIES) {
    const t = performance.now()
    fresh.ask(s)
    each.set(s.id, [...(each.get(s.id) ?? []), (performance.now() - t) / 1000])
  }
  const t = performance.now()
  for (const r of RULES) findings(r, fresh)
  each.set('(rules)', [...(each.get('(rules)') ?? []), (performance.now() - t) / 1000])
}
const studies = [...each]
  .map(([name, t]) => ({ name, seconds: t.sort((a, b) => a - b)[t.length >> 1] as number }))
  .sort((a, b) => b.seconds - a.seconds)

const sweep = await sweepEfficiency(10_000)
add('sweep of 10 000 variants, efficiency on two threads', sweep.efficiency, 0.9, 'of the ideal', true)
add('sweep of 10 000 variants, memory grown from half to end', sweep.grownMB, 20, 'MB')
c.close()

const REASONS: Readonly<Record<string, string>> = {
  trip: 'drives every named trip at ten steps a second',
  range: 'drives each range goal until empty, at one step a second',
  'range-in-weather': 'drives each range goal until empty three times more',
  window: 'looks for the ends of the ratio window by running the goals again and again',
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
  for (const s of studies.filter(x => x.seconds > 0.0005))
    console.log(
      `  ${(s.seconds * 1e3).toFixed(1).padStart(7)} ms  ${s.name}${s.seconds > 0.005 ? `  (${REASONS[s.name] ?? 'over 5 ms, no reason given yet'})` : ''}`,
    )
}
process.exit(lines.some(l => l.holds === false) ? 1 : 0)
