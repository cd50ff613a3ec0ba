import { cellCount } from '../../battery/pack-arithmetic.ts'
import { boxedMass, boxedModules, boxesMass, energyPerMass, energyPerVolume, overheadShare } from '../../battery/pack-sums.ts'
import { storedEnergy } from '../../battery/usable-energy.ts'
import type { Model } from '../../model/model.ts'
import { type Figure, isGap } from '../../working/value.ts'
import { type Ask, isGaps, maybe, study } from '../study.ts'
import { packModel } from './pack-model.ts'

export type PackMass = { readonly withBoxes: Figure; readonly boxed: Figure; readonly wanted: Figure }

/** The pack with its boxes, what they add, and whether every module has a place. */
export const packMass = study({
  id: 'pack-mass',
  stage: 'pack',
  asks: 'What does the pack weigh with its boxes?',
  reads: (m, ask) => ({
    module: m.pack.module.mass,
    inSeries: m.pack.modulesInSeries,
    strings: m.pack.strings,
    boxes:
      Object.keys(m.pack.boxes).length > 0
        ? Object.values(m.pack.boxes).map(b => ({ modules: b.modules, overhead: b.overhead }))
        : { gaps: [{ gap: true as const, path: 'pack.boxes', label: 'battery boxes', until: 'any time' as const }] },
    pack: maybe(ask(packModel)),
    size: maybe({ length: m.pack.module.length, width: m.pack.module.width, height: m.pack.module.height }),
  }),
  answer: ({ module, inSeries, strings, boxes, pack, size }, make): PackMass => {
    const list = boxes as readonly { modules: never; overhead: never }[],
      counts = list.map(b => b.modules)
    const withBoxes = make.work(
      'with-boxes',
      boxesMass,
      { counts, each: module, overheads: list.map(b => b.overhead) },
      { label: 'Pack with its boxes' },
    )
    const modules = make.work('modules', boxedMass, { counts, each: module }, { label: 'Modules in the boxes' })
    make.work('overhead', overheadShare, { pack: withBoxes, modules }, { label: 'What boxes, plates and links add' })
    const wanted = make.work('wanted', cellCount, { modules: strings, cells: inSeries }, { label: 'Modules the pack needs', symbol: 'n' })
    if (!isGaps(pack)) {
      const energy = make.work(
        'stored',
        storedEnergy,
        { openCircuit: pack.openCircuit, capacity: pack.capacity },
        { label: 'Energy at no load' },
      )
      make.work('module-energy', energyPerMass, { energy, mass: pack.mass }, { label: 'Energy per mass of the bare modules' })
      if (!isGaps(size))
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
    }
  },
})

/** How many modules the pack has and its boxes hold, where those are fewer: the others weigh something too, and stand somewhere. */
export function unboxed({ pack: { boxes, modulesInSeries, strings } }: Model, ask: Ask): Pick<PackMass, 'boxed' | 'wanted'> | null {
  if (Object.keys(boxes).length === 0 || isGap(modulesInSeries) || isGap(strings)) return null
  const mass = ask(packMass)
  return isGaps(mass) || mass.boxed.value >= mass.wanted.value ? null : { boxed: mass.boxed, wanted: mass.wanted }
}
