import { motorSpeed } from '../../drive/speeds.ts'
import type { TopSpeedGoal } from '../../model/brief.ts'
import { type Figure, isGap } from '../../working/value.ts'
import { rolling } from '../donor/rolling.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { type Envelope, envelopes } from './envelopes.ts'

/** How fast motor and propshaft turn at the top speeds wanted. */
export type AtWanted = { readonly motor: Figure; readonly propshaft?: { readonly now: Figure; readonly before: Figure } | Gaps }

export const wantedSpeeds = study({
  id: 'at-speed',
  stage: 'drive',
  asks: 'How fast do motor and propshaft turn at the top speed wanted?',
  reads: (m, ask) => {
    const goals = Object.entries(m.brief.goals).filter((g): g is [string, TopSpeedGoal] => g[1]?.kind === 'top speed')
    const pairs = goals.flatMap(([goal, g]) => Object.entries(m.drive.units).map(([unit, u]) => ({ goal, g, unit, u })))
    return {
      names: pairs.map(({ goal, unit }) => `${unit} ${goal}`),
      pairs: pairs.map(({ g, unit, u }) =>
        maybe({
          speed: g.speed,
          radius: from(ask(rolling), r => r.radius),
          ratio: from(ask(envelopes), e => {
            const x = e.units[unit] as Envelope | Gaps
            return isGaps(x) ? x : x.ratio
          }),
          // A propshaft runs where the motor drives an axle of its own ratio behind gearbox, transfer case or reduction.
          shaft:
            isGap(u.through) || u.through.value === 'drive unit'
              ? null
              : maybe({
                  axle: isGap(u.finalDrive) ? m.donor.finalDrive : u.finalDrive,
                  before: m.donor.finalDrive,
                  fastest: m.donor.topSpeed,
                }),
        }),
      ),
    }
  },
  answer: ({ names, pairs }, make): { at: Readonly<Record<string, AtWanted | Gaps>> } => ({
    at: Object.fromEntries(
      pairs.map((p, i): [string, AtWanted | Gaps] => {
        const item = names[i] as string
        if (isGaps(p)) return [item, p]
        const { speed, radius, ratio, shaft } = p
        return [
          item,
          {
            motor: make.work('motor', motorSpeed, { speed, radius, ratio }, { item, label: `Motor speed at the speed wanted, ${item}` }),
            ...(shaft === null
              ? {}
              : {
                  propshaft: isGaps(shaft)
                    ? shaft
                    : {
                        now: make.work(
                          'propshaft',
                          motorSpeed,
                          { speed, radius, ratio: shaft.axle },
                          { item, label: `Propshaft at the speed wanted, ${item}` },
                        ),
                        before: make.work(
                          'propshaft-before',
                          motorSpeed,
                          { speed: shaft.fastest, radius, ratio: shaft.before },
                          { item, label: `Propshaft at the donor car’s top speed, ${item}` },
                        ),
                      },
                }),
          },
        ]
      }),
    ),
  }),
})
