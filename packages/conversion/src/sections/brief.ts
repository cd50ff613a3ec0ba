import { choice, date, group, mapOf, quantity, reference, variants } from '../schema/field.ts'
import { SETS } from './rule-sets.ts'

/** Conditions of goals; `more` says what leaving one out means. */
const conditions = (more: { readonly says?: string } = {}) => ({
  load: { ...reference('load case', 'brief.loads'), ...more },
  surface: choice('road surface', ['dry', 'wet', 'gravel', 'snow'], more),
  temperature: quantity('temperature', 'air temperature', 'T', { least: 213.15, most: 333.15, ...more }),
  altitude: quantity('altitude', 'altitude', 'h', { least: -500, most: 6000, ...more }),
  'head-wind': quantity('speed', 'head wind', 'v_w', { least: -40, most: 40, ...more }),
  trailer: { ...reference('trailer', 'trips.trailers'), ...more },
})
const OF_ALL = conditions({ says: 'Left out: as under `brief.conditions`.' })
const AS_TRIP = { says: 'Left out: as its trip says.' }

const demand = (label: string) =>
  choice(label, ['can be met', 'does not concern this car', 'cannot be met'], {
    until: 'before the part is bought',
    measure: { tool: 'ask whoever will sign, in writing', accuracy: 'as answered', minutes: 60 },
  })

/** What the finished car must do, for whom, and under whose rules. */
export const brief = group(
  'brief',
  {
    rules: choice('rule set', SETS, { says: 'Under whose rules the car is approved.' }),
    'converted-on': date('day the conversion is presented'),
    asked: group(
      'asked beforehand',
      { inspector: date('day the inspector agreed in writing'), insurer: date('day the insurer agreed in writing') },
      { says: 'Whoever will sign, and the insurer: asked before the first part is bought.' },
    ),
    'parts-bought-from': date('day the first part is bought'),
    'approved-kit': choice('an approved kit for this model is used', ['yes', 'no']),
    'individual-approval': choice('the finished car goes through individual approval', ['yes', 'no']),
    'pack-approval': choice('how the pack is approved', ['approved pack', 'tested with the car', 'none'], {
      until: 'before the part is bought',
    }),
    demands: group(
      'demands of the rule set, as agreed',
      {
        'identity-points': demand('points for original parts'),
        'original-structure': demand('share of frame or body that stays'),
        'crash-proof': demand('crash regulations'),
        'radio-compatibility': demand('radio compatibility'),
        'power-measure': demand('standard the power is measured by'),
        series: demand('how many or how different cars one approval covers'),
        'registration-mark': demand('identity and number are kept'),
        'charger-mark': demand('approval mark of the charger'),
        'towed-mass': demand('towed mass after conversion'),
      },
      { says: 'Demands in words: what whoever will sign said to them. Only those of the rule set named are asked.' },
    ),
    keeps: group(
      'kept as it was',
      {
        body: choice('body and frame: nothing cut, drilled or welded', ['yes', 'no']),
        dimensions: choice('outer dimensions', ['yes', 'no']),
        'safety-equipment': choice('airbags, anti-lock brakes, stability control and the like work as before', ['yes', 'no']),
      },
      { says: 'What of the donor car the plan leaves alone.' },
    ),
    ratings: group(
      'permitted masses planned',
      {
        'front-axle': quantity('mass', 'front axle rating planned', 'm_F,max', { least: 1 }),
        'rear-axle': quantity('mass', 'rear axle rating planned', 'm_R,max', { least: 1 }),
        total: quantity('mass', 'gross mass planned', 'm_max', { least: 1 }),
      },
      { says: 'Only where they are to change: what is left out stays as it was.' },
    ),
    prices: mapOf(
      'prices',
      'price',
      quantity('money', 'price', 'k', { least: 0 }),
      'What has no place of its own: fees, small parts, work bought in.',
    ),
    workshop: choice('who does the work', ['business', 'owner']),
    seats: quantity('count', 'seats wanted', 'n_seats', { least: 1, most: 9 }),
    luggage: quantity('mass', 'luggage wanted', 'm_lug', { least: 0, most: 20_000 }),
    person: quantity('mass', 'mass of one person', 'm_pers', {
      least: 30,
      most: 200,
      assume: () => ({
        value: 75,
        half: 10,
        note: 'one person as counted in approval',
        source: { work: 'eu-1230-2012', place: 'mass of the driver and of each occupant', mark: 'from memory' },
      }),
    }),
    budget: quantity('money', 'parts budget', 'K', { least: 0 }),
    reserve: quantity('share', 'charge kept in reserve', 'z_res', { least: 0, most: 0.9 }),
    conditions: group('conditions goals share', conditions(), { says: 'What a goal leaves out is taken from here.' }),
    loads: mapOf(
      'load cases',
      'load case',
      group('load case', {
        people: quantity('count', 'people aboard', 'n', { least: 0, most: 9 }),
        luggage: quantity('mass', 'luggage aboard', 'm_lug', { least: 0, most: 20_000 }),
        trailer: reference('trailer', 'trips.trailers'),
      }),
    ),
    goals: mapOf(
      'goals',
      'goal',
      variants('goal', 'kind', {
        'top speed': group('top speed', { speed: quantity('speed', 'speed wanted', 'v', { least: 1 }), ...OF_ALL }),
        acceleration: group('acceleration', {
          from: quantity('speed', 'speed the run starts at', 'v_1', { least: 0 }),
          to: quantity('speed', 'speed the run ends at', 'v_2', { least: 1 }),
          within: quantity('time', 'within', 't', { least: 0.5 }),
          ...OF_ALL,
        }),
        'hill start': group('hill start', {
          slope: quantity('slope', 'slope wanted', 'p', { least: 0, most: 1.5 }),
          transfer: choice('range of the transfer case it is met in', ['high', 'low'], {
            says: 'Left out: the range the car is usually in.',
          }),
          ...OF_ALL,
        }),
        climb: group('climb', {
          slope: quantity('slope', 'slope', 'p', { least: 0, most: 1 }),
          transfer: choice('range of the transfer case it is met in', ['high', 'low'], {
            says: 'Left out: the range the car is usually in.',
          }),
          speed: quantity('speed', 'speed held', 'v', { least: 0.5 }),
          duration: quantity('duration', 'for how long', 't', { least: 1, says: 'Left out: for as long as the hill lasts.' }),
          ...OF_ALL,
        }),
        'steady speed': group('steady speed', {
          speed: quantity('speed', 'speed held on the level', 'v', { least: 1 }),
          duration: quantity('duration', 'for how long', 't', { least: 1, says: 'Left out: for ever.' }),
          ...OF_ALL,
        }),
        range: group(
          'range',
          {
            trip: reference('trip', 'trips.named'),
            distance: quantity('distance', 'distance wanted', 's', { least: 100 }),
            ...conditions(AS_TRIP),
            'cabin-power': quantity('power', 'power the cabin takes', 'P_cab', { least: 0, ...AS_TRIP }),
            'pack-temperature': quantity('temperature', 'cell temperature at the start', 'T_cell', {
              least: 213.15,
              most: 333.15,
              ...AS_TRIP,
            }),
          },
          { says: 'Load, trailer and weather are those of the trip, but for what the goal says itself.' },
        ),
        charging: group('charging', {
          place: reference('charging place', 'charging.places'),
          within: quantity('duration', 'within', 't', { least: 60 }),
          from: quantity('share', 'from charge', 'z_1', { least: 0, most: 1 }),
          to: quantity('share', 'to charge', 'z_2', { least: 0, most: 1 }),
          distance: quantity('distance', 'distance put back', 's', { least: 100 }),
          trip: reference('trip whose consumption counts', 'trips.named'),
          temperature: quantity('temperature', 'cell temperature at plug-in', 'T_cell', { least: 213.15, most: 333.15 }),
        }),
      }),
    ),
  },
  { says: 'What the finished car must do, and under whose rules it is approved.' },
)
