import type { Model } from '../../model/model.ts'
import { leads } from '../../studies/charging/outlets.ts'
import { isGaps } from '../../studies/study.ts'
import { isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, type Remedy, rule } from '../rule.ts'

const PLACES = ['charging.places']
const placesWithCable = (m: Model) =>
  Object.entries(m.charging.places).filter(([, p]) => !(!isGap(p.socket) && p.socket.value === 'DC post'))
const HEAT =
  'An outlet or plug that overheats can set fire to a building, hours after anybody looked. Feel plug and outlet after an hour at full current; never charge through an extension lead, a reel or an adaptor.'

/** What flows for hours against what outlet, circuit and cable stand. */
export const outletContinuous = rule({
  id: 'outlet-continuous',
  title: 'Every outlet stands its charging current for hours',
  stage: 'pack',
  harm: 'S3',
  hazards: ['H1'],
  source: { work: 'practice', place: 'household sockets: 8 to 10 A for hours; circuits: their rating, or what the code leaves of it' },
  caution: HEAT,
  judgements: (m, ask) => {
    const places = placesWithCable(m)
    if (places.length === 0) return doesNotApply('no outlet is named yet', PLACES)
    const answer = ask(leads)
    return places.map(([item, p]): Judgement => {
      const at = `charging.places.${item}`,
        about = [`${at}.socket`, `${at}.current`, `${at}.cable`, `${at}.set-to`],
        lead = isGaps(answer) ? answer : answer.places[item]
      if (!lead || isGaps(lead))
        return { item, about, says: 'What {item} stands for hours cannot be said yet.', missing: lead ?? { gaps: [] } }
      const { flows, stands, rated } = lead
      if (flows === undefined)
        return {
          item,
          about,
          says: 'What the wall box at {item} lets the car draw is not known.',
          missing: isGap(p.setTo) ? p.setTo : { gaps: [] },
          remedies: [{ do: 'measure', says: 'Read on the wall box, or in its app, to what current it is set.', path: `${at}.set-to` }],
        }
      return {
        item,
        about,
        found: flows,
        side: 'at most',
        limit: stands,
        says: 'At {item} up to {found} flow for hours; outlet, circuit and cable stand {limit}.',
        remedies: [
          {
            do: 'set',
            says: 'Set wall box or lead to what outlet, circuit and cable stand for hours.',
            sets: [{ path: `${at}.set-to`, to: { value: stands.value, kind: 'current' } }],
          },
          { do: 'act', says: 'Have a charging point put in, on a circuit of its own.' },
        ],
        ...(rated.value > stands.value && flows.value <= rated.value
          ? { eased: 'the share of a circuit that may flow for hours is known from memory only' }
          : {}),
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'charging.places.garage.socket', now: 'household socket' }], item: 'garage' },
})

/** What flows for hours against what the inlet in the car carries. */
export const inletContinuous = rule({
  id: 'inlet-continuous',
  title: 'The inlet of the car carries the charging current for hours',
  stage: 'pack',
  harm: 'S3',
  hazards: ['H1'],
  source: { work: 'practice', place: 'inlets: the current on their plate' },
  caution: HEAT,
  judgements: (m, ask) => {
    const places = placesWithCable(m)
    if (places.length === 0) return doesNotApply('no outlet is named yet', PLACES)
    const answer = ask(leads)
    return places.map(([item]): Judgement => {
      const setTo = `charging.places.${item}.set-to`,
        about = ['charging.inlet.current', setTo],
        lead = isGaps(answer) ? answer : answer.places[item]
      if (!lead || isGaps(lead) || lead.flows === undefined)
        return {
          item,
          about,
          says: 'What flows at {item} for hours cannot be said yet.',
          missing: lead && isGaps(lead) ? lead : { gaps: [] },
        }
      const limit = m.charging.inlet.current
      return {
        item,
        about,
        found: lead.flows,
        side: 'at most',
        limit,
        says: 'At {item} up to {found} flow for hours; the inlet of the car carries {limit}.',
        remedies: [
          ...(isGap(limit)
            ? []
            : [
                {
                  do: 'set' as const,
                  says: 'Set wall box or lead to what the inlet carries.',
                  sets: [{ path: setTo, to: { value: limit.value, kind: 'current' as const } }],
                },
              ]),
          { do: 'act', says: 'An inlet for more current, with its cable.' },
        ],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'charging.inlet.current', now: '10 A' }], item: 'garage' },
})

const NO_LEAD: Remedy['says'] = 'Plug in directly: move the outlet or the car.'
export const noExtension = rule({
  id: 'no-extension-lead',
  title: 'It is charged without extension lead or adaptor',
  stage: 'pack',
  harm: 'S3',
  hazards: ['H1'],
  source: { work: 'practice', place: 'fires traced to household leads on damp ground' },
  caution: HEAT,
  judgements: m => {
    const places = placesWithCable(m)
    if (places.length === 0) return doesNotApply('no outlet is named yet', PLACES)
    return places.map(([item, { extension }]): Judgement => {
      const about = [`charging.places.${item}.extension`]
      if (isGap(extension))
        return { item, about, says: 'Whether a lead lies between car and outlet at {item} is not said.', missing: extension }
      const holds = extension.value === 'no'
      return {
        item,
        about,
        holds,
        rests: [extension],
        says: holds ? 'At {item} the car is plugged in directly.' : 'At {item} an extension lead or adaptor lies between car and outlet.',
        remedies: [{ do: 'set', says: NO_LEAD, sets: [{ path: `charging.places.${item}.extension`, to: { word: 'no' } }] }],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'charging.places.garage.extension', now: 'yes' }], item: 'garage' },
})
