import { type Assessment, FORMULAS } from '@ampwright/engine'
import { nearest, type System } from '@ampwright/conversion'
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander'
import { printAssessment } from './assess.ts'
import { cardJson, compute, formulaNamed, inputsOf, printCard, printChapters } from './handbook.ts'
import { assessmentJson } from './json.ts'
import { assessWithProgress } from './judged.ts'
import { load, Refusal } from './load.ts'
import { colours, type Terminal } from './terminal.ts'
import { workingTree } from './working-tree.ts'

const VERSION = '0.1.0'
type Shared = { units: System; json?: boolean; strict?: boolean }

const terminal = (): Terminal => ({
  width: Math.max(40, Math.min(process.stdout.columns ?? 100, 140)),
  colour: Boolean(process.stdout.isTTY) && !process.env['NO_COLOR'],
  out: line => process.stdout.write(`${line}\n`),
  err: line => process.stderr.write(`${line}\n`),
})

const print = (t: Terminal, x: unknown): void => t.out(JSON.stringify(x, (_, v) => (v instanceof Float64Array ? [...v] : v), 2))
const outcomeExit = (a: Assessment): number => (a.findings.some(f => f.outcome === 'failing') ? 1 : 0)

/** Runs one command line. Gives the exit code: 0 nothing failing, 1 something failing, 2 wrong use or unreadable file. */
export async function run(args: readonly string[], t: Terminal = terminal()): Promise<number> {
  let code = 0
  const program = new Command('ampwright').version(VERSION).description('Workbench for converting petrol and diesel cars to battery-electric drive.').exitOverride().configureOutput({ writeOut: s => t.out(s.trimEnd()), writeErr: s => t.err(s.trimEnd()) })
  const units = (): Option => new Option('--units <system>', 'units of the output').choices(['metric', 'us', 'uk']).default('metric')
  const strict = (c: Command): Command => c.option('--strict', 'assume nothing: class values stay gaps').addOption(units()).option('--json', 'machine-readable output')

  strict(program.command('assess').argument('<file>', 'conversion file, or - for standard input').description('Everything the engine knows about a conversion: figures, findings, what is missing.'))
    .option('--traces <ids...>', 'with --json: traces to include')
    .action((file: string, o: Shared & { traces?: string[] }) => {
      const c = load(file, Boolean(o.strict)), a = assessWithProgress(c, t)
      const unknown = (o.traces ?? []).filter(id => !a.traces.has(id))
      if (unknown.length) throw new Refusal(`assess: no trace is called ${unknown.join(', ')}; there are ${[...a.traces.keys()].join(', ') || 'none'}`)
      if (o.json) print(t, assessmentJson(c, a, o.traces))
      else printAssessment(c, a, t, o.units)
      code = outcomeExit(a)
    })

  strict(program.command('why').argument('<file>').argument('<figure>', 'id of a figure, as assess prints it').description('The working of a figure, down to the typed facts.'))
    .option('--depth <n>', 'how far to unfold', depth)
    .action((file: string, id: string, o: Shared & { depth?: number }) => {
      const c = load(file, Boolean(o.strict)), a = assessWithProgress(c, t), figure = a.figures.get(id)
      if (!figure) {
        const near = nearest(id, [...a.figures.keys()])
        throw new Refusal(`why: «${id}» is no figure of this conversion${near ? `; did you mean ${near}?` : ''}. \`ampwright assess ${file}\` lists them.`)
      }
      const k = colours(t)
      if (o.json) print(t, { id, ...((assessmentJson(c, a) as { figures: Record<string, object> }).figures[id] as object) })
      else for (const line of workingTree(figure, a, o.units, { quiet: k.dim, strong: k.bold }, o.depth)) t.out(line)
    })

  program.command('handbook').argument('[formula]').description('Every formula, usable alone.').option('--input <name=value...>', 'inputs, with units').addOption(units()).option('--json', 'machine-readable output')
    .action((id: string | undefined, o: Shared & { input?: string[] }) => {
      if (id === undefined) return o.json ? print(t, FORMULAS.map(({ chapter, formula }) => cardJson(formula, chapter))) : printChapters(t)
      const f = formulaNamed(id)
      if (!o.input?.length) return o.json ? print(t, cardJson(f, FORMULAS.find(x => x.formula === f)?.chapter ?? '')) : printCard(f, t, o.units)
      const figures = compute(f, inputsOf(f, o.input)), k = colours(t)
      const empty: Assessment = { figures: new Map(), halves: new Map(), traces: new Map(), tables: new Map(), findings: [], gaps: [], headline: [] }
      for (const figure of figures) {
        const lines = workingTree(figure, empty, o.units, { quiet: k.dim, strong: k.bold })
        if (o.json) print(t, { ...(figures.length > 1 ? { result: figure.because.result } : {}), value: figure.value, unit: figure.unit, working: lines })
        else for (const line of lines) t.out(line)
      }
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

function depth(text: string): number {
  const n = Number(text)
  if (!Number.isInteger(n) || n < 0) throw new InvalidArgumentError('a whole number of steps is wanted.')
  return n
}
