import { type FieldView, fieldsOf, type SheetNode } from '@ampwright/workbench'
import { Fragment, memo } from 'react'
import { Field } from '../field/field.tsx'

/**
 * What is decided, as sentences a mechanic would say. `{path}` is a field; `*` in a path stands for each entry of a map, one sentence for each, `{*}` its name.
 * A sentence shows when all its fields exist in the file's schema as it stands.
 */
const SAYS: Readonly<Record<string, readonly Saying[]>> = {
  brief: [
    'The car is approved under {brief.rules} and is presented on {brief.converted-on}.',
    'It keeps {brief.seats} seats and carries {brief.luggage} of luggage; one person counts {brief.person}.',
    'Parts may cost {brief.budget}, and {brief.reserve} of the charge stays in reserve.',
    'Goals are met with load {brief.conditions.load}, on a road that is {brief.conditions.surface}, at {brief.conditions.temperature} and {brief.conditions.altitude} above the sea.',
    { when: ['brief.goals.*.kind', 'top speed'], says: '{*}: it reaches {brief.goals.*.speed} and holds it.' },
    { when: ['brief.goals.*.kind', 'steady speed'], says: '{*}: it holds {brief.goals.*.speed} for {brief.goals.*.for}.' },
    {
      when: ['brief.goals.*.kind', 'acceleration'],
      says: '{*}: from {brief.goals.*.from} to {brief.goals.*.to} within {brief.goals.*.within}.',
    },
    { when: ['brief.goals.*.kind', 'hill start'], says: '{*}: it pulls away on {brief.goals.*.slope}.' },
    { when: ['brief.goals.*.kind', 'climb'], says: '{*}: it climbs {brief.goals.*.slope} at {brief.goals.*.speed} for as long as asked.' },
    { when: ['brief.goals.*.kind', 'range'], says: '{*}: it goes {brief.goals.*.distance} on the trip {brief.goals.*.trip}.' },
    {
      when: ['brief.goals.*.kind', 'charging'],
      says: '{*}: at {brief.goals.*.place} it puts back {brief.goals.*.distance} of the trip {brief.goals.*.trip} within {brief.goals.*.within}.',
    },
    '{*}: {brief.loads.*.people} people and {brief.loads.*.luggage} of luggage aboard.',
  ],
  donor: [
    'The engine sat {donor.engine-position} and drove the {donor.driven-wheels} wheels; the body is {donor.body}.',
    'Wheelbase {donor.wheelbase}, tyres {donor.tyre}, drag area {donor.drag-area}.',
    'Weighed: front left {donor.weighing.front-left}, front right {donor.weighing.front-right}, rear left {donor.weighing.rear-left}, rear right {donor.weighing.rear-right}, with {donor.weighing.fuel} of fuel aboard.',
    'Permitted: {donor.ratings.front-axle} in front, {donor.ratings.rear-axle} behind, {donor.ratings.total} in all.',
    'The old engine gave {donor.engine.power} and {donor.engine.torque}, up to {donor.engine.red-line}.',
  ],
  drive: [
    {
      when: ['drive.units.*.through', 'kept gearbox'],
      says: '{*}: the motor drives the {drive.units.*.axle} axle through {drive.units.*.through}, in gear {drive.units.*.gear}.',
    },
    {
      unless: ['drive.units.*.through', 'kept gearbox'],
      says: '{*}: the motor drives the {drive.units.*.axle} axle through {drive.units.*.through}, geared down {drive.units.*.reduction}.',
    },
    '{*}: it gives {drive.units.*.motor.peak-torque} and {drive.units.*.motor.peak-power} for {drive.units.*.motor.peak-time}, {drive.units.*.motor.continuous-torque} and {drive.units.*.motor.continuous-power} for ever, and turns up to {drive.units.*.motor.top-speed}.',
    '{*}: its inverter works from {drive.units.*.inverter.lowest-voltage} to {drive.units.*.inverter.highest-voltage} and gives {drive.units.*.inverter.peak-current}.',
    'Lifting the pedal gives back {drive.regeneration.torque-share} of the torque, at most {drive.regeneration.power}, down to {drive.regeneration.cut-off-speed}.',
  ],
  pack: [
    '{pack.modules-in-series} modules in series, {pack.strings} strings; each module is {pack.module.chemistry}, {pack.module.cells-in-series} cells in series and {pack.module.cells-in-parallel} side by side of {pack.module.cell-capacity}.',
    {
      when: ['pack.other-module.same-cells', 'yes'],
      says: 'In each string stand {pack.other-module.in-series} modules of another form too, each {pack.other-module.cells-in-series} of the same cells in series.',
    },
    'A cell works from {pack.cell-lowest} to {pack.cell-highest} and is charged to {pack.charge-to}.',
    '{*}: {pack.boxes.*.modules} modules, {pack.boxes.*.where}, {pack.boxes.*.x} behind the front axle and {pack.boxes.*.z} above the ground.',
    {
      when: ['trips.named.*.kind', 'cycle'],
      says: '{*}: the trip is the cycle {trips.named.*.cycle} at {trips.named.*.temperature}, with {trips.named.*.cabin-power} for the cabin.',
    },
    {
      when: ['trips.named.*.kind', 'route'],
      says: '{*}: the trip follows {trips.named.*.track} at {trips.named.*.temperature}, with {trips.named.*.cabin-power} for the cabin.',
    },
    'The charger gives {charging.charger.power} at {charging.charger.current}, from {charging.charger.lowest-voltage} to {charging.charger.highest-voltage}.',
    '{*}: a {charging.places.*.socket} of {charging.places.*.current} at {charging.places.*.voltage}, for {charging.places.*.hours}.',
  ],
  'high-voltage': [
    '{*}: {high-voltage.wires.*.length} of {high-voltage.wires.*.section} from {high-voltage.wires.*.from} {high-voltage.wires.*.from-end} to {high-voltage.wires.*.to} {high-voltage.wires.*.to-end}, in air of {high-voltage.wires.*.around}.',
    {
      when: ['high-voltage.parts.*.kind', 'fuse'],
      says: '{*}: the fuse is rated {high-voltage.parts.*.rating}, breaks {high-voltage.parts.*.breaks} at most and {high-voltage.parts.*.voltage} of direct voltage.',
    },
    {
      when: ['high-voltage.parts.*.kind', 'contactor'],
      says: '{*}: the contactor switches {high-voltage.parts.*.role}, carries {high-voltage.parts.*.current} and breaks {high-voltage.parts.*.voltage}.',
    },
  ],
  'brakes-steering': [
    '{*}: printed {brakes.prints.*.when} the conversion with {brakes.prints.*.mass} on the rollers: front left {brakes.prints.*.front-left}, front right {brakes.prints.*.front-right}, rear left {brakes.prints.*.rear-left}, rear right {brakes.prints.*.rear-right}, with {brakes.prints.*.pedal-force} on the pedal.',
    'The parking brake holds the {brakes.parking.axle} axle, by {brakes.parking.by}.',
    'The motors light the stop lamps from {brakes.recovery.lamp-on}. When a wheel slips, {brakes.recovery.cut-by} takes recovery away; once the brake pedal is pressed it {brakes.recovery.under-pedal}.',
    'The longest hill falls {brakes.descent.slope} over {brakes.descent.length}; it is driven at {brakes.descent.speed} with load {brakes.descent.load}.',
    'A handwheel of radius {steering.wheel-radius} moves the rack by {steering.rack-travel} in one turn; the front tyres stand at {steering.tyre-pressure}.',
  ],
}
/** A sentence, or one that is said only where a field has a certain word. */
type Saying =
  | string
  | { readonly when: readonly [path: string, word: string]; readonly says: string }
  | { readonly unless: readonly [path: string, word: string]; readonly says: string }

type Told = { readonly key: string; readonly pieces: readonly (string | FieldView)[] }
/** Two sentences about one thing: what an earlier one tells, a later one need not. */
function toldIn(slug: string, sheets: readonly SheetNode[]): readonly Told[] {
  const fields = new Map(sheets.flatMap(fieldsOf).map(f => [f.path, f])),
    out: Told[] = []
  for (const saying of SAYS[slug] ?? []) {
    const text = typeof saying === 'string' ? saying : saying.says
    const paths = [...text.matchAll(/\{([^}]+)\}/g)].map(m => m[1] as string).filter(p => p !== '*')
    for (const name of namesFor(paths, fields)) {
      const at = (p: string): FieldView | undefined => fields.get(p.replace('*', name))
      if (!paths.every(at)) continue
      if (
        typeof saying !== 'string' &&
        !('when' in saying ? at(saying.when[0])?.text === saying.when[1] : at(saying.unless[0])?.text !== saying.unless[1])
      )
        continue
      const pieces = text.split(/(\{[^}]+\})/).flatMap((piece): (string | FieldView)[] => {
        const path = /^\{(.+)\}$/.exec(piece)?.[1]
        return path === undefined ? [piece] : path === '*' ? [`*${name}`] : [at(path) as FieldView]
      })
      const own = pieces.filter(p => typeof p !== 'string')
      if (own.length && own.every(f => out.some(o => o.pieces.includes(f)))) continue
      out.push({ key: `${text} ${name}`, pieces })
    }
  }
  return out
}

/** Names of the entries a sentence is said for; one without a name for a sentence without. */
function namesFor(paths: readonly string[], fields: ReadonlyMap<string, FieldView>): readonly string[] {
  const starred = paths.find(p => p.includes('*'))
  if (starred === undefined) return ['']
  const [before = '', after = ''] = starred.split('*')
  return [...fields.keys()].flatMap(p =>
    p.startsWith(before) && p.endsWith(after) && !p.slice(before.length, p.length - after.length).includes('.')
      ? [p.slice(before.length, p.length - after.length)]
      : [],
  )
}

/** Paths that stand in a sentence: the rows below leave them out. */
export const sentencePaths = (slug: string, sheets: readonly SheetNode[]): ReadonlySet<string> =>
  new Set(toldIn(slug, sheets).flatMap(t => t.pieces.flatMap(p => (typeof p === 'string' ? [] : [p.path]))))

export const Sentences = memo(function Sentences({ slug, sheets }: { readonly slug: string; readonly sheets: readonly SheetNode[] }) {
  return (
    <>
      {toldIn(slug, sheets).map(({ key, pieces }) => (
        <p className="say" key={key}>
          {pieces.map((p, i) =>
            typeof p === 'string' ? (
              p.startsWith('*') ? (
                <b key={i}>{p.slice(1)}</b>
              ) : (
                <Fragment key={i}>{p}</Fragment>
              )
            ) : (
              <Field key={p.path} field={p} inline />
            ),
          )}
        </p>
      ))}
    </>
  )
})
