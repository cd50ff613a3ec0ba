import { boosterOutput } from '../../brakes/booster.ts'
import { unassistedBraking } from '../../brakes/unassisted-braking.ts'
import type { Model } from '../../model/model.ts'
import { type Figure, isGap, standard, type Value } from '../../working/value.ts'
import { type Laden, loadCases } from '../donor/load-cases.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { type Split, split } from './split.ts'
import { type VacuumAnswer, vacuum } from './vacuum.ts'

const ANNEX_3 = { work: 'un-r13-h', place: 'Annex 3, pedal force of cars', mark: 'from memory' } as const
export const HARD_PEDAL = { ...standard('pedal-most', 'greatest pedal force', 'F', 500, 'N', ANNEX_3), shows: 'force' } as const
const SECONDARY = {
  ...standard('secondary-braking', 'deceleration with the assist failed', 'a_2', 2.44, 'm/s²', ANNEX_3),
  shows: 'acceleration',
} as const

/** A booster that an electric pump keeps at work. */
const isVacuum = ({
  donor: {
    brakes: { assistAfter: after },
  },
}: Model): boolean => !isGap(after) && after.value === 'vacuum pump'

export type Unassisted = { readonly deceleration: Figure; readonly pedal: Figure }

/** What the foot alone brakes the heaviest load with, the pedal force that takes, and where a vacuum booster has no more to give. */
export const unassisted = study({
  id: 'unassisted',
  stage: 'brakes & steering',
  asks: 'How hard can the foot brake once the assist is dead?',
  reads: (m, ask) => {
    const loads = ask(loadCases),
      pedal = { ratio: m.brakes.pedalRatio, efficiency: m.brakes.pedalEfficiency, master: m.brakes.masterCylinder }
    return {
      foot: { ...pedal, brakes: from(ask(split), s => ({ k: s.perPressure })) },
      laden: Object.keys(m.brief.loads).map(name => from(loads, l => ({ laden: l.cases[name] as Laden | Gaps }))),
      none: Object.keys(m.brief.loads).length
        ? null
        : { gap: true as const, path: 'brief.loads', label: 'load case', until: 'any time' as const },
      booster: isVacuum(m)
        ? maybe({
            ...pedal,
            gain: m.brakes.booster.gain,
            vacuum: from(ask(vacuum), (v): { v: VacuumAnswer | null } => ({ v })),
            cutIn: m.brakes.vacuum.cutIn,
          })
        : null,
    }
  },
  answer: ({ foot, laden, booster }, make): Unassisted => {
    const { brakes, ...pedal } = foot as unknown as {
      ratio: Value
      efficiency: Value
      master: Value
      brakes: { k: Exclude<Split['perPressure'], Gaps> }
    }
    const { mass } = laden.map(l => (l as unknown as { laden: Laden }).laden).reduce((a, b) => (b.mass.value > a.mass.value ? b : a))
    const { figures } = make.all(
      '',
      unassistedBraking,
      { pedal: HARD_PEDAL, ...pedal, ...brakes.k, mass, wanted: SECONDARY },
      {
        labels: { deceleration: 'Deceleration without assist, 500 N on the pedal', pedal: 'Pedal force without assist for 2.44 m/s²' },
      },
    )
    const b = booster as unknown as { gain: Value; vacuum: { v: VacuumAnswer | null }; cutIn: Value } | Gaps | null
    const area = b === null || isGaps(b) ? undefined : b.vacuum.v?.area
    if (b && !isGaps(b) && area && !isGaps(area))
      make.all(
        'assisted',
        boosterOutput,
        { pedal: HARD_PEDAL, ...pedal, gain: b.gain, area, depression: b.cutIn },
        {
          labels: {
            output: 'Force on the master cylinder, 500 N on the pedal, pump about to start',
            pressure: 'Line pressure, 500 N on the pedal, pump about to start',
            knee: 'Pedal force at which the booster has no more to give',
          },
        },
      )
    return figures
  },
})
