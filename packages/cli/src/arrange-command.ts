import type { Conversion, System } from '@ampwright/conversion'
import { type PackAnswer, packSearch } from '@ampwright/engine'
import { type ArrangingPlan, arrangementEdits, arrangingJson, arrangingPlan, arrangingView, Refusal } from '@ampwright/workbench'
import { type Command, InvalidArgumentError, type Option } from 'commander'
import { printArranging } from './arrange.ts'
import { change } from './change.ts'
import { load } from './load.ts'
import type { Terminal } from './terminal.ts'

type Asked = {
  units: System
  seed: number
  steps: number
  seconds?: number
  strings?: { least: number; most: number }
  take?: number
  write?: boolean
  figures?: boolean
  json?: boolean
}
/** Steps a search does where nothing is said: enough for the samples on a laptop in some seconds. */
const STEPS = 2000

/** Adds the command that looks for arrangements of the battery in the spaces of a car, and takes one of them over. */
export function arrangeCommand(program: Command, units: Option, t: Terminal, exit: (code: number) => void): void {
  program
    .command('arrange')
    .argument('<file>', 'conversion file, or - for standard input')
    .description('Looks for ways to arrange the modules of the battery in boxes in the spaces of the car: several good ones side by side.')
    .option('--seed <n>', 'seed of the search: another one may find others', whole(0), 1)
    .option('--steps <n>', 'how long it looks, in steps: the same steps give the same again', whole(1), STEPS)
    .option('--seconds <s>', 'how long it looks, in seconds, in place of steps', seconds)
    .option('--strings <n>', 'strings, such as 2, or 1-3; otherwise as the file says', strings)
    .option('--take <number>', 'tries one of them: before and after', whole(1))
    .option('--write', 'with --take: keeps it in the file')
    .option('--figures', 'with --take: list every figure that moves')
    .addOption(units)
    .option('--json', 'machine-readable output')
    .action((file: string, o: Asked) => {
      if (o.write && o.take === undefined) throw new Refusal('arrange: --write keeps the arrangement that --take names; name one')
      if (o.take !== undefined && file === '-')
        throw new Refusal('arrange: standard input is read once; give a file to try an arrangement on')
      const c = load(file, false),
        plan = arrangingPlan(c.model, o.strings ? { strings: o.strings } : {}),
        answer = searched(plan, o, t)
      exit(o.take === undefined ? shownAll(c, plan, answer, o, t) : taken(file, c, plan, answer, o.take, o, t))
    })
}

/** Prints what was found. Ends with 1 where no whole string fits. */
function shownAll(c: Conversion, plan: ArrangingPlan, answer: PackAnswer, o: Asked, t: Terminal): number {
  if (o.json) t.out(JSON.stringify(arrangingJson(c.model, plan, answer), null, 2))
  else printArranging(arrangingView(plan, answer, o.units), t)
  return answer.arrangements.length ? 0 : 1
}

function taken(file: string, c: Conversion, plan: ArrangingPlan, answer: PackAnswer, number: number, o: Asked, t: Terminal): number {
  const one = answer.arrangements[number - 1]
  if (!one) throw new Refusal(`arrange: there is no arrangement ${number}; ${answer.arrangements.length || 'none'} were found`)
  const { findings } = change(file, arrangementEdits(c.model, plan, one), { ...o, command: 'arrange' }, t)
  return findings.some(f => f.outcome === 'failing') ? 1 : 0
}

/** The last answer in the steps or seconds asked for; on a terminal it says how far it is when that takes over a second. */
function searched({ task }: ArrangingPlan, o: Asked, t: Terminal): PackAnswer {
  const began = Date.now(),
    enough = (a: PackAnswer): boolean =>
      Number.isFinite(a.bound) && (o.seconds === undefined ? a.steps >= o.steps : Date.now() - began >= o.seconds * 1000)
  let last: PackAnswer | undefined,
    shown = false
  for (const answer of packSearch(task, { seed: o.seed })) {
    last = answer
    if (enough(answer)) break
    if (process.stderr.isTTY && Date.now() - began > 1000) {
      shown = true
      process.stderr.write(`\r\u001b[K${progress(answer, task.spaces.length).slice(0, t.width - 1)}`)
    }
  }
  if (shown) process.stderr.write('\r\u001b[K')
  if (!last) throw new RangeError('arrange: the search gave no answer')
  return last
}
const progress = (a: PackAnswer, rooms: number): string =>
  Number.isFinite(a.bound)
    ? `${a.arrangements.length} arrangements of up to ${a.bound - a.gap} ${a.counts ?? 'modules'}, never more than ${a.bound}; ${a.steps} steps`
    : `Looking at the rooms: ${a.spaces.length} of ${rooms}`

const whole =
  (least: number) =>
  (text: string): number => {
    const n = Number(text)
    if (!Number.isInteger(n) || n < least) throw new InvalidArgumentError(`a whole number from ${least} is wanted.`)
    return n
  }
function seconds(text: string): number {
  const n = Number(text)
  if (!(n > 0 && n <= 86_400)) throw new InvalidArgumentError('a number of seconds is wanted.')
  return n
}
function strings(text: string): { least: number; most: number } {
  const [, least, most] = /^(\d{1,3})(?:-(\d{1,3}))?$/.exec(text) ?? [],
    range = { least: Number(least), most: Number(most ?? least) }
  if (!(range.least >= 1 && range.most >= range.least)) throw new InvalidArgumentError('a number of strings is wanted, such as 2, or 1-3.')
  return range
}
