// What a user waits for, timed on the built packages by plain Node: a loader in between would slow every typed array down.
// node bench/timings.mjs trip PLAN | node bench/timings.mjs demo SAMPLE FOLDER; prints seconds as JSON, each the best of several runs after warming up.
import { readFileSync } from 'node:fs'
import { deserialize } from 'node:v8'
import { lookUpsBeside } from '@ampwright/cli'
import { applyEdit, readConversion } from '@ampwright/conversion'
import { Answers, assess, findings, HEADLINE, RULES, STUDIES } from '@ampwright/engine'
import { simulate } from '../packages/engine/dist/trip/simulate.js'

const WARM = 40,
  TIMES = 60
/** The best of several runs, as the C program takes it: whatever else the machine does only ever adds. */
function seconds(what, times = TIMES, warm = WARM) {
  for (let i = 0; i < warm; i++) what()
  let best = Infinity
  for (let i = 0; i < times; i++) {
    const t = performance.now()
    what()
    best = Math.min(best, (performance.now() - t) / 1000)
  }
  return best
}
const end = steps => {
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value
}

function trip(planFile) {
  const plan = deserialize(readFileSync(planFile))
  return { trip: seconds(() => simulate(plan)) }
}

function demo(file, folder) {
  const lookUps = lookUpsBeside(folder),
    text = readFileSync(file, 'utf8'),
    first = readConversion(text, { lookUps, file })
  const variants = (path, values) =>
    values.map(now => {
      const edit = applyEdit(text, { path, now })
      if (!edit.ok) throw new Error(edit.problem.what)
      return edit.text
    })
  const gears = variants('drive.units.main.gear', ['third', 'fourth']),
    budgets = variants('brief.budget', ['18000 €', '18500 €'])
  const answers = new Answers(first.model)
  let turn = 0,
    reading = first.text
  const resolve = texts => {
    const next = readConversion(texts[turn++ % 2], { lookUps, before: reading })
    reading = next.text
    answers.next(next.model)
  }
  end(assess(answers, { bands: false }))
  const headline = seconds(() => {
    resolve(gears)
    for (const s of HEADLINE) answers.ask(s)
  })
  const complete = seconds(() => void end(assess(new Answers(first.model), { bands: false })))
  const afterGear = seconds(() => {
    resolve(gears)
    end(assess(answers, { bands: false }))
  })
  const noTrip = seconds(() => {
    resolve(budgets)
    end(assess(answers, { bands: false }))
  })
  // A half-width is worked out when it is read: here every one is.
  const withBands = seconds(
    () => {
      const { figures, halves } = end(assess(new Answers(first.model)))
      for (const id of figures.keys()) halves.get(id)
    },
    10,
    5,
  )

  const each = new Map(),
    note = (id, t) => each.set(id, Math.min(each.get(id) ?? Infinity, (performance.now() - t) / 1000))
  for (let k = 0; k < 20; k++) {
    const cold = new Answers(first.model)
    for (const s of STUDIES) {
      const t = performance.now()
      cold.ask(s)
      note(s.id, t)
    }
    const t = performance.now()
    for (const r of RULES) findings(r, cold)
    note('(rules)', t)
  }
  return { headline, complete, afterGear, noTrip, bands: withBands - complete, studies: Object.fromEntries(each) }
}

const [what, ...args] = process.argv.slice(2)
const WHATS = { trip, demo }
if (!(what in WHATS)) throw new RangeError(`bench/timings.mjs: «${what}»; accepted ${Object.keys(WHATS).join(', ')}`)
console.log(JSON.stringify(WHATS[what](...args)))
