import type { Model } from '../../model/model.ts'
import { lamp } from '../../studies/brakes/lamp.ts'
import { type Axle, motorBraking } from '../../studies/brakes/motor-braking.ts'
import { isGaps } from '../../studies/study.ts'
import { isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, type Remedy, rule } from '../rule.ts'
import { antiLock } from './locking.ts'

const BY_SLIP: Remedy = {
  do: 'set',
  says: 'Let the inverter take recovery away as soon as its wheels slip.',
  sets: [{ path: 'brakes.recovery.cut-by', to: { word: 'slip of the motor' } }],
}

/** What takes recovery away from this axle by itself. A switch waits for the driver; anti-lock brakes that are not there, or not on this axle, take nothing. */
function takenAway(m: Model, axle: Axle): boolean {
  const { cutBy } = m.brakes.recovery
  if (isGap(cutBy)) return false
  if (cutBy.value === 'slip of the motor') return true
  const abs = antiLock(m)
  return cutBy.value === 'anti-lock brakes' && (abs === 'four channels' || (abs === 'rear axle' && axle === 'rear'))
}

export const recoveryOnSnow = rule({
  id: 'recovery-on-snow',
  title: 'Recovery lets go before snow does, under every load',
  stage: 'brakes & steering',
  harm: 'S3',
  hazards: ['J4'],
  source: { work: 'practice', place: 'recovery out within a tenth of a second of slip or of the anti-lock brakes at work' },
  caution:
    'Recovery that stays on while a wheel locks spins the car, and the anti-lock brakes cannot help. Try it on a wet, empty yard at walking pace first, the lightest load aboard.',
  judgements: (m, ask) => {
    if (Object.keys(m.drive.units).length === 0) return doesNotApply('no drive unit yet', ['drive.units'])
    const about = ['brakes.recovery.cut-by', 'drive.regeneration.torque-share', 'donor.grip.snow'],
      { cutBy } = m.brakes.recovery,
      answer = ask(motorBraking)
    if (isGaps(answer)) return [{ about, says: 'What recovery asks of the tyres cannot be said yet.', missing: answer }]
    return (['front', 'rear'] as const).flatMap((item): readonly Judgement[] => {
      const worst = answer.worst[item]
      if (!worst) return []
      if (!isGap(cutBy) && takenAway(m, item))
        return [
          { item, about, holds: true, rests: [cutBy], says: `Something takes recovery away from the ${item} axle as soon as it slips.` },
        ]
      if (isGap(cutBy)) return [{ item, about, says: 'What takes recovery away when a wheel slips is not decided.', missing: cutBy }]
      return [
        {
          item,
          about,
          found: worst.needed,
          side: 'at most',
          limit: m.donor.grip.snow,
          says: `Recovery needs a grip of {found} at the ${item} axle with the load ${worst.load}; snow gives {limit}, and nothing takes recovery away by itself.`,
          remedies: [BY_SLIP, { do: 'act', says: 'A winter setting with less recovery, and none below freezing.' }],
        },
      ]
    })
  },
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brakes.recovery.cut-by', now: 'nothing' },
      { path: 'donor.grip.snow', now: '0.2' },
    ],
    item: 'rear',
  },
})

export const stopLampOnRecovery = rule({
  id: 'stop-lamp-on-recovery',
  title: 'Stop lamps light when the motors slow the car hard',
  stage: 'brakes & steering',
  harm: 'S3',
  hazards: ['J3'],
  source: { work: 'un-r13-h', place: '5.2.22.4: may light above 0.7 m/s², must above 1.3 m/s², as a text of 2018 quotes it' },
  caution: 'Who drives behind sees nothing of a lifted pedal. Check the lamps with a helper and a deceleration meter; drag counts too.',
  judgements: (m, ask) => {
    const about = ['brakes.recovery.lamp-on', 'drive.regeneration.torque-share']
    if (Object.keys(m.drive.units).length === 0) return doesNotApply('no drive unit yet', ['drive.units'])
    const answer = ask(lamp),
      { lampOn } = m.brakes.recovery
    if (isGaps(answer)) return [{ about, says: 'How hard the motors slow the car cannot be said yet.', missing: answer }]
    if (answer.deceleration.value <= answer.must.value && isGap(lampOn))
      return doesNotApply('the motors never slow the car so hard that the lamps must light', about)
    const set: Remedy = {
      do: 'set',
      says: 'Let the VCU light the lamps at 1.0 m/s².',
      sets: [{ path: 'brakes.recovery.lamp-on', to: { value: 1, kind: 'acceleration' } }],
    }
    return [
      {
        item: 'lights',
        about,
        found: lampOn,
        side: 'at most',
        limit: answer.must,
        slots: { deceleration: answer.deceleration },
        says: 'The motors slow the car by up to {deceleration}; the lamps light from {found}, and must from {limit}.',
        remedies: [set],
      },
      {
        item: 'stays dark',
        about,
        found: lampOn,
        side: 'at least',
        limit: answer.may,
        says: 'The lamps light from {found} by the motors; below {limit} they must stay dark.',
        remedies: [set],
      },
    ]
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'brakes.recovery.lamp-on', now: '1.6 m/s2' }], item: 'lights' },
})

export const wheelSensorsKept = rule({
  id: 'wheel-sensors-kept',
  title: 'The anti-lock brakes keep their wheel sensors',
  stage: 'brakes & steering',
  harm: 'S3',
  hazards: [],
  source: { work: 'practice', place: 'anti-lock brakes are blind on a wheel without sensor and ring' },
  caution:
    'New hubs and half-shafts often come without the ring the sensor reads, or with another number of teeth. Check the lamp and a slow stop on gravel.',
  judgements: m => {
    const abs = antiLock(m),
      about = ['brakes.abs-sensors', 'donor.brakes.abs'],
      { absSensors } = m.brakes
    if (typeof abs !== 'string') return [{ about, says: 'Whether it has anti-lock brakes is not known yet.', missing: abs }]
    if (abs === 'none') return doesNotApply('it has no anti-lock brakes', about)
    if (isGap(absSensors)) return [{ about, says: 'What becomes of the wheel sensors is not decided.', missing: absSensors }]
    const holds = absSensors.value !== 'taken out'
    return [
      {
        about,
        holds,
        rests: [absSensors],
        says: holds ? 'Every wheel keeps sensor and ring.' : 'The wheel sensors are to be taken out: the anti-lock brakes see nothing.',
        remedies: [
          {
            do: 'set',
            says: 'Move them with their rings onto the new parts.',
            sets: [{ path: 'brakes.abs-sensors', to: { word: 'moved with their rings' } }],
          },
        ],
      },
    ]
  },
  spoil: { sample: 'otter', edits: [{ path: 'brakes.abs-sensors', now: 'taken out' }] },
})
