import { cellTemperature, currentAtRate, energyPerMass, energyToReserve, RATES } from '../../battery/pack-sums.ts'
import { chargeLeft, energyAtCurrent, energyInTheCold } from '../../battery/usable-energy.ts'
import type { Figure } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import { packMass } from './pack-mass.ts'
import { packModel } from './pack-model.ts'

export type UsableEnergy = { readonly warm: Figure; readonly perMass: Figure | Gaps; readonly toReserve: Figure | Gaps }

const CELSIUS = [10, 0, -10, -20] as const
const HOURS = { third: 'three hours', one: 'one hour' } as const

/** Energy between full and the lowest cell voltage, by how fast it is drawn and how cold the cells are. */
export const usableEnergy = study({
  id: 'energy',
  stage: 'pack',
  asks: 'How much energy can be had, at which rate and temperature?',
  reads: (m, ask) => ({ pack: ask(packModel), mass: maybe(ask(packMass)), reserve: maybe(m.brief.reserve) }),
  answer: ({ pack, mass, reserve }, make): UsableEnergy => {
    const current = (rate: 'third' | 'one') =>
      make.work(
        'current',
        currentAtRate,
        { capacity: pack.capacity, rate: RATES[rate] },
        { item: HOURS[rate], label: `Current that empties the pack in ${HOURS[rate]}` },
      )
    const currents = { third: current('third'), one: current('one') }
    const load = (rate: 'third' | 'one', celsius: number) => ({
      openCircuit: pack.openCircuit,
      resistance: pack.resistance,
      branch: pack.branchResistance,
      factor: pack.resistanceFactor,
      cold: pack.coldFactor,
      temperature: cellTemperature(celsius),
      current: currents[rate],
      floor: pack.lowestVoltage,
    })
    const byResistance = (rate: 'third' | 'one', celsius: number): Figure =>
      make.work(
        'by-resistance',
        energyAtCurrent,
        { ...load(rate, celsius), capacity: pack.capacity },
        {
          item: `${HOURS[rate]} ${celsius} °C`,
          label: celsius === 25 ? `Usable energy in ${HOURS[rate]}, 25 °C` : `By resistance alone, ${HOURS[rate]}, ${celsius} °C`,
        },
      )
    const warm = byResistance('third', 25),
      warmed = { third: warm, one: byResistance('one', 25) }
    make.work('left', chargeLeft, load('third', 25), { label: 'Charge left at the lowest voltage, three hours, 25 °C' })
    const had = (rate: 'third' | 'one', celsius: number): Figure => {
      const alone = byResistance(rate, celsius)
      return isGaps(pack.coldEnergy)
        ? alone
        : make.work(
            'usable',
            energyInTheCold,
            { byResistance: alone, warm: warmed[rate], table: pack.coldEnergy, temperature: cellTemperature(celsius) },
            { item: `${HOURS[rate]} ${celsius} °C`, label: `Usable energy in ${HOURS[rate]}, cells at ${celsius} °C` },
          )
    }
    make.table('by-temperature', {
      label: 'Usable energy by rate and cell temperature',
      columns: [
        { key: 'third', label: 'in three hours', unit: 'J' },
        { key: 'one', label: 'in one hour', unit: 'J' },
      ],
      rows: [
        { name: '25 °C', cells: { third: warm, one: warmed.one } },
        ...CELSIUS.map(celsius => ({ name: `${celsius} °C`, cells: { third: had('third', celsius), one: had('one', celsius) } })),
      ],
    })
    return {
      warm,
      perMass: isGaps(mass)
        ? mass
        : make.work('per-mass', energyPerMass, { energy: warm, mass: mass.withBoxes }, { label: 'Usable energy per mass of the pack' }),
      toReserve: isGaps(reserve)
        ? reserve
        : make.work('to-reserve', energyToReserve, { energy: warm, reserve }, { label: 'Usable energy down to the reserve, 25 °C' }),
    }
  },
})
