import type { System } from '@ampwright/conversion'
import type { Figure, Outcome } from '@ampwright/engine'
import { type Concept, type Concepts, headed, MARKS, type Stop, shown, shownNumber, type Verdict } from '@ampwright/workbench'
import { type SideRow, sideBySide } from './side-by-side.ts'
import { colours, type Terminal, wrapped } from './terminal.ts'

/** Every concept of a car on the terminal: the verdict, the figures side by side, then what each does to the car and what it leaves open. */
export function printConcepts(all: Concepts, t: Terminal, system: System): void {
  const k = colours(t),
    say = (text: string, indent = '  '): void => wrapped(text, t.width, indent).forEach(line => t.out(line))
  const head = (text: string): void => {
    t.out('')
    for (const line of wrapped(text, t.width, '  ')) t.out(k.bold(line))
  }
  for (const line of verdictLines(all.verdict, system)) say(line)
  for (const g of all.asked) say(`◌ ${headed(g.label)} is asked first: ${g.path}`)
  for (const s of all.skipped) say(`◌ ${s.id}, ${s.title}: ${s.why}.`)
  if (all.concepts.length === 0) return
  t.out('')
  for (const line of sideBySide(
    all.concepts.map(c => c.id),
    rowsOf(all.concepts, system),
    t.width,
  ))
    t.out(line)
  for (const c of all.concepts) {
    head(`${c.id}: ${c.title}`)
    for (const a of c.alters) say(`${a.how}: ${a.says}`)
    for (const f of c.failing)
      say(`▲ ${f.harm} ${f.title}${f.item ? ` (${f.item})` : ''}${f.planned ? '; rests on values of a class' : ''}`)
    if (c.lighter) say(lighterLine(c.lighter, system))
    for (const u of c.unsearched) say(`◌ no goal of ${u.goal} can be answered: ${u.planned} is planned`)
    if (c.leftOut.length) say(`not counted: ${c.leftOut.map(l => l.what).join('; ')}`)
  }
  rules(all.concepts, say, head)
  head('Hours')
  say('The same band for every concept: no figure is known that tells them apart (common practice).')
  t.out('')
  say(
    `${all.trials} designs tried, ${all.assessments} assessed in full. Parts are of a class, not of a maker; whether they fit their places has not been looked at. concepts FILE --take ID tries one, --write keeps it.`,
    '',
  )
}

function stopLine(s: Stop, system: System): string {
  const says = (v: number | undefined): string => (v === undefined ? '' : shownNumber(v, s.kind, s.unit ?? '', system))
  const numbers = s.found === undefined ? (s.says ? `: ${s.says}` : '') : `: ${says(s.found)}, ${s.side} ${says(s.limit)}`
  return `▲ ${s.concept}, ${s.why}: ${s.title}${s.item ? ` (${s.item})` : ''}${numbers}`
}
function verdictLines(v: Verdict, system: System): readonly string[] {
  const stops = v.stops.map(s => stopLine(s, system))
  if (v.worth === 'not worth converting') return ['Not worth converting for this brief: every concept breaks a limit.', ...stops]
  if (v.worth === 'cannot be said') return [`Whether it is worth converting cannot be said: ${v.why}.`, ...stops]
  return [`Nothing known rules out ${v.concepts.join(', ')}.`, ...stops]
}

/** What the permitted masses leave of the range: the way out for somebody who can live with less. */
function lighterLine(l: NonNullable<Concept['lighter']>, system: System): string {
  if (!l.pack) return 'no pack of the catalogue stays within the permitted masses'
  const far = l.ranges.map(r => `${shownNumber(r.value, 'distance', 'm', system)} (${r.trip})`).join(', ')
  return `within the permitted masses at best: ${l.pack.label}${far ? `, range ${far}` : ''}`
}
function rowsOf(all: readonly Concept[], system: System): readonly SideRow[] {
  const roles = [...new Set(all.flatMap(c => c.parts.map(p => p.role)))]
  const partOf = (c: Concept, role: string): string =>
    c.parts
      .filter(p => p.role === role)
      .map(p => p.label)
      .join('; ')
  return [
    ...roles.map(role => ({ label: headed(role), cells: all.map(c => partOf(c, role)) })),
    ...headlineCells(all, system),
    { label: 'Seats that may be used', cells: all.map(c => figureOf(c, 'seats.usable', system)) },
    { label: 'Parts cost', cells: all.map(c => costCell(c, system)) },
    { label: 'Hours', cells: all.map(c => `${c.hours.low} to ${c.hours.high} h, ${c.hours.for}`) },
    { label: 'Findings', cells: all.map(c => countsCell(c.counts)) },
    { label: 'Still asked', cells: all.map(c => `${c.gaps.length} values; ${c.planned.length} only planned with`) },
  ]
}
/** Lines of the headline, in the order of the first concept that has them; what only one car can tell stays empty in the others. */
function headlineCells(all: readonly Concept[], system: System): readonly SideRow[] {
  const labels = [...new Set(all.flatMap(c => c.headline.map(r => labelOf(r.label))))]
  return labels
    .filter(label => label !== 'Parts cost')
    .map(label => {
      const rows = all.map(c => c.headline.find(r => labelOf(r.label) === label)),
        wanted = rows.find(r => r?.wanted)?.wanted
      return {
        label: `${label}${wanted ? `, ${wanted.side} ${shown(wanted.limit, system)}` : ''}`,
        cells: rows.map((r, i) => {
          const c = all[i] as Concept
          if (!r) return ''
          const mark = r.outcome ? `${MARKS[r.outcome]} ` : ''
          if (!r.figure) return `${mark}missing: ${r.missing.map(g => g.label).join('; ') || 'not answered'}`
          const of = r.label.startsWith('Room, ') ? ` (${r.label.replace(/^Room, /, '')})` : ''
          return `${mark}${banded(r.figure, c, system)}${of}`
        }),
      }
    })
}
/** A range by its low end first, anything else with its ±. */
function banded(f: Figure, c: Concept, system: System): string {
  const half = c.assessment.halves.get(f.id)
  if (half === undefined || !f.id.startsWith('range.')) return shown(f, system, half)
  const [low, high] = [Math.max(0, f.value - half), f.value + half].map(v => shownNumber(v, f.shows, f.unit, system))
  return `${low} to ${high}`
}
/** The axle with least room is another one in each concept: one line for all. */
const labelOf = (label: string): string => (/^Room, .* axle/.test(label) ? 'Room on the worst axle' : label)

function figureOf(c: Concept, id: string, system: System): string {
  const f = c.assessment.figures.get(id)
  return f ? shown(f, system, c.assessment.halves.get(id)) : '◌'
}
function costCell({ cost }: Concept, system: System): string {
  const euros = (v: number): string => shownNumber(Math.round(v / 10) * 10, 'money', '€', system)
  const over = cost.budget === undefined ? '' : cost.low > cost.budget ? '▲ ' : cost.high > cost.budget ? '◐ ' : ''
  return `${over}${euros(cost.low)} to ${euros(cost.high)}${cost.without.length ? `, without ${cost.without.length} with no price yet` : ''}`
}
const SHOWN: readonly Outcome[] = ['failing', 'unanswered', 'marginal', 'sound']
const countsCell = (counts: Concept['counts']): string => SHOWN.flatMap(o => (counts[o] ? [`${MARKS[o]} ${counts[o]}`] : [])).join('  ')

function rules(all: readonly Concept[], say: (s: string) => void, head: (s: string) => void): void {
  const first = all[0] as Concept
  if (first.rules.length === 0) return
  head('What the rule set says before a part is bought')
  for (const row of first.rules) {
    const marks = all.map(c => c.rules.find(r => r.key === row.key)?.outcome).map(o => (o ? MARKS[o] : ' '))
    const judged = marks.some(m => m !== ' ') ? `${marks.join(' ')}  ` : ''
    say(`${judged}${row.about}: ${row.says} (${[row.from, row.work, row.clause].filter(Boolean).join(', ')})`)
  }
}
