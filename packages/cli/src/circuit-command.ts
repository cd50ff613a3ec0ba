import type { System } from '@ampwright/conversion'
import { circuitEdits, Refusal } from '@ampwright/workbench'
import type { Command, Option } from 'commander'
import { change } from './change.ts'
import { load } from './load.ts'
import type { Terminal } from './terminal.ts'

/** Adds the command that lays out a high-voltage circuit for the boxes, units and users a file has. */
export function circuitCommand(program: Command, units: Option, t: Terminal, exit: (code: number) => void): void {
  program
    .command('circuit')
    .argument('<file>', 'conversion file')
    .description(
      'Lays out a high-voltage circuit for the boxes, drive units and users of the car: before and after. Sizes and lengths are left open.',
    )
    .option('--write', 'keeps it in the file')
    .option('--figures', 'list every figure that moves')
    .addOption(units)
    .option('--json', 'machine-readable output')
    .action((file: string, o: { units: System; write?: boolean; figures?: boolean; json?: boolean }) => {
      if (file === '-') throw new Refusal('circuit: standard input is read once; give a file to lay a circuit out for')
      const { findings } = change(file, circuitEdits(load(file, false).model), { ...o, command: 'circuit' }, t)
      exit(findings.some(f => f.outcome === 'failing') ? 1 : 0)
    })
}
