import { isGap, type Value } from '../../working/value.ts'
import { study } from '../study.ts'
import { shapesOf } from './places.ts'

/** What is done to the body for each part: how it is fixed, into what, at how many points. For the papers, and to be asked before the work. */
export const fixings = study({
  id: 'fixing',
  stage: 'fit',
  asks: 'What is done to the body for each part?',
  reads: m =>
    shapesOf(m)
      .filter(([, b]) => b.kind !== 'stays in the car')
      .map(([name, b]) => ({
        name,
        kind: b.kind,
        fixing: isGap(b.fixing) ? null : b.fixing,
        into: isGap(b.fixedInto) ? null : b.fixedInto,
        points: isGap(b.fixingPoints) ? null : b.fixingPoints,
      })),
  answer: (parts, make): Record<string, never> => {
    make.table('fixings', {
      label: 'What is done to the body',
      columns: [
        { key: 'kind', label: 'part' },
        { key: 'fixing', label: 'fixed by' },
        { key: 'into', label: 'into' },
        { key: 'points', label: 'points', unit: '1', shows: 'count' },
        { key: 'asked', label: 'before the work' },
      ],
      rows: parts.map(({ name, kind, fixing, into, points }) => ({
        name,
        cells: {
          kind,
          fixing: fixing === null ? 'not said yet' : (fixing as Value<string>),
          into: into === null ? 'not said yet' : (into as Value<string>),
          points: points === null ? undefined : (points as Value),
          asked: fixing === null ? '' : ASKED[fixing.value as keyof typeof ASKED],
        },
      })),
    })
    return {}
  },
})

const ASKED = {
  'existing points': 'nothing',
  'new holes': 'bare edges painted, plates where the sheet is thin',
  'cut out': 'the inspector agrees',
  'welded on': 'the inspector agrees; battery and control units off',
} as const
