import { dirname } from 'node:path'
import type { System } from '@ampwright/conversion'
import { type Concepts, concepts, conceptsJson, nearestId, Refusal } from '@ampwright/workbench'
import type { Command, Option } from 'commander'
import { attachmentsIn } from './attachments.ts'
import { change } from './change.ts'
import { printConcepts } from './concepts.ts'
import { bytesOf, loadText } from './load.ts'
import type { Terminal } from './terminal.ts'

type Asked = { units: System; json?: boolean; take?: string; write?: boolean; figures?: boolean }

/** Adds the command that makes concepts of a donor car and brief, and takes one of them over. */
export function conceptsCommand(program: Command, units: Option, t: Terminal, exit: (code: number) => void): void {
  program
    .command('concepts')
    .argument('<file>', 'conversion file, or - for standard input')
    .description('Ways to convert this car for this brief, worked out side by side. What the file plans already is put aside.')
    .option('--take <id>', 'tries one of them: before and after')
    .option('--write', 'with --take: keeps it in the file')
    .option('--figures', 'with --take: list every figure that moves')
    .addOption(units)
    .option('--json', 'machine-readable output')
    .action((file: string, o: Asked) => {
      if (o.write && o.take === undefined) throw new Refusal('concepts: --write keeps the concept that --take names; name one')
      const all = made(file, t)
      if (o.take === undefined) {
        if (o.json) t.out(JSON.stringify(conceptsJson(all), null, 2))
        else printConcepts(all, t, o.units)
        return exit(all.verdict.worth === 'not worth converting' ? 1 : 0)
      }
      const concept = all.concepts.find(c => c.id === o.take)
      if (!concept) {
        const ids = all.concepts.map(c => c.id),
          near = nearestId(o.take, ids)
        throw new Refusal(
          `concepts: no concept is called «${o.take}»${near ? `; did you mean ${near}?` : ';'} there are ${ids.join(', ') || 'none'}`,
        )
      }
      const a = change(file, concept.edits, { ...o, command: 'concepts' }, t)
      exit(a.findings.some(f => f.outcome === 'failing') ? 1 : 0)
    })
}

/** All concepts of a file; on a terminal it says what it is at when that takes over a second. */
function made(file: string, t: Terminal): Concepts {
  const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytesOf(file))
  loadText(text, file, false, 'no concept was made')
  const steps = concepts(text, file === '-' ? undefined : attachmentsIn(dirname(file))),
    began = Date.now()
  for (let shown = false; ; ) {
    const step = steps.next()
    if (step.done) {
      if (shown) process.stderr.write('\r\u001b[K')
      return step.value
    }
    if (process.stderr.isTTY && Date.now() - began > 1000) {
      shown = true
      process.stderr.write(
        `\r\u001b[K${`Trying ${step.value.concept}: ${step.value.did}, ${step.value.trials} designs so far`.slice(0, t.width - 1)}`,
      )
    }
  }
}
