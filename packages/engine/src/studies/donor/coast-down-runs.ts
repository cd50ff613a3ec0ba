import type { CoastDownStep, Donor } from '../../model/donor.ts'
import { studentFactor } from '../../numerics/index.ts'
import { statisticalAccuracy, stepSlowing } from '../../vehicle/coast-down.ts'
import { type Fact, type Field, type Figure, isGap, standard } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'

const PAIRS = [1, 2, 3, 4, 5, 6] as const
/** The pairs of a step of which at least one run is there; the missing other is a gap. Two pairs at least: one says nothing of its scatter. */
function pairsOf(step: CoastDownStep): readonly { readonly out: Field; readonly back: Field }[] {
  const all = PAIRS.map(i => ({ out: step[`out${i}`], back: step[`back${i}`] }))
  return all.filter((p, i) => i < 2 || !isGap(p.out) || !isGap(p.back))
}

/** Steps of the coast-down in the order of the file, with their pairs of runs. */
export const runsOf = ({ coastDown }: Donor) =>
  Object.entries(coastDown.steps).map(([name, s]) => ({ name, from: s.from, to: s.to, pairs: pairsOf(s) }))

const student = (degrees: number): Fact =>
  standard(`student-95-${degrees}`, `Student factor, 95 %, ${degrees} degrees of freedom`, 't_95', studentFactor(degrees), '1', {
    work: 'gum',
    place: 'G.3, two-sided',
  })

/** Of each step: how well its runs agree, and how fast the car slowed in it; its gaps where a run is missing. */
export type Runs = Readonly<Record<string, { readonly accuracy: Figure; readonly slowing: Figure } | Gaps>>

/** What the times of a coast-down say by themselves, before the mass of the car is known. */
export const coastDownRuns = study({
  id: 'coast-down-runs',
  stage: 'donor',
  asks: 'Do the runs of the coast-down agree, and how fast did the car slow?',
  reads: ({ donor }) => {
    const steps = runsOf(donor)
    return { names: steps.map(s => s.name), steps: steps.map(({ from, to, pairs }) => maybe({ from, to, pairs })) }
  },
  answer: ({ names, steps }, make): { readonly steps: Runs } => ({
    steps: Object.fromEntries(
      steps.map((s, i): [string, Runs[string]] => {
        const item = names[i] as string
        if (isGaps(s)) return [item, s]
        const { from, to, pairs } = s,
          out = pairs.map(p => p.out),
          back = pairs.map(p => p.back)
        return [
          item,
          {
            accuracy: make.work(
              'accuracy',
              statisticalAccuracy,
              { out, back, student: student(out.length - 1) },
              { item, label: `Statistical accuracy, ${item}` },
            ),
            slowing: make.work('slowing', stepSlowing, { from, to, out, back }, { item, label: `Slowing, ${item}` }),
          },
        ]
      }),
    ),
  }),
})
