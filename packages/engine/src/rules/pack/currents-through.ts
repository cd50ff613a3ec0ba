import type { Model } from '../../model/model.ts'
import { currentsThrough } from '../../studies/pack/currents-through.ts'
import { type Gaps, isGaps } from '../../studies/study.ts'
import { isGap, type Value } from '../../working/value.ts'
import { type Judgement, rule } from '../rule.ts'
import { open } from './answers.ts'

/** What melts or burns, with what it carries for ever and what the file says of a peak. */
const partsOf = ({ pack: { limits } }: Model) =>
  [
    {
      name: 'fuse',
      ever: limits.fuse,
      peak: limits.fuseMelts,
      about: ['pack.limits.fuse', 'pack.limits.fuse-melts'],
      read: 'Read off its time-current curve what melts the fuse in the time of the peak.',
      larger: 'A larger fuse, as far as cable and contactor allow, or a lower limit in the BMS.',
    },
    {
      name: 'contactor',
      ever: limits.contactor,
      peak: limits.contactorPeak,
      about: ['pack.limits.contactor', 'pack.limits.contactor-peak'],
      read: 'Read in its datasheet what the contactor carries for the time of the peak.',
      larger: 'A larger contactor, or a lower limit in the BMS.',
    },
  ] as const
type Part = ReturnType<typeof partsOf>[number]

export const fuseAndContactorCarry = rule({
  id: 'fuse-and-contactor-carry',
  title: 'Fuse and contactor carry every current that goes through them',
  stage: 'pack',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'ratings against peak, recovery and charging; short peaks against the curve of the part' },
  judgements: (m, ask) => {
    const answer = ask(currentsThrough)
    const forHours = (part: Part, place: string, found: Value | Gaps): Judgement => {
      const about = [part.about[0], `charging.places.${place}`],
        item = `${part.name}, charging at ${place}`
      if (isGaps(found)) return open(about, found, item)
      return {
        item,
        about,
        found,
        side: 'at most',
        limit: part.ever,
        says: `Charging there, up to {found} flow for as long as it takes; the ${part.name} carries {limit}.`,
        remedies: [
          ...(isGap(part.ever)
            ? []
            : [
                {
                  do: 'set' as const,
                  says: `Set the charge limit of the BMS to what the ${part.name} carries.`,
                  sets: [{ path: 'pack.limits.bms-charge', to: { value: part.ever.value, kind: 'current' as const } }],
                },
              ]),
          { do: 'act', says: part.larger },
        ],
      }
    }
    const forSeconds = (part: Part, what: 'at full pull' | 'recovering', found: Value | Gaps, carried: Value | Gaps): Judgement => {
      const about = [...part.about, what === 'at full pull' ? 'drive.units' : 'drive.regeneration.power'],
        item = `${part.name}, ${what}`
      if (isGap(part.ever)) return open(about, part.ever, item)
      if (isGaps(found)) return open(about, found, item)
      // The curve of a part is wanted only where its rating is passed.
      const within = found.value <= part.ever.value
      if (!within && isGaps(carried))
        return {
          item,
          about,
          says: `{flows} go through the ${part.name} for seconds, more than it carries for ever: its curve decides.`,
          slots: { flows: found },
          missing: carried,
          remedies: [{ do: 'measure', says: part.read, path: part.about[1] }],
        }
      return {
        item,
        about,
        found,
        side: 'at most',
        limit: within || isGaps(carried) ? part.ever : carried,
        says: within
          ? `Up to {found} flow ${what}; the ${part.name} carries {limit} for ever.`
          : `Up to {found} flow ${what}; for so long the ${part.name} carries {limit}, again and again.`,
        remedies: [{ do: 'act', says: part.larger }],
      }
    }
    return partsOf(m).flatMap(part => {
      if (isGaps(answer)) return [open(part.about, answer, part.name)]
      const { short, charging, carried } = answer
      return [
        forSeconds(part, 'at full pull', short.peak, carried[part.name]),
        ...(short.recovery === null ? [] : [forSeconds(part, 'recovering', short.recovery, carried[part.name])]),
        ...Object.entries(charging).map(([place, found]) => forHours(part, place, found)),
      ]
    })
  },
  spoil: {
    sample: 'otter',
    edits: [{ path: 'pack.limits.fuse', now: '150 A' }],
    item: 'fuse, charging at motorway-post',
  },
})
