import { totalRatio } from '../../drive/wheel-force.ts'
import type { DriveUnit } from '../../model/drive.ts'
import type { Model } from '../../model/model.ts'
import { type Field, type Figure, type Gap, isGap } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'

const missing = (at: string, label: string): Gap => ({ gap: true, path: at, label, until: 'any time', why: 'missing' })

export type TransferRange = 'high' | 'low'

/** Whether a unit shifts through the kept box while driving. */
export const shifts = ({ through, shifting }: DriveUnit): boolean =>
  !isGap(through) && through.value === 'kept gearbox' && !isGap(shifting) && shifting.value !== 'held in one gear'
/** The tallest gear of the kept box: in it motor and gearbox input turn slowest. */
export function tallestGear(m: Model): string | undefined {
  const known = Object.entries(m.donor.gearbox.gears).flatMap(([name, g]) => (!g || isGap(g) ? [] : [[name, g.value] as const]))
  return known.reduce<(typeof known)[number] | undefined>((a, b) => (a === undefined || b[1] < a[1] ? b : a), undefined)?.[0]
}
/** The gear a unit is usually in: the one it is held in; one that shifts and names none ends up in the tallest. */
export const usualGear = (m: Model, u: DriveUnit): string | undefined =>
  !isGap(u.gear) ? u.gear.value : shifts(u) ? tallestGear(m) : undefined

/** The gear steps from motor to wheel for a unit, in one gear of the kept box; `range` stands in for the range of the transfer case it is usually in. */
export function steps(m: Model, unit: DriveUnit, gear: string | undefined, range?: Field<TransferRange>): readonly (Field | Gap)[] {
  if (isGap(unit.through)) return [unit.through]
  const out: Field[] = [],
    through = unit.through.value
  if (through === 'kept gearbox')
    out.push(
      gear === undefined
        ? missing(`${unit.at}.gear`, 'gear it is held in')
        : (m.donor.gearbox.gears[gear] ?? missing(`donor.gearbox.gears.${gear}`, `ratio of ${gear} gear`)),
    )
  else out.push(unit.reduction)
  if (!isGap(unit.transfer) && unit.transfer.value !== 'none')
    out.push(m.donor.transferCase[range && !isGap(range) ? range.value : unit.transfer.value])
  if (through !== 'drive unit') out.push(isGap(unit.finalDrive) ? m.donor.finalDrive : unit.finalDrive)
  return out
}

/** Total ratio of each drive unit in the gear it is usually in. */
export const ratios = study({
  id: 'ratio',
  stage: 'drive',
  asks: 'How many turns of the motor make one turn of the wheels?',
  reads: m => ({
    names: Object.keys(m.drive.units),
    units: Object.values(m.drive.units).map(u => maybe(steps(m, u, usualGear(m, u)))),
  }),
  answer: ({ names, units }, make): { units: Readonly<Record<string, Figure | Gaps>> } => ({
    units: Object.fromEntries(
      units.map((s, i) => [
        names[i],
        isGaps(s)
          ? s
          : make.work('total', totalRatio, { steps: s as never }, { item: names[i] as string, label: `Total ratio of ${names[i]}` }),
      ]),
    ),
  }),
})
