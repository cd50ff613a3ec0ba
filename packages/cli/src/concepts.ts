import type { System } from '@ampwright/conversion'
import { type Concepts, conceptsView } from '@ampwright/workbench'
import { sideBySide } from './side-by-side.ts'
import { colours, type Terminal, wrapped } from './terminal.ts'

/** Every concept of a car on the terminal: the verdict, the figures side by side, then what each does to the car and what it leaves open. */
export function printConcepts(all: Concepts, t: Terminal, system: System): void {
  const k = colours(t),
    v = conceptsView(all, system),
    say = (text: string, indent = '  '): void => wrapped(text, t.width, indent).forEach(line => t.out(line))
  const head = (text: string): void => {
    t.out('')
    for (const line of wrapped(text, t.width, '  ')) t.out(k.bold(line))
  }
  for (const line of [...v.verdict, ...v.asked, ...v.skipped]) say(line)
  if (v.concepts.length === 0) return
  t.out('')
  for (const line of sideBySide(
    v.concepts.map(c => c.id),
    v.rows,
    t.width,
  ))
    t.out(line)
  for (const c of v.concepts) {
    head(`${c.id}: ${c.title}`)
    for (const line of [...c.alters, ...c.failing, ...c.open]) say(line)
  }
  if (v.rules.length) head('What the rule set says before a part is bought')
  for (const line of v.rules) say(line)
  head('Hours')
  say('The same band for every concept: no figure is known that tells them apart (common practice).')
  t.out('')
  say(`${v.told} concepts FILE --take ID tries one, --write keeps it.`, '')
}
