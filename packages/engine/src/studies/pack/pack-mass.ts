import { cellCount } from '../../battery/pack-arithmetic.ts'
import { boxedMass, boxedModules, boxesMass, energyPerMass, energyPerVolume, overheadShare } from '../../battery/pack-sums.ts'
import { boxedMassOfTwoForms, boxesMassOfTwoForms, densityOfTwoForms } from '../../battery/two-forms.ts'
import { storedEnergy } from '../../battery/usable-energy.ts'
import type { Model } from '../../model/model.ts'
import { type Figure, isGap, type Value } from '../../working/value.ts'
import { type Ask, isGaps, maybe, study } from '../study.ts'
import { NO_OTHERS, othersIn, othersInStrings, twoForms } from './other-module.ts'
import { packModel } from './pack-model.ts'

/** Modules the boxes hold, and the pack needs. */
type Counted = { readonly boxed: Figure; readonly wanted: Figure }
/** With two forms of module the counts are those of the main one; `others` has those of the other. */
export type PackMass = Counted & { readonly withBoxes: Figure; readonly others: Counted | null }

/** The pack with its boxes, what they add, and whether every module has a place. */
export const packMass = study({
  id: 'pack-mass',
  stage: 'pack',
  asks: 'What does the pack weigh with its boxes?',
  reads: (m, ask) => ({
    module: m.pack.module.mass,
    inSeries: m.pack.modulesInSeries,
    strings: m.pack.strings,
    other: twoForms(m)
      ? {
          mass: m.pack.otherModule.mass,
          inSeries: othersInStrings(m)?.inSeries ?? NO_OTHERS,
          boxes: Object.values(m.pack.boxes).map(b => othersIn(b.otherModules)),
        }
      : null,
    boxes:
      Object.keys(m.pack.boxes).length > 0
        ? Object.values(m.pack.boxes).map(b => ({ modules: b.modules, overhead: b.overhead }))
        : { gaps: [{ gap: true as const, path: 'pack.boxes', label: 'battery boxes', until: 'any time' as const }] },
    pack: maybe(ask(packModel)),
    size: maybe({ length: m.pack.module.length, width: m.pack.module.width, height: m.pack.module.height }),
    otherSize: twoForms(m)
      ? maybe({ otherLength: m.pack.otherModule.length, otherWidth: m.pack.otherModule.width, otherHeight: m.pack.otherModule.height })
      : null,
  }),
  answer: ({ module, inSeries, strings, other, boxes, pack, size, otherSize }, make): PackMass => {
    const list = boxes as readonly { modules: never; overhead: never }[],
      counts = list.map(b => b.modules)
    const overheads: readonly Value[] = list.map(b => b.overhead),
      mixed = other && { counts, each: module, others: other.boxes as readonly Value[], otherEach: other.mass },
      named = { withBoxes: { label: 'Pack with its boxes' }, modules: { label: 'Modules in the boxes' } }
    const withBoxes = mixed
      ? make.work('with-boxes', boxesMassOfTwoForms, { ...mixed, overheads }, named.withBoxes)
      : make.work('with-boxes', boxesMass, { counts, each: module, overheads }, named.withBoxes)
    const modules = mixed
      ? make.work('modules', boxedMassOfTwoForms, mixed, named.modules)
      : make.work('modules', boxedMass, { counts, each: module }, named.modules)
    make.work('overhead', overheadShare, { pack: withBoxes, modules }, { label: 'What boxes, plates and links add' })
    const wanted = make.work('wanted', cellCount, { modules: strings, cells: inSeries }, { label: 'Modules the pack needs', symbol: 'n' })
    const others = other && {
      wanted: make.work(
        'wanted',
        cellCount,
        { modules: strings, cells: other.inSeries },
        { item: 'other form', label: 'Modules of the other form the pack needs', symbol: 'n' },
      ),
      boxed: make.work(
        'boxed',
        boxedModules,
        { counts: other.boxes as readonly Value[] },
        { item: 'other form', label: 'Modules of the other form the boxes hold' },
      ),
    }
    if (!isGaps(pack)) {
      const energy = make.work(
        'stored',
        storedEnergy,
        { openCircuit: pack.openCircuit, capacity: pack.capacity },
        { label: 'Energy at no load' },
      )
      make.work('module-energy', energyPerMass, { energy, mass: pack.mass }, { label: 'Energy per mass of the bare modules' })
      if (!isGaps(size) && others && otherSize !== null && !isGaps(otherSize))
        make.work(
          'module-density',
          densityOfTwoForms,
          { energy, modules: wanted, ...size, others: others.wanted, ...otherSize },
          { label: 'Energy per volume of the bare modules' },
        )
      if (!isGaps(size) && !others)
        make.work(
          'module-density',
          energyPerVolume,
          { energy, modules: wanted, ...size },
          { label: 'Energy per volume of the bare modules' },
        )
    }
    return {
      withBoxes,
      boxed: make.work('boxed', boxedModules, { counts }, { label: 'Modules the boxes hold' }),
      wanted,
      others,
    }
  },
})

const lacking = ({ boxed, wanted }: Counted): boolean => boxed.value < wanted.value

/** How many modules the pack has and its boxes hold, where those are fewer: the others weigh something too, and stand somewhere. */
export function unboxed({ pack: { boxes, modulesInSeries, strings } }: Model, ask: Ask): (Counted & Pick<PackMass, 'others'>) | null {
  if (Object.keys(boxes).length === 0 || isGap(modulesInSeries) || isGap(strings)) return null
  const mass = ask(packMass)
  if (isGaps(mass) || !(lacking(mass) || (mass.others && lacking(mass.others)))) return null
  return { boxed: mass.boxed, wanted: mass.wanted, others: mass.others }
}
