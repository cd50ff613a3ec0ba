import { scansOf } from '../../studies/fit/scan-task.ts'
import { type Scanned, scans } from '../../studies/fit/scans.ts'
import { type Gaps, isGaps } from '../../studies/study.ts'
import type { Gap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { anyShape, FITTING, nameOfShape, NO_SHAPE, placeOf, wordAt } from './shapes.ts'

export const clearOfScans = rule({
  id: 'clear-of-what-was-scanned',
  title: 'Parts stand clear of what was scanned',
  stage: 'fit',
  harm: 'S2',
  hazards: [],
  source: FITTING,
  judgements: (m, ask) => {
    const all = scansOf(m)
    if (all.length === 0) return doesNotApply('nothing was scanned', ['fit.scans'])
    if (!anyShape(m)) return NO_SHAPE()
    const answer = ask(scans)
    return all.flatMap(([scan]): readonly Judgement[] => {
      const found = isGaps(answer) ? answer : (answer.scans[scan] as Scanned | Gaps),
        at = `fit.scans.${scan}`
      if (isGaps(found)) {
        const waits = found.gaps.some(g => g.why === 'being measured')
        return [
          {
            item: scan,
            about: [at],
            says: waits ? 'How near the parts come to it is being measured.' : 'Where the scan lies in the car is not known yet.',
            missing: found,
          },
        ]
      }
      if (found.fault !== undefined) return [{ item: scan, about: [at], ...faulty(scan, found.fault) }]
      const near = found.near.map(
        ({ shape, gap, limit }): Judgement => ({
          item: `${shape} and ${scan}`,
          about: [...placeOf(m, shape), at],
          found: gap,
          side: 'at least',
          limit,
          says: 'From {shape} to the scan {scan} there is {found}; leave {limit}. Measure tight places by hand: a scan is good to some millimetres.',
          slots: { shape: nameOfShape(shape), scan: wordAt(at, 'scan', scan) },
          remedies: [{ do: 'act', says: 'Move the part, turn it, or take a smaller one.' }],
        }),
      )
      const waits: readonly Judgement[] = found.waits
        ? [{ item: scan, about: [at], says: 'Parts have moved: how near they come to it is being measured.', missing: found.waits }]
        : []
      return [...near, ...waits]
    })
  },
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'fit.scans.bay.file', now: 'attachments/lapwing-bay.stl' },
      ...(
        [
          ['left', '150', '-450', '300', '150 mm', '-450 mm', '300 mm'],
          ['right', '150', '450', '300', '150 mm', '450 mm', '300 mm'],
          ['rear', '480', '0', '300', '480 mm', '0 mm', '300 mm'],
        ] as const
      ).flatMap(([name, u, v, w, x, y, z]) => [
        { path: `fit.scans.bay.points.${name}.on-scan-x`, now: u },
        { path: `fit.scans.bay.points.${name}.on-scan-y`, now: v },
        { path: `fit.scans.bay.points.${name}.on-scan-z`, now: w },
        { path: `fit.scans.bay.points.${name}.x`, now: x },
        { path: `fit.scans.bay.points.${name}.y`, now: y },
        { path: `fit.scans.bay.points.${name}.z`, now: z },
      ]),
      { path: 'fit.bodies.front-box.width', now: '1000 mm' },
    ],
    item: 'front-box and bay',
  },
})

const faulty = (scan: string, fault: string): Pick<Judgement, 'says' | 'slots' | 'remedies'> & { readonly missing: Gap } => ({
  says: 'Nothing can be measured on the scan {scan}: {fault}.',
  slots: { scan: wordAt(`fit.scans.${scan}`, 'scan', scan), fault: wordAt(`fit.scans.${scan}#fault`, 'fault', fault) },
  missing: { gap: true, path: `fit.scans.${scan}.points`, label: 'points that fit the scan', until: 'before the body is apart' },
  remedies: [{ do: 'act', says: 'Pick the points again, or put another file in its place.' }],
})
