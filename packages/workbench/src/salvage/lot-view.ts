import type { System } from '@ampwright/conversion'
import { type Assessment, isGap, type Model, type Outcome } from '@ampwright/engine'
import type { Opened } from '../desk/finding-view.ts'
import { headed, shown, shownNumber } from '../shown.ts'
import { ALL, type Grade, lacking, moduleGrades } from './module-grades.ts'

/** One salvaged module as a screen lists it; its readings are fields of the file beside this. */
export type ModuleView = {
  readonly name: string
  readonly outcome: Outcome
  /** The verdict in one word or two, and what it comes from. */
  readonly verdict: string
  readonly because: readonly string[]
  readonly health?: Opened
  readonly leak?: Opened
  readonly missing: readonly { readonly path: string; readonly label: string }[]
}
export type LotView = {
  readonly modules: readonly ModuleView[]
  /** Modules recorded as in the pack, and places the pack has; absent until series and strings are stated. */
  readonly recorded: number
  readonly places?: number
  readonly sorting: readonly { readonly name: string; readonly label: string; readonly modules: string }[]
  /** What the lot comes to: the weakest decides. */
  readonly figures: readonly Listed[]
  /** What is asked before the lot can be sorted. */
  readonly wanted: readonly string[]
}
type Listed = Opened & { readonly label: string }

const FIGURES = [
  'pack.weakest',
  'pack.capacity',
  'sorting.sorted',
  'sorting.as-taken',
  'energy.to-reserve',
  'pack.cells',
  'salvage.capacity-spread',
  'salvage.resistance-spread',
  'salvage.median',
  'salvage.apart',
  'salvage.fastest',
  'salvage.greatest-leak',
  'salvage.insulation-together',
  'salvage.insulation-wanted',
]

/** The salvaged modules of a car as assessed: a verdict on each, how they are sorted, and what the pack comes to by its weakest group. */
export function lotView(model: Model, a: Assessment, system: System): LotView {
  const { salvage, modulesInSeries, strings } = model.pack,
    records = Object.entries(salvage),
    grades = moduleGrades(model, system)
  const others = isGap(model.pack.otherModule.inSeries) ? 0 : model.pack.otherModule.inSeries.value,
    places = isGap(modulesInSeries) || isGap(strings) ? undefined : (modulesInSeries.value + others) * strings.value
  return {
    modules: records.map(([name, record]): ModuleView => {
      const grade = grades.get(name) as Grade,
        use = isGap(record.use) ? 'in the pack' : record.use.value
      const opened = (key: 'health' | 'leak') => {
        const id = `salvage.${key}@${name}`,
          figure = a.figures.get(id)
        return figure ? { [key]: { name: id, text: shown(figure, system, a.halves.get(id)), figure: true } } : {}
      }
      return { name, ...verdict(grade, use, lacking(record)), missing: lacking(record), ...opened('health'), ...opened('leak') }
    }),
    recorded: records.filter(([, r]) => isGap(r.use) || r.use.value === 'in the pack').length,
    ...(places === undefined ? {} : { places }),
    sorting: sorting(a),
    figures: FIGURES.flatMap(id => {
      const f = a.figures.get(id)
      return f ? [{ name: id, label: headed(f.label), text: shown(f, system, a.halves.get(id)), figure: true }] : []
    }),
    wanted: wanted(model, places, system),
  }
}

/** What a module is called beside its mark. A module set aside by hand keeps that. */
function verdict(
  { outcome, says }: Grade,
  use: string,
  missing: readonly { label: string }[],
): Pick<ModuleView, 'outcome' | 'verdict' | 'because'> {
  if (outcome === 'does not apply' && says.length) return { outcome, verdict: 'a rule set aside', because: says }
  if (outcome === 'does not apply') return { outcome, verdict: use, because: [] }
  if (outcome === 'failing') return { outcome, verdict: 'rejected', because: says }
  if (outcome === 'marginal') return { outcome, verdict: 'in doubt', because: says }
  if (outcome === 'accepted') return { outcome, verdict: 'accepted', because: says }
  if (outcome === 'sound') return { outcome, verdict: 'fits the lot', because: [] }
  return missing.length
    ? {
        outcome,
        verdict: 'still to be measured',
        // Beside the module its name need not stand in every label.
        because: missing.length === ALL ? ['every reading'] : missing.map(g => g.label.replace(/ \([^()]*\)$/, '')),
      }
    : { outcome, verdict: 'not judged yet', because: says }
}

function sorting(a: Assessment): LotView['sorting'] {
  const table = a.tables.get('sorting.places')
  return (table?.rows ?? []).flatMap(row =>
    table!.columns.flatMap(({ key, label }) => {
      const modules = row.cells[key]
      return typeof modules === 'string' && modules !== '' ? [{ name: row.name, label, modules }] : []
    }),
  )
}

/** What keeps the lot from being sorted: series and strings, records of places without a module, capacities not measured. */
function wanted({ pack }: Model, places: number | undefined, system: System): readonly string[] {
  const { modulesInSeries, strings } = pack,
    usable = Object.entries(pack.salvage).filter(([, r]) => isGap(r.use) || r.use.value !== 'rejected'),
    inPack = usable.filter(([, r]) => isGap(r.use) || r.use.value === 'in the pack').length
  const gaps = [modulesInSeries, strings].filter(isGap).map(g => g.label)
  const short = places === undefined ? 0 : places - inPack,
    unmeasured = usable.filter(([, r]) => isGap(r.capacity)).map(([name]) => name)
  return [
    ...gaps,
    ...(short > 0 ? [`${shownNumber(short, 'count', '1', system)} more module records`] : []),
    ...(unmeasured.length ? [`capacity of ${unmeasured.join(', ')}`] : []),
  ]
}
