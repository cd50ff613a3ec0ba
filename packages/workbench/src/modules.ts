import { type Edit, isTesterWord, salvageEdits } from '@ampwright/conversion'
import { isGap, type Model } from '@ampwright/engine'
import { readCsv } from '@ampwright/exchange'
import { Refusal } from './refusal.ts'

type Found = { readonly what: string; readonly found: string; readonly accepted: string; readonly nearest?: string }
const line = (place: string, { what, found, accepted, nearest }: Found): string =>
  `${place}: ${what}; found ${found}${nearest ? ` (${nearest}?)` : ''}; accepted ${accepted}`
const refusal = (file: string, lines: readonly string[], more = 0): Refusal =>
  new Refusal(`${lines.join('\n')}${more ? `\nand ${more} more` : ''}\nNothing of ${file} was taken over.`)

/** A module tester's table as edits of the salvaged modules of a car. Taken over whole or, with every problem named, not at all. */
export function moduleEdits(file: string, bytes: Uint8Array, { pack }: Model): readonly Edit[] {
  const answer = readCsv(bytes, { words: isTesterWord, empty: 'nan' })
  if ('issues' in answer)
    throw refusal(
      file,
      answer.issues.map(i => line(`${file}:${i.line}:${i.column}${i.path === '' ? '' : ` ${i.path}`}`, i)),
      answer.more,
    )
  const known = Object.fromEntries(
    Object.entries(pack.salvage).map(([name, { serial }]) => [name, isGap(serial) ? undefined : serial.value] as const),
  )
  const { edits, problems } = salvageEdits(answer.csv, known)
  if (problems.length)
    throw refusal(
      file,
      problems.map(p => line(`${file} ${p.row === undefined ? '' : `module ${p.row} of the table, `}column ${p.column}`, p)),
    )
  return edits
}
