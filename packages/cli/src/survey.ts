import { headed, narrowed, type Wanted } from '@ampwright/workbench'
import { colours, type Terminal, wrapped } from './terminal.ts'

export function printSurvey(list: readonly Wanted[], t: Terminal): void {
  const k = colours(t),
    missing = list.filter(w => !w.widens),
    narrowing = list.filter(w => w.widens)
  if (list.length === 0) return t.out('Nothing is missing, and nothing widens a headline figure.')
  const how = (w: Wanted): string => (w.measure ? `${w.measure.tool}, ${w.measure.accuracy}, ${w.measure.minutes} min` : DECIDED)
  const entry = (head: string, below: readonly string[]): void => {
    for (const line of wrapped(head, t.width, '  ')) t.out(line)
    for (const line of wrapped(below.filter(Boolean).join(' · '), t.width - 2)) t.out(`  ${k.dim(line)}`)
  }
  if (missing.length) {
    t.out(k.bold('Missing'))
    for (const w of missing) {
      const { unlocks } = w
      entry(`◌ ${headed(w.label)}  ${k.dim(w.path)}`, [
        w.until,
        how(w),
        unlocks.length ? `unlocks: ${unlocks.slice(0, 2).join('; ')}${unlocks.length > 2 ? ` and ${unlocks.length - 2} more` : ''}` : '',
      ])
    }
  }
  if (narrowing.length) {
    if (missing.length) t.out('')
    t.out(k.bold('Worth measuring better'))
    for (const w of narrowing)
      entry(`${headed(w.label)}  ${k.bold(w.now ?? '')}  ${k.dim(w.path)}`, [
        ...(w.narrows?.length
          ? w.narrows.map(narrowed)
          : [`${Math.round((w.widens?.share ?? 0) * 100)} % of the band of ${w.widens?.figure ?? ''}`]),
        w.until,
        w.measure ? how(w) : '',
      ])
  }
  t.out('')
  for (const line of wrapped('Tools, accuracies and times are common practice.', t.width)) t.out(k.dim(line))
}
/** What no tool can tell. */
const DECIDED = 'yours to decide or to look up'
