import { motorSpeed } from '../../drive/speeds.ts'
import { totalRatio } from '../../drive/wheel-force.ts'
import type { Model } from '../../model/model.ts'
import { type Field, type Figure, isGap, type Value } from '../../working/value.ts'
import { rolling } from '../donor/rolling.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { type Envelope, envelopes } from './envelopes.ts'
import { shifts, steps, type TransferRange, tallestGear, usualGear } from './ratios.ts'

/** How fast motor and propshaft turn at a speed wanted; the input of a kept gearbox turns with the motor. */
export type AtWanted = { readonly motor: Figure; readonly propshaft?: { readonly now: Figure; readonly before: Figure } | Gaps }

/** Every speed the brief asks for: to be reached, to be climbed at, to end a run at. */
export const speedGoals = (
  m: Model,
): readonly { readonly goal: string; readonly speed: Field; readonly transfer?: Field<TransferRange> }[] =>
  Object.entries(m.brief.goals).flatMap(([goal, g]) =>
    g?.kind === 'top speed'
      ? [{ goal, speed: g.speed }]
      : g?.kind === 'climb'
        ? [{ goal, speed: g.speed, transfer: g.transfer }]
        : g?.kind === 'steady speed'
          ? [{ goal, speed: g.speed }]
          : g?.kind === 'acceleration'
            ? [{ goal, speed: g.to }]
            : [],
  )

export const wantedSpeeds = study({
  id: 'at-speed',
  stage: 'drive',
  asks: 'How fast do motor and propshaft turn at the speeds wanted?',
  reads: (m, ask) => {
    const pairs = speedGoals(m).flatMap(g => Object.entries(m.drive.units).map(([unit, u]) => ({ ...g, unit, u })))
    return {
      names: pairs.map(({ goal, unit }) => `${unit} ${goal}`),
      pairs: pairs.map(({ goal, speed, transfer, unit, u }) =>
        maybe({
          speed,
          radius: from(ask(rolling), r => r.radius),
          ratio: from(ask(envelopes), e => {
            const x = e.units[unit] as Envelope | Gaps
            return isGaps(x) ? x : x.ratio
          }),
          // Who shifts may always take the tallest gear; a climb may be driven in another range of the transfer case.
          steps: shifts(u) || (transfer && !isGap(transfer)) ? steps(m, u, shifts(u) ? tallestGear(m) : usualGear(m, u), transfer) : null,
          // A propshaft runs where the motor drives an axle of its own ratio behind gearbox, transfer case or reduction.
          shaft:
            m.brief.goals[goal]?.kind !== 'top speed' || isGap(u.through) || u.through.value === 'drive unit'
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
        const { speed, radius, shaft } = p
        const ratio = p.steps
          ? make.work(
              'ratio',
              totalRatio,
              { steps: p.steps as readonly Value[] },
              { item, label: `Total ratio at the speed wanted, ${item}` },
            )
          : p.ratio
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
