import type { Assessment, Table } from '@ampwright/engine'
import type { Mark } from '../line-chart.ts'
import { type Outcome, SHAPES } from '../picture.ts'
import { numberIn, wordsIn } from './cells.ts'

type Known = Pick<Assessment, 'figures' | 'tables'>
type Row = Table['rows'][number]

const goalsOf = ({ tables }: Known): readonly Row[] => tables.get('brief.goals')?.rows ?? []
const outcomeOf = ({ cells }: Row): Outcome => {
  const word = wordsIn(cells['outcome'])
  return word in SHAPES ? (word as Outcome) : 'unanswered'
}

/** The study that says how much pull a goal of each kind takes, as `STUDY.need@GOAL`. */
const NEEDS: Readonly<Record<string, string>> = {
  'top speed': 'top-speed',
  climb: 'climb',
  'steady speed': 'held-speed',
  'hill start': 'hill-start',
}
/** The goals of the brief in a chart of pull: what each takes at its speed. Each under its own load, trailer and weather, which need not be those of the lines. */
export function pullMarks(a: Known): readonly Mark[] {
  return goalsOf(a).flatMap((row): readonly Mark[] => {
    const kind = wordsIn(row.cells['kind']),
      need = a.figures.get(`${NEEDS[kind]}.need@${row.name}`)?.value,
      speed = kind === 'hill start' ? 0 : numberIn(row.cells['speed'])
    return need === undefined || speed === undefined ? [] : [{ x: speed, y: need, label: row.name, outcome: outcomeOf(row) }]
  })
}

/** The timed goals that start from standstill in a chart of speed over time. */
export function runMarks({ tables, figures }: Known): readonly Mark[] {
  return goalsOf({ tables, figures }).flatMap((row): readonly Mark[] => {
    const { cells, name } = row,
      to = numberIn(cells['to']),
      within = numberIn(cells['within'])
    if (wordsIn(cells['kind']) !== 'acceleration' || numberIn(cells['from']) !== 0 || to === undefined || within === undefined) return []
    return [{ x: within, y: to, label: name, outcome: outcomeOf(row) }]
  })
}
