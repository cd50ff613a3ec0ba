import { standing } from '../../studies/pack/standing.ts'
import { isGaps } from '../../studies/study.ts'
import type { Judgement } from '../rule.ts'
import { rule } from '../rule.ts'
import { limitOf, open, PRACTICE } from './answers.ts'

const LASTING = [
  ['as usually parked', 'pack.life.parked-at', 'parked'],
  ['left on the reserve', 'brief.reserve', 'reserve'],
] as const

export const lastsStanding = rule({
  id: 'pack-lasts-standing',
  title: 'The pack lasts as long as the car is left unplugged',
  stage: 'pack',
  harm: 'S2',
  hazards: ['A5'],
  source: { work: 'practice', place: 'DC-DC or BMS left on a parked pack; cells found below 1 V', mark: 'common practice' },
  caution: 'Cells found flat are never charged again: copper that dissolved in them comes back as a short.',
  judgements: (m, ask) => {
    const s = ask(standing)
    return LASTING.map(([item, path, key]): Judgement => {
      const about = ['pack.standing.draw', 'pack.standing.longest', path]
      if (isGaps(s)) return open(about, s, item)
      return {
        item,
        about,
        found: s[key],
        side: 'at least',
        limit: m.pack.standing.longest,
        says: 'With {draw} out of the parked pack it lasts {found}, {item}; it is left for {limit}. After that every cell sinks to nothing.',
        slots: { draw: s.draw },
        remedies: [
          {
            do: 'act',
            says: 'Let a contactor or a switch cut DC-DC and BMS off the pack when the car is left, and have a low pack raise an alarm.',
          },
          {
            do: 'measure',
            says: 'Clamp meter that shows a milliampere on the pack cable, ten minutes after locking, when everything is asleep.',
            path: 'pack.standing.draw',
          },
        ],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.standing.draw', now: '150 mA' }], item: 'as usually parked' },
})

const PARKED = limitOf('parked-at', 'charge a car is parked at from day to day, at most', 0.9, '1', PRACTICE, 'share')

export const notParkedFull = rule({
  id: 'pack-not-parked-full',
  title: 'The pack is not left standing full',
  stage: 'pack',
  harm: 'S2',
  hazards: ['A16'],
  source: PRACTICE,
  judgements: m => [
    {
      about: ['pack.life.parked-at', 'pack.life.temperature'],
      found: m.pack.life.parkedAt,
      side: 'at most',
      limit: PARKED,
      says: 'It is parked at {found}; from day to day cells are left at {limit} at most. Full and hot for weeks they age fast.',
      remedies: [
        {
          do: 'set',
          says: 'Let the charger stop earlier; fill up only right before a long trip.',
          sets: [{ path: 'pack.life.parked-at', to: { value: 0.8, kind: 'share' } }],
        },
        { do: 'act', says: 'Left for weeks, park at about half charge, out of the sun.' },
      ],
    },
  ],
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.life.parked-at', now: '100 %' }] },
})
