import { choice, file, group, mapOf, quantity, reference, variants, words } from '../schema/field.ts'

// Tools, accuracies and times in this file are common practice.
const CLAMP = { tool: 'clamp meter, everything on that is on when driving', accuracy: '± 0.2 A', minutes: 15 }
const PLATE = { tool: 'plate and papers of the trailer', accuracy: 'as stated', minutes: 5 }

const conditions = {
  load: reference('load case', 'brief.loads'),
  trailer: reference('trailer', 'trips.trailers'),
  temperature: quantity('temperature', 'air temperature', 'T', { least: 213.15, most: 333.15 }),
  altitude: quantity('altitude', 'altitude', 'h', { least: -500, most: 6000 }),
  'head-wind': quantity('speed', 'head wind', 'v_w', { least: -40, most: 40 }),
  surface: choice('road surface', ['dry', 'wet', 'gravel', 'snow']),
  'cabin-power': quantity('power', 'power the cabin takes', 'P_cab', { least: 0, measure: CLAMP }),
  'cabin-power-cold': quantity('power', 'power the cabin takes on a cold day', 'P_cab', {
    least: 0,
    says: 'For the range on a cold day, −10 °C. Left out: `cabin-power`.',
    measure: CLAMP,
  }),
  'cabin-power-hot': quantity('power', 'power the cabin takes on a hot day', 'P_cab', {
    least: 0,
    says: 'For the range on a hot day, 35 °C. Left out: `cabin-power`.',
    measure: CLAMP,
  }),
  'other-power': quantity('power', '12 V and other loads', 'P_aux', { least: 0, measure: CLAMP }),
  'pack-temperature': quantity('temperature', 'cell temperature at the start', 'T_cell', { least: 213.15, most: 333.15 }),
  transfer: choice('transfer case range', ['high', 'low'], { says: 'Left out: the range the drive unit is usually in.' }),
}

const TAPE = { tool: 'tape, to the middle of several axles', accuracy: '± 20 mm', minutes: 5 }
const LOAD = { tool: 'tape to the middle of the load and of the trailer, weighted by their masses', accuracy: '± 100 mm', minutes: 15 }

export const trips = group(
  'trips',
  {
    named: mapOf(
      'trips',
      'trip',
      variants('trip', 'kind', {
        cycle: group('speed trace', {
          cycle: words('standard cycle', { says: 'A cycle of the catalogue, such as `wltc-3b`.' }),
          trace: file('speed trace', 'curve', 'speed trace CSV', 'm/s', {
            named: { by: 'cycle', in: 'cycles' },
            says: 'An own trace, in place of a cycle.',
          }),
          ...conditions,
        }),
        steady: group('steady speed', {
          speed: quantity('speed', 'speed', 'v', { least: 0.5 }),
          slope: quantity('slope', 'slope', 'p', { least: -1, most: 1 }),
          ...conditions,
        }),
        climb: group('hill climb', {
          speed: quantity('speed', 'speed', 'v', { least: 0.5 }),
          slope: quantity('slope', 'slope', 'p', { least: 0, most: 1 }),
          length: quantity('distance', 'length of the hill', 's', { least: 1 }),
          ...conditions,
        }),
        route: group('route', {
          track: words('track', { says: 'A GPX file beside the conversion.' }),
          speed: quantity('speed', 'set speed', 'v', { least: 0.5, says: 'Where the track carries no times.' }),
          profile: file('height profile', 'curve', 'GPX profile', 'm', { named: { by: 'track', in: 'attachments' } }),
          timing: file('speed over distance', 'curve', 'GPX timing', 'm/s', { named: { by: 'track', in: 'attachments' } }),
          ...conditions,
        }),
      }),
    ),
    trailers: mapOf(
      'trailers',
      'trailer',
      group('trailer', {
        mass: quantity('mass', 'trailer mass', 'm_t', { least: 1, measure: { tool: 'weighbridge', accuracy: '± 10 kg', minutes: 30 } }),
        'nose-load': quantity('mass', 'nose load', 'm_S', {
          least: 0,
          most: 5000,
          measure: { tool: 'scale under the coupling', accuracy: '± 1 kg', minutes: 10 },
        }),
        'drag-area': quantity('area', 'extra drag area', 'A_t', {
          least: 0,
          measure: { tool: 'tape: the area above and beside the car', accuracy: '± 10 %', minutes: 15 },
        }),
        'rolling-resistance': quantity('ratio', 'rolling resistance of the trailer', 'c_rt', { least: 0.002, most: 0.1 }),
        braked: choice('own brakes', ['yes', 'no'], { measure: PLATE }),
        'brake-force': quantity('force', 'force of the trailer’s own brakes', 'F_t', {
          least: 0,
          measure: { tool: 'roller brake tester, all wheels together', accuracy: '± 5 %', minutes: 20 },
        }),
        'centre-height': quantity('length', 'centre of mass of the trailer above the ground', 'h_t', {
          least: 0.1,
          most: 3,
          measure: LOAD,
        }),
        'axle-distance': quantity('length', 'coupling to the trailer’s axle', 'ℓ', { least: 0.5, most: 15, measure: TAPE }),
      }),
    ),
  },
  { says: 'Journeys the car is judged by, with load and weather.' },
)
