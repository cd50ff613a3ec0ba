import { cellCount, energyAtVoltage, packCapacity, seriesVoltage, stringsCurrent } from '../../battery/pack-arithmetic.ts'
import { meanVoltage } from '../../battery/usable-energy.ts'
import { type Fact, type Figure, isGap, standard, type Value } from '../../working/value.ts'
import { type Gaps, study } from '../study.ts'
import { othersInStrings } from './other-module.ts'
import { packModel } from './pack-model.ts'
import { voltageUsers } from './voltage-window.ts'

export type Arrangements = {
  readonly best: { readonly inSeries: number; readonly strings: number; readonly fits: boolean; readonly energy: Figure }
}

const counted = (n: number): Fact => ({
  ...standard(`arrangement.${n}`, 'so many', 'n', n, '1', { work: 'definition', place: 'a way to put modules together' }),
  shows: 'count',
})

/** Ways that use every module, and single strings that leave one or two on the shelf. */
function ways(modules: number): readonly { readonly inSeries: number; readonly strings: number }[] {
  const all = Array.from({ length: modules }, (_, i) => i + 1)
    .filter(s => modules % s === 0)
    .map(inSeries => ({ inSeries, strings: modules / inSeries }))
  return [...all, ...[1, 2].filter(left => modules - left > modules / 2).map(left => ({ inSeries: modules - left, strings: 1 }))]
}

/** Ways to put the given modules in series and parallel, best first: those inside the window of every part, then by energy, then by voltage. */
export const arrangements = study({
  id: 'arrangement',
  stage: 'pack',
  asks: 'In which other ways could these modules be put together?',
  reads: (m, ask) => ({
    pack: ask(packModel),
    // Other ways are told of modules that are all alike.
    alike: othersInStrings(m) === null,
    inSeries: m.pack.modulesInSeries,
    strings: m.pack.strings,
    series: m.pack.module.cellsInSeries,
    openCircuit: m.pack.module.openCircuit,
    lowest: m.pack.cellLowest,
    highest: m.pack.cellHighest,
    continuous: m.pack.module.continuousCurrent,
    // A part whose window is not known is left out of the comparison; the rules ask for it.
    windows: voltageUsers(m).flatMap(u => (isGap(u.lowest) || isGap(u.highest) ? [] : [{ lowest: u.lowest, highest: u.highest }])),
  }),
  answer: (k, make): Arrangements | Gaps => {
    if (!k.alike) return { gaps: [] }
    const cells = k.series.value,
      mean = meanVoltage({ openCircuit: k.openCircuit.value })
    const floor = Math.max(0, ...k.windows.map(w => w.lowest.value)),
      ceiling = Math.min(Infinity, ...k.windows.map(w => w.highest.value))
    const rows = ways(Math.round(k.inSeries.value * k.strings.value))
      .map(({ inSeries, strings }) => {
        const full = seriesVoltage({ cells: inSeries * cells, each: k.highest.value }),
          empty = seriesVoltage({ cells: inSeries * cells, each: k.lowest.value })
        const energy = energyAtVoltage({
          capacity: packCapacity({ strings, string: k.pack.weakest.value }),
          voltage: seriesVoltage({ cells: inSeries * cells, each: mean }),
        })
        const window = full > ceiling ? 'too high when full' : empty < floor ? 'too low when empty' : 'inside every window'
        return {
          inSeries,
          strings,
          // Energy goes with the modules used; as a whole number it knows no rounding, so that equal ways stay equal.
          used: inSeries * strings,
          full,
          empty,
          energy,
          window,
          fits: window === 'inside every window',
          current: stringsCurrent({ strings, each: k.continuous.value }),
        }
      })
      .sort((a, b) => Number(b.fits) - Number(a.fits) || b.used - a.used || b.inSeries - a.inSeries)
    make.table('ways', {
      label: 'Ways to put these modules together, best first',
      columns: [
        { key: 'window', label: 'window' },
        { key: 'full', label: 'full', unit: 'V' },
        { key: 'empty', label: 'empty', unit: 'V' },
        { key: 'energy', label: 'energy', unit: 'J' },
        { key: 'current', label: 'continuous current', unit: 'A' },
      ],
      rows: rows.map(({ inSeries, strings, window, full, empty, energy, current }) => ({
        name: `${inSeries} in series, ${strings} in parallel`,
        cells: { window, full, empty, energy, current },
      })),
    })
    const { inSeries, strings, fits } = rows[0] as (typeof rows)[number]
    const n = make.work(
      'cells',
      cellCount,
      { modules: counted(inSeries), cells: k.series },
      { label: 'Cells in series, best way', symbol: 'n_s' },
    )
    const at = (key: string, each: Value, label: string): Figure =>
      make.work(key, seriesVoltage, { cells: n, each }, { label: `${label}, best way` })
    at('full', k.highest, 'Full')
    at('empty', k.lowest, 'Empty')
    make.work('current', stringsCurrent, { strings: counted(strings), each: k.continuous }, { label: 'Continuous current, best way' })
    const capacity = make.work(
      'capacity',
      packCapacity,
      { strings: counted(strings), string: k.pack.weakest },
      { label: 'Capacity, best way' },
    )
    const nominal = at(
      'nominal',
      make.work('mean', meanVoltage, { openCircuit: k.openCircuit }, { label: 'Mean voltage of one cell' }),
      'Nominal voltage',
    )
    return {
      best: {
        inSeries,
        strings,
        fits,
        energy: make.work('energy', energyAtVoltage, { capacity, voltage: nominal }, { label: 'Energy, best way' }),
      },
    }
  },
})
