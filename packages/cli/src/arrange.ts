import { ARRANGEMENT_HEADS, type ArrangementWords, type ArrangingView, headed } from '@ampwright/workbench'
import { colours, columns, type Terminal, widthOf, wrapped } from './terminal.ts'

/** What a search for an arrangement has found, on the terminal: in columns where they fit, else one below the other. */
export function printArranging({ arrangements, told, seed, steps }: ArrangingView, t: Terminal): void {
  const k = colours(t),
    say = (text: string): void => wrapped(text, t.width, '  ').forEach(line => t.out(line))
  if (arrangements.length) {
    const rows = [['', ...ARRANGEMENT_HEADS.map(([, head]) => SHORT[head] ?? head)], ...arrangements.map(cellsOf)]
    if (widest(rows) <= t.width) columns(rows, t.width, rows.length).forEach((line, i) => t.out(i === 0 ? k.dim(line) : line))
    else for (const a of arrangements) printOne(a, t)
    t.out('')
    for (const a of arrangements) say(`${a.number}: ${a.boxes.join(', ')}${a.best ? ` (${a.best})` : ''}`)
    t.out('')
  }
  for (const line of told) say(line)
  if (arrangements.length)
    say(`arrange FILE --seed ${seed} --steps ${steps} --take NUMBER tries one through a full assessment, --write keeps it.`)
}

const SHORT: Readonly<Record<string, string>> = { 'least left on an axle': 'axle, least left', 'centre of mass above the ground': 'height' }
const cellsOf = (a: ArrangementWords): readonly string[] => [
  String(a.number),
  ...ARRANGEMENT_HEADS.map(([key]) => (key === 'margin' && a.overloaded ? `▲ ${a.margin}` : a[key])),
]
const widest = (rows: readonly (readonly string[])[]): number =>
  (rows[0] ?? []).reduce((sum, _, i) => sum + 2 + Math.max(...rows.map(r => widthOf(r[i] ?? ''))), -2)

function printOne(a: ArrangementWords, t: Terminal): void {
  t.out(colours(t).bold(`Arrangement ${a.number}`))
  for (const [key, head] of ARRANGEMENT_HEADS)
    for (const line of wrapped(`  ${headed(head)}: ${key === 'margin' && a.overloaded ? '▲ ' : ''}${a[key]}`, t.width, '    ')) t.out(line)
}
