import { displayUnit, type System } from '@ampwright/conversion'
import { csvOf, drawingsOf } from '@ampwright/drawing'
import { nearestId, planDxf, Refusal, tableJson } from '@ampwright/workbench'
import type { Command } from 'commander'
import { chosenSeries, drawTrace } from './chart.ts'
import { assessWithProgress } from './judged.ts'
import { load } from './load.ts'
import { printTable } from './table.ts'
import type { Terminal } from './terminal.ts'

type Shared = { units: System; json?: boolean; strict?: boolean }
/** Pixels across a drawing that goes into a file. */
const WIDE = 900

const print = (t: Terminal, x: unknown): void => t.out(JSON.stringify(x, (_, v) => (v instanceof Float64Array ? [...v] : v), 2))
/** Says that an id names nothing, and what there is. */
function refused(what: string, id: string, known: readonly string[]): Refusal {
  const near = nearestId(id, known)
  return new Refusal(
    `${what}: no ${what === 'chart' ? 'trace' : what} is called «${id}»${near ? `; did you mean ${near}?` : ';'} there are ${known.join(', ') || 'none'}`,
  )
}

/** What can be looked at beside figures and findings: traces, tables, drawings. */
export function shownCommands(program: Command, strict: (c: Command) => Command, t: Terminal): void {
  strict(
    program
      .command('chart')
      .argument('<file>')
      .argument('[trace]', 'id of a trace; without it all are listed')
      .description('A trace drawn on the terminal, such as pull against road speed.'),
  )
    .option('--series <names>', 'series to draw, between commas; * stands for anything')
    .action((file: string, id: string | undefined, o: Shared & { series?: string }) => {
      const a = assessWithProgress(load(file, Boolean(o.strict)), t),
        trace = id === undefined ? undefined : a.traces.get(id)
      if (id !== undefined && !trace) {
        throw refused('chart', id, [...a.traces.keys()])
      }
      if (!trace)
        return o.json
          ? print(
              t,
              [...a.traces.values()].map(x => ({ id: x.id, label: x.label })),
            )
          : [...a.traces.values()].forEach(x => t.out(`${x.id}  ${x.label}`))
      if (o.json) print(t, trace)
      else drawTrace(trace, chosenSeries(trace, o.series), t, o.units)
    })

  strict(
    program
      .command('table')
      .argument('<file>')
      .argument('[table]', 'id of a table; without it all are listed')
      .description('A table, such as what is asked before parts are bought, the goals, or where the energy goes.'),
  ).action((file: string, id: string | undefined, o: Shared) => {
    const a = assessWithProgress(load(file, Boolean(o.strict)), t),
      table = id === undefined ? undefined : a.tables.get(id)
    if (id !== undefined && !table) {
      throw refused('table', id, [...a.tables.keys()])
    }
    if (!table)
      return o.json
        ? print(
            t,
            [...a.tables.values()].map(x => ({ id: x.id, label: x.label, rows: x.rows.length })),
          )
        : [...a.tables.values()].forEach(x => t.out(`${x.id}  ${x.label}`))
    if (o.json) print(t, tableJson(table))
    else printTable(table, a, t, o.units)
  })

  strict(
    program
      .command('drawing')
      .argument('<file>')
      .argument('[drawing]', 'id of a drawing; without it all are listed')
      .description('A drawing as SVG, such as the car from above to scale, ready to be saved to a file and printed.'),
  )
    .option('--csv', 'what it shows as comma-separated values')
    .option('--words', 'what it shows in words')
    .option('--dxf', 'a battery box for a drawing program, in millimetres (DXF)')
    .action((file: string, id: string | undefined, o: Shared & { csv?: boolean; words?: boolean; dxf?: boolean }) => {
      const all = drawingsOf(assessWithProgress(load(file, Boolean(o.strict)), t)),
        drawing = all.find(d => d.id === id)
      if (id === undefined)
        return o.json
          ? print(
              t,
              all.map(({ id, kind, label }) => ({ id, kind, label })),
            )
          : all.forEach(d => t.out(`${d.id}  ${d.label}`))
      if (!drawing)
        throw refused(
          'drawing',
          id,
          all.map(d => d.id),
        )
      if (o.dxf) {
        const plan = drawing.plan?.()
        if (!plan) throw new Refusal(`drawing: ${drawing.id} is not to scale in lines alone; --dxf takes battery boxes`)
        return t.out(planDxf(drawing.label, plan).trimEnd())
      }
      const picture = drawing.draw({
        width: WIDE,
        standalone: true,
        units: (kind, greatest) => displayUnit(kind, o.units, greatest),
      })
      if (o.json)
        print(t, { id: drawing.id, kind: drawing.kind, label: picture.label, text: picture.text, table: picture.table(), svg: picture.svg })
      else t.out(o.csv ? csvOf(picture).trimEnd() : o.words ? picture.text : picture.svg)
    })
}
