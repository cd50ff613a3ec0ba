import { axleRatioChange, leastSpeed, motorSpeed, roadSpeed } from '../../drive/speeds.ts'
import { totalRatio, wheelForce } from '../../drive/wheel-force.ts'
import { speedometerScale } from '../../vehicle/speedometer.ts'
import { type Field, type Figure, isGap, type Value } from '../../working/value.ts'
import { type KeptParts, keptParts } from '../donor/kept-parts.ts'
import { rolling } from '../donor/rolling.ts'
import { wantedSpeed } from '../donor/wanted-speed.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { type Envelope, envelopes } from './envelopes.ts'
import { hillStart } from './hill-start.ts'
import { shifts, steps } from './ratios.ts'

export type Gear = {
  readonly name: string
  readonly ratio: Figure
  readonly fastest: Value
  readonly pull: Figure
  readonly lasting: Figure | undefined
  readonly turns: Figure | undefined
  readonly through: KeptParts['gears'][string] | undefined
}
export type Gears = { readonly unit: string; readonly gears: readonly Gear[]; readonly speedometer?: Figure }

/** The gears of a kept box with the motor in front: how fast each may go, what each pulls, which is needed at all. */
export const gears = study({
  id: 'gear',
  stage: 'drive',
  asks: 'Which gears are of use, and into which may nobody shift down?',
  reads: (m, ask) => {
    const kept = Object.entries(m.drive.units).filter(([, u]) => !isGap(u.through) && u.through.value === 'kept gearbox')
    return {
      names: kept.map(([name]) => name),
      units: kept.map(([name, u]) =>
        maybe({
          held: shifts(u) ? null : u.gear,
          ready: from(ask(envelopes), e => {
            const x = e.units[name] as Envelope | Gaps
            return isGaps(x) ? x : { name }
          }),
          radius: from(ask(rolling), r => r.radius),
          gears: Object.keys(m.donor.gearbox.gears).map(gear => ({ gear, steps: steps(m, u, gear) })),
          box: isGap(m.donor.gearbox.inputSpeed) ? null : m.donor.gearbox.inputSpeed,
          stands: isGap(m.donor.gearbox.inputTorque) ? null : m.donor.gearbox.inputTorque,
          wanted: maybe(wantedSpeed(m)),
          through: maybe(from(ask(keptParts), p => p.units[name] as KeptParts | Gaps)),
          axle: isGap(u.finalDrive) || isGap(m.donor.finalDrive) ? null : { now: u.finalDrive, before: m.donor.finalDrive },
        }),
      ),
      envelopes: maybe(ask(envelopes)),
      starts: maybe(ask(hillStart)),
    }
  },
  answer: (known, make): { units: Readonly<Record<string, Gears | Gaps>> } => ({
    units: Object.fromEntries(
      known.units.map((u, k): [string, Gears | Gaps] => {
        const unit = known.names[k] as string
        if (isGaps(u)) return [unit, u]
        const e = (known.envelopes as { units: Record<string, Envelope> }).units[unit] as Envelope
        const list = u.gears.map(({ gear, steps: s }): Gear => {
          const item = `${unit} ${gear}`
          const ratio = make.work('ratio', totalRatio, { steps: s as never }, { item, label: `Total ratio of ${unit} in ${gear}` })
          const motor = make.work(
            'by-motor',
            roadSpeed,
            { speed: e.topSpeed, radius: u.radius, ratio },
            { item, label: `Fastest by the motor, ${gear}` },
          )
          const fastest = u.box
            ? make.work(
                'fastest',
                leastSpeed,
                {
                  limits: [
                    motor,
                    make.work(
                      'by-gearbox',
                      roadSpeed,
                      { speed: u.box as Field as Value, radius: u.radius, ratio },
                      { item, label: `Fastest by the gearbox input, ${gear}` },
                    ),
                  ],
                },
                { item, label: `Never faster than, ${gear}` },
              )
            : motor
          return {
            name: gear,
            ratio,
            fastest,
            pull: make.work(
              'pull',
              wheelForce,
              { torque: e.peakTorque, ratio, efficiency: e.efficiency, radius: u.radius },
              { item, label: `Peak pull in ${gear}` },
            ),
            lasting: isGaps(e.continuous)
              ? undefined
              : make.work(
                  'continuous-pull',
                  wheelForce,
                  { torque: e.continuous.torque, ratio, efficiency: e.efficiency, radius: u.radius },
                  { item, label: `Continuous pull in ${gear}` },
                ),
            turns: isGaps(u.wanted)
              ? undefined
              : make.work(
                  'motor-speed',
                  motorSpeed,
                  { speed: u.wanted, radius: u.radius, ratio },
                  { item, label: `Motor speed at the top speed wanted, ${gear}` },
                ),
            through: isGaps(u.through) ? undefined : (u.through as unknown as KeptParts).gears[gear],
          }
        })
        const starts = isGaps(known.starts)
          ? []
          : Object.entries((known.starts as { goals: Record<string, { need: Figure } | Gaps> }).goals).flatMap(([, g]) =>
              isGaps(g) ? [] : [g.need],
            )
        const does = (g: Gear): boolean => starts.every(need => g.pull.value >= need.value)
        const stands = u.stands as Value | null,
          wanted = isGaps(u.wanted) ? undefined : u.wanted
        /** What speaks against a gear; who shifts need not be able to do everything in one. */
        const against = (g: Gear): readonly string[] => [
          ...(stands && g.through && g.through.torque.value > stands.value ? ['too much torque for the gearbox'] : []),
          ...(u.held && wanted && g.fastest.value < wanted.value ? ['too slow for the top speed wanted'] : []),
          ...(u.held && starts.length > 0 && !does(g) ? ['too weak for a hill wanted'] : []),
        ]
        const tallest = [...list].sort((a, b) => a.ratio.value - b.ratio.value).find(does)
        make.table(
          'gears',
          {
            label: `Gears of ${unit}`,
            columns: [
              { key: 'ratio', label: 'total ratio' },
              { key: 'fastest', label: 'never shift down into it above', unit: 'm/s', shows: 'speed' },
              { key: 'pull', label: 'peak pull', unit: 'N' },
              { key: 'lasting', label: 'continuous pull', unit: 'N' },
              { key: 'torque', label: 'most torque into the gearbox', unit: 'N·m' },
              { key: 'stands', label: 'gearbox rated for', unit: 'N·m' },
              { key: 'slips', label: 'tyres slip before that' },
              { key: 'turns', label: 'motor at the top speed wanted', unit: 'rad/s', shows: 'rotational speed' },
              { key: 'starts', label: 'pulls away on every hill wanted' },
              { key: 'usable', label: 'usable' },
              { key: 'use', label: '' },
            ],
            rows: list.map(g => ({
              name: g.name,
              cells: {
                ratio: g.ratio,
                fastest: g.fastest,
                pull: g.pull,
                lasting: g.lasting,
                torque: g.through?.torque,
                stands: stands ?? undefined,
                slips: g.through === undefined ? '' : g.through.slips ? 'yes' : 'no',
                turns: g.turns,
                usable: against(g).length ? `no: ${against(g).join(', ')}` : stands ? 'yes' : 'yes, if the gearbox stands the torque',
                starts: starts.length === 0 ? 'no hill start wanted' : does(g) ? 'yes' : 'no',
                use: g.name === u.held?.value ? 'held' : tallest && g.ratio.value > tallest.ratio.value ? 'not needed to pull away' : '',
              },
            })),
          },
          unit,
        )
        const speedometer = u.axle
          ? make.work(
              'speedometer',
              speedometerScale,
              {
                radius: u.radius,
                before: u.radius,
                ratio: make.work(
                  'axle-ratio-change',
                  axleRatioChange,
                  { now: u.axle.now as Field as Value, before: u.axle.before as Field as Value },
                  { item: unit },
                ),
              },
              { item: unit, label: `Speedometer against before, ${unit}` },
            )
          : undefined
        return [unit, { unit, gears: list, ...(speedometer ? { speedometer } : {}) }]
      }),
    ),
  }),
})
