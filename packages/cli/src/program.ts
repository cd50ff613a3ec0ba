import { jsonSchema, SCHEMA, type System } from '@ampwright/conversion'
import { type Assessment, FORMULAS, headlineOf } from '@ampwright/engine'
import {
  acceptance,
  assessmentJson,
  CHOICES,
  coastDownEdits,
  comparisonJson,
  filled,
  moduleEdits,
  nearestId,
  Refusal,
  remedyEdits,
  type SettingAside,
  settingAside,
  survey,
  takingBack,
  workingTree,
} from '@ampwright/workbench'
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander'
import { arrangeCommand } from './arrange-command.ts'
import { circuitCommand } from './circuit-command.ts'
import { printAssessment } from './assess.ts'
import { change, editOf, findingNamed } from './change.ts'
import { printComparison } from './compare.ts'
import { completion } from './completion.ts'
import { conceptsCommand } from './concepts-command.ts'
import { cardJson, formulaNamed, printCard, printChapters, worked } from './handbook.ts'
import { assessWithProgress, look } from './judged.ts'
import { bytesOf, load } from './load.ts'
import { newConversion, type Start } from './new-conversion.ts'
import { classesJson, partsOf, printClasses, printParts } from './parts.ts'
import { scanCommand } from './scan-command.ts'
import { type Serving, serve } from './serve.ts'
import { shelfCommand } from './shelf.ts'
import { shownCommands } from './shown-commands.ts'
import { printSurvey } from './survey.ts'
import { colours, type Terminal } from './terminal.ts'

const VERSION = '0.1.0'
const FIGURES = ['--figures', 'list every figure that moves'] as const
type Shared = { units: System; json?: boolean; strict?: boolean }
type Trying = Shared & { write?: boolean; figures?: boolean }

const terminal = (): Terminal => ({
  width: Math.max(40, Math.min(process.stdout.columns ?? (Number(process.env['COLUMNS']) || 100), 140)),
  colour: Boolean(process.stdout.isTTY) && !process.env['NO_COLOR'],
  out: line => process.stdout.write(`${line}\n`),
  err: line => process.stderr.write(`${line}\n`),
})

const print = (t: Terminal, x: unknown): void => t.out(JSON.stringify(x, (_, v) => (v instanceof Float64Array ? [...v] : v), 2))
const outcomeExit = (a: Assessment): number => (a.findings.some(f => f.outcome === 'failing') ? 1 : 0)

/** Runs one command line. Gives the exit code: 0 nothing failing, 1 something failing, 2 wrong use or unreadable file. */
export async function run(args: readonly string[], t: Terminal = terminal()): Promise<number> {
  let code = 0
  const program = new Command('ampwright')
    .version(VERSION)
    .description('Workbench for converting petrol and diesel cars to battery-electric drive.')
    .exitOverride()
    .configureOutput({ writeOut: s => t.out(s.trimEnd()), writeErr: s => t.err(s.trimEnd()) })
  const units = (): Option => new Option('--units <system>', 'units of the output').choices(['metric', 'us', 'uk']).default('metric')
  const strict = (c: Command): Command =>
    c
      .option('--strict', 'no class table fills a gap; parts chosen from the catalogue keep their values')
      .addOption(units())
      .option('--json', 'machine-readable output')

  strict(
    program
      .command('assess')
      .argument('<file>', 'conversion file, or - for standard input')
      .description('Everything the engine knows about a conversion: figures, findings, what is missing.'),
  )
    .option('--figures', 'print every figure with its id')
    .option('--traces <ids...>', 'with --json: traces to include')
    .action((file: string, o: Shared & { traces?: string[]; figures?: boolean }) => {
      const c = load(file, Boolean(o.strict)),
        a = assessWithProgress(c, t)
      const unknown = (o.traces ?? []).filter(id => !a.traces.has(id))
      if (unknown.length)
        throw new Refusal(`assess: no trace is called ${unknown.join(', ')}; there are ${[...a.traces.keys()].join(', ') || 'none'}`)
      if (o.json) print(t, assessmentJson(c, a, o.traces))
      else printAssessment(c, a, t, o.units, Boolean(o.figures))
      code = outcomeExit(a)
    })

  strict(
    program
      .command('why')
      .argument('<file>')
      .argument('<figure>', 'id of a figure, as assess prints it')
      .description('The working of a figure, down to the typed facts.'),
  )
    .option('--depth <n>', 'how far to unfold', depth)
    .action((file: string, id: string, o: Shared & { depth?: number }) => {
      const c = load(file, Boolean(o.strict)),
        a = assessWithProgress(c, t),
        figure = a.figures.get(id)
      if (!figure) {
        const near = nearestId(id, [...a.figures.keys()])
        throw new Refusal(
          `why: «${id}» is no figure of this conversion${near ? `; did you mean ${near}?` : '.'} \`ampwright assess ${file} --figures\` lists them.`,
        )
      }
      const k = colours(t)
      if (o.json) print(t, { id, ...((assessmentJson(c, a) as { figures: Record<string, object> }).figures[id] as object) })
      else for (const line of workingTree(figure, a, o.units, { quiet: k.dim, strong: k.bold }, o.depth)) t.out(line)
    })

  program
    .command('handbook')
    .argument('[formula]')
    .description('Every formula, usable alone.')
    .option('--input <name=value...>', 'inputs, with units')
    .addOption(units())
    .option('--json', 'machine-readable output')
    .action((id: string | undefined, o: Shared & { input?: string[] }) => {
      if (id === undefined)
        return o.json
          ? print(
              t,
              FORMULAS.map(({ chapter, formula }) => cardJson(formula, chapter)),
            )
          : printChapters(t)
      const f = formulaNamed(id)
      if (!o.input?.length)
        return o.json ? print(t, cardJson(f, FORMULAS.find(x => x.formula === f)?.chapter ?? '')) : printCard(f, t, o.units)
      const figures = worked(f, o.input),
        k = colours(t)
      const empty: Assessment = {
        figures: new Map(),
        halves: new Map(),
        traces: new Map(),
        tables: new Map(),
        findings: [],
        gaps: [],
        headline: [],
      }
      for (const figure of figures) {
        const lines = workingTree(figure, empty, o.units, { quiet: k.dim, strong: k.bold })
        if (o.json)
          print(t, {
            ...(figures.length > 1 ? { result: figure.because.result } : {}),
            value: figure.value,
            unit: figure.unit,
            working: lines,
          })
        else for (const line of lines) t.out(line)
      }
    })

  strict(
    program
      .command('survey')
      .argument('<file>')
      .description('What to measure next: tool, accuracy, time, and until when it can still be measured.'),
  ).action((file: string, o: Shared) => {
    const c = load(file, Boolean(o.strict)),
      a = assessWithProgress(c, t),
      list = survey(c, a, headlineOf(a), o.units)
    if (o.json) print(t, list)
    else printSurvey(list, t)
  })

  strict(
    program
      .command('compare')
      .argument('<before>')
      .argument('<after>')
      .description('Two conversions side by side: what came out differently, and by how much.'),
  )
    .option(...FIGURES)
    .action((before: string, after: string, o: Shared & { figures?: boolean }) => {
      if (before === '-' && after === '-') throw new Refusal('compare: only one of the two can come over standard input')
      const [a, b] = [before, after].map(f => assessWithProgress(load(f, Boolean(o.strict)), t)) as [Assessment, Assessment]
      if (o.json) print(t, comparisonJson(a, b))
      else printComparison(a, b, [before, after], t, o.units, Boolean(o.figures))
      code = outcomeExit(b)
    })

  strict(
    program
      .command('set')
      .argument('<file>')
      .argument('<path=value...>', 'values to try, such as drive.units.main.gear=third')
      .description('Tries values: assesses before and after and says what comes out differently.'),
  )
    .option('--write', 'keep them in the file')
    .option(...FIGURES)
    .action((file: string, values: string[], o: Trying) => {
      code = outcomeExit(change(file, values.map(editOf), { ...o, command: 'set' }, t))
    })

  strict(
    program
      .command('remedy')
      .argument('<file>')
      .argument('<finding>', 'rule, or rule@item')
      .description('Tries what a finding offers, through a full assessment.'),
  )
    .option('--write', 'keep it in the file')
    .option(...FIGURES)
    .action((file: string, name: string, o: Trying) => {
      const looked = look(load(file, Boolean(o.strict)), t),
        f = findingNamed(looked.assessment, name, 'remedy'),
        set = f.remedies.find(r => r.do === 'set')
      if (set?.do !== 'set')
        throw new Refusal(
          `remedy: ${name} offers no value to set${f.remedies.length ? `; it says: ${f.remedies.map(r => filled(r.says, f, o.units)).join(' ')}` : ''}`,
        )
      if (!o.json) t.out(filled(set.says, f, o.units))
      code = outcomeExit(change(file, remedyEdits(set), { ...o, command: 'remedy', finding: f, looked }, t))
    })

  strict(
    program
      .command('modules')
      .argument('<file>')
      .argument('<table>', 'CSV of a module tester, one row for each module')
      .description('Tries the readings of a module tester: fills the salvaged modules, found again by their serial numbers.'),
  )
    .option('--write', 'keep them in the file')
    .option(...FIGURES)
    .action((file: string, table: string, o: Trying) => {
      const edits = moduleEdits(table, bytesOf(table, 'a CSV table of a module tester'), load(file, Boolean(o.strict)).model)
      code = outcomeExit(change(file, edits, { ...o, command: 'modules' }, t))
    })

  strict(
    program
      .command('coast-down')
      .argument('<file>')
      .argument('<logs...>', 'CSV logs with time and speed; one run or several in each')
      .description('Tries a logged coast-down: finds the runs in neutral and fills the speed steps.'),
  )
    .option('--write', 'keep them in the file')
    .option(...FIGURES)
    .action((file: string, logs: string[], o: Trying) => {
      const { edits, found } = coastDownEdits(
        logs.map(name => ({ name, bytes: bytesOf(name, 'a CSV log') })),
        load(file, Boolean(o.strict)).model,
      )
      if (!o.json) for (const line of [...found, '']) t.out(line)
      code = outcomeExit(change(file, edits, { ...o, command: 'coast-down' }, t))
    })

  strict(
    program
      .command('accept')
      .argument('<file>')
      .argument('<finding>', 'rule, or rule@item')
      .description('Takes responsibility for a finding that is not sound. It lapses when what it rests on changes.'),
  )
    .requiredOption('--by <name>', 'who accepts it')
    .requiredOption('--reason <words>', 'why it may stay so')
    .requiredOption('--scope <words>', 'what it holds for')
    .requiredOption('--date <yyyy-mm-dd>', 'the day')
    .option('--write', 'keep it in the file')
    .option(...FIGURES)
    .action((file: string, name: string, o: Trying & { by: string; reason: string; scope: string; date: string }) => {
      const looked = look(load(file, Boolean(o.strict)), t),
        f = findingNamed(looked.assessment, name, 'accept')
      code = outcomeExit(change(file, [acceptance(f, o)], { ...o, command: 'accept', finding: f, looked }, t))
    })

  strict(
    program
      .command('does-not-apply')
      .argument('<file>')
      .argument('<finding>', 'rule, or rule@item')
      .description(
        'Says that a finding is no matter of this car. It stays in view, counted by itself, and lapses when what it rests on changes.',
      ),
  )
    .requiredOption('--by <name>', 'who says so')
    .requiredOption('--reason <words>', 'why it does not apply')
    .requiredOption('--date <yyyy-mm-dd>', 'the day')
    .option('--write', 'keep it in the file')
    .option(...FIGURES)
    .action((file: string, name: string, o: Trying & SettingAside) => {
      const looked = look(load(file, Boolean(o.strict)), t),
        f = findingNamed(looked.assessment, name, 'does-not-apply')
      code = outcomeExit(change(file, [settingAside(f, o)], { ...o, command: 'does-not-apply', finding: f, looked }, t))
    })

  strict(
    program
      .command('take-back')
      .argument('<file>')
      .argument('<finding>', 'rule, or rule@item')
      .description('Takes back what was said of a finding by hand: that it is accepted, or that it does not apply.'),
  )
    .option('--write', 'keep it in the file')
    .option(...FIGURES)
    .action((file: string, name: string, o: Trying) => {
      const looked = look(load(file, Boolean(o.strict)), t),
        f = findingNamed(looked.assessment, name, 'take-back')
      code = outcomeExit(change(file, takingBack(f), { ...o, command: 'take-back', finding: f, looked }, t))
    })

  shownCommands(program, strict, t)
  conceptsCommand(program, units(), t, c => {
    code = c
  })

  arrangeCommand(program, units(), t, c => {
    code = c
  })
  circuitCommand(program, units(), t, c => {
    code = c
  })

  program
    .command('parts')
    .argument('[class]', 'class of parts, or words that describe one; without it the classes are listed')
    .description('The catalogue: the parts of a class with their figures, and how each is known.')
    .option('--json', 'machine-readable output')
    .action((words: string | undefined, o: { json?: boolean }) => {
      if (words === undefined) return o.json ? print(t, classesJson()) : printClasses(t)
      const found = partsOf(words)
      return o.json ? print(t, found) : printParts(found, t)
    })
  shelfCommand(program, t)
  scanCommand(program, units(), t, c => {
    code = c
  })
  program
    .command('schema')
    .description('The JSON Schema of the conversion file, for editors.')
    .action(() => print(t, jsonSchema(SCHEMA)))
  program
    .command('serve')
    .description('The workbench on this machine: saved conversions with every revision, for the browser.')
    .option('--data <dir>', 'data folder; otherwise AMPWRIGHT_DATA, or the usual place of the system')
    .option('--port <n>', 'port; otherwise 4747 or the next free one', port)
    .option('--open', 'open it in the browser')
    .action(async (o: Serving) => serve(o, t))
  program
    .command('completion')
    .argument('<shell>', 'bash, zsh or fish')
    .description('A script that completes commands in a shell.')
    .action((shell: string) => t.out(completion(shell, program)))
  program
    .command('new')
    .argument('[name]', 'name of the car')
    .description('Starts a conversion file; asks on a terminal for what the flags leave out.')
    .option('--engine <position>', `engine position: ${CHOICES.engine.join(', ')}`)
    .option('--driven <wheels>', `driven wheels: ${CHOICES.driven.join(', ')}`)
    .option('--body <class>', `body: ${CHOICES.body.join(', ')}`)
    .option('--rules <set>', `rule set: ${CHOICES.rules.join(', ')}`)
    .option('--weight <mass>', 'mass as weighed')
    .option('--out <file>', 'where to write it')
    .action(async (name: string | undefined, o: Start) => {
      const file = await newConversion({ ...o, ...(name === undefined ? {} : { name }) }, t.out)
      t.out(`Wrote ${file}. Next: ampwright assess ${file}`)
    })

  try {
    await program.parseAsync(['node', 'ampwright', ...args])
    return code
  } catch (e) {
    if (e instanceof CommanderError) return e.exitCode === 0 ? 0 : 2
    if (e instanceof Refusal) {
      t.err(e.message)
      return 2
    }
    throw e
  }
}

function port(text: string): number {
  const n = Number(text)
  if (!Number.isInteger(n) || n < 0 || n > 65_535)
    throw new InvalidArgumentError('a whole number from 1 to 65535 is wanted, or 0 for any free one.')
  return n
}

function depth(text: string): number {
  const n = Number(text)
  if (!Number.isInteger(n) || n < 0) throw new InvalidArgumentError('a whole number of steps is wanted.')
  return n
}
