import { formatIssue, isReadable, nearest, readWorkshop } from '@ampwright/conversion'
import { OWN_WORDS, Refusal, type ShelfLine, type ShelfView, shelfFound, shelfView } from '@ampwright/workbench'
import type { Command } from 'commander'
import { bytesOf } from './load.ts'
import { colours, type Terminal, wrapped } from './terminal.ts'

type Asked = { json?: boolean; class?: string; free?: boolean }
/** What was found on a shelf, and what is odd in its file. */
type Listed = { readonly view: ShelfView; readonly found: readonly ShelfLine[]; readonly notes: readonly string[] }

/** Adds the command that lists the shelf of a workshop file. */
export function shelfCommand(program: Command, t: Terminal): void {
  program
    .command('shelf')
    .argument('<file>', 'workshop file, or - for standard input')
    .description('The parts a workshop owns or was offered: what they are, cost, where they lie and for which car they are kept.')
    .option('--class <class>', `only parts of one class of the catalogue; ${OWN_WORDS} for what has no record`)
    .option('--free', 'only what is kept for no car')
    .option('--json', 'machine-readable output')
    .action((file: string, o: Asked) => {
      const listed = listOf(file, o)
      if (o.json)
        t.out(
          JSON.stringify(
            { workshop: listed.view.name, pieces: listed.found.map(({ stands: _, ...p }) => p), notes: listed.notes },
            null,
            2,
          ),
        )
      else print(listed, t)
    })
}

/** Reads a workshop file and finds what is asked for. Refuses a file that cannot be read, with every problem. */
function listOf(file: string, { class: only, free }: Asked): Listed {
  const name = file === '-' ? '<standard input>' : file,
    workshop = readWorkshop(bytesOf(file, 'a workshop file such as samples/ferry-lane.workshop.yaml'), { file: name })
  const lines = workshop.issues.map(formatIssue)
  if (!isReadable(workshop))
    throw new Refusal(
      `${lines.join('\n')}\n${lines.length === 1 ? 'One problem' : `${lines.length} problems`} in ${name}; nothing was listed.`,
    )
  const view = shelfView(workshop),
    classes = view.classes.map(c => c.class)
  if (only !== undefined && !classes.includes(only)) {
    const near = nearest(only, classes)
    throw new Refusal(
      `shelf: nothing of class «${only}» lies there${near ? `; did you mean ${near}?` : ';'} there are ${classes.join(', ') || 'no pieces'}`,
    )
  }
  const found = shelfFound(view.pieces, { ...(only === undefined ? {} : { class: only }), ...(free ? { kept: 'free' as const } : {}) })
  return { view, found, notes: [...lines, ...found.filter(p => p.unknown).map(p => `${p.key}: ${p.part} is not in the catalogue`)] }
}

function print({ view, found, notes }: Listed, t: Terminal): void {
  const k = colours(t)
  if (view.name) t.out(k.bold(view.name))
  const below = (text: string): readonly string[] => wrapped(text, t.width - 2).map(line => `  ${line}`)
  for (const p of found) {
    t.out('')
    for (const line of wrapped(`${k.bold(p.key)} ${p.label}${p.part === undefined ? '' : k.dim(` ${p.part}`)}`, t.width, '  ')) t.out(line)
    for (const line of [...below(factsOf(p).join(' · ')), ...(p.note === undefined ? [] : below(p.note))]) t.out(line)
  }
  t.out(`${found.length || view.name ? '\n' : ''}${summary(view, found)}`)
  for (const note of notes) for (const line of wrapped(`Note: ${note}`, t.width, '  ')) t.out(line)
}

const factsOf = (p: ShelfLine): readonly string[] => [
  ...(p.pieces === 1 ? [] : [`${p.pieces} pieces`]),
  ...(p.serial === undefined ? [] : [`serial ${p.serial}`]),
  p.price === undefined ? 'no price' : priceLine(p),
  ...(p.place === undefined ? [] : [p.place]),
  ...(p.condition === undefined ? [] : [p.condition]),
  p.reserved ? `reserved for ${p.reserved.car}` : 'free',
]

const priceLine = (p: ShelfLine): string =>
  [
    [p.price, p.pieces === 1 ? '' : 'each', p.priceIs, p.pricedOn].filter(Boolean).join(' '),
    p.from,
    p.quoteUntil && `holds until ${p.quoteUntil}`,
  ]
    .filter(Boolean)
    .join(', ')

function summary({ pieces }: ShelfView, found: readonly ShelfLine[]): string {
  if (pieces.length === 0) return 'Nothing lies on this shelf yet.'
  const free = pieces.filter(p => p.reserved === undefined).length,
    all = `${pieces.length} ${pieces.length === 1 ? 'entry' : 'entries'}, ${free} free`
  return found.length === pieces.length ? `${all}.` : `${found.length} of ${all}.`
}
