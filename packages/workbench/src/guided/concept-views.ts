import type { System } from '@ampwright/conversion'
import type { Figure, Outcome } from '@ampwright/engine'
import { MARKS } from '../marks.ts'
import { headed, shown, shownNumber } from '../shown.ts'
import type { Concept } from './concept.ts'
import type { Concepts } from './concepts.ts'
import type { Stop, Verdict } from './verdict.ts'

/** A line of concepts side by side: a cell for each. */
export type ConceptRow = { readonly label: string; readonly cells: readonly string[] }
/** One concept in words: what it does to the car, what stands in the way, what it leaves open. */
export type ConceptWords = {
  readonly id: string
  readonly title: string
  readonly alters: readonly string[]
  readonly failing: readonly string[]
  readonly open: readonly string[]
  readonly edits: Concept['edits']
}
/** Concepts as terminal and screen show them: plain data, texts ready to print. */
export type ConceptsView = {
  readonly worth: Verdict['worth']
  readonly verdict: readonly string[]
  readonly asked: readonly string[]
  readonly skipped: readonly string[]
  readonly rows: readonly ConceptRow[]
  readonly concepts: readonly ConceptWords[]
  readonly rules: readonly string[]
  readonly told: string
}
export const conceptsView = (all: Concepts, system: System): ConceptsView => ({
  worth: all.verdict.worth,
  verdict: verdictLines(all.verdict, titlesOf(all), system),
  asked: all.asked.map(g => `◌ ${headed(g.label)} is asked first`),
  skipped: all.skipped.map(s => `◌ ${s.title}: ${s.why}.`),
  rows: rowsOf(all.concepts, system),
  concepts: all.concepts.map(c => ({
    id: c.id,
    title: c.title,
    alters: c.alters.map(a => `${a.how}: ${a.says}`),
    failing: c.failing.map(f => `▲ ${f.harm} ${f.title}${f.item ? ` (${f.item})` : ''}${f.planned ? '; rests on values of a class' : ''}`),
    open: [
      ...(c.lighter ? [lighterLine(c.lighter, system)] : []),
      ...c.unsearched.map(u => `◌ no goal of ${u.goal} can be answered: ${u.planned} is planned`),
      ...(c.leftOut.length ? [`not counted: ${c.leftOut.map(l => l.what).join('; ')}`] : []),
    ],
    edits: c.edits,
  })),
  rules: ruleLines(all.concepts),
  told: `${all.trials} designs tried, ${all.assessments} assessed in full. Parts are of a class, not of a maker; whether they fit their places has not been looked at.`,
})

/** What a concept is called, by its id. */
type TitleOf = (id: string) => string
const titlesOf = ({ concepts, skipped }: Concepts): TitleOf => {
  const titles = new Map([...concepts, ...skipped].map(({ id, title }) => [id, title]))
  return id => titles.get(id) ?? id
}

function stopLine(s: Stop, title: TitleOf, system: System): string {
  const says = (v: number | undefined): string => (v === undefined ? '' : shownNumber(v, s.kind, s.unit ?? '', system))
  const numbers = s.found === undefined ? (s.says ? `: ${s.says}` : '') : `: ${says(s.found)}, ${s.side} ${says(s.limit)}`
  return `▲ ${title(s.concept)}, ${s.why}: ${s.title}${s.item ? ` (${s.item})` : ''}${numbers}`
}
function verdictLines(v: Verdict, title: TitleOf, system: System): readonly string[] {
  const stops = v.stops.map(s => stopLine(s, title, system))
  if (v.worth === 'not worth converting') return ['Not worth converting for this brief: every concept breaks a limit.', ...stops]
  if (v.worth === 'cannot be said') return [`Whether it is worth converting cannot be said: ${v.why}.`, ...stops]
  return [`Nothing known rules out: ${v.concepts.map(title).join('; ')}.`, ...stops]
}

/** What the permitted masses leave of the range: the way out for somebody who can live with less. */
function lighterLine(l: NonNullable<Concept['lighter']>, system: System): string {
  if (!l.pack) return 'no pack of the catalogue stays within the permitted masses'
  const far = l.ranges.map(r => `${shownNumber(r.value, 'distance', 'm', system)} (${r.trip})`).join(', ')
  return `within the permitted masses at best: ${l.pack.label}${far ? `, range ${far}` : ''}`
}
function rowsOf(all: readonly Concept[], system: System): readonly ConceptRow[] {
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
function headlineCells(all: readonly Concept[], system: System): readonly ConceptRow[] {
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

function ruleLines(all: readonly Concept[]): readonly string[] {
  return (all[0]?.rules ?? []).map(row => {
    const marks = all.map(c => c.rules.find(r => r.key === row.key)?.outcome).map(o => (o ? MARKS[o] : ' ')),
      judged = marks.some(m => m !== ' ') ? `${marks.join(' ')}  ` : ''
    return `${judged}${row.about}: ${row.says} (${[row.from, row.work, row.clause].filter(Boolean).join(', ')})`
  })
}
