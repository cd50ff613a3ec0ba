import { partsCost, severalPriced } from '../../cost/parts.ts'
import type { Model } from '../../model/model.ts'
import { type Field, type Figure, type Gap, isGap, type Value } from '../../working/value.ts'
import { ownCharger, ownInlet, standsAlone } from '../donor/ledger.ts'
import { othersIn, twoForms } from '../pack/other-module.ts'
import { unboxed } from '../pack/pack-mass.ts'
import { type Gaps, isGaps, maybe, once, study } from '../study.ts'

/** Something bought, by name; a motor without a price is a gap, never a zero. */
type Item = { readonly name: string; readonly price: Field }

export type Cost = {
  /** All parts together; the gaps to close while one has no price. */
  readonly parts: Figure | Gaps
  /** Modules and their boxes. */
  readonly pack: Figure | Gaps
}

/** Everything bought singly: what the donor's list puts in, motors, inverters, what the brief prices beside. The charger where it is priced by itself and not among the parts put in. */
function single(m: Model): readonly Item[] {
  const units = Object.entries(m.drive.units)
  return [
    ...Object.entries(m.donor.added).map(([name, i]) => ({ name, price: i.price })),
    ...units.map(([name, u]) => ({ name: `motor of ${name}`, price: u.motor.price })),
    ...units.filter(([, u]) => standsAlone(u)).map(([name, u]) => ({ name: `inverter of ${name}`, price: u.inverter.price })),
    ...(isGap(m.charging.charger.price) || !ownCharger(m) ? [] : [{ name: 'on-board charger', price: m.charging.charger.price }]),
    ...(isGap(m.charging.inlet.price) || !ownInlet(m) ? [] : [{ name: 'AC inlet', price: m.charging.inlet.price }]),
    ...Object.entries(m.brief.prices).map(([name, price]) => ({ name, price })),
  ]
}
const empty = (path: string, label: string): Gap => ({ gap: true, path, label, until: 'any time', why: 'missing' })

/** What the parts cost, with the spread of their prices. */
export const cost = study({
  id: 'cost',
  stage: 'brief',
  asks: 'What do the parts cost?',
  reads: (m, ask) => {
    const others = unboxed(m, ask),
      boxes = Object.entries(m.pack.boxes),
      units = Object.keys(m.drive.units)
    return {
      names: single(m).map(i => i.name),
      prices: single(m).map(i => maybe(i.price)),
      units: maybe(units.length ? null : empty('drive.units', 'drive units: motor, inverter and their way to an axle')),
      modules: maybe(
        boxes.length
          ? { each: m.pack.module.price, count: others ? [others.wanted] : boxes.map(([, b]) => b.modules) }
          : empty('pack.boxes', 'battery boxes'),
      ),
      otherModules:
        boxes.length && twoForms(m)
          ? maybe({
              each: m.pack.otherModule.price,
              count: others?.others ? [others.others.wanted] : boxes.map(([, b]) => othersIn(b.otherModules)),
            })
          : null,
      boxNames: boxes.map(([name]) => name),
      boxes: boxes.map(([, b]) => maybe(b.price)),
      others: maybe(others ? empty('pack.boxes', 'boxes for the other modules of the pack') : null),
    }
  },
  answer: (known, make): Cost => {
    const { modules } = known
    const rows: { name: string; price: Value }[] = [],
      gaps: Gap[] = isGaps(known.units) ? [...known.units.gaps] : []
    const take = (name: string, price: Value | Gaps): void => {
      if (isGaps(price)) gaps.push(...price.gaps)
      else rows.push({ name, price })
    }
    for (const [i, price] of known.prices.entries()) take(known.names[i] as string, price)
    const own = gaps.length,
      ownRows = rows.length
    take('modules', isGaps(modules) ? modules : make.work('modules', severalPriced, modules, { label: 'Price of all modules' }))
    const { otherModules } = known
    if (otherModules)
      take(
        'modules of the other form',
        isGaps(otherModules)
          ? otherModules
          : make.work('other-modules', severalPriced, otherModules, { label: 'Price of all modules of the other form' }),
      )
    for (const [i, price] of known.boxes.entries()) take(`box ${known.boxNames[i]}`, price)
    if (isGaps(known.others)) gaps.push(...known.others.gaps)
    const packGaps = gaps.slice(own),
      packRows = rows.slice(ownRows)
    const together = (key: string, label: string, list: readonly { price: Value }[]): Figure =>
      make.work(key, partsCost, { prices: list.map(r => r.price) }, { label })
    if (rows.length) together('priced', gaps.length ? 'Parts priced so far' : 'All parts priced', rows)
    make.table('list', {
      label: 'Parts and their prices',
      columns: [{ key: 'price', label: 'price', unit: '€', shows: 'money' }],
      rows: rows.map(({ name, price }) => ({ name, cells: { price } })),
    })
    return {
      parts: gaps.length ? { gaps: once(gaps) } : together('parts', 'Parts cost', rows),
      pack: packGaps.length ? { gaps: once(packGaps) } : together('pack', 'Price of the pack', packRows),
    }
  },
})
