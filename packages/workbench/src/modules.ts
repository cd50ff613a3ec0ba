import type { Edit } from '@ampwright/conversion'
import type { Model } from '@ampwright/engine'
import { Refusal } from './refusal.ts'
import { type TableFault, testerTable } from './salvage/tester-table.ts'

/** A module tester's table as edits of the salvaged modules of a car. Taken over whole or, with every problem named, not at all. */
export function moduleEdits(file: string, bytes: Uint8Array, model: Model): readonly Edit[] {
  const { edits, faults, more } = testerTable(bytes, model)
  if (faults.length === 0) return edits
  const lines = faults.map(f => line(file, f))
  throw new Refusal(`${lines.join('\n')}${more ? `\nand ${more} more` : ''}\nNothing of ${file} was taken over.`)
}

const line = (file: string, f: TableFault): string => {
  const place =
    f.character === undefined
      ? `${file}${f.row === undefined ? '' : ` module ${f.row} of the table,`} column ${f.column}`
      : `${file}:${f.line}:${f.character}${f.column === '' ? '' : ` ${f.column}`}`
  return `${place}: ${f.what}; found ${f.found}${f.nearest ? ` (${f.nearest}?)` : ''}; accepted ${f.accepted}`
}
