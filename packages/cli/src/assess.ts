import type { Conversion, System } from '@ampwright/conversion'
import { type Assessment, type Finding, findingId, type Gap, headlineRows, STUDIES } from '@ampwright/engine'
import {
  asideText,
  asksNothing,
  COUNTED,
  countedAs,
  filled,
  headed,
  MARKS,
  requirementLine,
  shown,
  unheededText,
} from '@ampwright/workbench'
import { colours, columns, type Terminal, widthOf, wrapped } from './terminal.ts'

/** The whole assessment on the terminal: headline, what stands in the way, figures by stage, what is still asked. */
export function printAssessment(c: Conversion, a: Assessment, t: Terminal, system: System, figures: boolean): void {
  const k = colours(t),
    car = c.model.car
  t.out(k.bold('value' in car ? car.value : 'A conversion without a name yet'))
  printCounts(a, t)
  printHeadline(a, t, system)
  printFindings(
    a.findings.filter(f => !asksNothing(f) && !f.byHand),
    t,
    system,
    'What stands in the way',
  )
  printFindings(
    a.findings.filter(f => f.byHand),
    t,
    system,
    'What somebody says does not apply',
  )
  if (figures) printFigures(a, t, system)
  printGaps(a, t)
  const sound = a.findings.filter(f => f.outcome === 'sound')
  if (sound.length) {
    t.out('')
    t.out(k.bold('What holds'))
    for (const title of new Set(sound.map(f => f.title))) {
      const named = sound.flatMap(f => (f.title === title && f.item ? [f.item] : []))
      for (const line of wrapped(`${MARKS.sound} ${title}${named.length ? ` (${named.join('; ')})` : ''}`, t.width, '  '))
        t.out(k.green(line))
    }
  }
  if (!figures) {
    t.out('')
    for (const line of wrapped(
      `${a.figures.size} figures, ${a.tables.size} tables, ${a.traces.size} traces stand behind this: assess --figures prints all figures, why FILE FIGURE the working of one, table and chart the rest.`,
      t.width,
    ))
      t.out(line)
  }
  t.out('')
  for (const line of wrapped(
    'Ampwright informs; it does not approve. Ask the authority and the person who will sign before parts are bought. High voltage kills: work on it is for qualified people, on parts proven dead.',
    t.width,
  ))
    t.out(k.dim(line))
}

/** What a goal still waits for, or a sum leaves out: the first two by name. */
const lacking = (how: 'missing' | 'without', gaps: readonly Pick<Gap, 'label'>[]): string =>
  gaps.length === 0
    ? ''
    : `${how}: ${gaps
        .slice(0, 2)
        .map(g => g.label)
        .join('; ')}${gaps.length > 2 ? `; and ${gaps.length - 2} more` : ''}`

const named = (labels: readonly string[]): readonly Pick<Gap, 'label'>[] => labels.map(label => ({ label }))

/** What is always in view: best value and band, and what the brief or a rating asks of it. */
function printHeadline(a: Assessment, t: Terminal, system: System): void {
  const rows = headlineRows(a).map(
    ({ label, figure, outcome, wanted, missing, without = [] }) =>
      [
        outcome ? MARKS[outcome] : ' ',
        headed(label),
        figure ? shown(figure, system, a.halves.get(figure.id)) : '–',
        [wanted ? `${wanted.side} ${shown(wanted.limit, system)}` : lacking('missing', missing), lacking('without', named(without))]
          .filter(Boolean)
          .join('; '),
      ] as const,
  )
  if (rows.length === 0) return
  t.out('')
  for (const line of columns(rows, t.width, 4)) t.out(line)
}

function printCounts(a: Assessment, t: Terminal): void {
  const counts = COUNTED.filter(o => o !== 'does not apply')
    .map(o => [o, a.findings.filter(f => countedAs(f) === o).length] as const)
    .filter(([, n]) => n > 0)
  t.out(counts.map(([o, n]) => `${MARKS[o === 'said not to apply' ? 'does not apply' : o]} ${n} ${o}`).join('   '))
}

export function printFindings(findings: readonly Finding[], t: Terminal, system: System, title: string): void {
  if (findings.length === 0) return
  const k = colours(t),
    paint = (f: Finding, s: string): string => (f.outcome === 'failing' ? k.red(s) : f.outcome === 'marginal' ? k.yellow(s) : k.bold(s))
  t.out('')
  t.out(k.bold(title))
  // How to find one thing out is said once, however many findings wait for it.
  const told = new Set<string>()
  for (const [f, ...others] of together(findings)) {
    t.out('')
    if (others.length) {
      printWaiting([f, ...others], t, system)
      continue
    }
    for (const line of wrapped(
      paint(f, `${MARKS[f.outcome]} ${f.outcome} ${f.harm}  ${f.title}${f.item ? ` (${f.item})` : ''}`),
      t.width,
      '  ',
    ))
      t.out(line)
    const say = (text: string, dim = false): void => {
      for (const line of wrapped(`  ${text}`, t.width, '  ')) t.out(dim ? k.dim(line) : line)
    }
    for (const line of wrapped(`  ${findingId(f)}`, t.width, '  ')) t.out(k.dim(line))
    if (f.outcome === 'unanswered' && f.gaps.length) say(`Unanswered: ${gapsText(f)}.`)
    else if (f.byHand?.otherwise !== 'unanswered') say(filled(f.says, f, system))
    if (f.outcome === 'unanswered' && f.reason)
      say(`Unanswered: ${f.reason}${f.assumed.length ? `: ${f.assumed.slice(0, 4).join(', ')}. Write what you find with its origin` : ''}.`)
    if (f.outcome === 'failing' && f.reason)
      say(`Failing although it rests on assumed values, because it is ${f.reason}: ${f.assumed.slice(0, 4).join(', ')}.`)
    if (f.outcome === 'marginal' && f.reason) say(`Marginal and not ${f.doubted ? 'sound' : 'failing'} because ${f.reason}.`)
    if (f.requirement && f.outcome !== 'sound') say(requirementLine(f.requirement), true)
    if (f.outcome === 'accepted' && f.reason) say(`Accepted: ${f.reason}`)
    const said = asideText(f) ?? unheededText(f)
    if (said) say(said)
    for (const r of f.outcome === 'sound' ? [] : f.remedies) {
      if (r.do === 'measure' && told.has(r.path + r.says)) continue
      if (r.do === 'measure') told.add(r.path + r.says)
      say(`→ ${filled(r.says, f, system)}`)
    }
    if (f.caution) say(`Caution: ${f.caution}`)
  }
}

type Group = readonly [Finding, ...Finding[]]
/** Findings in their order; those that wait for the very same gaps stand together, where the first of them stood. */
function together(findings: readonly Finding[]): readonly Group[] {
  const groups = new Map<string, [Finding, ...Finding[]]>()
  findings.forEach((f, i) => {
    const key =
        f.outcome === 'unanswered' && f.gaps.length && !f.reason
          ? f.gaps
              .map(g => g.path)
              .sort()
              .join('\n')
          : `alone ${i}`,
      met = groups.get(key)
    if (met) met.push(f)
    else groups.set(key, [f])
  })
  return [...groups.values()]
}

function printWaiting(group: Group, t: Terminal, system: System): void {
  const k = colours(t),
    [first] = group
  const say = (text: string, paint = (s: string): string => s): void => {
    for (const line of wrapped(text, t.width, '  ')) t.out(paint(line))
  }
  say(`${MARKS.unanswered} unanswered  ${group.length} rules wait for the same: ${gapsText(first)}.`, k.bold)
  for (const f of group)
    for (const line of wrapped(`${f.harm}  ${f.title}${f.item ? ` (${f.item})` : ''}`, t.width - 2, '  ')) t.out(`  ${line}`)
  for (const text of new Set(group.flatMap(f => f.remedies.map(r => filled(r.says, f, system))))) say(`→ ${text}`)
  for (const text of new Set(group.flatMap(f => f.caution ?? []))) say(`Caution: ${text}`)
}
const gapsText = (f: Finding): string =>
  `${f.gaps
    .slice(0, 6)
    .map(g => `${g.label} (${g.path})`)
    .join('; ')}${f.gaps.length > 6 ? `; and ${f.gaps.length - 6} more` : ''}`

export function printFigures(a: Assessment, t: Terminal, system: System): void {
  const k = colours(t)
  let stage = ''
  for (const study of STUDIES) {
    const figures = [...a.figures.values()].filter(f => f.id.startsWith(`${study.id}.`) && typeof f.value === 'number')
    if (figures.length === 0) continue
    if (study.stage !== stage) {
      stage = study.stage
      t.out('')
      t.out(k.bold(`Figures: ${stage}`))
    }
    const rows = figures.map(f => [headed(f.label), shown(f, system, a.halves.get(f.id)), f.id] as const),
      widest = (i: 0 | 1 | 2): number => Math.max(...rows.map(r => widthOf(r[i])))
    if (widest(0) + widest(1) + widest(2) + 4 <= t.width) for (const line of columns(rows, t.width, 3)) t.out(line)
    else
      for (const [label, value, id] of rows) {
        for (const line of wrapped(`${label}  ${k.bold(value)}`, t.width, '  ')) t.out(line)
        t.out(`  ${k.dim(id)}`)
      }
  }
}

export function printGaps(a: Assessment, t: Terminal): void {
  if (a.gaps.length === 0) return
  const k = colours(t)
  t.out('')
  t.out(k.bold('What is not known yet'))
  for (const g of a.gaps) {
    for (const line of wrapped(
      `◌ ${g.label}: ${g.path}, ${g.until}${g.why === 'not in the catalogue' ? ' (its part is not in the catalogue)' : ''}`,
      t.width,
      '  ',
    ))
      t.out(line)
  }
}
