import { stringResistance, stringSlope } from '../../battery/pack-resistance.ts'
import { joiningResistor, joiningStrings } from '../../battery/parallel-branches.ts'
import { type Figure, isGap, standard } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import { packModel } from './pack-model.ts'

export type Strings = { readonly peak: Figure; readonly heat: Figure; readonly moved: Figure }

const NOTHING = standard('lead.none', 'no lead between them', 'R_l', 0, 'Ω', { work: 'definition', place: 'worst case' })

/** What flows between strings at different charge when they are joined. Only for more than one string. */
export const strings = study({
  id: 'strings',
  stage: 'pack',
  asks: 'What flows between strings that are joined at different charge?',
  reads: (m, ask) => {
    const { strings: n, stringsApart } = m.pack
    return {
      joined:
        !isGap(n) && n.value <= 1
          ? null
          : maybe({ pack: ask(packModel), strings: n, apart: stringsApart, allowed: m.pack.module.chargeCurrent }),
    }
  },
  answer: ({ joined }, make): Gaps | Strings => {
    if (joined === null || isGaps(joined)) return joined ?? { gaps: [] }
    const { pack, strings: n, apart, allowed } = joined
    const one = make.work(
      'resistance',
      stringResistance,
      { curve: pack.resistance, factor: pack.resistanceFactor, branch: pack.branchResistance, strings: n },
      { label: 'Resistance of one string at half charge' },
    )
    const slope = make.work(
      'slope',
      stringSlope,
      { openCircuit: pack.openCircuit, capacity: pack.capacity, strings: n },
      { label: 'Voltage over charge taken, one string at half charge' },
    )
    const joining = make.all(
      '',
      joiningStrings,
      { apart, first: one, second: one, lead: NOTHING, firstSlope: slope, secondSlope: slope },
      {
        labels: {
          peak: 'Peak current when two strings are joined',
          constant: 'Time constant of the exchange',
          moved: 'Charge that moves over',
          heat: 'Heat of the exchange',
        },
      },
    ).figures
    make.work(
      'resistor',
      joiningResistor,
      { apart, most: allowed, first: one, second: one, lead: NOTHING },
      { label: 'Resistor for the first connection' },
    )
    return { peak: joining.peak, heat: joining.heat, moved: joining.moved }
  },
})
