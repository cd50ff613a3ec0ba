import type { Model } from '../../model/model.ts'
import { type PastOneScan, type PastScan, pastScans } from '../../studies/fit/past-scans.ts'
import { scansOf } from '../../studies/fit/scan-task.ts'
import { SEAT } from '../../studies/fit/way-in.ts'
import { type Ask, type Gaps, isGaps } from '../../studies/study.ts'
import type { Gap } from '../../working/value.ts'
import type { Judgement } from '../rule.ts'
import { pathOf, placeOf, wordAt } from './shapes.ts'

/** How the parts come past each scan on their way in; nothing where nothing was scanned. */
export function judgedPastScans(m: Model, ask: Ask): readonly Judgement[] {
  const all = scansOf(m)
  if (all.length === 0) return []
  const answer = ask(pastScans)
  return all.flatMap(([scan]): readonly Judgement[] => {
    const found = isGaps(answer) ? answer : (answer.scans[scan] as PastOneScan | Gaps),
      at = `fit.scans.${scan}`,
      item = `past ${scan}`
    if (isGaps(found)) {
      const waits = found.gaps.some(g => g.why === 'being measured')
      const says = waits
        ? 'How the parts come past the scan {scan} on their way in is being measured.'
        : 'How the parts come past the scan {scan} on their way in cannot be told until it lies in the car.'
      return [{ item, about: [at], says, slots: { scan: wordAt(at, 'scan', scan) }, missing: found }]
    }
    // Why nothing can be measured on it is said where parts are held against it.
    if (found.fault !== undefined)
      return [
        {
          item,
          about: [at],
          says: 'How the parts come past the scan {scan} is not known: nothing can be measured on it.',
          slots: { scan: wordAt(at, 'scan', scan) },
          missing: fitting(scan),
        },
      ]
    return [
      ...found.passing.map(p => past(m, scan, p)),
      ...(found.waits
        ? [
            {
              item,
              about: [at],
              says: 'How the parts come past the scan {scan} on their way in is being measured.',
              slots: { scan: wordAt(at, 'scan', scan) },
              missing: found.waits,
            },
          ]
        : []),
    ]
  })
}

function past(m: Model, scan: string, { name, way, air, strikes, out, at: [x, y, z] }: PastScan): Judgement {
  const at = `fit.scans.${scan}`
  return {
    item: `${name} past ${scan}`,
    about: [`${pathOf(name)}.way-in`, ...placeOf(m, name), at],
    found: air,
    side: 'at least',
    limit: SEAT,
    says: strikes
      ? 'Coming {way} it runs into the scan {scan} {out} before it is in its place, at {x}, {y}, {z}.'
      : 'Coming {way} it passes the scan {scan} with {found} of air, {out} before it is in its place; leave {limit} on each side for hands and straps.',
    slots: { way, scan: wordAt(at, 'scan', scan), out, x, y, z },
    remedies: [{ do: 'act', says: 'Another way in, a smaller part, or take off first what is in the way and scan again.' }],
  }
}
const fitting = (scan: string): Gap => ({
  gap: true,
  path: `fit.scans.${scan}.points`,
  label: 'points that fit the scan',
  until: 'before the body is apart',
})
