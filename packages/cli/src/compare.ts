import type { System } from '@ampwright/conversion'
import type { Assessment } from '@ampwright/engine'
import { differences, headlineIds, headlineRow, MARKS, type Row, rowOf, shownRows, turned } from '@ampwright/workbench'
import { colours, columns, padded, type Terminal, widthOf, wrapped } from './terminal.ts'

/** Headline and findings side by side; the other figures only where they are asked for, else their number. */
export function printComparison(
  a: Assessment,
  b: Assessment,
  names: readonly [string, string],
  t: Terminal,
  system: System,
  all: boolean,
): void {
  const k = colours(t),
    found = turned(a, b),
    view = headlineIds(a, b),
    rows = shownRows(differences(a, b), system)
  t.out(k.bold(`${names[0]} → ${names[1]}`))
  if (found.length === 0 && rows.length === 0) return t.out('No difference.')
  t.out('')
  for (const line of sideBySide(
    view.map(id => rowOf(headlineRow(id, a, b), system)),
    t.width,
  ))
    t.out(line)
  if (found.length) {
    t.out('')
    t.out(k.bold('Findings'))
    for (const f of found)
      for (const line of wrapped(
        `${f.before ? `${MARKS[f.before]} ${f.before}` : 'not asked'} → ${f.after ? `${MARKS[f.after]} ${f.after}` : 'not asked'}  ${f.harm}  ${f.title}${f.item ? ` (${f.item})` : ''}`,
        t.width,
        '  ',
      ))
        t.out(f.after === 'failing' ? k.red(line) : f.before === 'failing' ? k.green(line) : line)
  }
  const others = rows.filter(r => !r.ids.every(id => view.includes(id)))
  if (others.length === 0) return
  t.out('')
  if (!all)
    return t.out(
      k.dim(others.length === 1 ? 'One other figure moves: --figures.' : `${others.length} other figures move: --figures lists them.`),
    )
  t.out(k.bold('Figures'))
  for (const line of sideBySide(
    others.map(r => r.row),
    t.width,
  ))
    t.out(line)
}

/** Rows in columns; where the terminal is too narrow, the figures stand below their label. */
function sideBySide(rows: readonly Row[], width: number): readonly string[] {
  const widest = [0, 1, 2, 3].map(i => Math.max(0, ...rows.map(r => widthOf(r[i] as string))))
  const values = (widest[1] as number) + (widest[2] as number) + (widest[3] as number) + 4
  if ((widest[0] as number) + 2 + values <= width) return columns(rows, width, 1)
  return rows.flatMap(([label, before, after, change]) => [
    ...wrapped(label, width, '  '),
    ...(values + 2 <= width
      ? [`  ${[before, after, change].map((v, i) => padded(v, widest[i + 1] as number, true)).join('  ')}`.trimEnd()]
      : wrapped(`  ${before} → ${after}${change ? `  (${change})` : ''}`, width, '  ')),
  ])
}
