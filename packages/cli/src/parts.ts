import { findParts, type Part, type PriceBand, partClasses } from '@ampwright/catalogue'
import { nearest } from '@ampwright/conversion'
import { Refusal } from '@ampwright/workbench'
import { colours, columns, type Terminal, wrapped } from './terminal.ts'

/** Every class of parts, for the list of the catalogue. */
export const classesJson = (): readonly object[] =>
  partClasses.map(c => ({ class: c.class, label: c.label, parts: c.parts.length, ...(c.prices ? { prices: c.prices } : {}) }))

export function printClasses(t: Terminal): void {
  const rows = partClasses.map(c => [c.class, `${c.parts.length}`, c.label] as const)
  for (const line of columns(rows, t.width, 3)) t.out(line)
  t.out('')
  for (const line of wrapped('ampwright parts CLASS lists the parts of one; a part is used in a file by its name: part: NAME.', t.width))
    t.out(line)
}

/** The parts of a class; else those that are named or described by the words. */
export function partsOf(words: string): readonly Part[] {
  const found = partClasses.find(c => c.class === words)?.parts ?? findParts(words)
  if (found.length) return found
  const near = nearest(
    words,
    partClasses.map(c => c.class),
  )
  throw new Refusal(`parts: nothing is called «${words}»${near ? `; did you mean ${near}?` : '.'} \`ampwright parts\` lists the classes.`)
}

export function printParts(parts: readonly Part[], t: Terminal): void {
  const k = colours(t)
  for (const p of parts) {
    const facts = Object.entries(p.fields).map(([key, f]) => `${key} ${f.text} (${f.source ?? f.mark})`),
      below = (text: string): readonly string[] => wrapped(text, t.width - 2).map(line => `  ${line}`)
    t.out(k.bold(p.id))
    for (const line of [...below(p.label), ...below([...facts, ...(p.price ? [priceText(p.price)] : [])].join(' · '))]) t.out(line)
    if (p.remark) for (const line of below(p.remark)) t.out(k.dim(line))
  }
}
const priceText = (p: PriceBand): string => `price ${p.low} to ${p.high} €${p.per ? ` for ${p.per}` : ''} (${p.when}, common practice)`
