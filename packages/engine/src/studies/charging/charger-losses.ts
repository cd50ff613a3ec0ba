import { chargerInput, chargerLossByPoint, chargerLossByPoints, chargerLossParts } from '../../charging/charger-loss.ts'
import type { ChargerPoint } from '../../model/charging.ts'
import { type Figure, type Gap, isGap, type Value } from '../../working/value.ts'
import { type Gaps, isGaps, type Known, type Maker, maybe, study } from '../study.ts'

/** What a charger loses at any power: the parts of its law, and what it takes at the wall at full power. */
export type ChargerLosses = {
  readonly input: Figure
  readonly parts: { readonly fixed: Figure; readonly linear: Figure; readonly square: Figure }
}

const POINTS = { partLoad: 'part load', halfLoad: 'half load' } as const
/** Two powers closer than this share of the full one say nothing of the slope between them. */
const APART = 0.05

const pointReads = (p: ChargerPoint) => (isGap(p.power) && isGap(p.efficiency) ? null : { power: p.power, efficiency: p.efficiency })

/** What the charger loses at the power an outlet really gives. */
export const chargerLosses = study({
  id: 'charger',
  stage: 'pack',
  asks: 'What does the charger lose at full power, and at the power of a weaker outlet?',
  reads: ({ charging: { charger: c } }) => {
    const partLoad = pointReads(c.partLoad),
      halfLoad = pointReads(c.halfLoad)
    return {
      losses: maybe({
        power: c.power,
        efficiency: c.efficiency,
        partLoad,
        halfLoad,
        fixed: partLoad || halfLoad ? null : c.fixedLoss,
        square: partLoad && halfLoad ? null : c.squareLoss,
      }),
    }
  },
  answer: ({ losses }, make): { losses: ChargerLosses | Gaps } => ({
    losses: isGaps(losses) ? losses : lossesOf(make, losses as never),
  }),
})
type Point = { readonly power: Value; readonly efficiency: Value }
type LossesKnown = {
  readonly power: Value
  readonly efficiency: Value
  readonly partLoad: Point | null
  readonly halfLoad: Point | null
  readonly fixed: Value | null
  readonly square: Value | null
}

function lossesOf(make: Maker, k: Known<LossesKnown>): ChargerLosses | Gaps {
  const input = make.work('input', chargerInput, { power: k.power, efficiency: k.efficiency }),
    full = { input, efficiency: k.efficiency }
  const points = (['partLoad', 'halfLoad'] as const).flatMap(name => (k[name] ? [{ name, ...(k[name] as Point) }] : []))
  const near = points.filter(p => p.power.value > (1 - APART) * input.value)
  const [one, other] = points
  const same = one && other && Math.abs(one.power.value - other.power.value) < APART * input.value ? [other] : []
  const wrong = [...near, ...same]
  if (wrong.length > 0) return { gaps: wrong.map(p => elsewhere(p.name)) }
  const { figures: parts } =
    one === undefined
      ? make.all('loss', chargerLossParts, { ...full, fixed: k.fixed as Value, square: k.square as Value })
      : other === undefined
        ? make.all('loss', chargerLossByPoint, { ...full, power: one.power, partly: one.efficiency, square: k.square as Value })
        : make.all('loss', chargerLossByPoints, {
            ...full,
            power: one.power,
            partly: one.efficiency,
            otherPower: other.power,
            otherwise: other.efficiency,
          })
  return { input, parts }
}
const elsewhere = (name: keyof typeof POINTS): Gap => ({
  gap: true,
  path: `charging.charger.${name === 'partLoad' ? 'part-load' : 'half-load'}.power`,
  label: `a power at the wall well below full power, and another than at the other point, for ${POINTS[name]}`,
  until: 'any time',
  why: 'missing',
})
